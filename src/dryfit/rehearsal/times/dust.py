"""In a one-room shop no dust is made while a coat is wet (TRADE D7, H68)."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.rehearsal.fault import Fault, Reason
from dryfit.rehearsal.goal import Goal
from dryfit.rehearsal.times.coats_dry import Coat, coats_wanted
from dryfit.rehearsal.times.deeds import Deed
from dryfit.rehearsal.times.working_hours import HOUR, Hours, moment_in_words, spoken
from dryfit.shop.shop import Shop

DUSTY_STATIONS = frozenset(
    {"mitre saw", "band saw", "jointer", "planer", "table saw", "router table", "sander"}
)
"""Where sawing, planing and sanding fill the room with dust; chisels and drills make chips."""
DUST_FREE = 8 * HOUR
"""For a finish that the shop file does not know (TRADE D7)."""


def dust(deeds: tuple[Deed, ...], goal: Goal, hours: Hours, shop: Shop) -> Iterator[Fault]:
    """Yield the dusty work, test cuts with it, that is done while a coat is wet."""
    if not shop.one_room:
        return
    wanted = coats_wanted(goal, shop)
    wet: list[tuple[Deed, int]] = []
    for deed in deeds:
        if deed.kind == "coat":
            wet.append((deed, deed.ends + _wet_for(deed, wanted, shop)))
        elif deed.step.station in DUSTY_STATIONS or deed.kind == "sand":
            yield from _in_wet_coats(deed, wet, hours)


def _in_wet_coats(deed: Deed, wet: list[tuple[Deed, int]], hours: Hours) -> Iterator[Fault]:
    begins = _dust_begins(deed, hours)
    for coat, until in wet:
        if coat.begins < deed.ends and begins < until:
            yield Fault(
                Reason.DUST,
                f"{deed.operation.id} makes dust at the {deed.step.station} while "
                f"{coat.operation.id} is wet",
                f"not before {moment_in_words(until, hours)}: {spoken(until - coat.ends)} after "
                f"step {coat.step.number}",
                deed.step.number,
                deed.operation.id,
            )


def _dust_begins(deed: Deed, hours: Hours) -> int:
    """Return the latest clock time at which dust begins: test cuts come just before the work."""
    if deed.operation is not deed.step.operations[0] or not deed.step.minutes.tests:
        return deed.begins
    return hours.begins(hours.worked(deed.begins) - deed.step.minutes.tests)


def _wet_for(deed: Deed, wanted: dict[str, Coat], shop: Shop) -> int:
    coat = wanted.get(deed.operation.id)
    if coat is None:
        return min(DUST_FREE, deed.operation.after_tenths)
    known = shop.finishes.get(coat.product)
    # What may be coated again is dry, whatever it is.
    return known.dust_free if known is not None else min(DUST_FREE, coat.recoat)
