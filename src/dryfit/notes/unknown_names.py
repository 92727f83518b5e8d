"""A name that nothing bears is told once, at the place where it was most likely mistyped."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

from lark import Token

from dryfit.diagnostics import Diagnostic, Note
from dryfit.notes.mistake import Mistake, Repair
from dryfit.notes.names import canonical, plural
from dryfit.notes.reading.lines import fold
from dryfit.notes.reading.near import nearest
from dryfit.notes.tree import GlueLine, PartsLine, Statement, ValueLine

_CODE = "unknown-name"


def names_used(tokens: Sequence[Token]) -> frozenset[str]:
    """Return the names that a line refers to; the name that it declares is not among them."""
    declares_value = any(token.type in ("_EQ", "_IS") for token in tokens[:3])
    return frozenset(
        str(token.value)
        for index, token in enumerate(tokens)
        if token.type in ("NAME", "VALUE") and not (declares_value and index < 2)
    )


def told_once(
    findings: Sequence[Diagnostic],
    statements: Sequence[Statement],
    used: set[str],
    offer: Callable[[Mistake], Diagnostic],
) -> list[Diagnostic]:
    """Return the findings with one for each unknown name.

    Where several lines use a name that nothing bears, and a name nearly the same is declared and
    used nowhere, the declaration is what was mistyped.  `offer` tries the corrections.
    """
    unknown: dict[str, list[Diagnostic]] = {}
    told: list[Diagnostic] = []
    for finding in findings:
        if finding.code == _CODE and finding.span:
            unknown.setdefault(canonical(finding.span.text()), []).append(finding)
        else:
            told.append(finding)
    for same in unknown.values():
        mistyped = _at_declaration(same, statements, used)
        told.append(offer(mistyped) if mistyped else _at_first_use(same))
    return told


def _at_first_use(same: Sequence[Diagnostic]) -> Diagnostic:
    others = tuple(Note("also here", finding.span) for finding in same[1:])
    return replace(same[0], notes=same[0].notes + others)


def _at_declaration(
    same: Sequence[Diagnostic], statements: Sequence[Statement], used: set[str]
) -> Mistake | None:
    name = _written(same[0])
    spellings = (*(_written(finding) for finding in same), canonical(name), plural(canonical(name)))
    for statement in statements:
        if not isinstance(statement, PartsLine | GlueLine | ValueLine) or statement.name in used:
            continue
        written = _single_spaced(statement.name_span.text())
        if written.lower().startswith(f"{name.lower()} "):
            meant = f"{name},{written[len(name) :]}"
            return _mistyped(statement, meant, "is a comma missing in it?", same)
        near = nearest(written, spellings, most=1) if len(same) > 1 else ()
        if near:
            return _mistyped(statement, near[0], f"did you mean `{near[0]}`?", same)
    return None


def _written(finding: Diagnostic) -> str:
    assert finding.span is not None
    return _single_spaced(finding.span.text())


def _single_spaced(typed: str) -> str:
    # How many blanks a name was typed with must not decide which line is taken for mistyped.
    return " ".join(fold(typed).split())


def _mistyped(
    statement: PartsLine | GlueLine | ValueLine,
    meant: str,
    advice: str,
    same: Sequence[Diagnostic],
) -> Mistake:
    span = statement.name_span
    return Mistake(
        _CODE,
        f"nothing uses `{span.text()}`, and nothing is called `{_written(same[0])}`",
        span,
        (Repair(advice, span, meant),),
        notes=tuple(Note("used here", finding.span) for finding in same),
    )
