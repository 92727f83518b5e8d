"""Loose shelves on pins worked by hand (TRADE B19): rows of holes, and a shelf with play."""

from dataclasses import replace
from fractions import Fraction
from itertools import pairwise

import pytest
from tests.pieces.reading import changed, checked, codes, mm, model_of, text_of
from tests.unit.rehearsal.played import Played, played

from dryfit.joinery.shelf_pins import heights, usual_pins
from dryfit.placing.model import Model
from dryfit.quantities import Display
from dryfit.quantities.units import INCH
from dryfit.rehearsal.fault import Reason

CASE = text_of("pin_case")


@pytest.fixture(scope="module")
def case() -> Model:
    return model_of(CASE)


def holes(model: Model) -> list[tuple[Fraction, ...]]:
    """Middle along and across, width and depth of each hole in a side."""
    return [
        (
            sum(each.along, Fraction(0)) / 2,
            sum(each.across, Fraction(0)) / 2,
            each.across[1] - each.across[0],
            each.depth,
        )
        for each in model.part("side").features
        if each.role == "pin hole"
    ]


def test_a_shelf_is_two_shorter_than_its_place(case: Model) -> None:
    # TRADE B19: inside less 2; 500 over all less two sides of 20 are 460.
    assert case.part("shelf").length == 458
    left, right = (case.copy(f"{side} side").box for side in ("left", "right"))
    assert right.low[0] - left.high[0] == 460


def test_rows_of_5_stand_37_from_the_edges_and_32_apart(case: Model) -> None:
    rows = holes(case)
    assert {row[1] for row in rows} == set(mm(37, 203))
    assert {row[2:] for row in rows} == {mm(5, 10)}
    front = sorted(row[0] for row in rows if row[1] == 37)
    assert {two - one for one, two in pairwise(front)} == {Fraction(32)}
    # The lowest shelf lies on a hole: two below it, and two above the highest shelf or more.
    shelf = min(copy.box.low[2] for copy in case.part("shelf").copies)
    assert front[2] + Fraction(5, 2) == shelf
    highest = max(copy.box.low[2] for copy in case.part("shelf").copies)
    assert front[-3] + Fraction(5, 2) <= highest + 32


def test_four_pins_a_shelf_are_bought_and_what_is_off_the_grid_is_said(case: Model) -> None:
    (pins,) = (each for each in case.hardware if each.item == "shelf pin")
    assert (pins.count, pins.size, pins.purpose) == (8, "5 across", "shelves")
    told = [each.text for each in case.assumptions if "nearest holes" in each.text]
    assert told == ["the nearest holes lay shelf 2 4 lower than it is drawn"]
    again = changed(CASE, ("finish oil", "bought 8 shelf pins, 5 dia, for shelves\nfinish oil"))
    assert [each.count for each in model_of(again).hardware if "pin" in each.item] == [8]


def test_inch_pins_are_a_quarter_and_an_inch_apart() -> None:
    # M27: by the file's unit, not 5 (1/4").
    usual = usual_pins(Display("in", INCH / 16))
    assert (usual.diameter, usual.pitch) == (INCH / 4, INCH)


def test_holes_keep_clear_of_the_ends() -> None:
    sizes = usual_pins(Display("mm", Fraction(1)))
    assert min(heights([Fraction(40)], (Fraction(0), Fraction(200)), sizes)) >= 10


def test_pitch_and_diameter_as_written() -> None:
    model = model_of(changed(CASE, ("pins 5, 32 apart", "pins 6 dia 12 deep, 40 apart")))
    rows = sorted(holes(model))
    assert {row[2:] for row in rows} == {mm(6, 12)}
    front = [row[0] for row in rows if row[1] == 37]
    assert front[1] - front[0] == 40


@pytest.mark.parametrize(
    "change",
    [
        ("240 x 20, at left", "240 x 12, at left"),  # 6 deep only
        ("shelf pins 5, 32 apart", "shelf pins 5, 8 apart"),
        ("gap 1 at ends", "gap 0 at ends"),
        ("gap 1 at ends", "gap 5 at ends"),
    ],
)
def test_what_does_not_fit_is_told(change: tuple[str, str]) -> None:
    assert "shelf-pins-do-not-fit" in codes(checked(changed(CASE, change)))


def test_shelves_between_sides_need_no_opening() -> None:
    line = "2 shelves, across, flat, 230 x 20, in bay, gap 1 at ends, 0 from front"
    own = "2 shelves, flat, 230 x 20, between sides, shelf pins 5, gap 1 at ends, 0 from front"
    text = changed(CASE, (line, own), ("shelves onto sides: shelf pins 5, 32 apart\n", ""))
    model = model_of(text)
    assert model.part("shelf").length == 458
    assert len(holes(model)) > 10


@pytest.fixture(scope="module")
def plan() -> Played:
    return played(CASE)


def test_the_plan_passes_its_rehearsal(plan: Played) -> None:
    assert plan.said() == ""


def test_shelves_are_laid_in_last(plan: Played) -> None:
    rows = [op for step in plan.plan.steps for op in step.operations]
    (fit,) = (op for op in rows if op.kind == "fit")
    assert "Set four pins into holes at one height" in fit.sentence
    assert rows.index(fit) > max(at for at, op in enumerate(rows) if op.kind == "coat")
    (bore,) = (op for op in rows if "pin holes" in op.id)
    assert rows.index(bore) < min(at for at, op in enumerate(rows) if op.kind == "glue up")
    # Two sides, two rows of 14: a sentence a row, and one of the template.
    assert len(bore.details) == 3


def test_a_side_without_holes_carries_no_shelf(plan: Played) -> None:
    assert "finds no two pins" in plan.idle("side / pin holes").said()


def test_holes_that_no_shelf_asks_for_are_refused(plan: Played) -> None:
    joints = tuple(each for each in plan.goal.joints if each.kind != "shelf pins")
    bare = replace(plan, goal=replace(plan.goal, joints=joints))
    assert Reason.CUT in bare.reasons()
