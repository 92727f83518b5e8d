"""Boards of a box whose four sides slope: how a mitred end is cut, from the board lying flat.

The corner is a plumb plane at 45 degrees in plan, whatever the sides slope.  So at each point of a
mitred end the cut is as far back from the long point as that point stands in from the top outer
edge, seen from above: by the sine of the slope for each mm down the board, and by its cosine for
each mm through it (plane geometry).
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.geometry.lean import angle_of, rounded_root
from dryfit.geometry.mitre_angles import CompoundMitre, compound_mitre

_UPRIGHT = 90
_SIDES = 4


@dataclass(frozen=True, slots=True)
class SlopingEnd:
    """A compound mitre, its long point at the outer face and the top edge; mm to 1/1000.

    `lower` is how far it goes back there over the width of the outer face, `inner` over the
    thickness along the top edge; where the inner face meets the lower edge it goes back by both.
    `high` is how high the board stands with square edges, `stands_off` how much the lower edge
    rises from its outer corner to its inner one.  `angles` are those of a saw that turns and tilts.
    """

    lower: Fraction
    inner: Fraction
    high: Fraction
    stands_off: Fraction
    angles: CompoundMitre


def sloping_end(slope: Fraction, width: Fraction, thickness: Fraction) -> SlopingEnd:
    """Return how a board of this width along its slope is mitred; `slope` in mm out per mm up."""
    square = 1 + slope * slope
    stands_off = rounded_root((thickness * slope) ** 2 / square)
    return SlopingEnd(
        lower=rounded_root((width * slope) ** 2 / square),
        inner=rounded_root(thickness**2 / square),
        high=rounded_root(width**2 / square) + stands_off,
        stands_off=stands_off,
        angles=compound_mitre(_SIDES, _UPRIGHT - angle_of(slope)),
    )
