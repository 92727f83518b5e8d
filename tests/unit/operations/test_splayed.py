"""How a splayed stool is made: lengths, slopes, order and feet; and upright legs in round holes."""

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.pieces.reading import changed
from tests.unit.placing.test_splayed import SPLAY, STOOL
from tests.unit.rehearsal.played import Played, played

from dryfit.plan.operation import Operation
from dryfit.rehearsal.fault import Reason


@pytest.fixture(scope="module")
def stool() -> Played:
    return played(STOOL)


def operation(plan: Played, name: str) -> Operation:
    """The operation of that id."""
    return next(op for step in plan.plan.steps for op in step.operations if op.id == name)


def order(plan: Played) -> list[str]:
    """The ids of all operations as they are done."""
    return [op.id for step in plan.plan.steps for op in step.operations]


def test_a_splayed_stool_is_sound(stool: Played) -> None:
    assert stool.faults() == ()


def test_legs_are_sawn_to_their_slope(stool: Played) -> None:
    stop = next(s for s in operation(stool, "leg / length").settings if s.axis == "stop")
    assert stop.value == 468


def test_shoulders_and_holes_are_led_by_their_slopes(stool: Played) -> None:
    eighth, twelfth = Fraction(1, 8), Fraction(1, 12)
    tenons = {work.slopes for work in operation(stool, "leg / round tenons").work}
    assert tenons == {(("E", eighth),), (("F", twelfth),)}
    holes = [set(work.slopes) for work in operation(stool, "seat / tenon holes").work]
    assert len(holes) == 4
    assert {("R", eighth), ("E", twelfth)} in holes


def test_each_leg_is_driven_by_itself_without_clamps(stool: Played) -> None:
    glue = operation(stool, "stool / glue up").glue_up
    assert glue is not None
    assert glue.parts[0] == "seat"
    assert (glue.clamps, glue.diagonals) == ((), ())


def test_feet_are_levelled_over_a_block_when_the_glue_is_hard(stool: Played) -> None:
    done = order(stool)
    assert done.index("stool / glue up") < done.index("stool / feet") < done.index("stool / level")
    (work,) = operation(stool, "stool / feet").work
    assert [each.spacer for each in work.passes] == [11]
    assert len(work.copies) == 4


def test_a_hole_bored_square_is_refused_and_says_what_it_needs(stool: Played) -> None:
    spoilt = stool.with_operations(
        lambda op: (
            replace(op, work=tuple(replace(work, slopes=()) for work in op.work))
            if op.id == "seat / tenon holes"
            else op
        )
    )
    assert spoilt.reasons() == {Reason.CUT}
    assert "is cut square to its part" in spoilt.said()
    assert "0.125 a mm toward R" in spoilt.said()


def test_upright_legs_go_into_holes_bored_square() -> None:
    upright = played(changed(STOOL, (f", {SPLAY}", ""), ("tenon 25", "tenon 12")))
    assert upright.faults() == ()
    holes = [name for name in order(upright) if name.startswith("seat / tenon holes")]
    assert {operation(upright, name).station for name in holes} == {"drill press"}
    assert "stool / feet" not in order(upright)
