"""The shipped drawers at their defaults, worked by hand (TRADE B8, B15, B20, B25)."""

from fractions import Fraction

import pytest
from tests.pieces.reading import checked, model_of

from dryfit.patterns import shipped, start_of

BLOCKS = {block.name: block for block in shipped()}


def sizes(name: str) -> dict[str, tuple[Fraction, Fraction, Fraction]]:
    """Length, width and thickness of each part of a drawer 400 wide, 350 deep, 110 high."""
    model = model_of(start_of(BLOCKS[name]))
    assert model.overall == (Fraction(400), Fraction(350), Fraction(110))
    return {
        part.name.rpartition(" > ")[2]: (part.length, part.width, part.thickness)
        for part in model.parts
    }


@pytest.mark.parametrize(
    ("name", "worked"),
    [
        (
            "dovetailed drawer",
            {
                # B15: 350 less the lap of 5.  B20: the back ends 8 below the sides and stands on
                # the bottom, 110 - 8 - 10 - 6; the bottom 376 + 2 x 6 - 1.5 by 350 - 18 + 6 - 1.
                "drawer front": ("400", "110", "18"),
                "drawer side": ("345", "110", "12"),
                "drawer back": ("400", "86", "12"),
                "drawer bottom": ("386.5", "337", "6"),
            },
        ),
        (
            "plywood drawer",
            {
                # B8: rabbets 6 deep leave a lip of 6: 400 - 2 x 6 is 388.  The bottom 4 deep in
                # grooves all round with half a mm of room: 376 + 8 - 1 by 326 + 8 - 1.
                "drawer side": ("350", "110", "12"),
                "drawer front": ("388", "110", "12"),
                "drawer back": ("388", "110", "12"),
                "drawer bottom": ("383", "333", "6"),
            },
        ),
    ],
)
def test_a_drawer_is_as_worked_by_hand(name: str, worked: dict[str, tuple[str, str, str]]) -> None:
    assert sizes(name) == {
        part: tuple(Fraction(size) for size in row) for part, row in worked.items()
    }


DRAWN = """piece Chest
units inches to 1/16
overall 24 wide, 16 deep, 12 high
timber pine
2 ends, front to back, on edge, 12 x 3/4, at left and right, up 0, box joint into sides
2 sides, across, on edge, 12 x 3/4, at front and back, up 0
1 drawer, as dovetailed drawer, 20 wide, 12 deep, HIGH high, up 1
2 runners, front to back, on the inside of ends, screws, running in drawer's WHAT
glue up chest: ends, sides
"""


def test_the_end_of_a_name_inside_a_pattern_finds_it() -> None:
    findings = checked(DRAWN.replace("HIGH", "4").replace("WHAT", "sides")).findings
    told = next(each for each in findings if each.code == "unknown-name")
    assert "did you mean `drawer side`?" in {hint.message for hint in told.hints}


def test_a_range_is_told_in_the_units_of_the_notes() -> None:
    # 70 mm is 2 3/4 in, 220 mm is 8 11/16 in, by 25.4 to the inch and to the nearest 1/16.
    findings = checked(DRAWN.replace("HIGH", "2").replace("WHAT", "drawer sides")).findings
    told = next(each for each in findings if each.code == "parameter-out-of-range")
    assert 'is 2"; it is made for 2 3/4" to 8 11/16"' in told.message
