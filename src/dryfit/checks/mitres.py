"""TRADE G8: wide solid members in a mitre open it when the wood moves."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.checks.finding import finding
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.joinery.mitre import is_flat
from dryfit.placing.model import Model, Part

_WIDE = Fraction(90)


def check_mitres(model: Model) -> Iterator[Diagnostic]:
    """Yield, once for two parts, mitres of wide solid members.  Findings: mitre-wide."""
    told: set[tuple[str, str]] = set()
    for joint in model.joints:
        if joint.kind != "mitre" or not joint.glued:
            continue
        pair = model.part_of(joint.guest), model.part_of(joint.host)
        names = (pair[0].name, pair[1].name)
        wide = max(part.width for part in pair)
        if names in told or wide <= _WIDE or not all(_moves(part) for part in pair):
            continue
        told.add(names)
        shown = model.display.shown
        yield finding(
            "G8",
            "mitre-wide",
            Severity.WARNING,
            f"{names[0]} and {names[1]} are mitred {shown(wide)} wide: solid wood opens the inner "
            "corner when it shrinks, the outer one when it swells",
            joint.span,
            figures={"width": wide, "limit": _WIDE},
            remedy=f"make them {shown(_WIDE)} wide or less, or write `half lap` or `tenon`",
        )


def _moves(part: Part) -> bool:
    flat = any(feature.role == "mitre" and is_flat(feature) for feature in part.features)
    return flat and part.stock == "solid"
