"""Holes that are slotted so that a broad part may move: said where they are drilled and driven."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from dryfit.placing.model import Model
from dryfit.placing.screw_slots import ScrewSlots, screw_slots
from dryfit.plan.operation import Detail, Operation


def with_slotted_holes(operations: Iterable[Operation], model: Model) -> tuple[Operation, ...]:
    """Return the operations, those at holes across the grain of a broad part with their slots.

    One row holds the part, and the holes of the others are slotted (TRADE B17, B18, G8).
    """
    slots = screw_slots(model.parts, model.joints)
    if not slots:
        return tuple(operations)
    return tuple(
        replace(each, details=(*each.details, *_details(each, slots))) for each in operations
    )


def _details(operation: Operation, slots: Iterable[ScrewSlots]) -> Iterator[Detail]:
    for each in slots:
        own = [work.features for work in operation.work if work.part == each.passed]
        slotted = [name for names in own for name in names if name in each.holes]
        if slotted:
            names = " and ".join(dict.fromkeys(slotted))
            yield (
                f"{names}: slot each across the grain of the {each.mover} to ",
                each.slot,
                " long, so that it can move",
            )
        elif operation.kind == "fit" and operation.part == each.passed:
            yield (
                "Pull the screws in round holes tight, and those in slots only so far that the ",
                f"{each.mover} can move: it does so by ",
                each.moves,
                " over the year",
            )
