"""What was measured, done and spoiled, as declared."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.diagnostics import Span
from dryfit.piece.declared.hosts import Host


@dataclass(frozen=True, slots=True)
class Measured:
    """What was measured: `name` is a figure's (``post.thickness``) or a measurement's name.

    `kind`: part, copy, opening, value, sheet or measurement.  `planned` is what the notes make it
    without the measurement, None where only the placed piece says so.  `amounts` in mm, several
    for an opening that was measured at several places; `taken` is the one that counts.
    """

    kind: str
    name: str
    subject: Host | None
    planned: Fraction | None
    amounts: tuple[Fraction, ...]
    taken: Fraction
    span: Span


@dataclass(frozen=True, slots=True)
class Done:
    """An operation that is done: its id as the notes name it, of how many copies, and when."""

    operation: str
    count: int | None
    date: str | None
    clock: str | None
    span: Span


@dataclass(frozen=True, slots=True)
class Spoiled:
    """So many copies of a part that must be made again."""

    part: str
    count: int
    span: Span
