"""Lines that are read, but that no later stage takes up: they are refused, never passed over.

Whoever gives such a line its meaning takes its kind off the list; a test keeps the list short.
"""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.notes.tree import (
    GlueLine,
    Notes,
    PlaceLine,
    Statement,
)

KINDS: tuple[type[Statement], ...] = (PlaceLine,)


def not_yet(notes: Notes) -> Iterator[Diagnostic]:
    """Yield an error for each line of a kind that nothing takes up."""
    for statement in notes.statements:
        if isinstance(statement, KINDS) or _is_new(statement):
            yield Diagnostic(
                "not-yet",
                Severity.ERROR,
                "this line is understood, but nothing is planned from it yet",
                statement.span,
                hints=(Hint("put # in front of it to plan the piece without it"),),
            )


def _is_new(statement: Statement) -> bool:
    """Return whether the line says something that lines of its kind could not say before."""
    if isinstance(statement, GlueLine):
        return bool(statement.glue or statement.pressed or statement.people)
    return False
