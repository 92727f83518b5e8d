"""TRADE H-b, what holds what: H28 and joints in no glue-up."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.checks.finding import finding
from dryfit.diagnostics import Diagnostic, Findings, Severity
from dryfit.placing.model import Model

_LOOSE = frozenset({"rest"})


def check_held(model: Model) -> Findings:
    """Return the parts that nothing holds, and glued joints that no glue-up closes."""
    return (*_held(model), *_in_a_stage(model))


def _held(model: Model) -> Iterator[Diagnostic]:
    """H28: every part is joined to another one."""
    if len(model.parts) < 2:
        return
    for part in model.parts:
        names = {copy.name for copy in part.copies}
        kinds = {joint.kind for joint in model.joints if {joint.guest, joint.host} & names}
        if any(
            fitting.part == part.name and fitting.kind == "buttons" for fitting in model.fittings
        ):
            continue
        if not kinds:
            yield finding(
                "H28",
                "held-by-nothing",
                Severity.ERROR,
                f"{part.name} is held by nothing",
                part.spans[0] if part.spans else None,
                figures={},
                remedy=f"say what it is joined to, such as `{part.written} into ...: housing`",
            )
        elif kinds <= _LOOSE:
            yield finding(
                "H28",
                "only-lies-there",
                Severity.WARNING,
                f"{part.name} only lies there; nothing fastens it",
                part.spans[0] if part.spans else None,
                figures={},
                remedy="add `: screws` or `: buttons` to the line that lays it on",
            )


def _in_a_stage(model: Model) -> Iterator[Diagnostic]:
    """A glued joint needs a glue-up that closes it."""
    closed = {joint for assembly in model.assemblies for joint in assembly.joints}
    told: set[tuple[str, str]] = set()
    for joint in model.joints:
        if not joint.glued or joint.id in closed:
            continue
        pair = (model.part_of(joint.guest).name, model.part_of(joint.host).name)
        if pair in told:
            continue
        told.add(pair)
        yield finding(
            "H28",
            "in-no-glue-up",
            Severity.ERROR,
            f"the joint of {pair[0]} and {pair[1]} is glued, but no glue-up closes it",
            joint.span,
            figures={},
            remedy=f"add a line such as `glue up frame: {pair[1]}, {pair[0]}`",
        )
