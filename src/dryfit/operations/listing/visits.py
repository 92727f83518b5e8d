"""Which cuts belong in one visit because their parts have to agree (TRADE A3.4, E3; M23, J12)."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from dryfit.placing.model import Model
from dryfit.plan.operation import Operation

AGREEING = {"thickness": "planer", "length": "table saw"}
"""Kinds that agree only when set once, and the machine where that holds."""

_IN_ONE_VISIT = {
    "thickness": "parts of one thickness go through the planer in one visit",
    "length": "parts of one length are cut at one stop in one visit",
    "coat": "what gets the same coat is coated in one visit",
    "groove": "grooves for one panel are cut in one visit",
    "mitre": "all mitres are sawn at one angle in one visit",
    "fingers": "fingers of one width are cut over one jig in one visit",
    "mortise": "slots of one depth are cut in one visit",
    "tenon cheek": "tenons of one thickness are cut in one visit",
    "lap": "laps of one height are cut in one visit",
    "housing": "housings of one depth are cut in one visit",
}
"""What is said of a group by the first of these kinds that is in it: laps may have housings."""


def one_visit(operations: tuple[Operation, ...], model: Model) -> tuple[Operation, ...]:
    """Return the operations with equal thicknesses, and equal lengths of mates, kept together.

    Going back to a setting is not the same as never having left it.  Where the notes wish one
    part finished before another, its own cuts come apart from the other's.
    """
    wished = {
        end.subject for wish in model.wishes for end in (wish.first, wish.then) if end.verb is None
    }
    groups: dict[str, list[str]] = {}
    for operation in operations:
        name = _group(operation)
        if name is not None and operation.part not in wished:
            groups.setdefault(name, []).append(operation.id)
    of = {
        member: name for name, members in groups.items() if len(members) > 1 for member in members
    }
    return tuple(
        replace(operation, together=of[operation.id]) if operation.id in of else operation
        for operation in operations
    )


def _group(operation: Operation) -> str | None:
    if AGREEING.get(operation.kind) != operation.station:
        return None
    axis = "thickness" if operation.kind == "thickness" else "stop"
    tokens = [setting.token() for setting in operation.settings if setting.axis == axis]
    return f"{operation.kind} {tokens[0]}" if tokens else None


def visit_words(operations: Iterable[Operation]) -> str:
    """Return why the operations of a together group are done in one visit."""
    kinds = {operation.kind for operation in operations}
    return next(words for kind, words in _IN_ONE_VISIT.items() if kind in kinds)
