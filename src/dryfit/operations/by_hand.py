"""Cuts that no machine of the shop reaches: saw, chisel and router plane at the bench."""

from __future__ import annotations

from fractions import Fraction

from dryfit.operations import naming
from dryfit.operations.cross_cuts import wide
from dryfit.operations.cut import Cut, Site
from dryfit.operations.minutes import METRE, worked
from dryfit.plan.operation import Detail
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


def hand_cut(site: Site, shop: Shop) -> Cut:
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
        details=(marked_limits(site),),
    )


def marked_limits(site: Site) -> Detail:
    """Return where the lines of a cut stand, from the marks on the wood, and how deep it goes."""
    feature = site.feature
    size = site.part.width if feature.surface in {"F", "B"} else site.part.thickness
    start, end = feature.along
    named = f"{feature.id}: "
    lengthwise: Detail = (named, start, " to ", end, " from R, ", feature.depth, " deep")
    if feature.across == (Fraction(0), size):
        return lengthwise
    near, far = feature.across
    edge = "E" if feature.surface in {"F", "B"} else "F"
    return (*lengthwise, ", ", near, " to ", far, f" from {edge}")
