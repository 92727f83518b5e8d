"""All lines of parts: those made here, those bought, and those that use a pattern."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.notes.tree import Notes, PartsLine
from dryfit.piece.bought import as_bought, as_it_stands, is_only_listed
from dryfit.piece.declared import DeclaredPart, Instance
from dryfit.piece.names import Names
from dryfit.piece.parts import WholePiece, declared_part
from dryfit.piece.patterns import as_box, as_pattern, instance_of, without_sizes
from dryfit.piece.statements import lines_of
from dryfit.piece.sums import Sums

MOST_COPIES = 3000
MOST_PARTS = 300


@dataclass(frozen=True, slots=True)
class PartLines:
    """The parts, the instances of patterns among them, and the names of what is left unknown."""

    parts: tuple[DeclaredPart, ...]
    instances: tuple[Instance, ...]
    broken: frozenset[str]


def declared_parts(notes: Notes, sums: Sums, names: Names, whole: WholePiece) -> PartLines:
    """Return what the lines of parts declare; bought things without a place are no parts.

    A part whose line holds a sum that failed is broken: its place cannot be found, and the reader
    has been told why.
    Findings: too-many-parts, those of `declared_part` and `instance_of`.
    """
    parts: list[DeclaredPart] = []
    instances: list[Instance] = []
    broken: set[str] = set()
    for line in lines_of(notes, PartsLine):
        failures = sums.failures
        if is_only_listed(line):
            continue
        if line.bought:
            parts.append(as_bought(declared_part(as_it_stands(line), sums, names, whole)))
        elif as_pattern(line) is None:
            parts.append(declared_part(line, sums, names, whole))
        elif made := instance_of(line, notes, sums):
            instance, sizes = made
            part = declared_part(without_sizes(line), sums, names, whole)
            parts.append(as_box(part, instance, sizes))
            instances.append(instance)
        else:
            broken.add(line.name)
        if sums.failures > failures:
            broken.add(line.name)
    return PartLines(_within_limit(parts, sums), tuple(instances), frozenset(broken))


def _within_limit(parts: Sequence[DeclaredPart], sums: Sums) -> tuple[DeclaredPart, ...]:
    total = sum(part.count for part in parts)
    if total <= MOST_COPIES and len(parts) <= MOST_PARTS:
        return tuple(parts)
    many = f"{total} copies" if total > MOST_COPIES else f"{len(parts)} different parts"
    most = MOST_COPIES if total > MOST_COPIES else MOST_PARTS
    sums.findings.append(
        Diagnostic(
            "too-many-parts",
            Severity.ERROR,
            f"the piece has {many}; at most {most} are planned",
            parts[-1].name_span,
            hints=(Hint("plan the piece in sections, each in its own file"),),
        )
    )
    return tuple(replace(part, count=1) for part in parts[:1])
