"""A mistake on a line, before its corrections were tried."""

from __future__ import annotations

from dataclasses import dataclass

from dryfit.diagnostics import Hint, Note, Severity, Span


@dataclass(frozen=True, slots=True)
class Repair:
    """What could be written instead of the place; an empty place is where it would be put in.

    It becomes a hint with a corrected line if that line can be read.  If it cannot, the message
    alone is given where `stands_alone` or where the line can be read further than before, else
    nothing.
    """

    message: str
    span: Span
    text: str
    stands_alone: bool = False


@dataclass(frozen=True, slots=True)
class Mistake:
    """One mistake with its place and, in order, what may be done about it.

    A `guess` is only told when one of its repairs helps.
    """

    code: str
    message: str
    span: Span
    advice: tuple[Hint | Repair, ...] = ()
    severity: Severity = Severity.ERROR
    notes: tuple[Note, ...] = ()
    guess: bool = False
