"""What nobody writes of a tenon is as thick as a chisel in the maker's own units."""

from fractions import Fraction

import pytest
from tests.pieces.reading import model_of

FRAME = """piece Frame
units inches, to nearest 1/16
overall 20 wide, {thick} deep, 28 high
timber ash
2 stiles, upright, facing front, 2 1/2 x {thick}, at left and right
1 rail, across, on edge, 2 1/2 x {thick}, tenon 1 into stiles, up 5
glue up frame: stiles, rail
"""


@pytest.mark.parametrize(
    ("thick", "tenon", "said"),
    [("1", Fraction(5, 16), '5/16" thick'), ("3/4", Fraction(1, 4), '1/4" thick')],
)
def test_the_tenon_is_as_thick_as_the_page_says(thick: str, tenon: Fraction, said: str) -> None:
    # A third of an inch is nearest to 5/16 in; a chisel of 8 mm, nearer still, is not that.
    model = model_of(FRAME.format(thick=thick))
    (mortise, *_) = (each for each in model.part("stile").features if each.kind == "mortise")
    assert mortise.across[1] - mortise.across[0] == tenon * Fraction("25.4")
    assert any(said in assumption.text for assumption in model.assumptions)
