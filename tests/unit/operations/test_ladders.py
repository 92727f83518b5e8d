"""How legs that lean alike are made with their stretcher: bored, glued first, driven in as one."""

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.pieces.reading import text_of
from tests.unit.operations.test_splayed import operation
from tests.unit.rehearsal.played import Played, played

from dryfit.plan.operation import Operation
from dryfit.rehearsal.fault import Reason


@pytest.fixture(scope="module")
def bench() -> Played:
    return played(text_of("stretchered_bench"))


def told(row: Operation) -> str:
    """All details of an operation as one text, figures in mm."""
    return "\n".join("".join(str(word) for word in detail) for detail in row.details)


def test_the_bench_is_sound(bench: Played) -> None:
    assert bench.faults() == ()


def test_the_holes_are_drilled_against_a_stop_along_the_slope(bench: Played) -> None:
    row = operation(bench, "leg / tenon holes")
    assert row.station == "drill press"
    (stop,) = (each for each in row.settings if each.axis == "stop")
    assert stop.far is not None
    # Worked in tests/unit/placing/test_ladders.py.
    assert isinstance(stop.value, Fraction)
    assert (float(stop.value), float(stop.far)) == pytest.approx((164.889, 176.889), abs=0.0015)
    assert {work.slopes for work in row.work} == {()}
    assert {work.hold.at_stop for work in row.work if work.hold} == {"R"}


def test_each_ladder_is_glued_before_it_is_driven_into_the_seat(bench: Played) -> None:
    glue = operation(bench, "bench / glue up").glue_up
    assert glue is not None
    assert glue.parts == ("seat", "ladder 1", "ladder 2")
    assert "pair of legs home" in told(operation(bench, "bench / glue up"))
    assert "drive the other leg onto it" in told(operation(bench, "ladder 1 / glue up"))


def test_shoulders_at_both_ends_are_told_from_r(bench: Played) -> None:
    rows = told(operation(bench, "stretcher / round tenons"))
    assert "all round, 24 from R" in rows
    assert "all round, 172 from R" in rows


def test_a_seat_put_onto_both_ladders_at_once_is_refused(bench: Played) -> None:
    def last(row: Operation) -> Operation:
        if row.id != "bench / glue up" or row.glue_up is None:
            return row
        return replace(row, glue_up=replace(row.glue_up, parts=("ladder 1", "ladder 2", "seat")))

    spoilt = bench.with_operations(last)
    assert spoilt.reasons() == {Reason.ORDER}
    assert "4 legs at once" in spoilt.said()


def test_mortises_are_chopped_between_two_stops_along_the_slope() -> None:
    railed = played(text_of("railed_bench"))
    assert railed.faults() == ()
    row = operation(railed, "leg / mortise for rail")
    assert row.station == "mortiser"
    (stop,) = (each for each in row.settings if each.axis == "stop")
    assert stop.far is not None
    assert isinstance(stop.value, Fraction)
    # Worked in tests/unit/placing/test_ladders.py.
    assert (float(stop.value), float(stop.far)) == pytest.approx((170.061, 206.061), abs=0.0015)
