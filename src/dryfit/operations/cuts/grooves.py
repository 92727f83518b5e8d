"""Grooves along the grain: table saw in passes, dado set, router table, or by hand (B0, B9)."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from dryfit.joinery.feature import Range
from dryfit.operations import naming, setting_of
from dryfit.operations.cut import Cut, Site
from dryfit.operations.machine_limits import Piece, grooved_at_saw, routed_along
from dryfit.operations.minutes import METRE, worked
from dryfit.operations.passes import fence_positions, number_of_passes
from dryfit.operations.sides import side_of_end
from dryfit.operations.ways import machines
from dryfit.operations.ways.by_hand import hand_cut
from dryfit.operations.ways.edge_rabbets import (
    EDGE_DOWN,
    FACE_DOWN,
    edge_down,
    edge_of,
    face_down,
    fits_two_cuts,
)
from dryfit.operations.ways.guided_router import guided_cut
from dryfit.operations.ways.router_stops import stops_in_words, within_reach
from dryfit.plan.operation import Detail
from dryfit.plan.setting import Hold, Pass, Setting
from dryfit.quantities import Display
from dryfit.shop.shop import Cutter, Shop
from dryfit.stock.blanks.blank import fed_length

RIP_FENCE = "rip fence"
STRIP_AT_FENCE = (
    "The cutter stands against the fence: screw a straight strip of waste wood to it, and raise "
    "the turning cutter into the strip"
)


BLADE, DADO, ROUTER, HAND = "single blade", "dado set", "router table", "by hand"
PAIR = "two cuts of the saw"
WAYS = (BLADE, PAIR, DADO, ROUTER, HAND)
"""The ways to cut a groove, the first that is no dearer before the next."""


def cuts_by(way: str, site: Site, display: Display, shop: Shop) -> tuple[Cut, ...]:
    """Return the cuts of a groove one way, one for each place of the fence; none where it cannot.

    A stopped groove is never cut on the table saw: the blade would have to be dropped on.
    """
    if way == HAND:
        return (_by_hand(site, shop),)
    if way == ROUTER:
        return _on_router(site, display, shop)
    if not runs_through(site):
        return ()
    if way == PAIR:
        return _by_two_cuts(site, display, shop)
    return _by_blade(site, display, shop) if way == BLADE else _by_dado(site, display, shop)


def runs_through(site: Site) -> bool:
    """Return whether the groove runs out at both ends."""
    return site.feature.along == (Fraction(0), site.part.length)


def _width(site: Site) -> Fraction:
    return site.feature.across[1] - site.feature.across[0]


def _fence_surface(site: Site) -> str:
    return "E" if site.feature.surface in {"F", "B"} else "F"


def _fed(site: Site, display: Display, shop: Shop) -> Piece:
    """Return what runs along the fence: from end to end a groove is cut before the length."""
    _, width, thickness = site.sizes
    through = runs_through(site)
    length = fed_length(site.part, display.unit, shop) if through else site.part.length
    return Piece(length, width, thickness)


def _metres(site: Site) -> Fraction:
    return (site.feature.along[1] - site.feature.along[0]) / METRE


def _blade(site: Site, deep: Fraction, shop: Shop) -> Cutter | None:
    """Return the saw's blade where it is no wider than the groove and rises so far, or None."""
    station = shop.stations.get(machines.SAW)
    blade = next((c for c in shop.cutters_at(machines.SAW) if c.kind == "blade"), None)
    if station is None or blade is None or blade.widest > _width(site):
        return None
    return blade if deep <= station.limits["depth"] else None


def _by_two_cuts(site: Site, display: Display, shop: Shop) -> tuple[Cut, ...]:
    """Return the cuts of a rabbet along an edge: face down, then edge down (TRADE B0)."""
    feature, (_, width, thickness) = site.feature, site.sizes
    blade = _blade(site, max(feature.depth, _width(site)), shop)
    if blade is None or not fits_two_cuts(feature, width, blade.widest):
        return ()
    edge, first = edge_of(feature, width), face_down(feature, blade.widest)
    kept, second = edge_down(feature, thickness)
    fed = _fed(site, display, shop)
    if edge is None or not grooved_at_saw(fed, (first, second), shop):
        return ()
    accessory = shop.accessory(RIP_FENCE)
    base = accessory.base if accessory is not None else Fraction(0)
    common = (
        setting_of.named("cutter", blade.name),
        setting_of.named("accessory", RIP_FENCE),
        setting_of.angle("tilt"),
    )
    exact = _one_pass(site, shop)
    deep = setting_of.height(feature.depth + base)
    wide = setting_of.height(_width(site) + base)
    lying = setting_of.distance("fence", first, blade.widest, "E")
    standing = setting_of.distance("fence", second, blade.widest, kept)
    down = _pass(site, (*common, deep, lying), 1, exact, shop)
    upright = _pass(site, (*common, wide, standing), 2, exact, shop)
    return (
        replace(down, details=(FACE_DOWN, *down.details)),
        replace(
            upright,
            hold=Hold(edge, kept, None),
            deed=f"Saw off the strip of the {upright.what} in",
            details=(EDGE_DOWN, *upright.details),
        ),
    )


def _by_blade(site: Site, display: Display, shop: Shop) -> tuple[Cut, ...]:
    blade = _blade(site, site.feature.depth, shop)
    if blade is None:
        return ()
    return _passes_on_saw(site, blade, blade.name, blade.widest, display, shop)


def _by_dado(site: Site, display: Display, shop: Shop) -> tuple[Cut, ...]:
    station = shop.stations.get(machines.SAW)
    dado = machines.dado_set(shop)
    if station is None or dado is None or _width(site) < dado.narrowest:
        return ()
    if site.feature.depth > station.limits["dado_depth"]:
        return ()
    built = machines.widest_dado(dado, _width(site))
    name = machines.built_to(dado, built, display)
    return _passes_on_saw(site, dado, name, built, display, shop)


def _passes_on_saw(
    site: Site, cutter: Cutter, name: str, kerf: Fraction, display: Display, shop: Shop
) -> tuple[Cut, ...]:
    overlap = shop.allowances["dado_overlap" if cutter.kind == "set" else "blade_overlap"]
    count = number_of_passes(_width(site), kerf, overlap)
    positions = fence_positions(site.feature.across[0], _width(site), kerf, count)
    if not grooved_at_saw(_fed(site, display, shop), positions, shop):
        return ()
    accessory = shop.accessory(RIP_FENCE)
    base = accessory.base if accessory is not None else Fraction(0)
    fence = _fence_surface(site)
    common = (
        setting_of.named("cutter", name),
        setting_of.named("accessory", RIP_FENCE),
        setting_of.angle("tilt"),
        setting_of.height(site.feature.depth + base),
    )
    exact = _one_pass(site, shop)
    return tuple(
        _pass(site, (*common, setting_of.distance("fence", near, kerf, fence)), turn, exact, shop)
        for turn, near in enumerate(positions, start=1)
    )


def _one_pass(site: Site, shop: Shop) -> Fraction:
    many = len(site.copies)
    return worked(shop, "groove pass", each=many, per_metre=_metres(site) * many)


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
        check=naming.check_of(site.feature),
        details=((STRIP_AT_FENCE,),) if _at_the_fence(settings) else (),
    )


def _at_the_fence(settings: tuple[Setting, ...]) -> bool:
    return any(each.axis == "fence" and each.value == 0 for each in settings)


def _trial(site: Site, station: str) -> str | None:
    """Return the group of grooves that one panel or shelf goes into, or None: it is tried first."""
    feature = site.feature
    if feature.mate is None:
        return None
    return f"grooves {_width(site)} wide for {feature.mate}, {feature.depth} deep, at the {station}"


def _tests(site: Site) -> int:
    return 0 if site.feature.mate is None else 1


def _on_router(site: Site, display: Display, shop: Shop) -> tuple[Cut, ...]:
    width = _width(site)
    bit = _router_bit(site, shop)
    fed = _fed(site, display, shop)
    if bit is None or not routed_along(fed, machines.ROUTER_TABLE, shop):
        return ()
    if not within_reach(site, shop):
        return ()
    depths = _depth_steps(site, shop)
    fence = _fence_surface(site)
    count = number_of_passes(width, bit.widest, bit.widest / 10)
    positions = fence_positions(site.feature.across[0], width, bit.widest, count)
    what, kind = naming.what_of(site.feature), naming.kind_of(site.feature)
    copies = len(site.copies)
    metres = _metres(site) * depths * copies
    exact = worked(shop, "router pass", each=depths * copies, per_metre=metres)
    round_ends = ends_to_square(site, bit.widest / 2)
    squaring = worked(shop, "square mortise end", each=round_ends * copies)
    deed = "Rout" if runs_through(site) else "Rout, between the stops,"
    return tuple(
        Cut(
            site=site,
            what=what,
            kind=kind,
            station=machines.ROUTER_TABLE,
            settings=_router_settings(site, bit, fence, near, shop),
            hold=Hold(site.feature.surface, fence, None if runs_through(site) else "R"),
            passes=(Pass(),),
            exact=exact + (squaring if turn == count else 0),
            deed=f"{deed} the {what} in",
            turn=turn,
            trial=_trial(site, machines.ROUTER_TABLE),
            tests=_tests(site),
            visit=_trial(site, machines.ROUTER_TABLE),
            check=naming.check_of(site.feature),
            details=_router_details(site, bit, fence, depths),
        )
        for turn, near in enumerate(positions, start=1)
    )


def _by_hand(site: Site, shop: Shop) -> Cut:
    """Return the groove at the bench: with a router where only the stops keep it off its table."""
    bit = _router_bit(site, shop)
    piece = Piece(*site.sizes)
    if (
        bit is None
        or within_reach(site, shop)
        or not routed_along(piece, machines.ROUTER_TABLE, shop)
    ):
        return hand_cut(site, shop)
    passes = number_of_passes(_width(site), bit.widest, bit.widest / 10)
    ends = ends_to_square(site, bit.widest / 2)
    cut = guided_cut(site, bit, (passes, _depth_steps(site, shop)), _metres(site), shop)
    if not ends:
        return cut
    squaring = worked(shop, "square mortise end", each=ends * len(site.copies))
    square = _square(site, bit.widest / 2)
    return replace(cut, exact=cut.exact + squaring, details=(*cut.details, square))


def _router_bit(site: Site, shop: Shop) -> Cutter | None:
    """Return the widest bit that fits the groove, or None when the table cannot cut it."""
    station = shop.stations.get(machines.ROUTER_TABLE)
    if station is None or site.feature.depth > station.limits["depth"]:
        return None
    bits = shop.cutters_at(machines.ROUTER_TABLE)
    fitting = [cutter for cutter in bits if cutter.widest <= _width(site)]
    return max(fitting, key=lambda cutter: cutter.widest, default=None)


def _depth_steps(site: Site, shop: Shop) -> int:
    """Return in how many steps of depth the bit goes down."""
    deepest = shop.stations[machines.ROUTER_TABLE].limits["deepest_pass"]
    steps = site.feature.depth / deepest
    return -(-steps.numerator // steps.denominator)


def _router_settings(
    site: Site, bit: Cutter, fence: str, near: Fraction, shop: Shop
) -> tuple[Setting, ...]:
    feature = site.feature
    settings = [setting_of.named("cutter", bit.name), setting_of.height(feature.depth)]
    if not runs_through(site):
        side = side_of_end("R", feature.surface, fence, site.handedness)
        settings.append(setting_of.limits(feature.along[0], feature.along[1], "R", side))
    settings.append(setting_of.distance("fence", near, bit.widest, fence))
    return setting_of.known_to(shop, machines.ROUTER_TABLE, settings)


def _router_details(site: Site, bit: Cutter, fence: str, depths: int) -> tuple[Detail, ...]:
    details: tuple[Detail, ...] = ()
    if depths > 1:
        details = ((f"Go to full depth in {depths} steps",),)
    if not runs_through(site):
        side = side_of_end("R", site.feature.surface, fence, site.handedness)
        details = (*details, *stops_in_words(site, side))
    if ends_to_square(site, bit.widest / 2):
        details = (*details, _square(site, bit.widest / 2))
    return details


def ends_to_square(site: Site, radius: Fraction) -> int:
    """Return how many ends of a groove a bit leaves round, where something square has to go in."""
    return len(_round_ends(site, radius))


def _round_ends(site: Site, radius: Fraction) -> tuple[Fraction, ...]:
    """Return where from R the ends are that have to be squared.

    An end is open where the groove runs out, and where a housing as deep takes the corner away.
    """
    feature = site.feature
    if feature.mate is None or feature.fit == "move":
        # A runner ends before the round end of its groove.
        return ()
    start, end = feature.along
    rounds = {start: (start, start + radius)} if start > 0 else {}
    if end < site.part.length:
        rounds[end] = (end - radius, end)
    return tuple(at for at, limits in rounds.items() if not _taken_away(site, limits))


def _taken_away(site: Site, limits: Range) -> bool:
    feature = site.feature
    return any(
        other.surface == feature.surface
        and other.depth >= feature.depth
        and other.along[0] <= limits[0]
        and limits[1] <= other.along[1]
        and other.across[0] <= feature.across[0]
        and feature.across[1] <= other.across[1]
        for other in site.part.features
        if other.id != feature.id and site.copies[0].hand in other.hands
    )


def _square(site: Site, radius: Fraction) -> Detail:
    ends = _round_ends(site, radius)
    home = f" from R, or the corners of the {site.feature.mate} do not go home"
    if len(ends) == 1:
        words = " in radius: square it with a chisel to "
        return "The bit leaves a round end, ", radius, words, ends[0], home
    words = " in radius: square them with a chisel to "
    return "The bit leaves round ends, ", radius, words, ends[0], " and ", ends[1], home
