"""A side with rows of pin holes on paper: the case is ours, its figures worked by hand."""

from fractions import Fraction

from tests.pieces.reading import model_of
from tests.unit.booklet.drawn_lines import outside, struck_out
from tests.unit.booklet.svg_reading import collisions, lettering

from dryfit.booklet.drawing import part_sheets
from dryfit.booklet.drawing.hole_rows import hole_rows, within_rows
from dryfit.booklet.labels import label
from dryfit.placing.model import Model

CASE = """piece Pantry case
units mm
overall 600 wide, 250 deep, 1900 high
timber oak
2 sides, upright, facing side, 250 x 20, at left and right
1 top, flat, 20 thick, between sides, housing 7, flush with top of sides
1 bottom, flat, 20 thick, between sides, housing 7, up 60
1 fixed shelf, flat, 240 x 20, 0 from front, between sides, housing 7, up 900
1 low shelf, flat, 240 x 20, 0 from front, between sides, shelf pins, gap 1 at ends, up 480
2 high shelves, flat, 240 x 20, 0 from front, between sides, shelf pins, gap 1 at ends, \
up 1200 and 1560
1 back, facing front, 6 thick, of birch ply, inside sides and top and bottom, rabbet 8
glue up case: sides, top, bottom, fixed shelf
"""


def case() -> Model:
    return model_of(CASE)


def test_a_row_is_measured_at_its_ends() -> None:
    (side,) = (part for part in case().parts if part.name == "side")
    holes = sorted({sum(each.along) / 2 for each in side.features if each.role == "pin hole"})
    rows = hole_rows(side.features)
    assert [at for row in rows for at in row.places] == holes
    assert len(rows) == 2
    for row in rows:
        steps = {b - a for a, b in zip(row.places, row.places[1:], strict=False)}
        assert steps == {row.pitch} == {Fraction(32)}
    assert len(within_rows(side.features)) == len(holes) - 4


def test_no_figure_and_no_letter_of_the_sheet_stands_on_another() -> None:
    model = case()
    (side,) = (part for part in model.parts if part.name == "side")
    (sheet,) = part_sheets(side, model, label(model))
    assert collisions(sheet) == []
    assert outside(sheet) == []
    assert struck_out(sheet) == []
    words = [line.words for line in lettering(sheet)]
    assert len(words) < 45
    rows = hole_rows(side.features)
    told = " ".join(words)
    assert f"{len(rows[0].places)} from" in told
    assert words.count("A") == words.count("B") == 2


def test_a_sheet_is_drawn_as_thick_as_it_measures() -> None:
    # What is sold as 6 mm and measures 5.7 is not shown as 5.5.
    model = model_of(CASE.replace("6 thick, of birch ply", "5.7 thick, of birch ply"))
    (back,) = (part for part in model.parts if part.name == "back")
    (sheet,) = part_sheets(back, model, label(model))
    words = [line.words for line in lettering(sheet)]
    assert "5.7" in words
    assert "5.5" not in words
