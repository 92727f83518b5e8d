"""What a piece is made of, level by level: glue-ups, drawers and doors as wholes, then parts."""

from __future__ import annotations

from dataclasses import dataclass

from dryfit.piece.declared import INSIDE
from dryfit.placing.model import Model


@dataclass(frozen=True, slots=True)
class Unit:
    """A copy, or what is put together before it meets the others.

    `kind` is the same for units that are alike; `parts` are the units inside, none for a copy.
    """

    name: str
    kind: str
    copies: tuple[str, ...]
    parts: tuple[Unit, ...] = ()


def units_of(model: Model) -> tuple[Unit, ...]:
    """Return the outermost units of a piece, in the order of the notes."""
    units = {
        copy.name: Unit(copy.name, part.name, (copy.name,))
        for part in model.parts
        for copy in part.copies
    }
    inside: dict[str, str] = {}
    for assembly in model.assemblies:
        parts = tuple(units[name] for name in assembly.of if name in units)
        if not parts:
            continue
        copies = tuple(copy for unit in parts for copy in unit.copies)
        inside.update((unit.name, assembly.name) for unit in parts)
        units[assembly.name] = Unit(assembly.name, assembly.stage, copies, parts)
    names = (copy.name for part in model.parts for copy in part.copies)
    order = {name: at for at, name in enumerate(names)}
    outermost = [unit for name, unit in units.items() if name not in inside]
    outermost.sort(key=lambda unit: min(order[name] for name in unit.copies))
    return _alone(_by_pattern(outermost))


def _by_pattern(units: list[Unit]) -> tuple[Unit, ...]:
    """Return the units with those of one drawer or door put together."""
    found: dict[str, list[Unit]] = {}
    for unit in units:
        owners = {name.rpartition(INSIDE)[0] for name in unit.copies}
        owner = owners.pop() if len(owners) == 1 else ""
        found.setdefault(owner or f"{INSIDE}{unit.name}", []).append(unit)
    made = []
    for owner, row in found.items():
        if owner.startswith(INSIDE) or len(row) == 1:
            made += row
            continue
        copies = tuple(copy for unit in row for copy in unit.copies)
        made.append(Unit(owner, owner, copies, tuple(row)))
    return tuple(made)


def _alone(units: tuple[Unit, ...]) -> tuple[Unit, ...]:
    """Return what the only unit is made of, where all is glued up in one."""
    while len(units) == 1 and units[0].parts:
        units = units[0].parts
    return units
