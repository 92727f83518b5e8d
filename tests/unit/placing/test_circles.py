"""What merely is alike is no circle: an unknown size is told as unknown; a circle has its lines."""

from __future__ import annotations

from tests.pieces.reading import checked, errors

BOOKCASE = """piece Low bookcase
units mm
overall 900 wide, 280 deep, 800 high
timber walnut
2 sides, upright, facing side, 22 thick, 280 wide, at left and right
1 top, flat, 22 thick, across, on sides: screws
1 bottom, flat, 22 thick, between sides, housing 7 deep, 50 above the floor
1 divider, upright, facing side, 22 thick, between top and bottom, housing 7
2 loose shelves, flat, 18 thick, in left bay, gap 2, up 250 and 450
left bay = opening between left side and divider and top and bottom
glue up case: sides, bottom, divider, top
"""


def test_an_unknown_size_is_told_as_such_though_copies_in_an_opening_wait_for_it() -> None:
    (found,) = errors(checked(BOOKCASE))
    assert found.code == "size-unknown"
    assert found.message == "divider: nothing says what width it has"
    assert found.span is not None
    assert found.span.line == 8


WALL_SHELF = """piece Wall shelf
units mm
overall 600 wide, 200 deep, 300 high
timber pine
2 sides, upright, facing side, 200 x 18, at left and right
1 bottom, flat, across, 200 x 18, housing 6 into sides, up 0
1 shelf, flat, across, 200 x 18, housing 6 into sides, up room.height + 18
room = opening between bottom and shelf
glue up case: sides, bottom, shelf
"""


def test_a_circle_is_told_at_the_line_that_closes_it() -> None:
    (found,) = errors(checked(WALL_SHELF))
    assert found.code == "sizes-in-a-circle"
    assert found.span is not None
    assert found.span.line == 7
