"""What is cut to a measurement waits until it is taken (TRADE C5, H65)."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.rehearsal.fault import Fault, Reason
from dryfit.rehearsal.goal import Goal
from dryfit.rehearsal.times.deeds import Deed


def measurements(deeds: tuple[Deed, ...], goal: Goal) -> Iterator[Fault]:
    """Yield lengths and settings that come before the figure that they need is known."""
    waits = {copy.name: part.waits for part in goal.parts if part.waits for copy in part.copies}
    taken: set[str] = set()
    done: set[str] = set()
    for deed in deeds:
        if deed.kind == "measure":
            taken.add(deed.subject)
            point = deed.operation.measure
            early = [name for name in point.sets if name in done] if point is not None else []
            for name in early:
                yield _unmeasured(deed, name, deed.subject)
        needed = _needed(deed, waits)
        for name in sorted(needed - taken):
            yield _unmeasured(deed, deed.operation.id, name)
        done.add(deed.operation.id)


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
