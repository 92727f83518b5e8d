"""Mortises and holes: chisel mortiser, drill press, or by hand (TRADE B0, B3)."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from dryfit.geometry.frame import OPPOSITE
from dryfit.joinery.feature import Feature
from dryfit.operations import naming, setting_of
from dryfit.operations.cut import Cut, Site
from dryfit.operations.machine_limits import under_spindle
from dryfit.operations.minutes import worked
from dryfit.operations.sides import edge_at_fence_behind, side_of_end
from dryfit.operations.ways.by_hand import hand_cut, marked_limits, through_deeds
from dryfit.operations.ways.cross_cuts import A_HAIR
from dryfit.plan.operation import Detail
from dryfit.plan.setting import Hold, Pass, Setting
from dryfit.quantities import Display
from dryfit.shop.shop import Cutter, Shop

MORTISER = "mortiser"
DRILL_PRESS = "drill press"
CHISEL_STEP = Fraction(3, 4)
DRILL_STEP = Fraction(9, 10)
"""Plunges overlap: a hole every 3/4 of a chisel, 9/10 of a drill (TRADE B0, common practice)."""
FACES = frozenset({"F", "B", "E", "E2"})


def mortise_cut(site: Site, *, to_marks: bool, shop: Shop) -> Cut:
    """Return the cut of a mortise; its stops stand where the hand of the part puts end R.

    `to_marks` where equal pockets stand at so many places that marks serve better than stops.
    """
    width = site.feature.across[1] - site.feature.across[0]
    if site.feature.surface in FACES:
        for station in (MORTISER, DRILL_PRESS):
            cutter = exact_cutter(station, width, shop)
            if cutter is not None and _within_reach(site, station, "R", shop):
                marks = (marked_limits(site),) if to_marks else ()
                return _plunged(site, station, cutter, marks, shop)
    return hand_cut(site, shop)


def exact_cutter(station: str, width: Fraction, shop: Shop) -> Cutter | None:
    """Return the chisel or drill of exactly that width, or None."""
    if station not in shop.stations:
        return None
    return next((c for c in shop.cutters_at(station) if c.narrowest <= width <= c.widest), None)


def reference_of(surface: str) -> str:
    """Return the surface that a distance across is measured from: E for faces, F for edges."""
    return "E" if surface in {"F", "B"} else "F"


def fence_and_side(site: Site, end: str, throat: Fraction | None = None) -> tuple[str, str]:
    """Return the surface at the fence and the side of the machine where the end's stop stands.

    A cut in the middle between two edges is the same from either, so the part is turned until
    its end is on the left, and one stop serves both hands (TRADE 0.9).  Any other cut keeps the
    reference edge at the fence, and the hand decides the side; only where the machine's `throat`
    does not reach so far is the part turned, and the cut measured from the nearer edge.
    """
    surface = site.feature.surface
    down, reference = OPPOSITE[surface], reference_of(surface)
    across = site.part.width if surface in {"F", "B"} else site.part.thickness
    if site.fence is not None:
        return site.fence, side_of_end(end, down, site.fence, site.handedness)
    if site.feature.across[0] + site.feature.across[1] == across:
        return edge_at_fence_behind(down, end, site.handedness), "left"
    near, far = site.feature.across
    if throat is not None and far > throat and across - near < far:
        reference = OPPOSITE[reference]
    return reference, side_of_end(end, down, reference, site.handedness)


def from_fence(site: Site, fence: str) -> Fraction:
    """Return the distance of a cut's near side from the surface that lies at the fence."""
    near, far = site.feature.across
    if fence in {"E", "F"}:
        return near
    return (site.part.width if fence == "E2" else site.part.thickness) - far


def _throat(station: str, shop: Shop) -> Fraction | None:
    return shop.stations[station].limits.get("throat")


def _within_reach(site: Site, station: str, end: str, shop: Shop) -> bool:
    """Return whether the station holds the part, goes as deep, and reaches it past its column."""
    if site.feature.depth > shop.stations[station].limits["depth"]:
        return False
    fence, _ = fence_and_side(site, end, _throat(station, shop))
    half = (site.feature.across[1] - site.feature.across[0]) / 2
    return under_spindle(site.part.length, from_fence(site, fence) + half, station, shop)


def plunges(feature: Feature, cutter: Fraction, step: Fraction) -> int:
    """Return the plunges along a mortise, both ends first."""
    steps = (feature.along[1] - feature.along[0]) / (cutter * step)
    return -(-steps.numerator // steps.denominator)


def _plunged(
    site: Site, station: str, cutter: Cutter, marks: tuple[Detail, ...], shop: Shop
) -> Cut:
    """Return the cut; `marks` say where it stands when no stops do."""
    feature = site.feature
    by_chisel = station == MORTISER
    width = feature.across[1] - feature.across[0]
    count = plunges(feature, width, CHISEL_STEP if by_chisel else DRILL_STEP)
    down = OPPOSITE[feature.surface]
    fence, side = fence_and_side(site, "R", _throat(station, shop))
    near = from_fence(site, fence)
    settings = [
        setting_of.named("cutter", cutter.name),
        setting_of.plain("depth", feature.depth),
        setting_of.distance("fence", near, width, fence),
    ]
    if not marks:
        settings.append(setting_of.limits(feature.along[0], feature.along[1], "R", side))
    what = naming.what_of(feature)
    deed = "Chop" if by_chisel else "Drill out and square"
    return Cut(
        site=site,
        what=what,
        kind="mortise",
        station=station,
        settings=setting_of.known_to(shop, station, settings),
        hold=Hold(down, fence, None if marks else "R"),
        passes=(Pass(),),
        exact=worked(
            shop,
            "mortise" if by_chisel else "drilled mortise",
            each=len(site.copies),
            per_plunge=count * len(site.copies),
        ),
        deed=f"{deed} the {naming.plural(what)} in",
        manner=", each on its marks" if marks else "",
        trial=f"{cutter.name}, depth {feature.depth}, fence {near}",
        tests=naming.TESTED["mortise"],
        check=naming.CHECKS["mortise"],
        details=(
            (f"{count} plunges each: both ends first, then between",),
            *through_deeds(site),
            *marks,
        ),
    )


def hole_cut(site: Site, *, to_marks: bool, display: Display, shop: Shop) -> Cut:
    """Return the cut of a hole; `to_marks` where the part has too many holes for stops."""
    feature = site.feature
    drill = drill_for(feature, display, shop)
    end, middle = nearest_end(site)
    if (
        drill is None
        or feature.surface not in FACES
        or not _within_reach(site, DRILL_PRESS, end, shop)
    ):
        return hand_cut(site, shop)
    half = drill.widest / 2
    down = OPPOSITE[feature.surface]
    fence, side = fence_and_side(site, end, _throat(DRILL_PRESS, shop))
    if to_marks and from_fence(site, fence) == feature.across[0]:
        fence = reference_of(feature.surface)
    across = from_fence(site, fence) + (feature.across[1] - feature.across[0]) / 2 - half
    settings: list[Setting] = [
        setting_of.named("cutter", drill.name),
        setting_of.plain("depth", feature.depth),
        setting_of.distance("fence", across, drill.widest, fence),
    ]
    if not to_marks:
        stop = setting_of.distance("stop", middle - half, drill.widest, end)
        settings.append(replace(stop, side=side))
    what = naming.what_of(feature)
    return Cut(
        site=site,
        what=what,
        kind="hole",
        station=DRILL_PRESS,
        settings=setting_of.known_to(shop, DRILL_PRESS, settings),
        hold=Hold(down, fence, None if to_marks else end),
        passes=(Pass(),),
        exact=worked(shop, "drill", each=len(site.copies)),
        deed=f"Drill the {naming.plural(what)} in",
        manner=", each on its mark" if to_marks else "",
        check=naming.check_of(feature),
        details=(_middle(site),) if to_marks else (),
    )


def _middle(site: Site) -> Detail:
    middle = sum(site.feature.along, Fraction(0)) / 2
    return (f"{site.feature.id}: middle ", middle, " from R")


def drill_for(feature: Feature, display: Display, shop: Shop) -> Cutter | None:
    """Return the drill for a hole: clear of a screw's shank, or near the size of its pilot.

    Of several the one in the maker's own units, then the nearest.
    """
    if DRILL_PRESS not in shop.stations:
        return None
    diameter = feature.across[1] - feature.across[0]
    below, above = _near_enough(feature, diameter, shop)
    fitting = [
        cutter
        for cutter in shop.cutters_at(DRILL_PRESS)
        if -below <= cutter.widest - diameter <= above
    ]
    return min(
        fitting,
        key=lambda cutter: (
            display.moved(cutter.widest, fitted=True),
            abs(cutter.widest - diameter),
        ),
        default=None,
    )


def _near_enough(feature: Feature, diameter: Fraction, shop: Shop) -> tuple[Fraction, Fraction]:
    if feature.role == "screw hole":
        return Fraction(0), shop.allowances["screw_clearance"]
    if feature.role in {"hole", "peg hole", "dowel hole"}:
        # What goes into a hole that the notes ask for is made to its size.
        return A_HAIR, A_HAIR
    return diameter / 10, diameter / 10


def nearest_end(site: Site) -> tuple[str, Fraction]:
    """Return the end nearer to a hole, and the hole's middle from there."""
    middle = sum(site.feature.along, Fraction(0)) / 2
    from_other = site.part.length - middle
    return ("R2", from_other) if from_other < middle else ("R", middle)
