"""Ways of cutting are weighed with all the settings that they share with other work."""

from collections.abc import Mapping
from dataclasses import replace

import pytest
from tests.pieces.reading import model_of_piece
from tests.unit.operations.worked import boot_bench, piece, shipped_shop

from dryfit.operations import work_list
from dryfit.placing.model import Model
from dryfit.plan.operation import Alternative, WorkList, ways_of
from dryfit.planning.ways import best_ways, priced, taken_by

ACROSS = "laps, housings and tenons"
ENDS = "ends that slots are measured from"


def made(model: Model, ways: Mapping[str, str]) -> WorkList:
    work, findings = work_list(model, shipped_shop(), ways)
    assert work is not None, findings
    return work


def best(name: str) -> tuple[WorkList, WorkList]:
    """The work list by the rules, and the one with the ways that take the least."""
    model = model_of_piece(name)
    rule = made(model, {})
    return rule, best_ways(rule, lambda ways: made(model, ways), shipped_shop())


def takes(work: WorkList) -> int:
    found = taken_by(work, shipped_shop())
    assert found is not None
    return found.hands_on


@pytest.mark.parametrize(
    ("name", "group", "rule", "taken"),
    [
        # The dado set saves 12 min of passes; 8 min for fitting it, as the blade does not have to
        # go back in.
        ("board_end_lid", ACROSS, "single blade in passes", "dado set"),
        ("divided_box", ACROSS, "single blade in passes", "router table"),
        # Housings at both ends of a side: one stop, 1.5 min, when the side is turned round.
        ("tray", ENDS, "R for all", "the nearer one, the part turned end for end"),
    ],
)
def test_a_way_is_taken_that_takes_less_with_all_that_it_shares(
    name: str, group: str, rule: str, taken: str
) -> None:
    before, after = best(name)
    assert ways_of(before.alternatives)[group] == rule
    assert ways_of(after.alternatives)[group] == taken
    assert takes(after) < takes(before)


def test_a_slot_from_the_nearer_end_shares_the_stop_of_its_like() -> None:
    before, after = best("tray")
    assert len(_stops(after)) == len(_stops(before)) - 1


def _stops(work: WorkList) -> set[str]:
    return {each.token() for op in work.operations for each in op.settings if each.axis == "stop"}


def test_the_rule_stays_where_it_is_as_good() -> None:
    work, kept = best("finger_box")
    assert kept.operations == work.operations


def test_only_what_the_rule_leaves_open_is_made_anew() -> None:
    work = boot_bench()
    closed = tuple(replace(row, weigh=False) for row in work.alternatives)

    def never(ways: Mapping[str, str]) -> WorkList:
        raise AssertionError(ways)

    assert best_ways(replace(work, alternatives=closed), never, shipped_shop()).operations == (
        work.operations
    )


def test_every_other_way_gets_its_price_and_is_the_list_that_it_names() -> None:
    work = boot_bench()
    rows = priced(work.alternatives, lambda ways: made(piece(), ways), shipped_shop())
    dado, blade = (row for row in rows if row.group == ACROSS)
    assert dado.takes is not None
    assert blade.takes is not None
    assert dado.takes.hands_on == takes(work)
    # Counted from the operations of the two lists.
    assert blade.takes.work - dado.takes.work == _work(made(piece(), {ACROSS: blade.method})) - (
        _work(work)
    )
    assert blade.takes.setup < dado.takes.setup


def _work(work: WorkList) -> int:
    return sum(op.tenths for op in work.operations)


def test_a_way_that_the_piece_does_not_have_is_passed_over() -> None:
    assert made(piece(), {ACROSS: "by laser"}).operations == boot_bench().operations


def test_a_way_taken_by_the_order_says_so() -> None:
    _, after = best("divided_box")
    (taken,) = (row for row in after.alternatives if row.group == ACROSS and row.chosen)
    assert isinstance(taken, Alternative)
    assert taken.reason == "with all settings that it shares counted, it takes the least"
