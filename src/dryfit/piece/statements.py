"""The statements of one kind among all of the notes."""

from __future__ import annotations

from typing import TypeVar

from dryfit.notes.tree import Notes

Line = TypeVar("Line")


def lines_of(notes: Notes, kind: type[Line]) -> list[Line]:
    """Return the statements of a kind, in the order of their lines."""
    return [line for line in notes.statements if isinstance(line, kind)]


def first_line(notes: Notes, kind: type[Line]) -> Line | None:
    """Return the first statement of a kind, or None."""
    return next((line for line in notes.statements if isinstance(line, kind)), None)
