"""A part too big for its opening is told of on its own line, with the most that goes in."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.pieces.reading import changed, checked, errors, model_of, text_of

CASE = text_of("wall_case")
# 700 less two sides of 18 leave 664; 520 less top and bottom leave 484.
SHELF = "1 shelf, flat, 150 x 16, in bay, gap 1 across"
DOORS = "2 doors, upright, facing front, 20 thick, in bay, gap 2, 3 between"


@pytest.mark.parametrize(
    ("old", "new", "size", "most"),
    [
        (SHELF, SHELF.replace("150", "670 x 150"), 670, Fraction(664 - 2)),
        (DOORS, DOORS.replace("20 thick", "350 x 20"), 350, Fraction(664 - 2 - 3 - 2, 2)),
        (DOORS, DOORS.replace("20 thick", "500 long, 20 thick"), 500, Fraction(484 - 4)),
        # It would lie midway with 1 at either end, where the line says 2.
        (DOORS, DOORS.replace("20 thick", "482 long, 20 thick"), 482, Fraction(484 - 4)),
    ],
)
def test_the_line_and_the_most_are_told(old: str, new: str, size: int, most: Fraction) -> None:
    text = changed(CASE, (old, new))
    (found,) = errors(checked(text))
    assert found.code == "too-big-for-opening"
    assert found.figures["size"] == size
    assert found.figures["most"] == most
    assert found.span is not None
    assert text.splitlines()[found.span.line - 1].startswith(new)
    assert found.span.text().startswith(str(size))


def test_the_message_has_the_opening_and_the_gaps() -> None:
    (found,) = errors(checked(changed(CASE, (DOORS, DOORS.replace("20 thick", "350 x 20")))))
    assert found.message == (
        "2 doors, 350 wide, do not go into bay, where there is 664 from side to side, "
        "with gaps of 2, 3 and 2: 328.5 is the most"
    )
    assert found.hints[0].message.startswith("write `328.5 wide`")


@pytest.mark.parametrize(
    ("old", "new"),
    [
        (SHELF, SHELF.replace("150", "662 x 150")),
        (DOORS, DOORS.replace("20 thick", "328.5 x 20")),
        (DOORS, DOORS.replace("20 thick", "480 long, 20 thick")),
    ],
)
def test_the_most_goes_in(old: str, new: str) -> None:
    model_of(changed(CASE, (old, new)))


def test_what_reaches_beyond_the_overall_size_itself_is_told_as_before() -> None:
    found = checked(changed(CASE, ("1 top, flat, 210 x board", "1 top, flat, 720 x 210 x board")))
    assert "too-big-for-opening" not in {each.code for each in found.findings}


LOOSE = """piece Case
units mm
overall 600 wide, 280 deep, 400 high
timber oak
2 sides, upright, facing side, 20 thick, 280 wide, at left and right
1 top, flat, 20 thick, between sides, housing 6, down 0
2 cleats, front to back, 20 x 20, on the inside of sides: screws, up 180
1 shelf, flat, 18 thick, onto cleats: screws, between sides, 560 long
glue up case: sides, top
"""


@pytest.mark.parametrize(("words", "most"), [("561 long", 560), ("560 long, gap 2", 556)])
def test_so_is_what_does_not_go_between_two(words: str, most: int) -> None:
    (found,) = errors(checked(changed(LOOSE, ("560 long", words))))
    assert found.code == "too-big-for-opening"
    assert found.figures["most"] == most
    assert found.span is not None
    assert found.span.line == 8


def test_what_just_goes_between_two_is_fine() -> None:
    assert model_of(LOOSE).part("shelf").length == 560


DRAWER = """piece Case
overall 500 wide, 350 deep, 300 high
timber oak
2 sides, upright, facing side, 350 x 18, at left and right
1 top, across, flat, 350 x 18, into sides, housing 6, flush top
1 bottom, across, flat, 350 x 18, into sides, housing 6, flush bottom
1 drawer, as dovetailed drawer, between sides, gap 1, {wide}300 deep, 110 high, 0 from front, up 20
glue up case: sides, top, bottom
"""


@pytest.mark.parametrize(("wide", "told"), [("", []), ("520 wide, ", ["too-big-for-opening"])])
def test_a_pattern_between_others_is_looked_at_where_it_has_a_size(
    wide: str, told: list[str]
) -> None:
    found = checked(DRAWER.format(wide=wide))
    assert [each.code for each in errors(found)] == told
