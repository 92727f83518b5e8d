"""What is bought and fitted: when it is ordered, how it goes on, and what it goes in before."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from dryfit.geometry.box import Box
from dryfit.operations.fitting.loose_units import LooseUnit
from dryfit.operations.minutes import tenths, worked
from dryfit.placing.model import Bought, Model
from dryfit.plan.operation import Operation, Rule, Work
from dryfit.shop.shop import Shop

WHY_COVERED = "it goes in before what closes the way to it"
WHY_MEASURED_THEN = "its place is measured when no more is cut there"
WHY_HUNG = "it is held to what hangs already, open and shut"
WHY_ORDERED = "it is ordered by what was measured"

_CHECKS = {
    "hinge": "the screw heads lie flush, and it turns freely",
    "knob": "they sit tight, and in line",
    "handle": "they sit tight, and in line",
    "pull": "they sit tight, and in line",
    "caster": "all of them touch the floor",
    "glide": "all of them touch the floor",
    "foot": "all of them touch the floor",
}
_BETWEEN = frozenset(
    {"stay", "support", "catch", "latch", "lock", "bolt", "hasp", "chain", "cord", "strap"}
)
"""What is fitted to a door or lid and to what carries it, where the two meet (common practice)."""
_INTO_HOLES = frozenset({"pin", "peg", "stud"})


def fit_bought(thing: Bought, shop: Shop) -> Operation:
    """Return the fitting of a bought thing."""
    last = thing.name.rpartition(" ")[2]
    if last in _INTO_HOLES:
        sentence = f"Put the {thing.written} into their holes"
        sentence += f", for the {thing.purpose}" if thing.purpose and not thing.copies else ""
        check = "each goes in to its stop, and all stand level"
    else:
        where = f" {thing.purpose}" if thing.copies else f" to the {thing.purpose}"
        sentence = f"Fit the {thing.written}{where if thing.purpose else ''}"
        free = "it lies free, and nothing presses on its edges"
        check = _CHECKS.get(last, free if _is_inside(thing) else "it sits true and tight")
    return Operation(
        id=f"{thing.name} / fit",
        kind="fit",
        station="bench",
        part=thing.name,
        settings=(),
        work=(Work(thing.name, tuple(copy.name for copy in thing.copies), (), None, ()),),
        tenths=tenths(worked(shop, "fit part", each=thing.count)),
        sentence=sentence,
        check=check,
    )


def ordered_by_measure(model: Model, shop: Shop) -> tuple[Operation, ...]:
    """Return the measuring for what is ordered only then; `Bought.order` speaks of measuring."""
    return tuple(
        _measured(thing, shop)
        for thing in model.bought
        if thing.order is not None and "measured" in thing.order.split()
    )


def _measured(thing: Bought, shop: Shop) -> Operation:
    place = thing.purpose if thing.copies and thing.purpose else "where it goes"
    return Operation(
        id=f"{thing.name} / measure",
        kind="measure",
        station="bench",
        part=thing.name,
        settings=(),
        work=(),
        tenths=tenths(worked(shop, "measure", each=1)),
        sentence=f"Measure the place of the {thing.written} {place}, and order by that: "
        f"{thing.size or 'its size'} is what the plan has",
        splittable=False,
        check="measured at three places; the smallest figure counts",
    )


def before_the_cover(model: Model, units: Iterable[LooseUnit]) -> Iterator[Rule]:
    """Yield: what lies in an opening goes in before a loose part that closes the way to it."""
    inside = [thing for thing in model.bought if _is_inside(thing)]
    for unit in units:
        boxes = [model.copy(name).box for name in unit.copies]
        for thing in inside:
            own = [copy.box for copy in thing.copies]
            if any(_covers(box, each) for box in boxes for each in own):
                yield Rule(f"{thing.name} / fit", f"{unit.name} / fit", WHY_COVERED)


def fitted_to_hung(model: Model, units: Iterable[LooseUnit]) -> Iterator[Rule]:
    """Yield: a stay, catch or lock goes on when the door or lid that it is for hangs."""
    for unit in (each for each in units if each.kind == "hinges"):
        parts = {model.part_of(name) for name in unit.copies}
        names = {unit.name.lower()}
        names |= {name.lower() for part in parts for name in (part.name, part.written)}
        for thing in model.bought:
            between = thing.name.rpartition(" ")[2] in _BETWEEN
            if between and not thing.copies and set(thing.purpose.lower().split(" and ")) & names:
                yield Rule(f"{unit.name} / fit", f"{thing.name} / fit", WHY_HUNG)


def _is_inside(thing: Bought) -> bool:
    return bool(thing.copies) and thing.purpose.startswith("in the ")


def _covers(box: Box, thing: Box) -> bool:
    """Return whether a box lies before the broad side of a flat thing."""
    thin = min(range(3), key=lambda axis: (thing.extent(axis), axis))
    beyond = box.low[thin] >= thing.high[thin] or box.high[thin] <= thing.low[thin]
    return beyond and all(
        box.low[axis] < thing.high[axis] and box.high[axis] > thing.low[axis]
        for axis in range(3)
        if axis != thin
    )
