"""A stopped groove too long for the router table's stops: the router is led along the work.

The part lies clamped to the bench, and the router runs on it with its guide along an edge, or
along a straight batten where the edge is far; it is lowered and lifted at the marks (common
practice).
"""

from __future__ import annotations

from fractions import Fraction

from dryfit.geometry.frame import SURFACES
from dryfit.operations import naming
from dryfit.operations.cut import Cut, Site
from dryfit.operations.minutes import worked
from dryfit.operations.ways.by_hand import marked_limits
from dryfit.operations.ways.edges import HAND_ROUTER
from dryfit.plan.operation import Detail
from dryfit.shop.shop import Cutter, Shop

_FARTHEST = Fraction(150)
"""So far from an edge a guide on two rods still holds its line, mm (common practice)."""

_LEVEL: Detail = (
    "Clamp a straight board beside the work, level with its edge, so that the router does not tip",
)


def guided_cut(
    site: Site, bit: Cutter, times: tuple[int, int], metres: Fraction, shop: Shop
) -> Cut:
    """Return the cut at the bench; `times` are the settings of the guide and the steps of depth."""
    feature, copies = site.feature, len(site.copies)
    settings, depths = times
    runs = settings * depths * copies
    what = naming.what_of(feature)
    steps: tuple[Detail, ...] = ((f"Go to full depth in {depths} steps",),) if depths > 1 else ()
    on_edge = feature.surface not in {"F", "B"}
    return Cut(
        site=site,
        what=what,
        kind=naming.kind_of(feature),
        station="bench",
        settings=(),
        hold=None,
        passes=(),
        exact=worked(shop, "guided router pass", each=runs, per_metre=metres * runs / copies),
        deed=f"Rout, between its marks, the {naming.plural(what)} in",
        manner=" with a router held in the hand",
        check=naming.check_of(feature),
        cautions=(HAND_ROUTER,),
        details=(
            marked_limits(site),
            _guided(site, bit, settings),
            *steps,
            *((_LEVEL,) if on_edge else ()),
        ),
    )


def _guided(site: Site, bit: Cutter, settings: int) -> Detail:
    """Return the bit, and what leads it: the nearer edge, or a batten where both are far."""
    (near, far), (axis, _) = site.feature.across, SURFACES[site.feature.surface]
    edges, whole = (("E", "E2"), site.sizes[1]) if axis == 2 else (("F", "B"), site.sizes[2])
    away, mark = min((near, edges[0]), (whole - far, edges[1]))
    often = "" if settings == 1 else f", in {settings} settings from side to side"
    led = f"its guide along {mark}" if away <= _FARTHEST else "its base along a clamped batten"
    return (f"{bit.name[0].upper()}{bit.name[1:]}, {led}{often}; lower and lift it at the marks",)
