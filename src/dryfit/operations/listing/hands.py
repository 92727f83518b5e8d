"""How many people a deed takes because of what is lifted in it (TRADE C2.2, F2; K).

A machine is fed with it, it is set into a glue-up, or laid in its place.  Who has to reach all
joints of a glue-up at once is told by the notes, or by the glue's time (`gluing.glue_up`).
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from dryfit.operations.words import in_a_word
from dryfit.placing.hands import LONG, ONE_PERSON, hands_needed
from dryfit.placing.model import Model
from dryfit.placing.weights import weight_of
from dryfit.plan.operation import Detail, Operation
from dryfit.wood.weight import weight_words

FED = frozenset({"mitre saw", "band saw", "jointer", "planer", "table saw", "router table"})
"""Machines that stand still, so that the wood has to be moved."""
_HEAVIEST = Fraction(1300, 10**9)
"""kg/mm3: no wood of a bench is heavier, so that a light piece needs no weighing."""


@dataclass(frozen=True, slots=True)
class _Load:
    """What one lift of a thing takes: how many people, and the words why."""

    people: int
    why: Detail


def with_hands(operations: tuple[Operation, ...], model: Model) -> tuple[Operation, ...]:
    """Return the operations; what one cannot lift alone says so, and why."""
    loads = dict(_loads(model))
    if not loads:
        return operations
    return tuple(_with_others(operation, loads, model) for operation in operations)


def _with_others(operation: Operation, loads: Mapping[str, _Load], model: Model) -> Operation:
    lifted = [loads[name] for name in _lifted(operation, model) if name in loads]
    most = max(lifted, key=lambda load: load.people, default=None)
    if most is None or most.people <= operation.hands:
        return operation
    return replace(operation, hands=most.people, details=(*operation.details, most.why))


def _lifted(operation: Operation, model: Model) -> tuple[str, ...]:
    """Return the names of what is lifted: glue-ups by their own, copies by that of their part."""
    subject = operation.id.partition(" / ")[0]
    if operation.kind == "glue up":
        of = {each.name: each.of for each in model.assemblies}
        parts = {copy.name: part.name for part in model.parts for copy in part.copies}
        return tuple(parts.get(name, name) for name in of.get(subject, ()))
    if operation.kind == "fit" or operation.station in FED:
        return (subject,)
    return ()


def _loads(model: Model) -> Iterator[tuple[str, _Load]]:
    """Yield every glue-up and part of which one copy takes more than one to lift."""
    boxes = (part.length * part.width * part.thickness * len(part.copies) for part in model.parts)
    light = sum(boxes, Fraction(0)) * _HEAVIEST <= ONE_PERSON
    for assembly in model.assemblies:
        long = max(assembly.box.extent(axis) for axis in range(3))
        if not light or long > LONG:
            yield from _load(assembly.name, (assembly.name,), long, model)
    for part in model.parts if not light else ():
        # A long part lies on the table or a stand while it is fed: only its weight counts.
        yield from _load(part.name, (part.copies[0].name,), Fraction(0), model)


def _load(
    name: str, copies: tuple[str, ...], long: Fraction, model: Model
) -> Iterator[tuple[str, _Load]]:
    kilograms = weight_of(model, copies).kilograms
    people = hands_needed(kilograms, long)
    number = in_a_word(people)
    if kilograms > ONE_PERSON:
        weighs = weight_words(kilograms, model.display.unit)
        yield name, _Load(people, (f"Takes {number} people: the {name} weighs about {weighs}",))
    elif people > 1:
        yield name, _Load(people, (f"Takes {number} people: the {name} is ", long, " long"))
