"""Grooves along the grain: table saw in passes, dado set, router table, or by hand (B0, B9)."""

from __future__ import annotations

from fractions import Fraction

from dryfit.operations import machines, naming, setting_of
from dryfit.operations.by_hand import hand_cut
from dryfit.operations.cut import Cut, Site
from dryfit.operations.minutes import METRE, worked
from dryfit.operations.passes import fence_positions, number_of_passes
from dryfit.operations.sides import side_of_end
from dryfit.plan.setting import Hold, Pass, Setting
from dryfit.quantities import Display
from dryfit.shop.shop import Cutter, Shop

RIP_FENCE = "rip fence"


def groove_cuts(site: Site, display: Display, shop: Shop) -> tuple[Cut, ...]:
    """Return the cuts of a groove, one for each position of the fence.

    A stopped groove is never cut on the table saw: the blade would have to be dropped on.
    """
    if runs_through(site):
        cuts = _on_saw(site, display, shop)
        if cuts:
            return cuts
    return _on_router(site, shop) or (hand_cut(site, display, shop),)


def runs_through(site: Site) -> bool:
    """Return whether the groove runs out at both ends."""
    return site.feature.along == (Fraction(0), site.part.length)


def _width(site: Site) -> Fraction:
    return site.feature.across[1] - site.feature.across[0]


def _fence_surface(site: Site) -> str:
    return "E" if site.feature.surface in {"F", "B"} else "F"


def _metres(site: Site) -> Fraction:
    return (site.feature.along[1] - site.feature.along[0]) / METRE


def _on_saw(site: Site, display: Display, shop: Shop) -> tuple[Cut, ...]:
    station = shop.stations.get(machines.SAW)
    if station is None:
        return ()
    width, depth = _width(site), site.feature.depth
    blade = next((c for c in shop.cutters_at(machines.SAW) if c.kind == "blade"), None)
    by_blade = (
        _passes_on_saw(site, blade, blade.name, blade.widest, shop)
        if blade is not None and blade.widest <= width and depth <= station.limits["depth"]
        else ()
    )
    dado = machines.dado_set(shop)
    if dado is None or width < dado.narrowest or depth > station.limits["dado_depth"]:
        return by_blade
    built = machines.widest_dado(dado, width)
    name = f"{dado.name} {display.shown(built, fitted=True)}"
    by_dado = _passes_on_saw(site, dado, name, built, shop)
    if blade is None or not by_blade:
        return by_dado
    there = machines.cutter_change(shop, blade.name, dado.name)
    back = machines.cutter_change(shop, dado.name, blade.name)
    mounting = there + back + station.test_cut
    return by_dado if _spent(by_blade, shop) > _spent(by_dado, shop) + mounting else by_blade


def _spent(cuts: tuple[Cut, ...], shop: Shop) -> Fraction:
    moves = (len(cuts) - 1) * shop.stations[machines.SAW].axis("fence").change
    return sum((cut.exact for cut in cuts), Fraction(moves))


def _passes_on_saw(
    site: Site, cutter: Cutter, name: str, kerf: Fraction, shop: Shop
) -> tuple[Cut, ...]:
    overlap = shop.allowances["dado_overlap" if cutter.kind == "set" else "blade_overlap"]
    count = number_of_passes(_width(site), kerf, overlap)
    positions = fence_positions(site.feature.across[0], _width(site), kerf, count)
    accessory = shop.accessory(RIP_FENCE)
    base = accessory.base if accessory is not None else Fraction(0)
    fence = _fence_surface(site)
    common = (
        setting_of.named("cutter", name),
        setting_of.named("accessory", RIP_FENCE),
        setting_of.angle("tilt"),
        setting_of.height(site.feature.depth + base),
    )
    exact = worked(
        shop,
        "groove pass",
        each=len(site.copies),
        per_metre=_metres(site) * len(site.copies),
    )
    return tuple(
        _pass(site, (*common, setting_of.distance("fence", near, kerf, fence)), turn, exact, shop)
        for turn, near in enumerate(positions, start=1)
    )


def _pass(site: Site, settings: tuple[Setting, ...], turn: int, exact: Fraction, shop: Shop) -> Cut:
    what, kind = naming.what_of(site.feature), naming.kind_of(site.feature)
    return Cut(
        site=site,
        what=what,
        kind=kind,
        station=machines.SAW,
        settings=setting_of.known_to(shop, machines.SAW, settings),
        hold=Hold(site.feature.surface, _fence_surface(site), None),
        passes=(Pass(),),
        exact=exact,
        deed=f"{'Cut' if turn == 1 else 'Widen'} the {what} in",
        turn=turn,
        trial=_trial(site, machines.SAW),
        tests=_tests(site),
        visit=_trial(site, machines.SAW),
        check=naming.CHECKS.get(kind),
    )


def _trial(site: Site, station: str) -> str | None:
    """Return the group of grooves that one panel or shelf goes into, or None: it is tried first."""
    feature = site.feature
    if feature.mate is None:
        return None
    return f"grooves {_width(site)} wide for {feature.mate}, {feature.depth} deep, at the {station}"


def _tests(site: Site) -> int:
    return 0 if site.feature.mate is None else 1


def _on_router(site: Site, shop: Shop) -> tuple[Cut, ...]:
    station = shop.stations.get(machines.ROUTER_TABLE)
    width, feature = _width(site), site.feature
    bits = [c for c in shop.cutters_at(machines.ROUTER_TABLE) if c.widest <= width]
    bit = max(bits, key=lambda cutter: cutter.widest, default=None)
    if station is None or bit is None or feature.depth > station.limits["depth"]:
        return ()
    steps = feature.depth / station.limits["deepest_pass"]
    depths = -(-steps.numerator // steps.denominator)
    fence = _fence_surface(site)
    settings = [
        setting_of.named("cutter", bit.name),
        setting_of.height(feature.depth),
    ]
    if not runs_through(site):
        side = side_of_end("R", feature.surface, fence, site.handedness)
        settings.append(setting_of.limits(feature.along[0], feature.along[1], "R", side))
    count = number_of_passes(width, bit.widest, bit.widest / 10)
    positions = fence_positions(feature.across[0], width, bit.widest, count)
    what, kind = naming.what_of(feature), naming.kind_of(feature)
    exact = worked(
        shop,
        "router pass",
        each=depths * len(site.copies),
        per_metre=_metres(site) * depths * len(site.copies),
    )
    deed = "Rout" if runs_through(site) else "Rout, between the stops,"
    return tuple(
        Cut(
            site=site,
            what=what,
            kind=kind,
            station=machines.ROUTER_TABLE,
            settings=setting_of.known_to(
                shop,
                machines.ROUTER_TABLE,
                (*settings, setting_of.distance("fence", near, bit.widest, fence)),
            ),
            hold=Hold(feature.surface, fence, None if runs_through(site) else "R"),
            passes=(Pass(),),
            exact=exact,
            deed=f"{deed} the {what} in",
            turn=turn,
            trial=_trial(site, machines.ROUTER_TABLE),
            tests=_tests(site),
            visit=_trial(site, machines.ROUTER_TABLE),
            check=naming.CHECKS.get(kind),
            details=(f"Go to full depth in {depths} steps",) if depths > 1 else (),
        )
        for turn, near in enumerate(positions, start=1)
    )
