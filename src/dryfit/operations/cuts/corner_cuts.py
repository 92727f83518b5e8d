"""Fingers, tails and pins by hand: marked, sawn and chopped at the bench (TRADE B13-B15)."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from dryfit.joinery.dovetails import pins_from
from dryfit.joinery.feature import Feature
from dryfit.kinds.roles import FINGER, PIN, TAIL
from dryfit.operations import naming
from dryfit.operations.cut import Cut, Site
from dryfit.operations.cuts.fingers import sockets_of
from dryfit.operations.minutes import METRE, worked
from dryfit.plan.operation import Detail
from dryfit.shop.shop import Shop

_GANG = "Clamp boards with the same tails together, ends and edges level, and saw them at once"
_TRANSFER = (
    "Stand each board in the vice, lay its own tails on its end, inner faces inwards, edges level, "
    "and knife round them; number the corner on both; saw on the waste side of the lines"
)
_HALF_WAY = "Chop from both faces, each to half of the thickness"


DOVETAIL_JIG = "dovetail jig"
_BY_JIG = (
    "Rout both boards in the jig as its manual says, its fingers set to the places in the picture; "
    "a jig with a fixed pitch makes its own: then choose the width of the boards by it"
)


def in_a_jig(site: Site, shop: Shop) -> Cut:
    """Return the cut of a socket between tails or pins with a router in the shop's jig (B14)."""
    feature = site.feature
    sawn = corner_by_hand(site, shop)
    blind = feature.role == PIN and is_blind(site)
    rate = "jig half-blind pins" if blind else "jig dovetails"
    share = worked(shop, rate, per_metre=site.part.width / METRE)
    line = sawn.details[0]
    return replace(
        sawn,
        exact=share * len(site.copies) / len(sockets_of(feature, site)),
        deed=f"Rout the {sawn.what} on",
        manner=" with the router in the dovetail jig",
        trial=DOVETAIL_JIG,
        tests=2,
        check="two test corners shut by hand, level at faces and edges",
        cautions=("router-jig",),
        details=(line, (_BY_JIG,)),
    )


def corner_by_hand(site: Site, shop: Shop) -> Cut:
    """Return the cut of one socket at the bench, with the lines of all sockets of its end."""
    feature = site.feature
    ends = sockets_of(feature, site)
    kind = naming.kind_of(feature)
    return Cut(
        site=site,
        what=naming.what_of(feature),
        kind=kind,
        station="bench",
        settings=(),
        hold=None,
        passes=(),
        exact=_exact(site, len(ends), shop) * len(site.copies),
        deed=f"Saw and chop the {naming.what_of(feature)} on",
        check=naming.check_of(feature),
        details=_details(site, ends),
    )


def is_blind(site: Site) -> bool:
    """Return whether sockets end behind a lap, so that they do not reach through the board."""
    return site.feature.across != (Fraction(0), site.part.thickness)


def _exact(site: Site, count: int, shop: Shop) -> Fraction:
    """Return the tenths for one socket: its share of what its whole end takes."""
    if site.feature.role == FINGER:
        return worked(shop, "hand finger socket", each=1)
    if site.feature.role == TAIL:
        rate = "hand tails"
    else:
        rate = "hand half-blind pins" if is_blind(site) else "hand pins"
    return worked(shop, rate, per_metre=site.part.width / METRE) / count


def _details(site: Site, ends: tuple[Feature, ...]) -> tuple[Detail, ...]:
    feature = site.feature
    line: Detail = (
        f"End {feature.surface}, for the {feature.mate}: shoulder line ",
        feature.depth,
        " from the end, gauged from the mate itself; ",
    )
    if feature.role == FINGER:
        return ((*line, "waste from E: ", *_places(ends)), (_HALF_WAY,))
    if feature.role == TAIL:
        slopes = (*line, "waste on the end grain from E: ", *_places(ends), *_slope(ends, feature))
        return (slopes, (_GANG,), (_HALF_WAY,))
    return (_plain(line), (_TRANSFER,), _blind(site) if is_blind(site) else (_HALF_WAY,))


def _plain(line: Detail) -> Detail:
    """Return the gauge line of a pin board, whose waste the tails themselves will mark."""
    *words, last = line
    assert isinstance(last, str)
    return (*words, last.rstrip("; "))


def _blind(site: Site) -> Detail:
    low, high = site.feature.across
    return (
        "The sockets go ",
        high - low,
        " deep from the inner face and stop before the lap of ",
        site.part.thickness - (high - low),
        ": saw slanting down to both lines, chop out the corner that the saw leaves",
    )


def _places(ends: tuple[Feature, ...]) -> Detail:
    """Return where the waste stands on the end grain, in order from E."""
    words: Detail = ()
    for turn, each in enumerate(ends):
        low, high = at_the_end(each)
        words = (*words, *((", ",) if turn else ()), low, " to ", high)
    return words


def at_the_end(feature: Feature) -> tuple[Fraction, Fraction]:
    """Return the sides of a socket on the end grain, where one between tails is narrow."""
    low, high = feature.along
    if feature.flare is None or feature.flare.toward != feature.surface:
        return low, high
    return low + feature.flare.low, high - feature.flare.high


def _slope(ends: tuple[Feature, ...], feature: Feature) -> Detail:
    lean = max(
        (2 * side for each in ends if each.flare for side in (each.flare.low, each.flare.high)),
        default=Fraction(0),
    )
    if not lean:
        return ()
    slope = pins_from(lean / feature.depth)
    return (f"; each side of a tail slopes 1 in {slope}, so that the waste widens by ", lean)
