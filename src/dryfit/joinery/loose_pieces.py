"""Loose pieces between two butted members, such as dowels: a row of pockets in both of them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from dryfit.diagnostics import Span
from dryfit.geometry.box import Box
from dryfit.joinery.cut import Cut, Placed, bounded


@dataclass(frozen=True, slots=True)
class Pocket:
    """What is cut for each piece: `kind` and `role` as in `Feature`, how deep in each part; mm."""

    kind: str
    role: str
    in_guest: Fraction
    in_host: Fraction


def row_axis(region: Box, axis: int) -> int:
    """Return the axis of the row in a contact face whose normal is `axis`: the longer one."""
    return max((other for other in range(3) if other != axis), key=region.extent)


def spaced(low: Fraction, high: Fraction, count: int, edge: Fraction) -> tuple[Fraction, ...]:
    """Return `count` middles from low to high, equally far from one another.

    `edge` is how far the first and the last stand from the ends; one alone stands in the middle.
    """
    if count == 1:
        return ((low + high) / 2,)
    step = (high - low - 2 * edge) / (count - 1)
    return tuple(low + edge + step * number for number in range(count))


def narrowest(row: Fraction, middles: Sequence[Fraction], wide: Fraction) -> Fraction:
    """Return the least wood in a row from 0 to `row`: between two pockets, or beside the first."""
    between = [two - one - wide for one, two in pairwise(middles)]
    return min([middles[0] - wide / 2, row - middles[-1] - wide / 2, *between])


def in_a_row(
    region: Box, axis: int, middles: Iterable[Fraction], wide: Fraction, thick: Fraction
) -> Iterator[Box]:
    """Yield the mouth of each pocket in the contact face: `wide` along the row, `thick` across."""
    along = row_axis(region, axis)
    (across,) = {0, 1, 2} - {axis, along}
    middle = (region.low[across] + region.high[across]) / 2
    for place in middles:
        box = bounded(region, along, place - wide / 2, place + wide / 2)
        yield bounded(box, across, middle - thick / 2, middle + thick / 2)


def piece_boxes(
    mouths: Iterable[Box], axis: int, side: int, in_host: Fraction, length: Fraction
) -> tuple[Box, ...]:
    """Return the box around each piece; it goes `in_host` into the host, the rest into the guest.

    The guest lies at `side` of the contact face, whose normal is `axis`; `length` is along it.
    """
    boxes: list[Box] = []
    for mouth in mouths:
        host = mouth.low[axis] - side * in_host
        guest = host + side * length
        boxes.append(bounded(mouth, axis, min(host, guest), max(host, guest)))
    return tuple(boxes)


def piece_sizes(piece: Box, region: Box) -> tuple[Fraction, Fraction, Fraction]:
    """Return how long a piece is through the contact face `region`, and its other sizes; mm."""
    axis = next(each for each in range(3) if region.extent(each) == 0)
    thin, wide = sorted(piece.extent(each) for each in range(3) if each != axis)
    return piece.extent(axis), wide, thin


def pockets(
    guest: Placed,
    host: Placed,
    mouths: Iterable[Box],
    facing: tuple[int, int],
    pocket: Pocket,
    span: Span,
) -> tuple[Cut, ...]:
    """Return the pockets of all pieces in both members; `facing` is the host's face."""
    axis, side = facing
    cuts: list[Cut] = []
    for mouth in mouths:
        plane = mouth.low[axis]
        for placed, way, depth in ((host, -side, pocket.in_host), (guest, side, pocket.in_guest)):
            end = plane + way * depth
            box = bounded(mouth, axis, min(plane, end), max(plane, end))
            mate = guest.part if placed is host else host.part
            cuts.append(
                Cut(placed.name, box, pocket.kind, pocket.role, axis, -way, None, mate, span)
            )
    return tuple(cuts)
