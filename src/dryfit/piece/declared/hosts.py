"""What a line leans upon."""

from __future__ import annotations

from dataclasses import dataclass

from dryfit.diagnostics import Span


@dataclass(frozen=True, slots=True)
class Host:
    """A part, an opening or an assembly that is leaned upon, perhaps only its copies at places."""

    part: str
    places: tuple[str, ...]
    span: Span
