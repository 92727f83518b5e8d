"""Cuts that do not stand square to their part: which way they lean, and by how much.

The box of such a cut is right in the design, where everything stands upright.  On the part itself
its lines, or its drill, lean toward one surface or two, by so many mm for each mm; the splay of a
leg is told so at its shoulder (the line falls toward a surface) and at the hole that it goes into
(the foot stands out toward a surface).
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from dryfit.geometry.frame import OPPOSITE, Frame
from dryfit.geometry.lean import Lean, steepest
from dryfit.joinery.form import Side

Slopes = tuple[tuple[str, Fraction], ...]
"""Surfaces of a part with the slope toward each, in mm per mm, more than nothing."""


@dataclass(frozen=True, slots=True)
class PlacedSplay:
    """The slopes of a cut in the piece: toward which side of which axis, in mm per mm."""

    slopes: tuple[tuple[Side, Fraction], ...]

    def seen_from(self, frame: Frame) -> Slopes:
        """Return the slopes as the part with that frame has them."""
        return tuple(sorted((frame.surface_facing(*side), slope) for side, slope in self.slopes))


def splay_of(lean: Lean) -> PlacedSplay:
    """Return the slopes toward the sides to which the foot of a leaning leg stands out."""
    return PlacedSplay(
        tuple(
            ((axis, 1 if rise > 0 else -1), abs(rise))
            for axis, rise in enumerate(lean.per_down)
            if rise
        )
    )


@dataclass(frozen=True, slots=True)
class Sloped:
    """A splayed leg as it is cut: longer than the design, since its slope is; all in mm.

    `wide` and `deep` are the slopes along its width and through its thickness.  Both ends are
    sawn square: `length` from end to end, the middle of the shoulder `shoulder` from the foot end
    R.  Of that the lowest corner stands `over` below the floor until the feet are levelled, so far
    above the bench the foot is scribed.  `tenon` of what is left is in the seat, the rest stands
    out.
    """

    wide: Fraction
    deep: Fraction
    length: Fraction
    shoulder: Fraction
    over: Fraction
    tenon: Fraction

    @property
    def stands_out(self) -> Fraction:
        """Return how much of the tenon stands out of the seat, along the middle of the leg."""
        return self.length - self.shoulder - self.tenon


def sloped(
    lean: Lean,
    across: tuple[tuple[Fraction, Fraction], tuple[Fraction, Fraction]],
    heights: tuple[Fraction, Fraction],
    tenon: Fraction,
    step: Fraction,
) -> Sloped:
    """Return a leg as it is cut.

    `across` are width and thickness with the slope along each; `heights` those of the shoulder and
    of what the tenon goes through; `tenon` its diameter, `step` what lengths are rounded up to.
    The foot keeps a few mm below its lowest line, and the tenon stands out by as much beside its
    highest, so that both can be sawn off whole (common practice).
    """
    (wide, by_wide), (deep, by_deep) = across
    drop = wide * by_wide + deep * by_deep
    over = _up(drop + _SPARE, step)
    # Square to the leg, the lowest corner is below the middle of the foot by half of the drop.
    below = lean.along(over) - drop / 2
    shoulder = below + lean.along(heights[0])
    inside = lean.along(heights[1])
    beyond = tenon / 2 * steepest((by_wide, by_deep)) + _SPARE
    return Sloped(
        wide=by_wide,
        deep=by_deep,
        length=_up(shoulder + inside + beyond, step),
        shoulder=shoulder,
        over=over,
        tenon=inside,
    )


def outward_sides(slopes: Iterable[Slopes]) -> frozenset[str]:
    """Return the surfaces of a leg that look outwards, to which its shoulder lines fall."""
    return frozenset(surface for each in slopes for surface, _ in each)


def shoulder_corners(
    outward: frozenset[str], leg: Sloped, across: tuple[Fraction, Fraction]
) -> dict[frozenset[str], Fraction]:
    """Return how far from R the shoulder of a splayed leg stands at each of its four corners.

    `outward` are the surfaces that look outwards, `across` width and thickness.  Tipped outwards
    as a whole, a leg has its outer corner higher than its inner one: a level line through both
    is nearer to the foot on the outside.
    """
    return {
        frozenset((edge, face)): leg.shoulder
        - _sign(edge, outward) * across[0] * leg.wide / 2
        - _sign(face, outward) * across[1] * leg.deep / 2
        for edge in ("E", "E2")
        for face in ("F", "B")
    }


def _sign(surface: str, outward: frozenset[str]) -> int:
    return 1 if surface in outward else -1 if OPPOSITE[surface] in outward else 0


_SPARE = Fraction(3)


def _up(length: Fraction, step: Fraction) -> Fraction:
    return -(-length // step) * step
