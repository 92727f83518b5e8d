"""Edges that the notes want left waney, where the plan cannot leave them so (TRADE A2.6)."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.checks.finding import finding
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.placing.model import Model


def check_waney(model: Model) -> Iterator[Diagnostic]:
    """Yield each part whose waney edge is sawn off.

    Findings: waney-sawn-off.
    """
    for part in model.parts:
        if not part.waney:
            continue
        edges = "one edge" if len(part.waney) == 1 else "both edges"
        it = "it" if len(part.waney) == 1 else "them"
        yield finding(
            "A2.6",
            "waney-sawn-off",
            Severity.WARNING,
            f"{part.name}: {edges} shall stay waney, and the plan saws {it} straight",
            part.spans[0] if part.spans else None,
            figures={},
            remedy="leave the word out, or leave out the cuts along that edge at the bench",
        )
