"""A shelf is sanded before its housings: they are cut to its true thickness."""

import pytest
from tests.unit.operations.worked import boot_bench, listed, operation, piece, rule
from tests.unit.planning.planned import plan_of

PIECES = ("shelf_box", "tray", "housed_stretcher")


def test_a_shelf_is_sanded_between_length_and_housing() -> None:
    # TRADE C4.1: shelf fronts and faces sanded, then the dados.
    work, _ = listed(piece("shelf_box"))
    assert rule(work, "shelf / length", "shelf / sand faces 120")
    housing = rule(work, "shelf / sand faces 180", "side / housing for shelf")
    assert "rattles" in housing.reason
    copies = operation(work, "shelf / sand faces 120").work[0].copies
    assert copies == ("shelf 1", "shelf 2")


def test_a_sanded_shelf_is_not_sanded_again_before_the_glue() -> None:
    work, _ = listed(piece("shelf_box"))
    assert operation(work, "case / sand inside 120").work[0].copies == ("left side", "right side")


def test_both_faces_count() -> None:
    # Two shelves of 576 x 210: 2 x 2 x 0.12096 m2 x 6 min and 2 x 0.3 min.
    work, _ = listed(piece("shelf_box"))
    shelf = piece("shelf_box").part("shelf")
    area = 2 * 2 * shelf.length * shelf.width / 1_000_000
    exact = 10 * (6 * area + 2 * 3 / 10)
    assert abs(operation(work, "shelf / sand faces 120").tenths - exact) <= 0.5


@pytest.mark.parametrize("name", PIECES)
def test_in_the_plan_no_housing_is_fitted_before_its_shelf_is_sanded(name: str) -> None:
    work, _ = listed(piece(name))
    plan = plan_of(name)
    pairs = [row for row in work.rules if "rattles" in row.reason]
    assert pairs
    for row in pairs:
        assert plan.step_of(row.before).number < plan.step_of(row.after).number


def test_half_laps_wait_for_no_sanding() -> None:
    assert not [each for each in boot_bench().operations if "sand faces" in each.id]
