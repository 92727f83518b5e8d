"""A solid as a box minus boxes: volume, cells, true edges; exact millimetres."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import product

from dryfit.geometry.box import Box, Triple

Cell = tuple[int, int, int]


@dataclass(frozen=True, slots=True)
class Edge:
    """A straight edge along axis 0, 1 or 2, from its lower to its higher end."""

    axis: int
    start: Triple
    end: Triple


@dataclass(frozen=True, slots=True)
class Grid:
    """A solid cut along every face of its cuts: coordinates per axis, and the filled cells.

    Cell (i, j, k) lies between coordinates i and i + 1 of axis 0, and so on.
    """

    coordinates: tuple[tuple[Fraction, ...], tuple[Fraction, ...], tuple[Fraction, ...]]
    filled: frozenset[Cell]

    def box(self, cell: Cell) -> Box:
        """Return the cell as a box in mm."""
        xs, ys, zs = self.coordinates
        i, j, k = cell
        return Box((xs[i], ys[j], zs[k]), (xs[i + 1], ys[j + 1], zs[k + 1]))


@dataclass(frozen=True, slots=True)
class Solid:
    """The outside box less the cuts, which may overlap one another and stick out of it."""

    outside: Box
    cuts: tuple[Box, ...] = ()

    def cut(self, box: Box) -> Solid:
        """Return the solid with one more box removed."""
        return Solid(self.outside, (*self.cuts, box))

    def contains(self, point: Triple) -> bool:
        """Return whether the point lies inside, off every face of the outside and of the cuts."""
        inside = all(
            self.outside.low[axis] < point[axis] < self.outside.high[axis] for axis in range(3)
        )
        return inside and not any(
            all(cut.low[axis] <= point[axis] <= cut.high[axis] for axis in range(3))
            for cut in self.cuts
        )

    def volume(self) -> Fraction:
        """Return the volume in mm3."""
        return sum((box.volume() for box in self.cells()), Fraction(0))

    def cells(self) -> tuple[Box, ...]:
        """Return boxes that fill the solid without overlap, in order of their low corners."""
        grid = self.grid()
        return tuple(grid.box(cell) for cell in sorted(grid.filled))

    def grid(self) -> Grid:
        """Return the solid as filled cells of the grid that its faces make."""
        inner = tuple(cut for cut in (self.outside.overlap(cut) for cut in self.cuts) if cut)
        boxes = (self.outside, *inner)
        xs, ys, zs = (
            tuple(sorted({side[axis] for box in boxes for side in (box.low, box.high)}))
            for axis in range(3)
        )
        places = tuple({value: at for at, value in enumerate(axis)} for axis in (xs, ys, zs))
        filled = set(product(*(range(len(axis) - 1) for axis in (xs, ys, zs))))
        for cut in inner:
            spans = (
                range(places[axis][cut.low[axis]], places[axis][cut.high[axis]])
                for axis in range(3)
            )
            filled.difference_update(product(*spans))
        return Grid((xs, ys, zs), frozenset((i, j, k) for i, j, k in filled))

    def edges(self) -> tuple[Edge, ...]:
        """Return every edge where two faces meet at an angle, each as long as it runs straight.

        The seams that the grid makes in a flat face are no edges.
        """
        grid = self.grid()
        return tuple(edge for axis in range(3) for edge in _edges_along(grid, axis))

    def split(self) -> tuple[Box, ...]:
        """Return boxes that fill the solid without overlap, far fewer than its cells."""
        boxes = [self.outside]
        for cut in self.cuts:
            boxes = [piece for box in boxes for piece in _beside(box, cut)]
        return tuple(boxes)

    def largest_boxes(self) -> tuple[Box, ...]:
        """Return the boxes inside the solid that no other such box contains, sorted.

        They overlap and cover the solid; each inner point lies inside one of them, off its faces.
        """
        boxes = {self.outside}
        for cut in self.cuts:
            hit = {box for box in boxes if box.overlap(cut)}
            pieces = {piece for box in hit for piece in _around(box, cut)}
            kept = boxes - hit
            # A box that was not hit lies in no piece, or it would have lain in a box that was.
            boxes = kept | {piece for piece in pieces if _stands_alone(piece, kept | pieces)}
        return tuple(sorted(boxes, key=lambda box: (box.low, box.high)))


def _edges_along(grid: Grid, axis: int) -> Iterator[Edge]:
    first, second = ((1, 2), (0, 2), (0, 1))[axis]
    lines: dict[tuple[int, int], list[int]] = {}
    for (a, b), along in sorted(_quadrants(grid, axis, first, second).items()):
        for step, filled in sorted(along.items()):
            # Of the four cells round a grid line two side by side make a flat face.
            if len(filled) in {1, 3} or filled in ({0, 3}, {1, 2}):
                lines.setdefault((a, b), []).append(step)
    along_axis = grid.coordinates[axis]
    for (a, b), steps in lines.items():
        for begin, stop in _runs(steps):
            ends = []
            for at in (begin, stop):
                point = [Fraction(0)] * 3
                point[axis] = along_axis[at]
                point[first] = grid.coordinates[first][a]
                point[second] = grid.coordinates[second][b]
                ends.append((point[0], point[1], point[2]))
            yield Edge(axis, ends[0], ends[1])


def _quadrants(
    grid: Grid, axis: int, first: int, second: int
) -> dict[tuple[int, int], dict[int, set[int]]]:
    """Return, for each grid line along the axis and each step of it, which quadrants are filled."""
    around: dict[tuple[int, int], dict[int, set[int]]] = {}
    for cell in grid.filled:
        step, a, b = cell[axis], cell[first], cell[second]
        for quadrant, corner in enumerate(((a, b), (a + 1, b), (a, b + 1), (a + 1, b + 1))):
            around.setdefault(corner, {}).setdefault(step, set()).add(quadrant)
    return around


def _runs(steps: list[int]) -> Iterator[tuple[int, int]]:
    begin = previous = steps[0]
    for step in steps[1:]:
        if step != previous + 1:
            yield begin, previous + 1
            begin = step
        previous = step
    yield begin, previous + 1


def _around(box: Box, cut: Box) -> Iterator[Box]:
    """Yield what is left of the box on each side of the cut, each piece as large as it can be."""
    for axis in range(3):
        if box.low[axis] < cut.low[axis]:
            yield Box(box.low, _with(box.high, axis, cut.low[axis]))
        if cut.high[axis] < box.high[axis]:
            yield Box(_with(box.low, axis, cut.high[axis]), box.high)


def _beside(box: Box, cut: Box) -> Iterator[Box]:
    """Yield what is left of the box beside the cut, each piece once."""
    if box.overlap(cut) is None:
        yield box
        return
    low, high = box.low, box.high
    for axis in range(3):
        if low[axis] < cut.low[axis]:
            yield Box(low, _with(high, axis, cut.low[axis]))
            low = _with(low, axis, cut.low[axis])
        if cut.high[axis] < high[axis]:
            yield Box(_with(low, axis, cut.high[axis]), high)
            high = _with(high, axis, cut.high[axis])


def _with(corner: Triple, axis: int, value: Fraction) -> Triple:
    changed = list(corner)
    changed[axis] = value
    return changed[0], changed[1], changed[2]


def _stands_alone(box: Box, boxes: set[Box]) -> bool:
    return not any(other != box and other.contains(box) for other in boxes)
