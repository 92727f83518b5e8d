"""What the piece weighs, and each load of it: the glue-ups that are carried as one."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.booklet.text import listed
from dryfit.placing.model import Assembly, Model
from dryfit.placing.weights import Weight, weight_of, whole_weight
from dryfit.wood.weight import weight_words


def weight_sentences(model: Model) -> tuple[str, ...]:
    """Return the weight of the whole, of its loads, and what nothing weighs; empty: all of it."""
    whole = whole_weight(model)
    return tuple(_sentences(model, whole))


def _sentences(model: Model, whole: Weight) -> Iterator[str]:
    unit = model.display.unit
    shown = weight_words(whole.kilograms, unit)
    if whole.kilograms:
        yield f"The piece weighs about {shown}; boards of one wood differ by a tenth and more."
        loads = [
            f"{load.name} about {weight_words(weight_of(model, (load.name,)).kilograms, unit)}"
            for load in _loads(model)
        ]
        if len(loads) > 1:
            yield f"Of its glue-ups, {listed(loads)}."
    if whole.unknown:
        yield f"Not weighed, since nothing tells their weight: {listed(whole.unknown)}."


def _loads(model: Model) -> tuple[Assembly, ...]:
    """Return the glue-ups that go into no other one."""
    inside = {name for assembly in model.assemblies for name in assembly.of}
    return tuple(each for each in model.assemblies if each.name not in inside)
