"""The use of a pattern, as declared."""

from __future__ import annotations

from dataclasses import dataclass

from dryfit.diagnostics import Span
from dryfit.notes.tree import PatternBlock, UnitsLine
from dryfit.piece.declared.amounts import Amount

INSIDE = " > "
"""What stands between the name of an instance and the name of a thing inside it."""


@dataclass(frozen=True, slots=True)
class Instance:
    """``1 base, as leg base, 900 wide, 400 deep, leg 50``: a line of parts made by a pattern.

    `part` is the name of the line: in the piece that holds it, it is a box without wood, whose
    width, depth and height the pattern's lines see as their own.  `settings` are the parameters
    that the line gives, those of the size left out.  `units` is the line that governs the bare
    numbers of the pattern.
    """

    part: str
    block: PatternBlock
    settings: tuple[tuple[str, Amount], ...]
    units: UnitsLine | None
    span: Span

    def inner(self, name: str) -> str:
        """Return the name in the whole piece of what the pattern calls so: ``drawer > side``."""
        return inner_name(self.part, name)


def inner_name(instance: str, name: str) -> str:
    """Return what a part, a copy or a glue-up inside an instance is called in the whole piece."""
    return f"{instance}{INSIDE}{name}"


def thing_of(name: str) -> str:
    """Return the instance in which a thing of that name is, or the name where it is in none."""
    return name.partition(INSIDE)[0]


def own_name(name: str) -> str:
    """Return the name of a thing without the instances that it is in: ``side``."""
    return name.rpartition(INSIDE)[2]
