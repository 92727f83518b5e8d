"""One way to write a finding of a check."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Note, Severity, Span


def finding(
    rule: str,
    code: str,
    severity: Severity,
    message: str,
    span: Span | None,
    *,
    figures: Mapping[str, Fraction],
    remedy: str,
    notes: tuple[Note, ...] = (),
) -> Diagnostic:
    """Return a diagnostic with its trade rule, its figures in mm and one remedy."""
    return Diagnostic(
        code,
        severity,
        message,
        span,
        rule=rule,
        figures=figures,
        notes=notes,
        hints=(Hint(remedy),),
    )
