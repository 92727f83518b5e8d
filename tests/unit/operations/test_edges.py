"""Edges taken away by a bit: when, with what, and that the rehearsal misses none (TRADE B0, K5)."""

from fractions import Fraction
from pathlib import Path

import pytest
from tests.pieces.reading import changed, checked
from tests.unit.operations.worked import listed, shipped_shop
from tests.unit.rehearsal.played import Played, played

from dryfit import workshop
from dryfit.operations.minutes import tenths
from dryfit.plan.operation import Operation
from dryfit.rehearsal.fault import Reason

FRAME = """piece Rounded frame
units mm
overall 420 wide, 22 deep, 700 high
timber walnut
2 stiles, upright, facing front, 60 x 22, at left and right
2 rails, across, on edge, 70 x 22, at bottom and top
rails crossing stiles: half lap, stiles show
rabbet in frame: back inner edges, 10 wide, 8 deep
round-over on frame: front inner edges, 4 radius
chamfer on frame: front outer edges, 3 wide
glue up frame: stiles, rails
finish hard wax oil, 2 coats, 8 h apart
"""
HAND_TOOLS = Path(__file__).resolve().parents[2] / "shops" / "hand_tools.toml"


@pytest.fixture(scope="module")
def frame() -> Played:
    return played(FRAME)


def found(plan: Played, name: str) -> tuple[int, Operation]:
    return next(
        (step.number, op) for step in plan.plan.steps for op in step.operations if op.id == name
    )


def said(row: Operation) -> str:
    return " ".join("".join(str(word) for word in detail) for detail in row.details)


def test_an_opening_is_rounded_when_its_frame_is_glued_and_level(frame: Played) -> None:
    order = ["frame / glue up", "frame / level", "stile / rabbet", "stile / round-over"]
    numbers = [found(frame, name)[0] for name in order]
    assert numbers == sorted(numbers)
    assert found(frame, "stile / round-over")[0] < found(frame, "frame / sand 120")[0]
    assert frame.faults() == ()


def test_the_step_says_the_size_and_that_corners_stay_round(frame: Played) -> None:
    _, row = found(frame, "stile / round-over")
    assert row.station == "bench"
    assert "radius 4" in said(row)
    assert "corners stay round" in said(row)
    assert row.cautions == ("hand-router",)
    assert "with the clock" in said(row)
    _, chamfer = found(frame, "rail / chamfer")
    assert "3 wide, 3 deep" in said(chamfer)


def test_an_outside_edge_runs_over_the_joints_the_other_way_round(frame: Played) -> None:
    # TRADE K5; a router that turns with the clock is led against it round the outside (practice).
    for part in ("stile", "rail"):
        _, chamfer = found(frame, f"{part} / chamfer")
        assert "outside" in said(chamfer)
        assert "against the clock" in said(chamfer)
        assert "opening" not in said(chamfer)


def test_half_a_minute_a_metre() -> None:
    # TRADE B0: PROFILE 0.5 min/m.  Stiles: two inner edges of 700 - 2 x 70 = 560: 0.56 min.
    model = checked(FRAME).model
    assert model is not None
    work, _ = listed(model)
    row = next(op for op in work.operations if op.id == "stile / round-over")
    assert row.tenths == tenths(Fraction(56, 10))
    assert shipped_shop().minutes["profile"] == {"per_metre": 5}


def test_without_a_router_the_edge_is_planed() -> None:
    found_in = checked(FRAME)
    with_hand_tools = workshop.check(found_in.source, HAND_TOOLS, {})
    plan, findings = workshop.plan(with_hand_tools, lambda _: None)
    assert plan is not None, findings
    row = next(op for step in plan.steps for op in step.operations if op.id == "stile / round-over")
    assert row.sentence.startswith("Plane the round-overs on both stiles")
    assert row.cautions == ()


def test_an_edge_that_is_forgotten_is_missed(frame: Played) -> None:
    spoiled = frame.without("stile / round-over")
    assert Reason.CUT in spoiled.reasons()
    assert "round-over" in spoiled.said()


def test_an_edge_is_shaped_after_the_joints_of_its_part() -> None:
    text = changed(FRAME, ("chamfer on frame: front outer", "chamfer on stiles: back outer"))
    made = played(text)
    assert found(made, "stile / end lap")[0] < found(made, "stile / chamfer")[0]
    assert found(made, "stile / chamfer")[0] <= found(made, "frame / dry fit")[0]


SHELF = """piece Hall shelf
units mm
overall 620 wide, 190 deep, 300 high
timber cherry
2 sides, upright, facing side, 190 x 16, at left and right
1 rail, across, facing front, 90 x 18, dowels into sides, up 40, at back
chamfer in rail: {edges}, 3
glue up shelf: sides, rail
finish oil, 2 coats
"""


def test_the_step_names_the_edge_and_speaks_of_ends_only_where_there_are_some() -> None:
    """The rail's true face looks to the back, and its lower edge is E."""
    one, both = (
        said(found(played(SHELF.format(edges=edges)), "rail / chamfer")[1])
        for edges in ("front bottom edge", "front bottom edge and front left edge")
    )
    assert "along the edge of B and E: 3 wide" in one
    assert "end grain" not in one
    assert "Across end grain first" in both
