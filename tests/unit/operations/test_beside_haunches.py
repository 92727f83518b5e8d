"""What is sawn beside a haunch: from its own end, and none of it left standing."""

from functools import cache

from tests.pieces.reading import model_of
from tests.unit.operations.worked import listed, operation, rule, setting

from dryfit.plan.operation import WorkList
from dryfit.plan.setting import Pass

STOOL = """
piece Stool base
units mm
overall 420 wide, 300 deep, 240 high
timber walnut
4 legs, upright, 44 x 44, at corners
2 long rails, across, on edge, {wide} x 20, {tenon}, set back 2
2 short rails, front to back, on edge, {wide} x 20, {tenon}, set back 2
glue up 2 leg pairs: 2 legs, 1 short rail
glue up base: leg pairs, long rails
finish wax
"""


@cache
def stool(haunch: str, wide: str = "64") -> WorkList:
    """The work list of a stool whose rails, so wide, have haunches of that length."""
    tenon = f"tenon 21 long 6 thick, haunch {haunch} long 6 deep into legs"
    return listed(model_of(STOOL.format(tenon=tenon, wide=wide)))[0]


def shoulders(work: WorkList, feature: str) -> str:
    """The operation that cuts a feature of the long rails."""
    return next(
        op.id
        for op in work.operations
        for row in op.work
        if row.part == "long rail" and feature in row.features
    )


def test_both_ends_are_measured_from_themselves_and_share_a_stop() -> None:
    work = stool("9.5")
    name = shoulders(work, "tenon shoulder on E2 for leg 1")
    assert shoulders(work, "tenon shoulder on E2 for leg 2") == name
    # The haunch ends at the shoulder, 21 from either end: the dado's far side stands there.
    assert setting(operation(work, name), "stop").far == 21
    held = {row.hold.at_stop for row in operation(work, name).work if row.hold is not None}
    assert held == {"R", "R2"}


def test_a_strip_as_wide_as_the_dado_set_takes_one_pass() -> None:
    work = stool("9.5")
    strip = operation(work, shoulders(work, "tenon shoulder on E2 for leg 1"))
    assert {row.passes for row in strip.work} == {(Pass(),)}


def test_a_strip_a_hair_wider_than_the_dado_set_is_cleared_to_the_end() -> None:
    # The set is built in steps of 0.1: 9.5 for a strip of 9.525, and 0.025 would stand.  From the
    # end to the shoulder are 21: 1 + (21 - 9.5) / (9.5 - 0.5) = 2.3, so 3 passes (TRADE 0.6).
    work = stool("9.525")
    strip = operation(work, shoulders(work, "tenon shoulder on E2 for leg 1"))
    assert {row.passes for row in strip.work} == {(Pass(), Pass(between=True), Pass(between=True))}
    end = shoulders(work, "tenon shoulder at R on E2")
    assert "cut deeper already" in rule(work, end, strip.id).reason


def test_an_end_that_no_saw_reaches_is_cut_by_hand_before_the_strip_runs_out_into_it() -> None:
    # Shipped shop: the dado set rises 45, the sled's floor is 12 thick, 33 are left.  Of a rail 70
    # wide the end above the tenon goes 35 deep, beside the haunch 6 less.
    work = stool("9.525", "70")
    strip = operation(work, shoulders(work, "tenon shoulder on E2 for leg 1"))
    end = operation(work, shoulders(work, "tenon shoulder at R on E2"))
    assert (end.station, strip.station) == ("bench", "table saw")
    assert "cut deeper already" in rule(work, end.id, strip.id).reason
    assert not any((row.before, row.after) == (strip.id, end.id) for row in work.rules)
