"""Sanding: grit after grit, all of it, and nothing that is closed by then (TRADE C1.4, D1-D3)."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from dryfit.rehearsal.deeds import Deed, fault_of, glued_at
from dryfit.rehearsal.fault import Fault, Reason
from dryfit.rehearsal.goal import Goal
from dryfit.rehearsal.members import members_of
from dryfit.shop.shop import Shop


def sanding(deeds: Sequence[Deed], goal: Goal, shop: Shop) -> Iterator[Fault]:
    """Yield what is sanded too late, with the grits in a wrong order, or not at all."""
    sanded = [deed for deed in deeds if deed.operation.kind == "sand"]
    yield from _closed(deeds, goal)
    yield from _unread(sanded)
    yield from _never_inside(deeds, sanded, goal, shop)
    yield from _falling(sanded, shop)
    yield from _rough(sanded, goal, shop)


def grit_of(deed: Deed) -> str:
    """Return the grit of a sanding, the last word of what is done."""
    return deed.what.rpartition(" ")[2]


def is_whole(deed: Deed) -> bool:
    """Return whether the sanding is the last one, of all that can still be reached."""
    return not deed.what.startswith(("sand inside", "sand faces"))


def _closed(deeds: Sequence[Deed], goal: Goal) -> Iterator[Fault]:
    """Inside faces are sanded before the glue-up that closes them in (D3, C1.4)."""
    glued = glued_at(deeds, goal)
    for deed in deeds:
        if deed.operation.kind != "sand" or is_whole(deed):
            continue
        for name, at in glued.items():
            # A glue-up inside the subject's own leaves the faces between its parts open.
            own = name == deed.subject or not deed.what.startswith("sand inside")
            if own and at < deed.at and deed.copies & set(members_of(goal, name)):
                yield fault_of(
                    deed,
                    Reason.SURFACE,
                    f"the glue-up of {name} has closed what is sanded",
                    f"the sanding before the glue-up of {name}",
                )


def _unread(sanded: Sequence[Deed]) -> Iterator[Fault]:
    """The paper on the sander is the one that the deed is named after."""
    for deed in sanded:
        for setting in deed.operation.settings:
            if setting.axis == "grit" and str(setting.value) != grit_of(deed):
                yield fault_of(
                    deed,
                    Reason.SURFACE,
                    f"{deed.what} is done with {setting.value}",
                    f"grit {grit_of(deed)}",
                )


def _never_inside(
    deeds: Sequence[Deed], sanded: Sequence[Deed], goal: Goal, shop: Shop
) -> Iterator[Fault]:
    """What a glue-up closes in is sanded with all grits before it (D3, C1.4)."""
    made = {copy.name for part in goal.parts if part.made for copy in part.copies}
    told: set[str] = set()
    for name, at in sorted(glued_at(deeds, goal).items(), key=lambda row: row[1]):
        for copy in members_of(goal, name):
            # Sanding of the inside that comes too late is told as such.
            own = [deed for deed in sanded if copy in deed.copies]
            got = {grit_of(deed) for deed in own if deed.at < at or not is_whole(deed)}
            missing = [grit for grit in shop.sanding.grits if grit not in got]
            if missing and copy not in told | made:
                told.add(copy)
                yield fault_of(
                    deeds[at],
                    Reason.SURFACE,
                    f"{copy} is glued in but not sanded with {' and '.join(missing)}",
                    "the faces that it closes sanded before",
                )


def _falling(sanded: Sequence[Deed], shop: Shop) -> Iterator[Fault]:
    """A coarser grit after a finer one leaves its scratches (D2)."""
    rank = {grit: turn for turn, grit in enumerate(shop.sanding.grits)}
    rows: dict[tuple[str, str], list[Deed]] = {}
    for deed in sanded:
        rows.setdefault((deed.subject, deed.what.rpartition(" ")[0]), []).append(deed)
    for own in rows.values():
        for first, second in pairwise(own):
            if rank.get(grit_of(second), -1) < rank.get(grit_of(first), -1):
                yield fault_of(
                    second,
                    Reason.SURFACE,
                    f"{grit_of(second)} comes after {grit_of(first)} and leaves its scratches",
                    "coarse before fine",
                )


def _rough(sanded: Sequence[Deed], goal: Goal, shop: Shop) -> Iterator[Fault]:
    """Every part is sanded with all grits, coated or not."""
    for part in goal.parts:
        for copy in part.copies:
            own = [deed for deed in sanded if copy.name in deed.copies]
            got = {grit_of(deed) for deed in own if is_whole(deed)}
            missing = [grit for grit in shop.sanding.grits if grit not in got]
            if missing and not part.made:
                yield Fault(
                    Reason.SURFACE,
                    f"{copy.name} is not sanded with {' and '.join(missing)}",
                    "every part sanded with all grits",
                )
