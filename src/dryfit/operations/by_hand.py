"""Cuts that no machine of the shop reaches: saw, chisel and router plane at the bench."""

from __future__ import annotations

from fractions import Fraction

from dryfit.joinery.feature import Range
from dryfit.operations import naming
from dryfit.operations.cross_cuts import wide
from dryfit.operations.cut import Cut, Site
from dryfit.operations.minutes import METRE, worked
from dryfit.quantities import Display
from dryfit.shop.shop import Shop

RATES = {
    "end lap": "hand lap",
    "notch": "hand shoulder",
    "cross slot": "hand housing",
    "mortise": "hand mortise",
    "long slot": "hand groove",
    "hole": "drill",
}

DEEDS = {
    "end lap": ("Saw and pare the {} on", ""),
    "notch": ("Saw and pare the {} on", ""),
    "cross slot": ("Saw the sides of the {} on", ", chisel out the waste, level the bottom"),
    "mortise": ("Chop the {} in", ", from both ends to the middle"),
    "long slot": ("Plough the {} in", " by hand"),
    "hole": ("Drill the {} in", " by hand, square to the face"),
}


def hand_cut(site: Site, display: Display, shop: Shop) -> Cut:
    """Return the cut at the bench; it stands on marks, so nothing has to be set."""
    feature = site.feature
    what, kind = naming.what_of(feature), naming.kind_of(feature)
    rate = RATES.get(feature.kind, "hand housing")
    length = max(wide(feature), feature.across[1] - feature.across[0])
    exact = worked(shop, rate, each=len(site.copies), per_metre=length / METRE * len(site.copies))
    deed, manner = DEEDS.get(feature.kind, ("Cut the {} on", " by hand"))
    return Cut(
        site=site,
        what=what,
        kind=kind,
        station="bench",
        settings=(),
        hold=None,
        passes=(),
        exact=exact,
        deed=deed.format(naming.plural(what)),
        manner=manner,
        check=naming.CHECKS.get(kind),
        details=(marked_limits(site, display),),
    )


def marked_limits(site: Site, display: Display) -> str:
    """Return where the lines of a cut stand, from the marks on the wood, and how deep it goes."""
    feature = site.feature
    size = site.part.width if feature.surface in {"F", "B"} else site.part.thickness
    along = between(feature.along, display)
    text = f"{feature.id}: {along} from R, {display.with_unit(feature.depth, fitted=True)} deep"
    if feature.across == (Fraction(0), size):
        return text
    edge = "E" if feature.surface in {"F", "B"} else "F"
    return f"{text}, {between(feature.across, display)} from {edge}"


def between(limits: Range, display: Display) -> str:
    """Return two limits as one reads them off a rule: ``0 to 45 mm``."""
    start = display.shown(limits[0], fitted=True)
    return f"{start} to {display.with_unit(limits[1], fitted=True)}"
