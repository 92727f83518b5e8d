"""A front fixed on a drawer that runs: shimmed to equal gaps, screwed from inside (K7, K8)."""

from __future__ import annotations

from fractions import Fraction

from dryfit.operations.fitting.loose_units import LooseUnit, box_of
from dryfit.operations.fitting.shims import stack_for
from dryfit.operations.words import listed, spoken
from dryfit.placing.model import Model
from dryfit.plan.operation import Detail
from dryfit.shop.shop import Shop

UP = 2


def is_false_front(unit: LooseUnit, model: Model) -> bool:
    """Return whether a unit is a part in an opening that is screwed from what is behind it."""
    parts = {model.part_of(name) for name in unit.copies}
    return all(part.opening for part in parts) and any(
        feature.role == "screw hole" and feature.mate in {part.name for part in parts}
        for joint in unit.joints
        for feature in model.part_of(joint.host).features
    )


def front_sentence(unit: LooseUnit, screws: int, model: Model) -> str:
    """Return how the front comes to its place."""
    return (
        f"Push the drawer in and stand {unit.words} before it in the {_opening(unit, model)}, on "
        "shims and between shims. Hold it with double-sided tape or hot glue, draw the drawer out "
        f"with it, and drive {spoken(screws, 'screw')} from inside"
    )


def front_details(unit: LooseUnit, model: Model, shop: Shop) -> tuple[Detail, ...]:
    """Return how thick the shims are on each way, and that a pilot hole may be bored anew."""
    rows: list[Detail] = []
    for axis, where in ((0, "at each side"), (UP, "below and above")):
        gap = _gap(unit, model, axis)
        if gap is None or gap <= 0:
            continue
        found = stack_for(gap, shop.shims) or ()
        stack = listed(spoken(count, name) for name, count in found)
        made_of = f", such as {stack}" if stack else ": plane a strip to it"
        rows.append((f"Shims {where} ", gap, made_of))
    rows.append(("Where a pilot hole is not met, bore one through the hole in the drawer",))
    return tuple(rows)


def _opening(unit: LooseUnit, model: Model) -> str:
    return model.part_of(unit.copies[0]).opening or "opening"


def _gap(unit: LooseUnit, model: Model, axis: int) -> Fraction | None:
    figure = model.figures.get(f"{_opening(unit, model)}.{('width', 'depth', 'height')[axis]}")
    if figure is None:
        return None
    return (figure.value - box_of(unit.copies, model).extent(axis)) / 2
