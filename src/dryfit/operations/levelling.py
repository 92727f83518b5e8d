"""Laps are planed level before what they lie in is sanded and coated (TRADE C1)."""

from __future__ import annotations

from collections.abc import Iterable

from dryfit.operations.members import all_copies, levelled
from dryfit.placing.model import Coating, Model
from dryfit.plan.operation import Operation, Rule

WHY_LEVEL_FIRST = {
    "sand": "the plane leaves its marks, and the paper takes them out",
    "coat": "the plane would take the finish off again",
}


def level_rules(coating: Coating, rows: Iterable[Operation], model: Model) -> tuple[Rule, ...]:
    """Return the rules from levelling to the sanding and the coats in `rows` of one coating.

    What is finished before a glue-up does not wait for that one, nor for one that takes it in.
    """
    return tuple(
        Rule(f"{assembly.name} / level", row.id, WHY_LEVEL_FIRST[row.kind])
        for assembly in levelled(model)
        if set(all_copies(assembly, model)) & set(coating.copies)
        and assembly.name not in coating.glued_later
        for row in rows
    )
