"""Mitres: at a saw turned or tilted to 45 degrees, all from one setting, or by hand (TRADE B12).

Every part is cut to its full length before, square, so that the long point is where its end was:
one stop at that length serves both ends, and the opposite side.  The side that stays long lies at
the fence of the mitre saw, and on the table where the blade of the table saw is tilted.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction

from dryfit.geometry.frame import OPPOSITE
from dryfit.joinery.feature import Feature
from dryfit.joinery.mitre import is_flat
from dryfit.joinery.slopes import DIAGONAL
from dryfit.operations import naming, setting_of, through_cuts
from dryfit.operations.cut import Cut, Site
from dryfit.operations.machine_limits import Piece, why_not_at_mitre_saw, why_not_on_sled
from dryfit.operations.milling.lengths import MITRE_SAW, SLED
from dryfit.operations.minutes import worked
from dryfit.operations.sides import edge_at_fence_behind, edge_at_sled_fence
from dryfit.plan.operation import Detail
from dryfit.plan.setting import Hold, Pass, Setting
from dryfit.shop.shop import Shop

TESTS = 2
"""Test cuts at a new angle (TRADE B26)."""
_DOWN = {True: ("F", "B"), False: ("E", "E2")}
_BY_HAND = (
    "Saw a hair outside the line in a mitre box, and plane to it on a shooting board with a "
    "45 degree stop"
)
_LEANS = {
    "mitre saw": "Turn the saw so that the side at the fence stays the longer one",
    "table saw": "The blade leans over the work: where yours leans the other way, set the stop on "
    "the other side of it",
}
_MEASURED = (
    "The long point comes a full length from the end at the stop, as the length was measured. Both "
    "ends, and the opposite side, are cut at that one stop"
)
_FOUR = (
    "Prove it on four pieces of scrap put together as a small frame: their 8 cuts show 8 times "
    "the error of one"
)


@dataclass(frozen=True, slots=True)
class Way:
    """A machine that cuts an end aslant, how the part lies, what is set beside the stop."""

    station: str
    hold: Hold
    settings: tuple[Setting, ...]
    lies: str


def mitre_cut(site: Site, sites: Iterable[Site], shop: Shop) -> Cut:
    """Return the cut of a mitred end at the first machine that takes the part, else by hand.

    Boards on edge go to one machine if one takes all of `sites`: two angles that are found on two
    machines make no 90 (TRADE B0.2).
    """
    ways = (_at_mitre_saw,) if is_flat(site.feature) else (_tilted, _at_mitre_saw)
    family = [
        each
        for each in sites
        if each.feature.role == "mitre" and is_flat(each.feature) == is_flat(site.feature)
    ]
    of_all = (way for way in ways if all(way(each, shop) is not None for each in family))
    of_this = (way for way in ways if way(site, shop) is not None)
    chosen = next(of_all, None) or next(of_this, None)
    way = chosen(site, shop) if chosen is not None else None
    if way is None:
        return _by_hand(site, shop)
    angle = next(setting for setting in way.settings if setting.axis in {"angle", "tilt"})
    agreed = f"mitres with the {angle.axis} of the {way.station} at {angle.value}"
    settings = list(way.settings)
    if way.hold.at_stop is not None:
        # The long point comes to where the length was cut, and waits for what that waited for.
        stop = Setting("stop", site.part.length, to="near", origin=way.hold.at_stop)
        settings += setting_of.waiting((stop,), "stop", site.part.measure)
    return Cut(
        site=site,
        what="mitre",
        kind="mitre",
        station=way.station,
        settings=setting_of.known_to(shop, way.station, settings),
        hold=way.hold,
        passes=(Pass(),),
        exact=worked(shop, "mitre", each=len(site.copies)),
        deed="Cut the mitres on",
        manner=f", {way.lies}",
        trial=agreed,
        tests=TESTS,
        visit=agreed,
        check=naming.check_of(site.feature),
        details=(
            *_about_stop(site, at_stop=way.hold.at_stop is not None),
            (_LEANS[way.station],),
            (_FOUR,),
        ),
    )


def turned_ways(site: Site, shop: Shop) -> Iterator[Way]:
    """Yield each way in which a machine of the shop cuts an end aslant, the best one first."""
    ways = (_at_mitre_saw,) if is_flat(site.feature) else (_tilted, _at_mitre_saw)
    yield from (found for way in ways if (found := way(site, shop)) is not None)


def _about_stop(site: Site, *, at_stop: bool) -> tuple[Detail, ...]:
    if not at_stop:
        return (("The stop does not reach: cut to the line, and compare opposite sides",),)
    if site.part.untaken("length") is not None:
        return ((_MEASURED,),)
    return (
        (
            "The long point comes ",
            site.part.length,
            " from the end at the stop. Both ends, and the opposite side, are cut at that one stop",
        ),
    )


def _at_mitre_saw(site: Site, shop: Shop) -> Way | None:
    """Return the mitre saw turned to the angle: the part lies flat, or stands on its edge."""
    feature, part = site.feature, site.part
    flat = is_flat(feature)
    wide, high = (part.width, part.thickness) if flat else (part.thickness, part.width)
    # At 45 degrees the blade crosses a board along the diagonal of its width.
    piece = Piece(part.length, wide * DIAGONAL, high)
    if why_not_at_mitre_saw(piece, shop) is not None:
        return None
    outer, other = _sides(feature)
    down = next(
        side for side in _DOWN[flat] if edge_at_fence_behind(side, other, site.handedness) == outer
    )
    longest = shop.stations[MITRE_SAW].limits.get("longest_stop")
    at_stop = other if longest is None or part.length <= longest else None
    lies = "the outer edge at the fence" if flat else "on edge, the outer face at the fence"
    settings = (setting_of.angle("angle", _angle(feature)),)
    return Way(MITRE_SAW, Hold(down, outer, at_stop), settings, lies)


def _tilted(site: Site, shop: Shop) -> Way | None:
    """Return the table saw with its blade tilted: the outer face lies down on the sled."""
    part, sled = site.part, shop.accessory(SLED)
    piece = Piece(part.length, part.width, part.thickness)
    if sled is None or why_not_on_sled(piece, SLED, shop) is not None:
        return None
    if sled.longest is not None and part.length > sled.longest:
        return None
    outer, other = _sides(site.feature)
    fence = edge_at_sled_fence(outer, other, site.handedness)
    height = through_cuts.least_height(part.thickness, SLED, shop)
    if height > through_cuts.highest(shop, tilted=True):
        return None
    blade, _ = through_cuts.saw_blade(shop)
    settings = (
        setting_of.named("cutter", blade),
        setting_of.named("accessory", SLED),
        setting_of.angle("tilt", _angle(site.feature)),
        through_cuts.through_height(part.thickness, SLED, shop, tilted=True),
    )
    return Way("table saw", Hold(outer, fence, other), settings, "the outer face down on the sled")


def _by_hand(site: Site, shop: Shop) -> Cut:
    feature = site.feature
    outer, _ = _sides(feature)
    line: Detail = (
        f"{feature.id}: from the corner of end {feature.surface} and {outer} at 45 degrees, ",
        feature.depth,
        f" back from the end on {OPPOSITE[outer]}",
    )
    return Cut(
        site=site,
        what="mitre",
        kind="mitre",
        station="bench",
        settings=(),
        hold=None,
        passes=(),
        exact=worked(shop, "hand mitre", each=len(site.copies)),
        deed="Saw and shoot the mitres on",
        check=naming.check_of(feature),
        details=(line, (_BY_HAND,)),
    )


def _sides(feature: Feature) -> tuple[str, str]:
    """Return the surface that keeps its full length, and the end that comes to the stop."""
    assert feature.form is not None
    assert feature.form.toward is not None
    return OPPOSITE[feature.form.toward], OPPOSITE[feature.surface]


def _angle(feature: Feature) -> Fraction:
    assert feature.form is not None
    return dict(feature.form.sizes)["angle"]
