"""Regions of a virtual blank: unions of boxes in the part's own coordinates, compared exactly."""

from collections.abc import Iterable
from fractions import Fraction
from itertools import pairwise, product

Range = tuple[Fraction, Fraction]
Box = tuple[Range, Range, Range]
"""Ranges along from R, across from E, deep from F; in mm."""

SURFACES = {"R": (0, 0), "R2": (0, 1), "E": (1, 0), "E2": (1, 1), "F": (2, 0), "B": (2, 1)}
OPPOSITE = {"R": "R2", "R2": "R", "E": "E2", "E2": "E", "F": "B", "B": "F"}


def clipped(box: Box, sizes: tuple[Fraction, ...]) -> Box | None:
    """The part of a box that lies in the blank, or None."""
    ranges = tuple(
        (max(low, Fraction(0)), min(high, size))
        for (low, high), size in zip(box, sizes, strict=True)
    )
    if any(low >= high for low, high in ranges):
        return None
    return ranges[0], ranges[1], ranges[2]


def measured_from(surface: str, limits: Range, sizes: tuple[Fraction, ...]) -> tuple[int, Range]:
    """Direction and range of distances that are measured from a surface into the part."""
    direction, side = SURFACES[surface]
    size = sizes[direction]
    low, high = limits
    return direction, (size - high, size - low) if side else (low, high)


def minus(boxes: Iterable[Box], taken: Iterable[Box]) -> list[Box]:
    """What is left of the boxes where nothing was taken; cells of a grid, so it is exact."""
    row, gone = list(boxes), list(taken)
    cuts = [
        sorted({edge for box in (*row, *gone) for edge in box[direction]}) for direction in range(3)
    ]
    alongs, acrosses, depths = (list(pairwise(edges)) for edges in cuts)
    cells = product(alongs, acrosses, depths)
    return [cell for cell in cells if any(inside(cell, b) for b in row) and not any_in(cell, gone)]


def any_in(cell: Box, boxes: Iterable[Box]) -> bool:
    """Whether a cell lies in one of the boxes."""
    return any(inside(cell, box) for box in boxes)


def inside(cell: Box, box: Box) -> bool:
    """Whether a box lies in another."""
    return all(
        low <= start and end <= high for (start, end), (low, high) in zip(cell, box, strict=True)
    )
