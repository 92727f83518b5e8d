"""What is cut to a measurement waits until it is taken (TRADE C5, H65)."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.rehearsal.fault import Fault, Reason
from dryfit.rehearsal.goal import Goal
from dryfit.rehearsal.times.deeds import Deed, standing_for


def measurements(deeds: tuple[Deed, ...], goal: Goal) -> Iterator[Fault]:
    """Yield lengths and settings that come before the figure that they need is known."""
    waits = {copy.name: part.waits for part in goal.parts if part.waits for copy in part.copies}
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
    waiting = {c.name for part in goal.parts if part.waits == deed.subject for c in part.copies}
    beside = {
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


def _nominal(deed: Deed, waits: dict[str, str]) -> Iterator[Fault]:
    """Yield a length that is sawn at a stop which stands at the figure of the drawing (C5.2)."""
    stops = [each for each in deed.operation.settings if each.axis == "stop"]
    if deed.kind != "length":
        return
    for name in sorted({waits[copy] for copy in deed.touched if copy in waits}):
        if any(each.measure != name for each in stops):
            yield Fault(
                Reason.WAIT,
                f"{deed.operation.id} is sawn at a stop that is not set by {name}",
                f"the stop set by {name}, as it is measured",
                deed.step.number,
                deed.operation.id,
            )


def _needed(deed: Deed, waits: dict[str, str]) -> set[str]:
    """Return the measurements that an operation is set by."""
    named = {each.measure for each in deed.operation.settings if each.measure is not None}
    if deed.kind == "length":
        named |= {waits[copy] for copy in deed.touched if copy in waits}
    return named


def _unmeasured(deed: Deed, operation: str, name: str) -> Fault:
    return Fault(
        Reason.WAIT,
        f"{operation} is done before {name} is measured",
        f"{name} taken from the piece before {operation}",
        deed.step.number,
        deed.operation.id,
    )
