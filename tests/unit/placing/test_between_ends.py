"""What goes between parts that run past it lies midway along those, wherever they lie."""

from __future__ import annotations

from itertools import permutations

import pytest
from tests.pieces.reading import changed, model_of

BOX = """piece Box
units mm
overall 400 wide, 320 deep, 100 high
timber oak
2 sides, front to back, on edge, 100 x 12, 300 long, at left and right, 20 from front
1 cross piece, across, on edge, 100 x 12, between sides, housing 6
1 front strip, across, on edge, 400 x 100 x 20, in front of sides, glue
glue up box: sides, cross piece, front strip
"""


def test_between_sides_it_is_centred_along_the_sides() -> None:
    model = model_of(BOX)
    # Sides from 20 to 320: midway is 170, and the piece is 12 thick.
    assert model.part("cross piece").copies[0].box.low[1] == 170 - 6
    (listed,) = [each for each in model.assumptions if each.text.startswith("the cross piece is c")]
    assert listed.text.endswith("centred between the ends of the sides from front to back")
    assert listed.instead is not None
    assert listed.instead.endswith(", 164 from front")


@pytest.mark.parametrize(
    "words",
    [", housing 6 into sides\n", "\ncross piece into sides: housing 6\n"],
)
def test_between_sides_says_no_more_where_a_joint_goes_into_them(words: str) -> None:
    """A maker says where a shelf is and how it enters, in one line or in two."""
    cross = model_of(changed(BOX, (", housing 6\n", words))).part("cross piece")
    assert cross.length == model_of(BOX).part("cross piece").length == 400 - 24 + 12


SIDES = "2 long sides, across, on edge, 98 x 16, at front and back, up 0\n"
ENDS = (
    "2 ends, front to back, on edge, 98 x 16, at left and right, between long sides, glue, up 0\n"
)
PANEL = "1 floor panel, flat, 6 thick, inside long sides and ends, up 10\n"
TRAY = f"""piece Tray
units mm
overall 400 wide, 380 deep, 98 high
timber oak
{SIDES}{ENDS}{PANEL}glue up tray: long sides, ends, floor panel
"""


@pytest.mark.parametrize("lines", list(permutations((SIDES, ENDS, PANEL))))
def test_what_its_line_puts_at_two_sides_lies_there_in_whatever_order_the_lines_stand(
    lines: tuple[str, ...],
) -> None:
    model = model_of(changed(TRAY, (SIDES + ENDS + PANEL, "".join(lines))))
    lows = sorted(copy.box.low[0] for copy in model.part("end").copies)
    # One 16 thick against either side of a piece 400 wide, and 380 - 2 x 16 long.
    assert lows == [0, 400 - 16]
    assert model.part("end").length == 348
    # The panel stands 7 of its 8 deep grooves along the grain: 368 + 2 x 7.
    assert model.part("floor panel").length == 368 + 14
