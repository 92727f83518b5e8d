"""A parallel projection: where the viewer stands, and where he sees a point."""

from __future__ import annotations

from dataclasses import dataclass
from math import hypot

from dryfit.geometry.box import Triple
from dryfit.geometry.convex import Vector

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class View:
    """A parallel projection; `towards` points from the piece to the viewer, in whole numbers."""

    towards: tuple[int, int, int]

    def project(self, point: Triple | Vector) -> Point:
        """Return the point on the picture: to the right and up, in mm of the picture plane.

        z is up in the picture, except in the plan view, where y is.
        """
        across, upward, _ = self.axes()
        x, y, z = float(point[0]), float(point[1]), float(point[2])
        return (
            x * across[0] + y * across[1] + z * across[2],
            x * upward[0] + y * upward[1] + z * upward[2],
        )

    def turned(self, point: Triple | Vector) -> Vector:
        """Return the point as the viewer sees it: to the right, up, and towards him; mm."""
        _, _, near = self.axes()
        right, up = self.project(point)
        x, y, z = float(point[0]), float(point[1]), float(point[2])
        return right, up, x * near[0] + y * near[1] + z * near[2]

    def axes(self) -> tuple[Vector, Vector, Vector]:
        """Return the ways to the right, up and to the viewer as unit vectors of the piece."""
        dx, dy, dz = self.towards
        whole = hypot(dx, dy, dz)
        near = dx / whole, dy / whole, dz / whole
        if dx == 0 and dy == 0:
            return (1.0, 0.0, 0.0), (0.0, 1.0 if dz > 0 else -1.0, 0.0), near
        flat = hypot(dx, dy)
        return (
            (-dy / flat, dx / flat, 0.0),
            (-dx * dz / (flat * whole), -dy * dz / (flat * whole), flat / whole),
            near,
        )
