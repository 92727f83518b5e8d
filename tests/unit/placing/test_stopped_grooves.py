"""Where the grooves of a panel end: as nothing is lost, as a line says, or right through."""

import pytest
from tests.pieces.reading import checked, codes, mm, model_of

FRAME = """\
piece Frame
units mm
overall 400 wide, 22 deep, 500 high
timber oak
2 stiles, upright, facing front, 60 x 22, at left and right
2 rails, across, on edge, 60 x 22, tenon 30 into stiles, at bottom and top
1 panel, upright, facing front, 8 thick, inside stiles and rails, {}
glue up frame: stiles, rails, panel
"""

# The panel stands 8 less its gap in grooves of 8: those of the stiles reach 8 beyond the rails of
# 60, from 52 to 448 of 500.  The rails are 280 between the shoulders and 340 long; without their
# tenons of 30 their grooves reach from 22 to 318 (8 into the stiles).
BEHIND = mm(52, 448)
SHORT = mm(22, 318)
WHOLE = mm(0, 340)


@pytest.mark.parametrize(
    ("words", "stile", "rail"),
    [
        ("groove 8", BEHIND, WHOLE),
        ("stopped groove 8", BEHIND, SHORT),
        ("groove 8, stopped", BEHIND, SHORT),
        ("groove 8, stopped 40 from bottom", mm(40, 448), SHORT),
        ("groove 8, stopped 30 from top", mm(52, 470), SHORT),
        ("groove 8, through", mm(0, 500), WHOLE),
        ("through groove 8", mm(0, 500), WHOLE),
    ],
)
def test_grooves_end_where_the_line_says(words: str, stile: object, rail: object) -> None:
    model = model_of(FRAME.format(words))
    along = {
        part.name: {each.along for each in part.features if each.role == "groove"}
        for part in model.parts
    }
    assert along["stile"] == {stile}
    assert along["rail"] == {rail}


def test_a_groove_that_stops_before_its_panel_is_refused() -> None:
    found = checked(FRAME.format("groove 8, stopped 70 from bottom"))
    assert codes(found).count("groove-stops-short") == 1


def test_a_tenon_is_not_stopped() -> None:
    text = FRAME.format("groove 8").replace("tenon 30 into", "tenon 30, stopped, into")
    assert "detail-not-for-joint" in codes(checked(text))
