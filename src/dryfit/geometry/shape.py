"""A solid as it is drawn: convex bodies that hide what is behind them, and its edges; mm."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace

from dryfit.geometry.box import Box
from dryfit.geometry.carving import Carving
from dryfit.geometry.cells import cells_of
from dryfit.geometry.convex import Convex, Vector, of_box
from dryfit.geometry.edges import Line, edges_of
from dryfit.geometry.solid import Solid


@dataclass(frozen=True, slots=True)
class Shape:
    """Convex bodies that fill a solid, the box that it was cut from, and the lines seen of it."""

    outside: Convex
    bodies: tuple[Convex, ...]
    lines: tuple[Line, ...]

    def mapped(self, move: Callable[[Vector], Vector]) -> Shape:
        """Return the shape with every point moved, as by a shear."""
        return Shape(
            self.outside.mapped(move),
            tuple(body.mapped(move) for body in self.bodies),
            tuple(line.mapped(move) for line in self.lines),
        )

    def marked(self, lines: Iterable[Line]) -> Shape:
        """Return the shape with more lines on it, such as the mouth of a hole."""
        return replace(self, lines=(*self.lines, *lines))

    def has_wood(self, point: Vector) -> bool:
        """Return whether a point lies inside one of the bodies or on its faces."""
        return any(body.contains(point) for body in self.bodies)


def plain(solid: Solid) -> Shape:
    """Return a box less boxes as a shape."""
    return carved(solid.outside, tuple(Carving(cut) for cut in solid.cuts))


def carved(outside: Box, carvings: Sequence[Carving]) -> Shape:
    """Return a box less carvings as a shape."""
    cells = tuple(cells_of(outside, carvings))
    if any(carving.left for carving in carvings):
        return Shape(of_box(outside), cells, edges_of(outside, carvings, cells))
    edges = Solid(outside, tuple(carving.box for carving in carvings)).edges()
    return Shape(
        of_box(outside),
        cells,
        tuple(Line(_floats(edge.start), _floats(edge.end)) for edge in edges),
    )


def _floats(point: Sequence[object]) -> Vector:
    x, y, z = (float(value) for value in point)  # type: ignore[arg-type]
    return x, y, z
