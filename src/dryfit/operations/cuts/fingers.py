"""Box joints: sockets cut over a jig whose pin takes the last one, or by hand (TRADE B13).

The jig is a board screwed to the guide of the sled or mitre gauge.  Its pin is as thick as a finger
and stands one finger from the cutter, so that the pin is a stop: the first board's edge touches it,
the second's has a finger between, and every socket that is cut goes over the pin for the next.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.joinery.feature import Feature
from dryfit.operations import naming, setting_of
from dryfit.operations.cut import Cut, Site
from dryfit.operations.minutes import worked
from dryfit.operations.sides import edge_at_sled_fence
from dryfit.operations.ways import machines
from dryfit.plan.operation import Detail
from dryfit.plan.setting import Hold, Pass
from dryfit.quantities import Display
from dryfit.shop.shop import Shop

ZERO = Fraction(0)
EDGE = "E"
_TWO_AT_A_TIME = (
    "Cut all boards that begin alike before the others, two at a time, edges level: hold them "
    "against the guide and down on the table in each pass"
)
_TIPS = (
    "Set the height by the mate itself: the tips come out level with its face or a hair proud, "
    "never short"
)


@dataclass(frozen=True, slots=True)
class Jig:
    """The machine and the cutter under a jig; `family` is the cutter's name in the shop file."""

    station: str
    accessory: str | None
    cutter: str
    base: Fraction


def finger_cut(site: Site, display: Display, shop: Shop) -> Cut | None:
    """Return the cut of a socket over a jig, with all sockets of its end, or None if by hand."""
    feature, ends = site.feature, sockets_of(site.feature, site)
    finger = wide(feature)
    jig = jig_for(site, finger, display, shop)
    starts = [each.along[0] for each in ends]
    if jig is None or starts[0] not in {ZERO, finger}:
        return None
    begins = starts[0]
    down = feature.surface
    fence = edge_at_sled_fence(down, EDGE, site.handedness)
    settings = [setting_of.named("cutter", jig.cutter), setting_of.angle("tilt")]
    if jig.accessory is not None:
        settings.append(setting_of.named("accessory", jig.accessory))
    settings.append(setting_of.height(feature.depth + jig.base))
    settings.append(setting_of.distance("stop", finger, finger, EDGE))
    agreed = f"fingers {finger} with {jig.cutter} on the {jig.station}"
    return Cut(
        site=site,
        what=naming.what_of(feature),
        kind=naming.kind_of(feature),
        station=jig.station,
        settings=setting_of.known_to(shop, jig.station, settings),
        hold=Hold(down, fence, EDGE),
        passes=_passes(starts, finger),
        exact=worked(shop, "finger socket", each=len(site.copies)),
        deed="Cut the finger sockets on",
        trial=f"{agreed}, {feature.depth} deep",
        tests=naming.TESTED["fingers"],
        visit=agreed,
        check=naming.check_of(feature),
        details=(*_jig_details(finger, begins), (_TWO_AT_A_TIME,), (_TIPS,)),
    )


def jig_for(site: Site, finger: Fraction, display: Display, shop: Shop) -> Jig | None:
    """Return where a socket of that width is cut in one pass, the saw before the router table."""
    part, depth = site.part, site.feature.depth
    cutter = machines.dado_set(shop)
    if cutter is not None and machines.widest_dado(cutter, finger) == finger >= cutter.narrowest:
        machine = machines.dado_on_sled(shop, finger, display)
        fits = depth + machine.base <= machine.highest
        tallest = shop.stations[machine.station].limits.get("longest_on_end", part.length)
        if (
            fits
            and part.length <= tallest
            and part.length >= machine.shortest
            and part.thickness >= machine.thinnest
        ):
            return Jig(machine.station, machine.accessory, machine.cutter, machine.base)
    station = shop.stations.get(machines.ROUTER_TABLE)
    if station is None or part.length > station.limits["longest"]:
        return None
    bits = [each for each in shop.cutters_at(machines.ROUTER_TABLE) if each.widest == finger]
    thin = part.thickness < station.limits.get("thinnest", ZERO)
    if not bits or thin or depth > station.limits["depth"]:
        return None
    return Jig(machines.ROUTER_TABLE, None, bits[0].name, ZERO)


def sockets_of(feature: Feature, site: Site) -> tuple[Feature, ...]:
    """Return all sockets of the end that a socket is in, from the reference edge on."""
    hand = site.copies[0].hand
    alike = (
        each
        for each in site.part.features
        if (each.role, each.surface) == (feature.role, feature.surface) and hand in each.hands
    )
    return tuple(sorted(alike, key=lambda each: each.along))


def wide(feature: Feature) -> Fraction:
    """Return how wide a socket in an end is."""
    return feature.along[1] - feature.along[0]


def _passes(starts: list[Fraction], finger: Fraction) -> tuple[Pass, ...]:
    first, *others = starts
    return (
        Pass(spacer=finger - first if first < finger else None),
        *(Pass(moved=start - finger) for start in others),
    )


def _jig_details(finger: Fraction, begins: Fraction) -> tuple[Detail, ...]:
    board = (
        "The jig: a straight board screwed to the guide, with a slot of its own from the cutter; "
        "glue a hardwood pin "
    )
    fit = (
        " from the first.  The pin is the stop.  Fingers too tight: shift the board so that the "
        "pin comes nearer to the cutter, by half of what is wrong; too loose: away from it"
    )
    jig: Detail = (board, finger, " thick into a second slot ", finger, fit)
    if begins == finger:
        return jig, ("It begins with a finger: edge E against the pin for the first socket",)
    spacer = " thick between pin and edge E for the first socket"
    return jig, ("It begins with a socket: a spacer ", finger, spacer)
