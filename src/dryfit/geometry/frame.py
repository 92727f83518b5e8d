"""The frame of a part inside the piece: which way its reference end, edge and face look.

A part is measured from three reference marks (TRADE 0.2, 0.3): length z from end `R` (the other
end is `R2`), width y from edge `E` (other `E2`), depth from face `F` (other `B`).  A frame says
where these lie in the piece.  Left and right versions of a mirrored part use the same marks, so
their frames differ in handedness and their features do not differ at all.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.geometry.box import AXIS_NAMES, Box

LENGTH, WIDTH, THICKNESS = 0, 1, 2
"""Directions of a part frame: along, across, and into the thickness."""

SURFACES = {
    "R": (LENGTH, 0),
    "R2": (LENGTH, 1),
    "E": (WIDTH, 0),
    "E2": (WIDTH, 1),
    "F": (THICKNESS, 0),
    "B": (THICKNESS, 1),
}
"""Each surface as (direction of its normal, 0 at the reference side or 1 at the other)."""

OPPOSITE = {"R": "R2", "R2": "R", "E": "E2", "E2": "E", "F": "B", "B": "F"}
"""The surface on the other side of the part."""


@dataclass(frozen=True, slots=True)
class Frame:
    """Axis and sign of each part direction: ``axes[LENGTH] == (2, 1)`` runs from R upwards.

    The sign is +1 when the direction runs from the reference mark towards the greater coordinate.
    """

    axes: tuple[tuple[int, int], tuple[int, int], tuple[int, int]]

    def word(self, direction: int) -> str:
        """Return the direction as the contract writes it: ``+z``."""
        axis, sign = self.axes[direction]
        return f"{'+' if sign > 0 else '-'}{AXIS_NAMES[axis]}"

    def handedness(self) -> int:
        """Return +1 for a right-handed frame, -1 for a mirrored one."""
        (a, sign_a), (b, sign_b), (c, sign_c) = self.axes
        even = (a, b, c) in {(0, 1, 2), (1, 2, 0), (2, 0, 1)}
        return sign_a * sign_b * sign_c * (1 if even else -1)

    def surface_facing(self, axis: int, sign: int) -> str:
        """Return the part's surface whose outward normal is that axis and sign."""
        for name, (direction, side) in SURFACES.items():
            own_axis, own_sign = self.axes[direction]
            outward = own_sign if side else -own_sign
            if own_axis == axis and outward == sign:
                return name
        raise ValueError(axis, sign)

    def to_part(self, outer: Box, inner: Box) -> tuple[tuple[Fraction, Fraction], ...]:
        """Return the (from, to) of a box along, across and deep, seen from the part's marks."""
        return tuple(self._range(outer, inner, direction) for direction in range(3))

    def to_piece(self, outer: Box, ranges: tuple[tuple[Fraction, Fraction], ...]) -> Box:
        """Return the box in the piece of ranges given along, across and deep."""
        low, high = list(outer.low), list(outer.high)
        for direction, (start, end) in enumerate(ranges):
            axis, sign = self.axes[direction]
            if sign > 0:
                low[axis], high[axis] = outer.low[axis] + start, outer.low[axis] + end
            else:
                low[axis], high[axis] = outer.high[axis] - end, outer.high[axis] - start
        return Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))

    def _range(self, outer: Box, inner: Box, direction: int) -> tuple[Fraction, Fraction]:
        axis, sign = self.axes[direction]
        if sign > 0:
            return inner.low[axis] - outer.low[axis], inner.high[axis] - outer.low[axis]
        return outer.high[axis] - inner.high[axis], outer.high[axis] - inner.low[axis]


def frames_over(axes: tuple[int, int, int]) -> tuple[Frame, ...]:
    """Return the eight frames with these axes for length, width, thickness: four turns a hand."""
    return tuple(
        Frame(((axes[0], a), (axes[1], b), (axes[2], c)))
        for a in (1, -1)
        for b in (1, -1)
        for c in (1, -1)
    )
