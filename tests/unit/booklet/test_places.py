"""What the cut list says of marks in the piece, gaps of a row, and drawings of cuts by hand."""

from fractions import Fraction

import pytest
from tests.pieces.reading import FILES, model_of_piece
from tests.unit.booklet import drawn_steps
from tests.unit.booklet.drawn_lines import outside
from tests.unit.booklet.svg_reading import collisions, quantities

from dryfit.booklet.drawing import part_sheets, setup_drawing
from dryfit.booklet.drawing.canvas import TALLEST, WIDEST, Canvas
from dryfit.booklet.drawing.exploded import exploded_drawing
from dryfit.booklet.gaps import SIDES, spacing
from dryfit.booklet.labels import label
from dryfit.booklet.parts_list import marks_in_piece
from dryfit.booklet.text import Amount, Say, plain
from dryfit.plan.operation import Work


@pytest.mark.parametrize("name", sorted(FILES))
def test_marks_are_told_on_the_side_where_the_box_has_them(name: str) -> None:
    model = model_of_piece(name)
    labels = label(model)
    for part in model.parts:
        told = plain(marks_in_piece(part, labels))
        for mark in ("R", "E", "F"):
            assert f"{mark} " in told
        for copy in part.copies:
            axis, sign = copy.frame.axes[0]
            assert f"R {SIDES[axis][sign < 0]}" in told


@pytest.mark.parametrize("name", sorted(FILES))
def test_parts_drawn_and_the_piece_taken_apart_are_readable_and_fit_a_page(name: str) -> None:
    model = model_of_piece(name)
    labels = label(model)
    drawings = [sheet for part in model.parts for sheet in part_sheets(part, model, labels)]
    drawings.append(exploded_drawing(model, labels.copies, labels.parts))
    for drawing in drawings:
        assert (collisions(drawing), outside(drawing)) == ([], []), drawing.title
        assert drawing.height_mm <= TALLEST
        assert drawing.width_mm <= WIDEST


def test_a_sheet_that_no_page_holds_is_made_smaller() -> None:
    canvas = Canvas()
    canvas.circle((0.0, 0.0), 1.0)
    canvas.circle((50.0, 4 * TALLEST), 1.0)
    canvas.text((25.0, 2.0), "R")
    drawing = canvas.finish("a tall sheet")
    assert drawing.height_mm == TALLEST
    assert drawing.width_mm < 50


def test_the_gap_of_a_row_is_that_of_its_boxes() -> None:
    model = model_of_piece("slat_bench")
    part = max(model.parts, key=lambda part: len(part.copies) if "slat" in part.name else 0)
    lows = sorted(copy.box.low for copy in part.copies)
    axis = next(a for a in range(3) if lows[0][a] != lows[1][a])
    width = part.copies[0].box.high[axis] - part.copies[0].box.low[axis]
    gap = lows[1][axis] - lows[0][axis] - width
    assert gap > Fraction(0)
    said = plain(spacing(part, Say(model.display)))
    assert model.display.with_unit(gap, fitted=True) in said


def test_a_single_part_has_no_gap() -> None:
    model = model_of_piece("shelf_box")
    alone = next(part for part in model.parts if len(part.copies) == 1)
    assert spacing(alone, Say(model.display)) == ()
    assert all(quantities(sheet) for sheet in part_sheets(alone, model, label(model)))


def test_cuts_by_hand_in_one_surface_share_a_drawing_for_each_hand() -> None:
    model = model_of_piece("shelf_box")
    part = next(p for p in model.parts if sum(f.role == "housing" for f in p.features) > 1)
    housings = [feature for feature in part.features if feature.role == "housing"]
    names = tuple(copy.name for copy in part.copies)
    works = [Work(part.name, names, (feature.id,), None, ()) for feature in housings]
    step = drawn_steps.step("bench", (), *works, kind="housing")
    drawing = setup_drawing(model, step, (), model.display)
    assert drawing is not None
    assert drawing.markup.count(f">{part.name}, ") == len(part.hands())
    figures = set(quantities(drawing))
    for limit in {limit for feature in housings for limit in feature.along}:
        assert Amount(limit, "").decimal() in figures
