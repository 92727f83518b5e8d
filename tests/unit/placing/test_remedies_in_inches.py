"""A remedy is written in the unit of the notes: `gap 1` would be an inch in a piece in inches."""

import pytest
from tests.pieces.reading import changed, checked

CASE = """piece Case
units inches, to nearest 1/16
overall 20 wide, 8 deep, 30 high
timber oak
2 sides, upright, facing side, 8 x 3/4, at left and right
1 top, flat, 8 x 3/4, into sides, housing 1/4, flush top
1 bottom, flat, 8 x 3/4, into sides, housing 1/4, flush bottom
bay = opening between sides and bottom and top
"""
SHELF = """1 shelf, across, flat, 7 x 3/4, in bay, gap 1/32 at ends, 0 from front, up 12
shelf onto sides: shelf pins 1/4 dia, 1 apart
glue up case: sides, top, bottom
finish oil, 2 coats
"""
DOOR = """1 door, upright, facing front, 3/4 thick, glued from 3, in bay, gap 1/16, 0 from front
door to left side: 2 hinges, 2 long
glue up case: sides, top, bottom
finish oil, 2 coats
"""
FRAME = """piece Frame
units inches, to nearest 1/16
overall 20 wide, 3/4 deep, 28 high
timber poplar
2 stiles, upright, facing front, 2 1/2 x 3/4, at left and right
1 rail, across, on edge, 2 1/2 x 3/4, 2 pocket screws into stiles, flush top
glue up frame: stiles, rail
finish oil, 2 coats
"""
BOX = """piece Box
units inches, to nearest 1/16
overall 12 wide, 8 deep, 3 5/8 high
timber oak
2 sides, front to back, on edge, 3 5/8 x 1/2, at left and right, up 0
1 front, across, on edge, 3 5/8 x 1/2, at front, up 0
1 back, across, on edge, 3 5/8 x 1/2, at back, up 0
sides into front and back: box joint
glue up box: sides, front, back
finish oil, 2 coats
"""


def remedies(text: str, code: str) -> str:
    found = [each for each in checked(text).findings if each.code == code]
    assert found, [each.message for each in checked(text).findings]
    return " ".join(hint.message for each in found for hint in each.hints)


@pytest.mark.parametrize(
    ("change", "says"),
    [
        (("gap 1/32 at ends", "gap 0 at ends"), '`gap 1/32" at ends`'),  # C5.5 in inches
        (("1/4 dia, 1 apart", "1/4 dia, 1/4 apart"), 'write 1" apart'),  # M27
        (("8 x 3/4, at left", "8 x 3/8, at left"), 'a pin needs 3/8" deep'),
    ],
)
def test_of_shelf_pins(change: tuple[str, str], says: str) -> None:
    assert says in remedies(changed(CASE + SHELF, change), "shelf-pins-do-not-fit")


@pytest.mark.parametrize(
    ("words", "says"),
    [
        ("2 hinges, 1/32 thick", '`3/16" thick`'),  # B23 in inches
        # Leaves 3 mm, 1/8 in, of a door of 3/4.
        ("2 hinges, 2 wide", '`5/8" wide`'),
    ],
)
def test_of_hinges(words: str, says: str) -> None:
    text = changed(CASE + DOOR, ("2 hinges, 2 long", words))
    assert says in remedies(text, "hinges-do-not-fit")


def test_of_pocket_screws() -> None:
    # 20 and 10 mm to the nearest sixteenth.
    said = remedies(changed(FRAME, ("2 pocket", "5 pocket")), "pocket-screws-do-not-fit")
    assert '13/16" from one to the next and 3/8" from the edges' in said


def test_of_fingers() -> None:
    # 8 mm to the nearest sixteenth.
    assert '`box joint 5/16"`' in remedies(
        changed(BOX, ("3 5/8", "3 11/16")), "box-joint-does-not-fit"
    )
