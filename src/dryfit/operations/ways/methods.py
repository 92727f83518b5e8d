"""Which machine cuts what across the grain: chosen for the family, not for the part (TRADE B0.1-2).

Fitting and removing a dado set costs minutes and a test cut; every pass that it saves gives some
back.  Mixed methods make depths differ, so the whole family takes one cutter.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from dryfit.operations.cut import Site
from dryfit.operations.minutes import in_minutes, worked
from dryfit.operations.ways import machines
from dryfit.operations.ways.by_hand import hand_cut
from dryfit.operations.ways.cross_cuts import CrossMachine, cross_cut, wide
from dryfit.quantities import Display
from dryfit.shop.shop import Shop

DADO_SET = "dado set"
BLADE = "single blade in passes"
EACH_WIDTH = "dado set, built anew for each width"
ONE_WIDTH = "dado set at one width for all"
ROUTER = "router table"
HAND = "hand tools"
DADO_WAYS = frozenset({DADO_SET, EACH_WIDTH, ONE_WIDTH})
BY_ORDER = "with all settings that it shares counted, it takes the least"

FEW_SETTINGS = Fraction(50)
"""Tenths that another machine can save by its settings: stops and heights are cheaper there.

A guess; tests/benchmarks/test_ways_compared.py holds what comes of it against whole searches.
"""

Machines = Mapping[tuple[str, str], CrossMachine | None]


@dataclass(frozen=True, slots=True)
class Choice:
    """The machine of each site (None: by hand), and what was weighed for the family.

    `slow` and `fast` are the tenths of a minute of all passes without and with the dado set,
    `saved` their difference, and `cost` what fitting it, removing it and proving it takes; None
    where there was nothing to choose.  `others` are the other ways, and whether the rule leaves it
    to the order of the whole piece to weigh them; `by_order` says that it has.
    """

    machine_of: Machines
    chosen: str
    saved: Fraction | None
    cost: Fraction | None
    slow: Fraction = Fraction(0)
    fast: Fraction = Fraction(0)
    others: tuple[tuple[str, bool], ...] = ()
    by_order: bool = False


def choice_in_words(choice: Choice) -> str:
    """Return what was weighed: the passes either way, and what the dado set costs besides."""
    if choice.by_order:
        return BY_ORDER
    if choice.saved is None or choice.cost is None:
        return "the only way that the shop's machines allow"
    weighed = (
        f"the passes take {in_minutes(choice.slow)} without a dado set and "
        f"{in_minutes(choice.fast)} with it; to fit, prove and remove it takes "
        f"{in_minutes(choice.cost)}"
    )
    return f"{weighed}, so it {'pays' if choice.saved > choice.cost else 'does not pay'}"


def key_of(site: Site) -> tuple[str, str]:
    """Return part and feature, by which the choice is looked up."""
    return site.part.name, site.feature.id


def choose(sites: tuple[Site, ...], display: Display, shop: Shop, way: str | None = None) -> Choice:
    """Return the machine for every cut across the grain: by the rule, or the `way` that is told."""
    rule, ways = _by_rule(sites, display, shop)
    works = {name: _work(sites, machine_of, shop) for name, machine_of in ways.items()}
    chosen = way if way in ways else rule.chosen
    taken = works.get(chosen, Fraction(0))
    others = tuple(
        (name, work - taken <= _saved_at_most(chosen, name, rule, shop))
        for name, work in works.items()
        if name != chosen
    )
    if chosen == rule.chosen:
        return replace(rule, others=others)
    return replace(rule, machine_of=ways[chosen], chosen=chosen, others=others, by_order=True)


def _saved_at_most(chosen: str, other: str, rule: Choice, shop: Shop) -> Fraction:
    """Return the tenths of set-up that another way may save: less work than that is no gain.

    A dado set that goes in has to be fitted and proved at least once.
    """
    mounted, mounts = chosen in DADO_WAYS, other in DADO_WAYS
    if mounted and not mounts:
        return (rule.cost or Fraction(0)) + FEW_SETTINGS
    if mounts and not mounted:
        fit = machines.cutter_change(shop, "*", "dado") + shop.stations[machines.SAW].test_cut
        return -Fraction(fit)
    return FEW_SETTINGS


def _by_rule(
    sites: tuple[Site, ...], display: Display, shop: Shop
) -> tuple[Choice, dict[str, Machines]]:
    """Return what the rule takes, and every way by its name."""
    blade = machines.blade_on_sled(shop)
    plain = {key_of(site): _without_dado(site, blade, shop) for site in sites}
    ways: dict[str, Machines] = {_name(plain): plain}
    routed = {key_of(site): _router(site, shop) or plain[key_of(site)] for site in sites}
    if ROUTER not in ways and _name(routed) == ROUTER:
        ways[ROUTER] = routed
    plans = [plan for plan in _dado_plans(sites, display, shop) if any(m is not None for m in plan)]
    if not plans:
        return Choice(plain, _name(plain), None, None), ways
    weighed = [(*_passes(sites, plan, blade, shop), _cost(plan, blade, shop)) for plan in plans]
    gains = [slow - fast - cost for slow, fast, cost in weighed]
    best = gains.index(max(gains))
    slow, fast, cost = weighed[best]
    saved = slow - fast
    # A dado set that serves the family stays in for it: what it cannot reach is cut by hand
    # rather than by a second cutter (TRADE H48).
    names = (ONE_WIDTH, EACH_WIDTH)
    for index, plan in enumerate(plans):
        name = DADO_SET if index == best else names[index]
        mounted: Machines = {
            key_of(site): machine or _beside_dado(site, blade, shop)
            for site, machine in zip(sites, plan, strict=True)
        }
        if mounted not in ways.values():
            ways[name] = mounted
    if saved <= cost:
        return Choice(plain, _name(plain), saved, cost, slow, fast), ways
    return Choice(ways[DADO_SET], DADO_SET, saved, cost, slow, fast), ways


def _work(sites: tuple[Site, ...], machine_of: Machines, shop: Shop) -> Fraction:
    """Return the tenths of all cuts one way, without set-up."""
    found = Fraction(0)
    for site in sites:
        machine = machine_of[key_of(site)]
        cut = hand_cut(site, shop) if machine is None else cross_cut(site, machine, shop)
        found += cut.exact
    return found


def _beside_dado(site: Site, blade: CrossMachine | None, shop: Shop) -> CrossMachine | None:
    cutter = machines.dado_set(shop)
    too_narrow = cutter is not None and wide(site.feature) < cutter.narrowest
    if too_narrow and blade is not None and blade.reaches(site):
        return blade
    return _router(site, shop)


def _router(site: Site, shop: Shop) -> CrossMachine | None:
    # An edge shoulder next to a sawn cheek is quicker by hand than a set-up of its own.
    return None if site.feature.kind == "notch" else machines.router_for(site, shop)


def _without_dado(site: Site, blade: CrossMachine | None, shop: Shop) -> CrossMachine | None:
    if blade is not None and blade.reaches(site):
        return blade
    return _router(site, shop)


def _dado_plans(
    sites: tuple[Site, ...], display: Display, shop: Shop
) -> tuple[tuple[CrossMachine | None, ...], ...]:
    """Return two ways to set the dado: one width for all cuts, or the widest for each."""
    cutter = machines.dado_set(shop)
    if cutter is None:
        return ()
    wide_enough = [site for site in sites if wide(site.feature) >= cutter.narrowest]
    reached = [
        site
        for site in wide_enough
        if machines.dado_on_sled(shop, cutter.narrowest, display).reaches(site)
    ]
    if not reached:
        return ()
    common = machines.widest_dado(cutter, min(wide(site.feature) for site in reached))
    each = {key_of(site): machines.widest_dado(cutter, wide(site.feature)) for site in reached}
    widths = (dict.fromkeys(each, common), each)
    return tuple(
        tuple(
            machines.dado_on_sled(shop, plan[key_of(site)], display)
            if key_of(site) in plan
            else None
            for site in sites
        )
        for plan in widths
    )


def _passes(
    sites: tuple[Site, ...],
    plan: tuple[CrossMachine | None, ...],
    blade: CrossMachine | None,
    shop: Shop,
) -> tuple[Fraction, Fraction]:
    """Return the tenths of all passes that the dado set could make: without it, and with it."""
    without, with_it = Fraction(0), Fraction(0)
    for site, machine in zip(sites, plan, strict=True):
        if machine is None:
            continue
        copies = len(site.copies)
        with_it += worked(shop, machine.rate, each=machine.passes(site) * copies)
        if blade is not None and blade.reaches(site):
            without += worked(shop, blade.rate, each=blade.passes(site) * copies)
        else:
            without += worked(shop, "hand lap", each=copies)
    return without, with_it


def _cost(
    plan: tuple[CrossMachine | None, ...], blade: CrossMachine | None, shop: Shop
) -> Fraction:
    """Return what mounting costs: in, between the widths, out, and one proof for each width."""
    widths = {machine.cutter: machine.family for machine in plan if machine is not None}
    family = next(iter(widths.values()))
    plain = blade.family if blade is not None else "*"
    change = machines.cutter_change(shop, plain, family)
    back = machines.cutter_change(shop, family, plain)
    test = shop.stations[machines.SAW].test_cut
    return Fraction(back + len(widths) * (change + test))


def _name(plain: Machines) -> str:
    stations = {machine.station for machine in plain.values() if machine is not None}
    if machines.SAW in stations:
        return BLADE
    return ROUTER if stations else HAND
