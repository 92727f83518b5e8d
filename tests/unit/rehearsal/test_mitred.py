"""The rehearsal looks at mitres by itself: angle, stop, which side stays long, both ends cut."""

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction

import pytest
from tests.pieces.reading import text_of
from tests.unit.rehearsal.played import Played, played

from dryfit.plan.operation import Operation
from dryfit.plan.setting import Hold, Setting
from dryfit.rehearsal.fault import Reason

FRAME = text_of("mitred_frame")
BOX = text_of("mitred_box")


@pytest.fixture(scope="module")
def frame() -> Played:
    return played(FRAME)


@pytest.fixture(scope="module")
def box() -> Played:
    return played(BOX)


def reset(plan: Played, word: str, axis: str, value: int) -> Played:
    """The plan with one axis of the named steps at another value."""
    steps = []
    for step in plan.plan.steps:
        if word not in step.id:
            steps.append(step)
            continue
        settings = tuple(
            (name, _at(setting, value) if name == axis else setting)
            for name, setting in step.settings
        )
        operations = tuple(
            replace(op, settings=tuple(_at(s, value) if s.axis == axis else s for s in op.settings))
            for op in step.operations
        )
        steps.append(replace(step, settings=settings, operations=operations))
    return replace(plan, plan=replace(plan.plan, steps=tuple(steps)))


def _at(setting: Setting | None, value: int) -> Setting:
    assert setting is not None
    return replace(setting, value=Fraction(value))


def turned(change: Callable[[Hold], Hold]) -> Callable[[Operation], Operation]:
    """An operation with mitres held otherwise."""

    def otherwise(operation: Operation) -> Operation:
        if operation.kind != "mitre":
            return operation
        work = tuple(
            replace(row, hold=change(row.hold)) if row.hold else row for row in operation.work
        )
        return replace(operation, work=work)

    return otherwise


def test_sound_plans_pass(frame: Played, box: Played) -> None:
    assert frame.faults() == ()
    assert box.faults() == ()


@pytest.mark.parametrize("part", ["rail / mitre", "stile / mitre"])
def test_a_mitre_that_is_not_cut_leaves_the_corner_open(frame: Played, part: str) -> None:
    spoiled = frame.without(part)
    assert Reason.FIT in spoiled.reasons()
    assert "does not close" in spoiled.said()


def test_another_angle_does_not_make_a_square_corner(frame: Played, box: Played) -> None:
    assert "45 degrees" in reset(frame, "/ mitre", "angle", 44).said()
    assert "45 degrees" in reset(box, "/ mitre", "tilt", 46).said()


def test_a_stop_short_of_the_length_is_told(frame: Played) -> None:
    spoiled = reset(frame, "rail / mitre", "stop", 418)
    assert Reason.SIZE in spoiled.reasons()
    assert "418" in spoiled.said()


def test_the_wrong_edge_at_the_fence_leaves_the_inner_side_long(frame: Played) -> None:
    """Turned edge for edge and face for face the part lies as before, but for what stays long."""
    other = {"E": "E2", "E2": "E", "F": "B", "B": "F"}
    spoiled = frame.with_operations(
        turned(lambda h: Hold(other[h.down or ""], other[h.against_fence or ""], h.at_stop))
    )
    assert Reason.FIT in spoiled.reasons()
    assert Reason.HOLD not in spoiled.reasons()


def test_a_mirrored_hold_is_told(frame: Played) -> None:
    other = {"F": "B", "B": "F"}
    spoiled = frame.with_operations(
        turned(lambda h: Hold(other[h.down or ""], h.against_fence, h.at_stop))
    )
    assert Reason.HOLD in spoiled.reasons()


def test_the_wrong_face_down_at_a_tilted_blade(box: Played) -> None:
    other = {"E": "E2", "E2": "E", "F": "B", "B": "F"}
    spoiled = box.with_operations(
        turned(lambda h: Hold(other[h.down or ""], other[h.against_fence or ""], h.at_stop))
    )
    assert Reason.FIT in spoiled.reasons()
