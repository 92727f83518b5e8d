"""A back is at the back: where no line says its place, a groove for it lies near the rear edges."""

from fractions import Fraction

import pytest
from tests.pieces import reading

CASE = """piece Case
units mm
overall 600 wide, 340 deep, 760 high
timber oak
2 sides, upright, 340 wide, 18 thick, at left and right
1 top, across, flat, 340 wide, 18 thick, between sides, rabbet 9
1 bottom, across, flat, 340 wide, 18 thick, between sides, housing 6, up 60
1 shelf, across, flat, 18 thick, 300 wide, between sides, housing 6, up 400,
  flush with front of sides
1 back, facing front, 6 thick, of birch ply, inside sides and top and bottom, groove 6
glue up case: sides, top, bottom, shelf, back
finish oil, 2 coats
"""


def depth_of(text: str) -> tuple[Fraction, Fraction]:
    box = reading.model_of(text).part("back").copies[0].box
    return box.low[1], box.high[1]


def test_a_back_stands_a_little_before_the_rear_edges_and_clear_of_shelves() -> None:
    # 340 - 10 = 330 is its own rear; a shelf 300 deep at the front ends before 324.
    assert depth_of(CASE) == reading.mm(324, 330)
    (told,) = [
        each for each in reading.model_of(CASE).assumptions if "the back stands" in each.text
    ]
    assert told.instead is not None
    assert told.instead.endswith(", 10 from back")
    written = CASE.replace("groove 6\nglue", "groove 6, 10 from back\nglue")
    assert depth_of(written) == reading.mm(324, 330)


@pytest.mark.parametrize(("words", "low"), [("20 from back", 314), ("40 from front", 40)])
def test_a_back_with_a_place_stands_there(words: str, low: int) -> None:
    without = CASE.replace("\n".join(CASE.splitlines()[7:9]) + "\n", "").replace(", shelf", "")
    assert depth_of(without.replace("groove 6\nglue", f"groove 6, {words}\nglue"))[0] == low
