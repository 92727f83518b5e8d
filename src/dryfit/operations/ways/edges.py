"""Edges that are chamfered, rounded or moulded: with a router held in the hand, or a plane.

The bit's bearing runs along the edge, so that nothing is set to a mark, and it does not matter how
large the part is or what it is glued into (TRADE B0 PROFILE, K5).
"""

from __future__ import annotations

from fractions import Fraction

from dryfit.geometry.box import Box, spanning
from dryfit.joinery.feature import Feature
from dryfit.operations import naming
from dryfit.operations.cut import Cut, Site
from dryfit.operations.members import all_copies
from dryfit.operations.minutes import METRE, worked
from dryfit.operations.ways.machines import has_hand_router
from dryfit.placing.model import Copy, Model
from dryfit.plan.operation import Detail
from dryfit.shop.shop import Shop

EDGES = frozenset({"chamfer", "round-over", "profile"})
HAND_ROUTER = "hand-router"
"""The key of its caution."""

WHY_EDGES_LAST = "joints are marked and fitted on sharp edges, which the bit takes away"

_ROUND_THE_OPENING: Detail = (
    (
        "Round the opening run the bit with the clock, seen from above, which is against its "
        "turning; its corners stay round: square them with a chisel where they have to be sharp"
    ),
)
_ROUND_THE_OUTSIDE: Detail = (
    (
        "Round the outside run the bit against the clock, over the joints without a stop; take "
        "the sides that show end grain first, then those along the grain"
    ),
)
_ENDS_FIRST: Detail = (
    (
        "Across end grain first, then along the grain, which takes away what broke out; a scrap "
        "clamped behind the last corner keeps it whole"
    ),
)


def is_edge(feature: Feature) -> bool:
    """Return whether the feature takes away an edge along which a bit can run."""
    return feature.role in EDGES


def edge_cut(site: Site, model: Model, shop: Shop) -> Cut:
    """Return the cut of an edge; with a router where the shop has one."""
    feature = site.feature
    routed = has_hand_router(shop)
    metres = _length(feature) * len(site.copies) / METRE
    exact = worked(shop, "profile", per_metre=metres) * (1 if routed else shop.by_hand)
    what = naming.what_of(feature)
    return Cut(
        site=site,
        what=what,
        kind="profile",
        station="bench",
        settings=(),
        hold=None,
        passes=(),
        exact=exact,
        deed=f"{'Rout' if routed else 'Plane'} the {naming.plural(what)} on",
        manner=" with a router held in the hand" if routed else " to gauge lines, and sand it fair",
        check="the edge runs even to its ends, and an offcut shows the size",
        cautions=(HAND_ROUTER,) if routed else (),
        details=(_size(feature), *_manners(site, model, routed=routed)),
    )


def _length(feature: Feature) -> Fraction:
    (start, end), (near, far) = feature.along, feature.across
    return max(end - start, far - near)


def _size(feature: Feature) -> Detail:
    assert feature.form is not None
    sizes = dict(feature.form.sizes)
    named = f"{feature.id}, along the edge of {feature.surface} and {feature.form.toward}: "
    if "radius" in sizes:
        return (named, "radius ", sizes["radius"])
    told: Detail = (named, sizes["width"], " wide, ", sizes["depth"], " deep")
    return (*told, f", {feature.form.profile}") if feature.form.profile else told


def _manners(site: Site, model: Model, *, routed: bool) -> tuple[Detail, ...]:
    if routed and site.feature.after is not None:
        inside = _looks_in(site, model)
        return (_ROUND_THE_OPENING,) if inside else (_ROUND_THE_OUTSIDE,)
    # Which comes first is a question only where edges across the grain are shaped as well.
    ends = any(
        each.after == site.feature.after and _runs_across(each)
        for each in site.part.features
        if is_edge(each)
    )
    return (_ENDS_FIRST,) if ends else ()


def _runs_across(feature: Feature) -> bool:
    (start, end), (near, far) = feature.along, feature.across
    return far - near > end - start


def _looks_in(site: Site, model: Model) -> bool:
    """Return whether an edge of a glued frame stands at its opening, not at its outside.

    Of the two sides that meet there, the one that is no face of the frame looks in or out.
    """
    copy, feature = site.copies[0], site.feature
    assert feature.form is not None
    assert feature.form.toward is not None
    whole = _frame_of(copy, feature, model)
    thin = min(range(3), key=whole.extent)
    region = feature.region(copy.box, copy.frame)
    sides = [region.face] if region.toward is None else [region.face, region.toward]
    axis, side = next((each for each in sides if each[0] != thin), sides[0])
    outside = whole.high[axis] if side > 0 else whole.low[axis]
    return outside != (copy.box.high[axis] if side > 0 else copy.box.low[axis])


def _frame_of(copy: Copy, feature: Feature, model: Model) -> Box:
    for assembly in model.assemblies:
        names = set(all_copies(assembly, model))
        if feature.after in {assembly.name, assembly.stage} and copy.name in names:
            boxes = (each.box for part in model.parts for each in part.copies if each.name in names)
            return spanning(tuple(boxes))
    return copy.box
