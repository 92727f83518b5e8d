"""Rows of pin holes in words: each grid of a face is told by itself."""

from fractions import Fraction

from tests.pieces.reading import model_of
from tests.unit.operations.worked import listed

from dryfit.placing.model import Model

# Loose shelves below and above a fixed one: two lines, so two grids in one face of each side.
TWO_BAYS = """
piece Bays
units mm
overall 500 wide, 240 deep, 1200 high
timber oak
2 sides, upright, facing side, 240 x 20, at left and right
1 top, flat, 240 x 20, into sides, housing 6, flush top
1 bottom, flat, 240 x 20, into sides, housing 6, flush bottom
1 fixed shelf, flat, 240 x 20, into sides, housing 6, up 500
1 low shelf, flat, 230 x 20, 0 from front, between sides, shelf pins, gap 1 at ends, up 250
2 high shelves, flat, 230 x 20, 0 from front, between sides, shelf pins, gap 1 at ends, \
up 700 and 900
glue up case: sides, top, bottom, fixed shelf
finish oil, 2 coats
"""


def told(model: Model) -> set[tuple[Fraction, ...]]:
    """Every row as the words tell it: from E, the number, the first from R, one each, depth."""
    work, _ = listed(model)
    return {
        tuple(
            Fraction(str(word).removesuffix(" holes")) if str(word)[0].isdigit() else Fraction(0)
            for word in line
            if not isinstance(word, str) or word[0].isdigit()
        )
        for operation in work.operations
        for line in operation.details
        if str(line[0]).startswith("Row in face")
    }


def test_each_grid_of_a_face_is_a_row_of_its_own() -> None:
    model = model_of(TWO_BAYS)
    # TRADE B19: the pin's top carries the shelf, two holes below the lowest shelf and two above
    # the highest, 32 apart. 250 - 2.5 - 64 = 183.5, 5 holes; 700 - 2.5 - 64 = 633.5, and
    # (897.5 - 697.5) / 32 = 6.25, so 7 up and 2 more, and 2 below: 12 with the first.
    edge, deep = Fraction(37), Fraction(10)
    rows = {row[1:] for row in told(model) if row[0] == edge}
    low = (Fraction(5), Fraction(367, 2), Fraction(32), deep)
    high = (Fraction(12), Fraction(1267, 2), Fraction(32), deep)
    assert rows == {low, high}


def test_the_rows_told_are_the_holes_that_are_planned() -> None:
    model = model_of(TWO_BAYS)
    bored = {
        (sum(hole.across, Fraction(0)) / 2, sum(hole.along, Fraction(0)) / 2)
        for hole in model.part("side").features
        if hole.role == "pin hole"
    }
    in_words = {
        (across, first + turn * pitch)
        for across, count, first, pitch, _ in told(model)
        for turn in range(int(count))
    }
    assert in_words == bored
