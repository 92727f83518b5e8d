"""Rabbets along an edge in two cuts of the saw, one face down and one edge down (TRADE B0).

    cut 1, face down: height d, fence near w - c; cut 2, edge down, the kept face at the fence:
    height w, fence near T - d

The strip between them falls off at the second cut, beyond the blade as the fence sees it: in the
other order it would come free between blade and fence, and be thrown back.
"""

from __future__ import annotations

from fractions import Fraction

from dryfit.geometry.frame import OPPOSITE
from dryfit.joinery.feature import Feature
from dryfit.operations.ways.cross_cuts import ON_EDGE
from dryfit.plan.operation import Detail

FACE_DOWN: Detail = (
    "This cut first, face down. The strip beside it stays on: it comes off at the second cut",
)
_EDGE_DOWN = (
    "Stand it on its edge, the face that stays at the fence, and keep it there with a featherboard "
    "or a tall block behind it. The strip falls free on the far side of the blade, never between "
    "blade and fence: stand aside of it, and leave it until the blade has stopped"
)
EDGE_DOWN: Detail = (_EDGE_DOWN,)


def edge_of(feature: Feature, width: Fraction) -> str | None:
    """Return the edge, E or E2, at which a rabbet in a face of a part so wide is open, or None."""
    if feature.kind != "rabbet" or feature.surface not in {"F", "B"}:
        return None
    near, far = feature.across
    if near == 0:
        return "E"
    return "E2" if far == width else None


def fits_two_cuts(feature: Feature, width: Fraction, kerf: Fraction) -> bool:
    """Return whether the two cuts leave a strip between them, and the part can stand on its edge.

    A part wider than 200 mm sways on its edge at a fence (common practice).
    """
    near, far = feature.across
    wide_enough = far - near > kerf and feature.depth > kerf
    return edge_of(feature, width) is not None and wide_enough and width <= ON_EDGE


def face_down(feature: Feature, kerf: Fraction) -> Fraction:
    """Return where the blade's near side stands from E in the first cut, mm."""
    near, far = feature.across
    return far - kerf if near == 0 else near


def edge_down(feature: Feature, thickness: Fraction) -> tuple[str, Fraction]:
    """Return the face at the fence in the second cut, and how far the blade's near side is off."""
    return OPPOSITE[feature.surface], thickness - feature.depth
