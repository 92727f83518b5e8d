"""Boards that keep an edge as it grew: by TRADE A2.6, worked by hand and held against the JSON."""

from dataclasses import replace
from pathlib import Path

import pytest
from tests.pieces.reading import text_of, without_boards
from tests.property.plan_oracle import faults
from tests.property.plan_oracle.documents import documents, shop_tables
from tests.property.plan_oracle.reading import Json, Row, rows_of
from tests.unit.operations.worked import said
from tests.unit.rehearsal.played import played

from dryfit.plan.operation import Operation
from dryfit.rehearsal.fault import Reason

HAND_TOOLS = Path(__file__).parents[2] / "shops" / "hand_tools.toml"
BENCH = without_boards(text_of("waney_bench"))
BOTH = """piece Board
units mm
overall 900 wide, 240 deep, 30 high
timber elm
1 board, across, flat, 30 thick, waney at front and back
finish hard wax oil, 2 coats, 8 h apart
"""


ONE = BOTH.replace("at front and back", "at front")


def steps_of(text: str, shop: Path | None = None) -> Json:
    """The plan as a document, found sound by the oracle."""
    found, errors = documents(text, shop)
    assert found is not None, errors
    steps, parts = found
    assert faults(steps, parts, shop_tables(shop)) == []
    return steps


def all_of(text: str) -> list[Operation]:
    """All operations of a plan."""
    return [op for step in played(text).plan.steps for op in step.operations]


def row_of(steps: Json, name: str) -> Row:
    """One operation of the plan."""
    return next(row for row in rows_of(steps) if row.work["operation"] == name)


def deeds_on(steps: Json, part: str) -> list[str]:
    """What is done to a part until it is cut to length."""
    names = [row.work["operation"] for row in rows_of(steps)]
    own = [name.partition(" / ")[2] for name in names if name.startswith(f"{part} / ")]
    return own[: own.index("length") + 1]


def test_one_waney_edge_is_peeled_and_the_other_jointed() -> None:
    steps = steps_of(BENCH)
    order = ["rough length", "rip", "bark", "face", "edge", "thickness", "length"]
    assert deeds_on(steps, "seat") == order
    # A2.6: a raw edge takes 3 mm of the width, the waney one and the one that is ripped: 290 + 6.
    # 1000 long, and the planer bites 60 off each end: 1120.
    rough = next(op.rough for op in all_of(BENCH) if op.id == "seat / rough length")
    assert rough is not None
    assert [float(size) for size in rough[:2]] == [1120, 296]
    # 4 min a metre for the bark; 0.4 + 0.6 x 1.12 for the edge once, and it is jointed twice.
    assert row_of(steps, "seat / bark").work["minutes"] == 4.5
    assert row_of(steps, "seat / edge").work["minutes"] == 2.2
    assert "fence" not in (row_of(steps, "seat / rip").work.get("settings") or {})


def test_two_waney_edges_leave_no_edge_to_saw() -> None:
    steps = steps_of(BOTH)
    order = ["rough length", "bark", "face", "thickness", "length"]
    assert deeds_on(steps, "board") == order
    # No fence serves: it is cut to length by hand, square to its middle.
    assert row_of(steps, "board / length").step["station"] == "bench"


@pytest.mark.parametrize("words", ["at front", "at back"])
def test_no_straight_edge_is_asked_of_the_waney_one(words: str) -> None:
    steps = steps_of(BOTH.replace("at front and back", words))
    hold = row_of(steps, "board / length").work["hold"]
    assert hold["against_fence"] == "E"


def test_the_judge_refuses_what_spoils_the_edge() -> None:
    bench = played(BENCH)
    assert bench.faults() == ()
    assert "bark and grit" in bench.without("seat / bark").said()
    # By hand no knives turn, but the bark is still on.
    assert Reason.SURFACE in played(ONE, HAND_TOOLS).without("board / bark").reasons()
    # Without the edge that is jointed to it, nothing gives it its width.
    assert Reason.SIZE in bench.without("seat / edge").reasons()


SLAB = BOTH.replace("240 deep", "380 deep").replace("at front and back", "at front")


@pytest.mark.parametrize("edges", ["waney both edges", "waney one edge"])
def test_a_wide_slab_is_not_turned_over_with_bark_at_the_fence(edges: str) -> None:
    """The shipped mitre saw cuts 300 wide: turned over, a slab needs both its edges straight."""
    of = played(SLAB + f"have 1 slab of elm, 1400 x 430 to 400 x 45, rough, {edges}\n")
    assert of.faults() == ()
    rows = [op for step in of.plan.steps for op in step.operations if op.board_cuts]
    across = [op for op in rows if op.kind == "rough length"]
    assert {op.station for op in across} == {"bench"}
    assert all("saw-in-hand" in op.cautions for op in across)
    told = [said(detail) for op in across for detail in op.details]
    assert any("no straight edge for the fence" in each for each in told)
    turned = of.with_operations(
        lambda op: replace(op, station="mitre saw") if op.kind == "rough length" else op
    )
    assert "with bark at its fence" in turned.said()
