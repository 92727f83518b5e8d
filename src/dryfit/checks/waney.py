"""Edges that the notes want left waney, where the plan cannot leave them so (TRADE A2.6)."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.checks.finding import finding
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.placing.model import Model, Part
from dryfit.stock.boards import lines_for


def check_waney(model: Model) -> Iterator[Diagnostic]:
    """Yield each part whose waney edge is sawn off, or cut into.

    Findings: waney-sawn-off, waney-edge-cut, no-waney-edge.
    """
    for part in model.parts:
        if part.waney:
            yield from _cut_into(part)
            yield from _no_edge(model, part)
        if part.waney or "waney" not in part.wishes:
            continue
        yield finding(
            "A2.6",
            "waney-sawn-off",
            Severity.WARNING,
            f"{part.name} shall have a waney edge, and the plan saws its edges straight",
            part.spans[0] if part.spans else None,
            figures={},
            remedy="leave the word out, or leave out the cuts along that edge at the bench",
        )


def _cut_into(part: Part) -> Iterator[Diagnostic]:
    cut = next((each for each in part.features if each.surface in part.waney), None)
    if cut is None:
        return
    yield finding(
        "A2.6",
        "waney-edge-cut",
        Severity.ERROR,
        f"{part.name}: {cut.id} is cut into an edge that is to stay waney, from which nothing "
        "can be laid out",
        cut.span or (part.spans[0] if part.spans else None),
        figures={},
        remedy="cut into its other edge, let another edge be waney, or leave the word out",
    )


def _no_edge(model: Model, part: Part) -> Iterator[Diagnostic]:
    """Yield a part for which there is wood on hand, but none with so many edges under bark."""
    lines = lines_for(part, model)
    wanted = len(part.waney)
    if not lines or any(line.waney >= wanted for line in lines):
        return
    edges = "two waney edges" if wanted > 1 else "a waney edge"
    words = "waney both edges" if wanted > 1 else "waney one edge"
    yield finding(
        "A2.6",
        "no-waney-edge",
        Severity.WARNING,
        f"{part.name} shall have {edges}, and no board on hand has that",
        part.spans[0] if part.spans else None,
        figures={},
        remedy=f"write `{words}` on the line of a slab that has, or buy one",
    )
