"""Mitres: two members meet at a corner, each cut off at 45 degrees (TRADE B12).

Both run to the outside of the corner.  The corner is a box of which each keeps the half on its own
side of the diagonal, from the outer corner to the inner one: the pair closes without a void.
"""

from __future__ import annotations

from dryfit.diagnostics import Span
from dryfit.geometry.box import Box
from dryfit.geometry.mitre_angles import polygon_mitre
from dryfit.joinery.cut import Cut, Placed
from dryfit.joinery.feature import Feature
from dryfit.joinery.form import PlacedForm, Side

ANGLE = polygon_mitre(4)
"""Degrees from square: half of what is missing to a straight line at a square corner."""


def is_flat(feature: Feature) -> bool:
    """Return whether a mitre is cut across the face, as on a picture frame, not across the edge."""
    return feature.form is not None and feature.form.toward in {"E", "E2"}


def closes(guest: Placed, host: Placed, region: Box) -> bool:
    """Return whether the corner is a square that both fill over their whole third size."""
    along, other = guest.axes[0], host.axes[0]
    third = 3 - along - other
    square = region.extent(along) == region.extent(other)
    filled = ((guest, other), (host, along), (guest, third), (host, third))
    return square and all(each.box.extent(axis) == region.extent(axis) for each, axis in filled)


def mitre_cuts(
    guest: Placed, host: Placed, region: Box, sides: tuple[int, int], span: Span | None
) -> tuple[Cut, Cut]:
    """Return both cuts; `sides` are those of the ends of guest and host, -1 or 1.

    Each is cut into its end, and runs out at the face that looks inwards.
    """
    ends: tuple[Side, Side] = ((guest.axes[0], sides[0]), (host.axes[0], sides[1]))
    return (
        _cut(guest, host, region, ends, span),
        _cut(host, guest, region, ends[::-1], span),
    )


def _cut(
    placed: Placed, mate: Placed, region: Box, ends: tuple[Side, Side], span: Span | None
) -> Cut:
    (axis, side), (inner, outward) = ends
    form = PlacedForm("mitre", (("angle", ANGLE),), (inner, -outward))
    return Cut(placed.name, region, "mitre", "mitre", axis, side, None, mate.part, span, form=form)
