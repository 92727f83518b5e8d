"""One way to write a finding of a check."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
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


def told_together(findings: Iterable[Diagnostic]) -> Iterator[Diagnostic]:
    """Yield findings of the form ``part: what is wrong``; what is wrong alike is told once.

    One line of the notes often grooves several parts: they are named together.
    """
    alike: dict[tuple[object, ...], list[Diagnostic]] = {}
    for each in findings:
        fact = each.message.partition(": ")[2]
        cause = (each.code, each.severity, each.span, fact, each.hints)
        alike.setdefault(cause, []).append(each)
    for same in alike.values():
        names = [each.message.partition(": ")[0] for each in same]
        fact = same[0].message.partition(": ")[2]
        yield replace(same[0], message=f"{listed(names)}: {fact}")


def listed(words: Sequence[str]) -> str:
    """Return ``a``, ``a and b`` or ``a, b and c``."""
    return " and ".join(filter(None, (", ".join(words[:-1]), words[-1])))
