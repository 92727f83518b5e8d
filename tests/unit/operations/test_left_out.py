"""No cut of the notes is dropped: it has a step, or the plan says that it has none."""

from __future__ import annotations

import pytest
from tests.pieces.reading import checked

from dryfit import workshop
from dryfit.diagnostics import Findings, Severity
from dryfit.plan.plan import Plan

TABLE = """piece Table
units mm
overall 600 wide, 400 deep, 480 high
timber oak
4 legs, upright, 45 x 45, at corners
2 long aprons, across, on edge, 90 x 20, at front and back,
    tenon 14 long 8 thick 40 wide, 20 from bottom, into legs
2 short aprons, front to back, on edge, 90 x 20, at left and right,
    tenon 14 long 8 thick 40 wide, 20 from bottom, into legs
glue up base: legs, long aprons, short aprons
finish hard wax oil, 2 coats, 8 h apart
"""


def planned(line: str) -> tuple[Plan, Findings]:
    found = checked(f"{TABLE}{line}\n")
    plan, findings = workshop.plan(found, lambda _: None)
    assert plan is not None, [each.message for each in findings]
    return plan, findings


def steps(plan: Plan) -> dict[str, str]:
    """The station of each operation, by id."""
    return {op.id: step.station for step in plan.steps for op in step.operations}


@pytest.mark.parametrize(
    ("line", "message", "moment"),
    [
        ("taper in legs: inside faces, from 100 below the top to the bottom end, 45 to 28",
         "the plan has no step for the taper on all 4 legs",
         "after you cut the joints of the legs, and before the dry fit of base"),
        ("curve in long aprons: bottom edge, 20 deep, from 60 from left to 60 from right",
         "the plan has no step for the curve on both long aprons",
         "after you cut the joints of the long aprons, and before the dry fit of base"),
    ],
)  # fmt: skip
def test_a_cut_without_a_step_is_told_with_its_moment(line: str, message: str, moment: str) -> None:
    plan, findings = planned(line)
    (finding,) = (each for each in findings if each.code == "cut-not-in-plan")
    assert finding.severity is Severity.WARNING
    assert finding.message.startswith(message)
    assert finding.hints[0].message.startswith(moment)
    word = line.partition(" ")[0]
    assert not [name for name in steps(plan) if word in name]


@pytest.mark.parametrize(
    ("line", "operation", "station"),
    [
        ("groove in long aprons: inside, 6 wide, 6 deep, 8 from top, through",
         "long apron / groove / 1", "table saw"),
        ("groove in long aprons: inside, 6 wide, 6 deep, 8 from top, stopped 60 from left",
         "long apron / groove", "router table"),
        ("groove in legs: outside, 20 wide, 6 deep, 30 from bottom, through",
         "leg / groove", "table saw"),
        ("rabbet in long aprons: bottom inside edge, 8 wide, 6 deep, through",
         "long apron / rabbet / 1", "table saw"),
        ("rabbet in legs: bottom outside end, 20 wide, 6 deep, through",
         "leg / rabbet", "table saw"),
        ("holes in long aprons: inside, 8 dia, 12 deep, 20 from bottom, 200 from left",
         "long apron / hole", "drill press"),
        ("notch in long aprons: bottom edge, 60 wide, 20 deep, 200 from left",
         "long apron / notch", "bench"),
        ("chamfer on long aprons: bottom edges, 2", "long apron / chamfer", "bench"),
        ("round-over on base: top outer edges, 4, after glue up base",
         "long apron / round-over", "bench"),
        ("slot in long aprons: outside, 20 wide, 80 long, through, 20 from bottom",
         "long apron / slot", "bench"),
    ],
)  # fmt: skip
def test_a_cut_with_square_sides_is_in_the_plan(line: str, operation: str, station: str) -> None:
    plan, findings = planned(line)
    made = {at for name, at in steps(plan).items() if name.startswith(operation)}
    assert made == {station}, sorted(steps(plan))
    assert [each for each in findings if each.code == "cut-not-in-plan"] == []
