"""The copies near a box: a piece may have thousands, and each cut asks what stands beside it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from dryfit.geometry.box import Box
from dryfit.joinery.cut import Placed

Row = tuple[float, float, float, float, float, float, Placed]
_A_TOUCH = 1.0


@dataclass(frozen=True, slots=True)
class Surroundings:
    """All copies with their bounds as floats, which are enough to pass over what lies far away."""

    rows: tuple[Row, ...]

    def near(self, box: Box) -> tuple[Placed, ...]:
        """Return the copies that come within a millimetre of a box; the exact question is left."""
        x0, y0, z0 = (float(low) - _A_TOUCH for low in box.low)
        x1, y1, z1 = (float(high) + _A_TOUCH for high in box.high)
        return tuple(
            row[6]
            for row in self.rows
            if row[0] <= x1
            and row[3] >= x0
            and row[1] <= y1
            and row[4] >= y0
            and row[2] <= z1
            and row[5] >= z0
        )


def surroundings(copies: Iterable[Placed]) -> Surroundings:
    """Return the copies ready to be asked for those near a box."""
    return Surroundings(tuple(_row(copy) for copy in copies))


def _row(copy: Placed) -> Row:
    x0, y0, z0 = (float(low) for low in copy.box.low)
    x1, y1, z1 = (float(high) for high in copy.box.high)
    return (x0, y0, z0, x1, y1, z1, copy)
