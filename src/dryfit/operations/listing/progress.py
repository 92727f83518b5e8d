"""What the notes say is done, compared with the operations that there are."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from difflib import get_close_matches

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.placing.model import Model
from dryfit.plan.operation import Operation


def progress_findings(model: Model, operations: Sequence[Operation]) -> Iterator[Diagnostic]:
    """Yield what is wrong with the lines ``done`` and ``spoiled``, and that the plan is whole.

    Findings: done-unknown-operation, done-more-than-there-are, progress-not-planned.
    """
    by_id = {operation.id: operation for operation in operations}
    for done in model.done:
        named = _named(done.operation, operations)
        if not named:
            near = get_close_matches(done.operation, list(by_id), n=1)
            hint = f"did you mean `{near[0]}`?" if near else "look it up in the booklet"
            yield Diagnostic(
                "done-unknown-operation",
                Severity.ERROR,
                f"no operation is called `{done.operation}`",
                done.span,
                hints=(Hint(hint),),
            )
        elif done.count is not None and done.count > _copies(named):
            yield Diagnostic(
                "done-more-than-there-are",
                Severity.ERROR,
                f"{done.count} are done, but `{done.operation}` is done to {_copies(named)}",
                done.span,
                hints=(Hint("write how many of them are done, or leave the number out for all"),),
            )
    spans = [each.span for each in model.done] + [each.span for each in model.spoiled]
    if spans:
        yield Diagnostic(
            "progress-not-planned",
            Severity.NOTICE,
            "the order of work is printed whole: what is done is not taken off it, and what is "
            "spoiled is not added",
            min(spans),
            hints=(Hint("tick off on paper what is done"),),
        )


def _named(name: str, operations: Sequence[Operation]) -> tuple[Operation, ...]:
    """Return the operation of that id, or those that it is parted into: by boards, say."""
    whole = tuple(each for each in operations if each.id == name)
    return whole or tuple(
        each for each in operations if each.board_cuts and each.id.startswith(f"{name} / ")
    )


def _copies(named: Sequence[Operation]) -> int:
    return sum(len(work.copies) for operation in named for work in operation.work)
