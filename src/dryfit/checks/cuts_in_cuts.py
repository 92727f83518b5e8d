"""TRADE H36: cuts with no mate that run into one another."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from dryfit.checks.cuts_in_joints import EASED, Own, lone_cuts_of
from dryfit.checks.finding import finding
from dryfit.checks.regions import solid_parts
from dryfit.diagnostics import Diagnostic, Note, Severity
from dryfit.joinery.feature import Feature
from dryfit.placing.model import Model, Part


def check_cuts_in_cuts(model: Model) -> Iterator[Diagnostic]:
    """Yield, once for two lines of the notes, holes and slots in other cuts.

    Findings: cut-into-cut.
    """
    for part in solid_parts(model):
        yield from _in(model, part)


def _in(model: Model, part: Part) -> Iterator[Diagnostic]:
    told: set[frozenset[object]] = set()
    for hand in part.hands():
        copy = next(copy for copy in part.copies if copy.hand == hand)
        own = [each for each in lone_cuts_of(part, copy) if each[0].role not in EASED]
        for (one, _), (two, _) in _meeting(own):
            cause: frozenset[object] = frozenset({one.span, two.span})
            if cause not in told and {"hole", "slot"} & {one.role, two.role}:
                told.add(cause)
                yield _into_cut(model, part, one, two)


def _meeting(own: Sequence[Own]) -> Iterator[tuple[Own, Own]]:
    # In the order of their left sides only cuts that begin before one ends can meet it.
    in_order = sorted(own, key=lambda each: (each[1].box.low, each[0].id))
    for index, one in enumerate(in_order):
        for two in in_order[index + 1 :]:
            if two[1].box.low[0] >= one[1].box.high[0]:
                break
            if one[1].meets(two[1].box) and two[1].meets(one[1].box):
                yield one, two


def _into_cut(model: Model, part: Part, one: Feature, two: Feature) -> Diagnostic:
    first, second = sorted((one, two), key=lambda each: each.role not in {"hole", "slot"})
    lost = min(first.depth, second.depth)
    same = first.role == second.role and first.span == second.span
    notes = (Note("the other cut", second.span),) if second.span and not same else ()
    met = "another one" if same else f"the {second.role}"
    return finding(
        "H36",
        "cut-into-cut",
        Severity.WARNING,
        f"{part.name}: {first.role} runs into {met}, {model.display.shown(lost)} deep",
        first.span,
        figures={"depth": lost},
        remedy="move one of them, or make it shallower",
        notes=notes,
    )
