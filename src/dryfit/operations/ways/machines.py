"""The machines of this shop that cut across the grain, with each cutter that could be in them."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from dryfit.operations.cut import Site
from dryfit.operations.ways.cross_cuts import CrossMachine, wide
from dryfit.quantities import Display
from dryfit.shop.shop import Cutter, Shop

SAW = "table saw"
SLED = "sled"
TENON_JIG = "tenon jig"
ROUTER_TABLE = "router table"


def has_hand_router(shop: Shop) -> bool:
    """Return whether the shop has a router to hold in the hand: one with a router table has."""
    return ROUTER_TABLE in shop.stations


def blade_on_sled(shop: Shop) -> CrossMachine | None:
    """Return the table saw with its plain blade and the sled, or None."""
    blade = next((c for c in _saw_cutters(shop) if c.kind == "blade"), None)
    if blade is None:
        return None
    limits = shop.stations[SAW].limits
    return _on_sled(shop, blade, blade.name, blade.widest, limits["depth"], "blade_overlap")


def dado_set(shop: Shop) -> Cutter | None:
    """Return the cutter that is built up to a width, where the shop's saw takes one."""
    return next((c for c in _saw_cutters(shop) if c.kind == "set"), None)


def dado_on_sled(shop: Shop, width: Fraction, display: Display) -> CrossMachine:
    """Return the table saw with its dado set built to a width, and the sled."""
    cutter = dado_set(shop)
    assert cutter is not None
    name = built_to(cutter, width, display)
    limits = shop.stations[SAW].limits
    return _on_sled(shop, cutter, name, width, limits["dado_depth"], "dado_overlap")


def built_to(cutter: Cutter, width: Fraction, display: Display) -> str:
    """Return the name of a set that is built up to a width."""
    return f"{cutter.name} {display.shown(width, fitted=True)}"


def widest_dado(cutter: Cutter, wanted: Fraction) -> Fraction:
    """Return the widest setting of the set that is no wider than wanted, on its step."""
    width = min(wanted, cutter.widest)
    if cutter.step == 0:
        return width
    steps = (width - cutter.narrowest) / cutter.step
    return cutter.narrowest + cutter.step * (steps.numerator // steps.denominator)


def router_for(site: Site, shop: Shop) -> CrossMachine | None:
    """Return the router table with the widest bit that goes into the cut, or None.

    Cuts across the grain are made on a mitre sled there, which short parts only fit.
    """
    station = shop.stations.get(ROUTER_TABLE)
    if station is None or site.part.length > station.limits["longest"]:
        return None
    fitting = [c for c in shop.cutters_at(ROUTER_TABLE) if c.widest <= wide(site.feature)]
    bit = max(fitting, key=lambda cutter: cutter.widest, default=None)
    if bit is None:
        return None
    machine = CrossMachine(
        station=ROUTER_TABLE,
        accessory=None,
        family=bit.name,
        cutter=bit.name,
        width=bit.widest,
        overlap=bit.widest / 10,
        base=Fraction(0),
        highest=station.limits["depth"],
        longest=station.limits["longest"],
        rate="router cross pass",
        thinnest=station.limits.get("thinnest", Fraction(0)),
    )
    return machine if machine.reaches(site) else None


def cutter_change(shop: Shop, before: str, after: str) -> int:
    """Return the tenths that the saw's cutter change costs; names of the shop file."""
    return shop.stations[SAW].axis("cutter").cost(before, after, {})


def _saw_cutters(shop: Shop) -> Iterable[Cutter]:
    if SAW not in shop.stations or shop.accessory(SLED) is None:
        return ()
    return shop.cutters_at(SAW)


def _on_sled(
    shop: Shop, cutter: Cutter, name: str, width: Fraction, highest: Fraction, overlap: str
) -> CrossMachine:
    sled = shop.accessory(SLED)
    assert sled is not None
    limits = shop.stations[SAW].limits
    return CrossMachine(
        station=SAW,
        accessory=sled.name,
        family=cutter.name,
        cutter=name,
        width=width,
        overlap=shop.allowances[overlap],
        base=sled.base,
        highest=highest,
        longest=sled.longest,
        rate="lap pass",
        shortest=limits.get("shortest_crosscut", Fraction(0)),
        thinnest=limits.get("thinnest", Fraction(0)),
    )
