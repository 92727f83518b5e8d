"""Room at the bench: glue-ups in their clamps and wet coats, where the shop counts the places."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.rehearsal.fault import Fault, Reason
from dryfit.rehearsal.goal import Goal
from dryfit.rehearsal.times.coats_dry import coats_wanted
from dryfit.rehearsal.times.deeds import Deed
from dryfit.rehearsal.times.glue_lags import OUT_OF_CLAMPS, lags_after
from dryfit.rehearsal.times.working_hours import Hours, moment_in_words
from dryfit.shop.shop import Shop

_LIES_AT = {"glue up": "glue bench", "coat": "finish bench"}


def places(deeds: tuple[Deed, ...], goal: Goal, hours: Hours, shop: Shop) -> Iterator[Fault]:
    """Yield what is glued or coated while every place for it is taken."""
    for kind, name in _LIES_AT.items():
        station = shop.stations.get(name)
        if station is None or station.places is None:
            continue
        lying: list[int] = []
        for deed in (each for each in deeds if each.kind == kind):
            taken = sorted(until for until in lying if until > deed.begins)
            if len(taken) >= station.places:
                free = taken[len(taken) - station.places]
                yield Fault(
                    Reason.RESOURCES,
                    f"{deed.operation.id}: the {name} has {station.places} places, all are taken",
                    f"a free place: not before {moment_in_words(free, hours)}",
                    deed.step.number,
                    deed.operation.id,
                )
            lying.append(deed.ends + _lies_for(deed, goal, shop))


def _lies_for(deed: Deed, goal: Goal, shop: Shop) -> int:
    """Return how long what was done lies there: until it is out of its clamps, or dry."""
    if deed.kind == "glue up":
        return lags_after(deed.operation, goal, shop)[OUT_OF_CLAMPS]
    coat = coats_wanted(goal, shop).get(deed.operation.id)
    return deed.operation.after_tenths if coat is None else coat.recoat
