"""Equal work on equal parts is one visit, for however many cases (TRADE 0.9, E3, J12, H69)."""

import pytest
from tests.unit.rehearsal.played import Played, played

from dryfit.plan.operation import Operation
from dryfit.plan.plan import Step

PATTERN = """piece Three cases
units mm
overall 1500 wide, 280 deep, 700 high
timber cherry
pattern open case with width, depth, height, board = 18 mm
2 sides, upright, facing side, depth x board, at left and right
3 shelves, flat, depth x board, into sides, housing 6 mm, up 0, 341, 682
glue up carcase: sides, shelves
end
"""
ON_ONE_LINE = "3 cases, as open case, 500 wide, 280 deep, 700 high, spread across, no gap at ends\n"
ON_THREE = (
    "1 left case, as open case, 500 wide, 280 deep, 700 high, at left\n"
    "1 middle case, as open case, 500 wide, 280 deep, 700 high, 500 from left\n"
    "1 right case, as open case, 500 wide, 280 deep, 700 high, at right\n"
)
FINISH = "finish oil varnish, 2 coats, 24 h apart\n"


@pytest.fixture(scope="module", params=[ON_ONE_LINE, ON_THREE], ids=["one line", "three lines"])
def cases(request: pytest.FixtureRequest) -> Played:
    return played(f"{PATTERN}{request.param}{FINISH}")


def steps_with(plan: Played, kind: str) -> list[tuple[Step, list[Operation]]]:
    """The steps in which work of a kind is done, with those operations."""
    rows = [(step, [op for op in step.operations if op.kind == kind]) for step in plan.plan.steps]
    return [(step, found) for step, found in rows if found]


def features(rows: list[tuple[Step, list[Operation]]]) -> int:
    """How many cuts are made: copies times features of each row of work."""
    return sum(
        len(work.copies) * len(work.features)
        for _, found in rows
        for op in found
        for work in op.work
    )


def test_eighteen_equal_housings_are_one_visit_with_one_setting_of_the_height(
    cases: Played,
) -> None:
    # Six sides with three housings each, at 0, 341 and 682 of 700: 18 from either end, and 341.
    rows = steps_with(cases, "housing")
    assert features(rows) == 18
    assert len({step.visit for step, _ in rows}) == 1
    assert len(rows) == 2
    for axis in ("cutter", "height", "accessory"):
        values = {dict(step.settings)[axis] for step, _ in rows}
        assert len(values) == 1, axis
    assert sum("height" in step.changed for step, _ in rows) == 1


def test_each_stop_is_set_once_and_test_cuts_are_made_once(cases: Played) -> None:
    rows = steps_with(cases, "housing")
    stops = [setting.token() for step, _ in rows if (setting := dict(step.settings)["stop"])]
    assert len(stops) == len(set(stops)) == 2
    assert [step.tests > 0 for step, _ in rows] == [True, False]


def test_nine_shelves_are_cut_to_length_at_one_stop(cases: Played) -> None:
    rows = [
        (step, [op for op in found if "shelf" in op.part])
        for step, found in steps_with(cases, "length")
    ]
    rows = [(step, found) for step, found in rows if found]
    assert len({step.number for step, _ in rows}) == 1
    assert sum(len(work.copies) for _, found in rows for op in found for work in op.work) == 9


def test_cases_on_one_line_are_one_row_of_the_list() -> None:
    plan = played(f"{PATTERN}{ON_ONE_LINE}{FINISH}")
    names = {op.part for step in plan.plan.steps for op in step.operations if op.kind == "housing"}
    assert names == {"case > side"}
