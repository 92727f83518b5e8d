"""Limits that a line states: of a part's size, of an opening, of the whole piece."""

from __future__ import annotations

from collections.abc import Iterable

from dryfit.diagnostics import Diagnostic, Hint, Severity, Span
from dryfit.notes.tree import LimitLine, PartsLine, SizeRange, Sum
from dryfit.piece.declared import Amount, Host, PieceLimit, SizeLimit
from dryfit.piece.names import Names, full_name
from dryfit.piece.sums import Sums


def declared_limits(
    lines: Iterable[LimitLine], parts: Iterable[PartsLine], sums: Sums, names: Names
) -> tuple[PieceLimit, ...]:
    """Return the limits of the notes: lines of their own first, then those on the parts' lines.

    Findings: unknown-part, limit-upside-down.
    """
    found: list[PieceLimit] = []
    for line in lines:
        subject = None
        if line.subject is not None:
            if line.subject.name not in names.openings and not names.is_part(line.subject):
                continue
            name = full_name(line.subject)
            subject = Host(name, line.subject.places, line.subject.span)
        found.append(PieceLimit(subject, _limit(line, line.why, sums)))
    for part in parts:
        own = Host(part.name, (), part.name_span)
        ranges = (each for each in part.clauses if isinstance(each, SizeRange))
        found += (PieceLimit(own, _limit(each, None, sums)) for each in ranges)
    return tuple(found)


def _limit(words: LimitLine | SizeRange, why: str | None, sums: Sums) -> SizeLimit:
    least, most = _amount(words.least, sums), _amount(words.most, sums)
    if least is not None and most is not None and least.value > most.value:
        _upside_down(words.span, sums)
    return SizeLimit(words.dimension, least, most, why, words.span)


def _amount(amount: Sum | None, sums: Sums) -> Amount | None:
    return None if amount is None else sums.measure(amount, amount.span)


def _upside_down(span: Span, sums: Sums) -> None:
    sums.findings.append(
        Diagnostic(
            "limit-upside-down",
            Severity.ERROR,
            "the least is more than the most",
            span,
            hints=(Hint("write the smaller figure first"),),
        )
    )
