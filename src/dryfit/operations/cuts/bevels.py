"""Bevels: along an edge at the rip fence, at an end on a saw that is turned, else planed (B0).

The blade leans away from the fence.  The side that the bevel takes most of lies on the table, so
that the strip comes off beyond the blade, under nothing; the fence is set to the point where the
blade comes out of the table.
"""

from __future__ import annotations

from fractions import Fraction

from dryfit.geometry.frame import LENGTH, OPPOSITE, SURFACES
from dryfit.operations import setting_of, through_cuts
from dryfit.operations.cut import Cut, Site
from dryfit.operations.cuts.mitring import Way, turned_ways
from dryfit.operations.machine_limits import Piece, why_not_ripped
from dryfit.operations.minutes import METRE, worked
from dryfit.operations.shapes import BEVEL, of_one_kind
from dryfit.plan.operation import Detail
from dryfit.plan.setting import Hold, Pass, Setting
from dryfit.shop.shop import Shop

STEEPEST = Fraction(45)
"""As far as saws tilt (common practice)."""
CHECK = "a bevel gauge at both ends, and the line on the face straight"
CAUTION = "saw-bevel"

_LEANS: Detail = (
    (
        "The blade leans away from the fence, so that the strip comes off on the free side; where "
        "yours leans the other way, set the fence on the other side of it"
    ),
)
_BY_HAND: Detail = (
    (
        "Gauge the line on the face, and plane to it and to the far corner; at an end plane from "
        "both sides to the middle"
    ),
)


def bevel_cut(site: Site, shop: Shop) -> Cut:
    """Return the cut of a bevel at a saw that takes the part so, else with a plane."""
    if site.feature.after is None and _angle(site) <= STEEPEST:
        if SURFACES[site.feature.surface][0] == LENGTH:
            way = next(iter(turned_ways(site, shop)), None)
            if way is not None:
                return _at_end(site, way, shop)
        elif _is_ripped(site, shop):
            return _along(site, shop)
    return _by_hand(site, shop)


def _angle(site: Site) -> Fraction:
    assert site.feature.form is not None
    return dict(site.feature.form.sizes)["angle"]


def low_side(site: Site) -> str:
    """Return the side that loses most."""
    assert site.feature.form is not None
    assert site.feature.form.toward is not None
    return site.feature.form.toward


def _at_table(site: Site) -> Fraction:
    """Return how far the fence stands from the blade at the table."""
    return site.sizes[SURFACES[site.feature.surface][0]] - site.feature.depth


def _is_ripped(site: Site, shop: Shop) -> bool:
    direction = SURFACES[site.feature.surface][0]
    waits = any(site.part.untaken(word) is not None for word in ("width", "length"))
    deep = site.sizes[SURFACES[low_side(site)][0]]
    piece = Piece(site.part.length, site.sizes[direction], deep)
    if waits or why_not_ripped(piece, _at_table(site), shop) is not None:
        return False
    height = through_cuts.least_height(deep, through_cuts.RIP_FENCE, shop)
    return height <= through_cuts.highest(shop, tilted=True)


def _along(site: Site, shop: Shop) -> Cut:
    feature, low, angle = site.feature, low_side(site), _angle(site)
    fence = OPPOSITE[feature.surface]
    deep = site.sizes[SURFACES[low][0]]
    blade, _ = through_cuts.saw_blade(shop)
    settings = (
        setting_of.named("cutter", blade),
        setting_of.named("accessory", through_cuts.RIP_FENCE),
        setting_of.angle("tilt", angle),
        through_cuts.through_height(deep, through_cuts.RIP_FENCE, shop, tilted=True),
        Setting("fence", _at_table(site), to="near", origin=fence),
    )
    metres = site.part.length * len(site.copies) / METRE
    return _cut(
        site,
        station=through_cuts.SAW,
        settings=setting_of.known_to(shop, through_cuts.SAW, settings),
        hold=Hold(low, fence, None),
        exact=worked(shop, "bevel", each=len(site.copies), per_metre=metres),
        manner=f", {low} down",
        details=(
            (
                "The fence stands ",
                _at_table(site),
                " from the blade where it comes out of the table",
            ),
            _taken(site),
            _LEANS,
        ),
    )


def _taken(site: Site) -> Detail:
    feature, low = site.feature, low_side(site)
    return (
        f"{feature.id}: ",
        feature.depth,
        f" off {feature.surface} at {low}, nothing at ",
        OPPOSITE[low],
    )


def _at_end(site: Site, way: Way, shop: Shop) -> Cut:
    settings = list(way.settings)
    if way.hold.at_stop is not None:
        stop = Setting("stop", site.part.length, to="near", origin=way.hold.at_stop)
        settings += setting_of.waiting((stop,), "stop", site.part.measure)
    long_point: Detail = (
        ("The long point comes a full length from the end at the stop, as it was cut",)
        if way.hold.at_stop is not None
        else ("The stop does not reach: cut to the line",)
    )
    return _cut(
        site,
        station=way.station,
        settings=setting_of.known_to(shop, way.station, settings),
        hold=way.hold,
        exact=worked(shop, "bevel", each=len(site.copies)),
        manner=f", {way.lies}",
        details=(_taken(site), long_point),
    )


def _by_hand(site: Site, shop: Shop) -> Cut:
    normal, low = SURFACES[site.feature.surface][0], SURFACES[low_side(site)][0]
    (run,) = {0, 1, 2} - {normal, low}
    metres = site.sizes[run] * len(site.copies) / METRE
    return _cut(
        site,
        station="bench",
        settings=(),
        hold=None,
        exact=worked(shop, "hand bevel", each=len(site.copies), per_metre=metres),
        details=(_taken(site), *_ends_first(site), _BY_HAND),
    )


def _ends_first(site: Site) -> tuple[Detail, ...]:
    ways = {SURFACES[each.surface][0] == LENGTH for each in of_one_kind(site)}
    return (("Across the grain first, then along it, which takes away what broke out",),) * (
        len(ways) > 1
    )


def _cut(
    site: Site,
    *,
    station: str,
    settings: tuple[Setting, ...],
    hold: Hold | None,
    exact: Fraction,
    details: tuple[Detail, ...],
    manner: str = "",
) -> Cut:
    angle = _angle(site)
    turned = hold is not None
    return Cut(
        site=site,
        what=BEVEL,
        kind=BEVEL,
        station=station,
        settings=settings,
        hold=hold,
        passes=(Pass(),) if turned else (),
        exact=exact,
        deed="Saw the bevels on" if turned else "Plane the bevels on",
        manner=manner,
        trial=f"the {station} at {angle} degrees" if turned else None,
        tests=1 if turned else 0,
        check=CHECK,
        cautions=(CAUTION,) if station == through_cuts.SAW else (),
        details=details,
    )
