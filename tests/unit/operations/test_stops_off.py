"""What runs from end to end at the router table finds no stop in its way, whatever came before."""

from functools import cache

from tests.pieces.reading import model_of
from tests.unit.operations.worked import listed, operation, piece, setting, shipped_shop

from dryfit.placing.model import Model
from dryfit.plan.plan import Plan
from dryfit.planning import make_plan

# The lock rail is as long as the rails; between tenons as thick as the stiles' grooves are deep,
# its lower groove stops short of both ends, its upper one and those of the rails run out.
TWO_PANELS = """
piece Door
units mm
overall 420 wide, 20 deep, 640 high
timber oak
2 stiles, upright, facing front, 50 x 20, at left and right
2 rails, across, on edge, 50 x 20, tenon 30 long 6 thick into stiles, at bottom and top
1 lock rail, across, on edge, 50 x 20, tenon 30 long 6 thick into stiles, up 280
1 upper panel, upright, facing front, 8 thick, inside stiles and lock rail and top rail
1 lower panel, upright, facing front, 8 thick, inside stiles and bottom rail and lock rail
glue up door: stiles, rails, lock rail, upper panel, lower panel
finish oil varnish
"""


@cache
def two_panels() -> Model:
    """A door with a lock rail and a panel above and below it."""
    return model_of(TWO_PANELS)


@cache
def plan() -> Plan:
    """Its plan in the shipped shop."""
    made, findings = make_plan(two_panels(), shipped_shop(), listed(two_panels())[0])
    assert made is not None, findings
    return made


def test_a_groove_from_end_to_end_asks_for_the_stops_to_be_off() -> None:
    work, _ = listed(piece("panel_door"))
    through = operation(work, "rail / groove for panel")
    assert setting(through, "stop").value == "off"
    assert setting(operation(work, "stile / groove for panel"), "stop").to == "both"


def test_where_no_groove_is_stopped_nobody_speaks_of_stops() -> None:
    # Mortised rails alone: the mortiser has pairs of stops, the router table none.
    work, _ = listed(piece())
    assert not any(op.station == "router table" for op in work.operations)
    saw = (op for op in work.operations if op.station == "table saw")
    assert all(each.value != "off" for op in saw for each in op.settings)


def test_no_step_sets_a_pair_of_stops_for_work_that_runs_past_them() -> None:
    for step in plan().steps:
        stop = dict(step.settings).get("stop")
        held = {work.hold for op in step.operations for work in op.work if work.hold is not None}
        if step.station == "router table":
            ends = {each.at_stop for each in held}
            assert stop is not None
            assert ends == {None} if stop.value == "off" else None not in ends, step.number


def test_rails_and_lock_rail_of_one_length_are_cut_to_it_before_their_grooves() -> None:
    # The lock rail's stopped groove needs its ends; the rails are cut to length in one visit with
    # it, and grooved in one visit with it: so all of them have their length first.
    order = [op.id for step in plan().steps for op in step.operations]
    stopped = "lock rail / groove for lower panel"
    through = "rail / groove for lower panel"
    assert {stopped, through} <= set(order)
    for name in (stopped, through):
        assert order.index("lock rail / length") < order.index(name)
        assert order.index("rail / length") < order.index(name)
