"""What is cut to a measurement waits until it is taken (TRADE C5, H65)."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.rehearsal.fault import Fault, Reason
from dryfit.rehearsal.goal import Goal
from dryfit.rehearsal.times.deeds import Deed, standing_for


def measurements(deeds: tuple[Deed, ...], goal: Goal) -> Iterator[Fault]:
    """Yield lengths and settings that come before the figure that they need is known."""
    waits = {
        (copy.name, each.size): each.measurement
        for part in goal.parts
        for each in part.waits
        for copy in part.copies
    }
    taken: set[str] = set()
    done: set[str] = set()
    for deed in deeds:
        if deed.kind == "measure":
            taken.add(deed.subject)
            yield from _not_there(deed, deeds, goal)
            yield from _unset(deed, deeds)
            point = deed.operation.measure
            early = [name for name in point.sets if name in done] if point is not None else []
            for name in early:
                yield _unmeasured(deed, name, deed.subject)
        needed = _needed(deed, waits)
        for name in sorted(needed - taken):
            yield _unmeasured(deed, deed.operation.id, name)
        yield from _nominal(deed, waits)
        done.add(deed.operation.id)


def _not_there(deed: Deed, deeds: tuple[Deed, ...], goal: Goal) -> Iterator[Fault]:
    """Yield a measurement that is taken before the parts beside the measured one are glued."""
    rows = [
        (part, each)
        for part in goal.parts
        for each in part.waits
        if each.measurement == deed.subject
    ]
    waiting = {copy.name for part, _ in rows for copy in part.copies}
    beside = {name for _, each in rows for name in each.between}
    # A front is measured for its opening, whatever it is screwed to in the end.
    beside = beside or {
        name
        for joint in goal.joints
        if waiting & {joint.guest, joint.host}
        for name in (joint.guest, joint.host)
        if name not in waiting
    }
    later = deeds[deeds.index(deed) + 1 :]
    for other in later:
        glued = standing_for(other.subject, goal)
        if other.kind == "glue up" and glued & beside and not glued & waiting:
            yield Fault(
                Reason.WAIT,
                f"{deed.subject} is measured before {other.operation.id}",
                f"{other.operation.id} before",
                deed.step.number,
                deed.operation.id,
            )
            return


def _unset(deed: Deed, deeds: tuple[Deed, ...]) -> Iterator[Fault]:
    """Yield what is set by a measurement that does not name it."""
    point = deed.operation.measure
    for other in deeds:
        by = {each.measure for each in other.operation.settings}
        if point is not None and deed.subject in by and other.operation.id not in point.sets:
            yield Fault(
                Reason.WAIT,
                f"{deed.subject} is taken, and nobody is told that it sets {other.operation.id}",
                f"{other.operation.id} named where it is measured",
                deed.step.number,
                deed.operation.id,
            )


_SET_BY = {"length": "stop", "width": "fence"}
"""The axis that gives a size its figure."""

_Waiting = dict[tuple[str, str], str]


def _nominal(deed: Deed, waits: _Waiting) -> Iterator[Fault]:
    """Yield a size that is sawn at a stop or fence that stands at the drawing's figure (C5.2)."""
    axis = _SET_BY.get(deed.kind)
    at = [each for each in deed.operation.settings if each.axis == axis]
    for name in sorted(_awaited(deed, waits)):
        if any(each.measure != name for each in at):
            yield Fault(
                Reason.WAIT,
                f"{deed.operation.id} is sawn at a {axis} that is not set by {name}",
                f"the {axis} set by {name}, as it is measured",
                deed.step.number,
                deed.operation.id,
            )


def _awaited(deed: Deed, waits: _Waiting) -> set[str]:
    keys = ((copy, deed.kind) for copy in deed.touched)
    return {waits[key] for key in keys if key in waits}


def _needed(deed: Deed, waits: _Waiting) -> set[str]:
    """Return the measurements that an operation is set by."""
    named = {each.measure for each in deed.operation.settings if each.measure is not None}
    return named | _awaited(deed, waits)


def _unmeasured(deed: Deed, operation: str, name: str) -> Fault:
    return Fault(
        Reason.WAIT,
        f"{operation} is done before {name} is measured",
        f"{name} taken from the piece before {operation}",
        deed.step.number,
        deed.operation.id,
    )
