"""Grooves that one panel lies in are cut one way, with one setting (TRADE B0.2, B9).

Mixed methods make depths differ, and a groove in a rail has to run on in the stile beside it.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from dryfit.operations.cut import Cut, Site
from dryfit.operations.cuts.grooves import (
    BLADE,
    DADO,
    HAND,
    PAIR,
    ROUTER,
    WAYS,
    cuts_by,
    runs_through,
)
from dryfit.operations.ways import machines
from dryfit.quantities import Display
from dryfit.shop.shop import Shop

ONE_WAY = "one way for all its sides, so that the grooves run on from part to part"
STOPPED = f"{ONE_WAY}, and some stop short of the end, where a saw would run out"
EACH_ALONE = "no machine of the shop cuts all of them, so each is cut as it can be"


@dataclass(frozen=True, slots=True)
class GrooveFamily:
    """Grooves of one width and depth for one panel: how they are cut, and why so.

    `sites` are part and feature of each with the way it is cut; `minutes` the tenths that each
    way takes which serves all of them, set-up included.
    """

    mate: str | None
    sites: tuple[tuple[tuple[str, str], str], ...]
    reason: str
    minutes: Mapping[str, Fraction]


def groove_families(
    sites: Iterable[Site], display: Display, shop: Shop
) -> tuple[GrooveFamily, ...]:
    """Return the families of all grooves along the grain, in the order of the parts."""
    groups: dict[tuple[object, ...], list[Site]] = {}
    for site in sites:
        feature = site.feature
        wide = feature.across[1] - feature.across[0]
        # What no panel goes into stands alone: nothing has to line up with it.
        alone = None if feature.mate is not None else (site.part.name, feature.id)
        groups.setdefault((feature.mate, wide, feature.depth, alone), []).append(site)
    return tuple(_family(tuple(group), display, shop) for group in groups.values())


def ways_of(families: Iterable[GrooveFamily]) -> dict[tuple[str, str], str]:
    """Return the way of each groove by part and feature."""
    return {key: way for family in families for key, way in family.sites}


def _family(group: tuple[Site, ...], display: Display, shop: Shop) -> GrooveFamily:
    mate = group[0].feature.mate
    minutes = _minutes(group, display, shop)
    keys = tuple(dict.fromkeys((site.part.name, site.feature.id) for site in group))
    if minutes:
        # A groove that nothing has to line up with stays at the saw where the saw can cut it.
        on_saw = {way: took for way, took in minutes.items() if way in {BLADE, PAIR, DADO}}
        offered = on_saw if mate is None and on_saw else minutes
        way = min(offered, key=lambda name: (offered[name], WAYS.index(name)))
        reason = ONE_WAY if all(runs_through(site) for site in group) else STOPPED
        return GrooveFamily(mate, tuple((key, way) for key in keys), reason, minutes)
    alone = {(site.part.name, site.feature.id): _cheapest(site, display, shop) for site in group}
    return GrooveFamily(mate, tuple((key, alone[key]) for key in keys), EACH_ALONE, {})


def _cheapest(site: Site, display: Display, shop: Shop) -> str:
    minutes = _minutes((site,), display, shop)
    return min(minutes, key=lambda name: (minutes[name], WAYS.index(name)), default=HAND)


def _minutes(group: tuple[Site, ...], display: Display, shop: Shop) -> dict[str, Fraction]:
    """Return the tenths of each machine's way that cuts every groove of the group.

    A rabbet in two cuts of the saw is for shops in which one cutter cannot make it in one.
    """
    found: dict[str, Fraction] = {}
    for way in (BLADE, DADO, ROUTER, PAIR):
        if way == PAIR and {DADO, ROUTER} & found.keys():
            continue
        rows = [cuts_by(way, site, display, shop) for site in group]
        if all(rows):
            cuts = [cut for row in rows for cut in row]
            found[way] = sum((cut.exact for cut in cuts), Fraction(0)) + _set_up(way, cuts, shop)
    return found


def _set_up(way: str, cuts: list[Cut], shop: Shop) -> Fraction:
    """Return the tenths of all settings; the blade is in the saw from ripping to width."""
    station = shop.stations[cuts[0].station]
    values = {(row.axis, row.token()) for cut in cuts for row in cut.settings}
    moved = Fraction(0)
    for axis in station.axes:
        count = sum(name == axis.name for name, _ in values)
        if axis.name not in {"cutter", "accessory", "tilt"}:
            moved += count * axis.change
        elif way == ROUTER:
            moved += axis.change
    if way == DADO:
        moved += _mounting(shop) + station.test_cut
    return moved + (2 * shop.walk if way == ROUTER else 0)


def _mounting(shop: Shop) -> int:
    dado = machines.dado_set(shop)
    assert dado is not None
    blade = next((c.name for c in shop.cutters_at(machines.SAW) if c.kind == "blade"), "*")
    there = machines.cutter_change(shop, blade, dado.name)
    return there + machines.cutter_change(shop, dado.name, blade)
