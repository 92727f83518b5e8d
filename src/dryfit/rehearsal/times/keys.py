"""Keys come when the mitres hold, and are trimmed when they hold themselves (TRADE B12.1, C4.6)."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.rehearsal.fault import Fault, Reason
from dryfit.rehearsal.goal import Goal
from dryfit.rehearsal.times.deeds import Deed

HOUR = 600
HOLDS, DRY = 4 * HOUR, 2 * HOUR
AFTERWARDS = frozenset({"sand", "ease edges", "coat"})


def keys(deeds: tuple[Deed, ...], goal: Goal) -> Iterator[Fault]:
    """Yield slots, keys and trimming of a glued frame that come too soon, or never."""
    for name in dict.fromkeys(deed.subject for deed in deeds if deed.kind == "key slot"):
        own = [deed for deed in deeds if deed.subject == name]
        slots, put, trims = (
            [deed for deed in own if deed.kind == kind] for kind in ("key slot", "keys", "trim")
        )
        if len(put) != 1 or len(trims) != 1:
            yield Fault(Reason.COUNT, f"{name}: keys are glued {len(put)} and trimmed "
                        f"{len(trims)} times", "each once")  # fmt: skip
            continue
        glued = [deed for deed in own if deed.kind == "glue up"]
        for slot in slots:
            yield from _too_soon(glued, slot, HOLDS)
            yield from _too_soon([slot], put[0], 0)
        yield from _too_soon(put, trims[0], DRY)
        for deed in deeds:
            inside = deed.touched & trims[0].touched
            if deed.kind in AFTERWARDS and inside and deed.begins >= put[0].begins:
                yield from _too_soon(trims, deed, 0)
    slotted = {deed.subject for deed in deeds if deed.kind == "key slot"}
    yield from _without(goal, slotted)


def _too_soon(before: list[Deed], deed: Deed, lag: int) -> Iterator[Fault]:
    for first in before:
        if deed.begins < first.ends + lag:
            yield Fault(
                Reason.WAIT,
                f"{deed.operation.id} begins too soon after {first.operation.id}",
                f"{lag // HOUR} h between them" if lag else "the one after the other",
                deed.step.number,
                deed.operation.id,
            )


def _without(goal: Goal, slotted: set[str]) -> Iterator[Fault]:
    """Yield glued frames whose parts are marked with slots that are never cut."""
    marked = {
        mark.after
        for part in goal.parts
        for mark in part.marks
        if mark.after is not None and mark.id.startswith("key slot")
    }
    for assembly in goal.assemblies:
        if {assembly.name, assembly.stage} & marked and assembly.name not in slotted:
            yield Fault(Reason.CUT, f"{assembly.name} gets no keys", "the slots that are marked")
