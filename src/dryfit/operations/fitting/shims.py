"""Equal gaps by equal spacers: what the shop has is stacked up to the gap (TRADE K7)."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.operations.fitting.loose_units import LooseUnit, box_of
from dryfit.operations.words import listed, spoken
from dryfit.placing.model import Model
from dryfit.plan.operation import Detail
from dryfit.shop.shop import Shop

CLOSE = Fraction(1, 10)
"""How far in mm a stack may be off: a tenth is less than a card, and nobody sees it; ours."""
WIDEST = Fraction(10)
"""A gap in mm from which nothing is shimmed: it is room, and no gap; ours."""
_WAYS = ("from side to side", "from front to back", "in height")

Stack = tuple[tuple[str, int], ...]


def stack_for(gap: Fraction, stock: Mapping[str, Fraction]) -> Stack | None:
    """Return the fewest spacers that come within a tenth of a gap, or None where none do.

    Of equally many those that come nearest.  `stock` maps a spacer's name to its thickness in mm.
    """
    thickest_first = sorted(stock.items(), key=lambda each: (-each[1], each[0]))
    found = [
        (sum(counts), abs(total - gap), counts)
        for counts, total in _stacks(gap + CLOSE, [size for _, size in thickest_first])
        if abs(total - gap) <= CLOSE and any(counts)
    ]
    if not found:
        return None
    _, _, best = min(found)
    names = (name for name, _ in thickest_first)
    return tuple((name, count) for name, count in zip(names, best, strict=True) if count)


def _stacks(
    most: Fraction, sizes: Sequence[Fraction]
) -> Iterator[tuple[tuple[int, ...], Fraction]]:
    if not sizes:
        yield (), Fraction(0)
        return
    size = sizes[0]
    for count in range(int(most // size) + 1):
        for rest, total in _stacks(most - count * size, sizes[1:]):
            yield (count, *rest), count * size + total


def gap_details(
    unit: LooseUnit, units: Sequence[LooseUnit], model: Model, shop: Shop
) -> tuple[Detail, ...]:
    """Return, for each gap round a unit in its opening, what holds it open while it is fitted."""
    found: dict[tuple[Fraction, int], None] = {}
    for gap, axis in _gaps(unit, units, model):
        found.setdefault((gap, axis))
    return tuple(_told(gap, axis, shop) for gap, axis in found)


def _told(gap: Fraction, axis: int, shop: Shop) -> Detail:
    stack = stack_for(gap, shop.shims)
    with_what = (
        "a strip machined to it"
        if stack is None
        else listed(spoken(count, name) for name, count in stack)
    )
    return ("Gap ", gap, f" {_WAYS[axis]}: shim it with {with_what}, the same at each place")


def _gaps(
    unit: LooseUnit, units: Sequence[LooseUnit], model: Model
) -> Iterator[tuple[Fraction, int]]:
    """Yield the gaps towards walls that are measured, and towards what stands beside it."""
    measures = [each for name in unit.copies for each in model.part_of(name).measures]
    walls = {(name, each.name.rpartition(" ")[2]) for each in measures for name in each.walls}
    wider = {each.name.rpartition(" ")[2] for each in measures if each.taken is not None}
    boxes = [box_of(unit.copies, model)]
    if not unit.glued:
        boxes = [model.copy(name).box for name in unit.copies]
    beside = [
        box_of(other.copies, model)
        for other in units
        if other is not unit and other.onto == unit.onto
    ]
    for axis, word in enumerate(("width", "depth", "height")):
        around = [model.copy(name).box for name, of in sorted(walls) if of == word]
        if not around:
            continue
        for box in boxes:
            neighbours = [*around, *beside, *(each for each in boxes if each is not box)]
            low = [box.low[axis] - each.high[axis] for each in _facing(box, neighbours, axis)]
            high = [each.low[axis] - box.high[axis] for each in _facing(box, neighbours, axis)]
            # On paper the far side of an opening that was measured stands where it was drawn.
            for gaps in (low,) if word in wider else (low, high):
                gap = min((each for each in gaps if each > 0), default=WIDEST)
                if gap < WIDEST:
                    yield gap, axis


def _facing(box: Box, others: Sequence[Box], axis: int) -> Iterator[Box]:
    for other in others:
        if all(
            box.low[each] < other.high[each] and other.low[each] < box.high[each]
            for each in range(3)
            if each != axis
        ):
            yield other
