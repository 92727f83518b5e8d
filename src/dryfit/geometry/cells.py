"""What carvings leave of a box, cut into convex cells."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from dryfit.geometry.box import Box
from dryfit.geometry.carving import Carving
from dryfit.geometry.convex import Convex, of_box, sides_of


def cells_of(outside: Box, carvings: Sequence[Carving]) -> list[Convex]:
    """Return bodies that fill what carvings leave of a box, none over another."""
    cells = [of_box(outside)]
    for carving in carvings:
        cells = [piece for cell in cells for piece in _without(cell, carving)]
    return cells


def _without(cell: Convex, carving: Carving) -> Iterator[Convex]:
    inner: Convex | None = cell
    aside = []
    for side in sides_of(carving.box):
        if inner is None:
            break
        beyond = inner.cut(side.turned())
        aside += [beyond] if beyond is not None else []
        inner = inner.cut(side)
    if inner is None:
        yield cell
        return
    yield from aside
    for planes in carving.left:
        kept = inner.within(planes)
        if kept is not None:
            yield kept
