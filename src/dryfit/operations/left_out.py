"""Cuts for which the plan has no step: never dropped, but told with the moment for them.

TRADE B0.5, H51.
"""

from __future__ import annotations

from collections.abc import Mapping

from dryfit.diagnostics import Diagnostic, Findings, Hint, Severity, Span
from dryfit.joinery.feature import Feature
from dryfit.operations.edges import is_edge
from dryfit.operations.members import all_copies
from dryfit.operations.words import all_of, listed
from dryfit.placing.model import Model, Part

Row = tuple[Part, Feature]

_JOINTS = frozenset(
    {
        "key slot",
        "mitre",
        "plate recess",
        "pocket hole",
    }
)
"""Cuts that are no boxes, and have a way of cutting of their own."""


def has_operation(feature: Feature) -> bool:
    """Return whether a way of cutting is known: for square sides, edges, and slants of joints."""
    return feature.form is None or is_edge(feature) or feature.role in _JOINTS


def left_out(model: Model) -> Findings:
    """Return, once for a line, that the plan has no step for its cuts, and when they are made.

    Findings: cut-not-in-plan.
    """
    lines: dict[Span | None, list[Row]] = {}
    for part in model.parts:
        for feature in part.features:
            if not has_operation(feature):
                lines.setdefault(feature.span, []).append((part, feature))
    return tuple(_finding(model, rows) for rows in lines.values())


def _finding(model: Model, rows: list[Row]) -> Diagnostic:
    first = rows[0][1]
    parts: Mapping[str, Part] = {part.name: part for part, _ in rows}
    where = listed(all_of(part) for part in parts.values())
    moment = _moment(model, tuple(parts.values()), first)
    return Diagnostic(
        "cut-not-in-plan",
        Severity.WARNING,
        f"the plan has no step for the {first.role} on {where}",
        first.span,
        rule="B0",
        hints=(Hint(f"{moment}, make it to the sizes of this line"),),
    )


def _moment(model: Model, parts: tuple[Part, ...], feature: Feature) -> str:
    # Joinery comes before shaping, while faces are parallel and square (B0.5); shaping before the
    # dry fit, since nothing in a glued frame lies flat on a machine.
    if feature.after is not None:
        return f"after glue up {feature.after}, when the glue is hard, and before it is sanded"
    own = {copy.name for part in parts for copy in part.copies}
    stage = next(
        (each.stage for each in model.assemblies if own & set(all_copies(each, model))), None
    )
    names = listed(part.written.lower() for part in parts)
    joined = any(other.mate is not None for part in parts for other in part.features)
    after = f"the joints of the {names}" if joined else f"the {names} to size"
    return f"after you cut {after}, and before {f'the dry fit of {stage}' if stage else 'sanding'}"
