"""Why a plan is refused: the faults of its rehearsal as findings at the lines they are about."""

from __future__ import annotations

from dataclasses import replace

from dryfit.diagnostics import Diagnostic, Findings, Hint, Note, Severity, Source, Span, once
from dryfit.placing.model import Model
from dryfit.plan.plan import Plan
from dryfit.rehearsal.fault import Fault

CODE = "rehearsal-failed"
_FIRST = Note("this goes wrong first; what is told of later steps may follow from it")
_ADVICE = Hint(
    "this is a mistake of dryfit and not of your notes: please report it together with them; "
    "until it is mended, `--unrehearsed` prints the plan as it is, for you to check step by step"
)


def refusals(faults: tuple[Fault, ...], plan: Plan, model: Model) -> Findings:
    """Return an error for each fault; the first in the order of the steps also says what to do."""
    lines = _lines(model)
    piece = _piece_line(model.source)
    found = once(_refusal(fault, _about(fault, plan, lines) or piece) for fault in faults)
    if not found:
        return ()
    notes = found[0].notes if len(found) == 1 else (*found[0].notes, _FIRST)
    return (replace(found[0], notes=notes, hints=(_ADVICE,)), *found[1:])


def _refusal(fault: Fault, span: Span | None) -> Diagnostic:
    return Diagnostic(
        code=CODE,
        severity=Severity.ERROR,
        message=f"{_where(fault)}: {fault.message}",
        span=span,
        notes=(Note(f"needed, for {fault.reason.value}: {fault.needed}"),),
    )


def _where(fault: Fault) -> str:
    operation = "" if fault.operation is None else f"`{fault.operation}`"
    if fault.step is None:
        return operation or "when all steps are done"
    return f"step {fault.step}, {operation}" if operation else f"step {fault.step}"


def _about(fault: Fault, plan: Plan, lines: dict[str, Span]) -> Span | None:
    """Return the line of the part or the glue-up that the step works on."""
    for step in plan.steps:
        for operation in step.operations:
            # What is told of a whole step is told at its first operation.
            if operation.id == fault.operation or (
                fault.operation is None and step.number == fault.step
            ):
                subject = operation.id.partition(" / ")[0]
                return lines.get(subject) or lines.get(operation.part)
    return None


def _lines(model: Model) -> dict[str, Span]:
    found = {part.name: part.spans[0] for part in model.parts if part.spans}
    for assembly in model.assemblies:
        found.setdefault(assembly.name, assembly.span)
    return found


def _piece_line(source: Source) -> Span | None:
    for number, line in enumerate(source.lines(), start=1):
        if line.lower().split()[:1] == ["piece"]:
            start = len(line) - len(line.lstrip())
            return Span(source, number, start + 1, len(line.rstrip()) + 1)
    return None
