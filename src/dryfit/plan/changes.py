"""Changes of a setting counted by station and axis: in a plan, and part by part."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass

from dryfit.plan.plan import Plan


@dataclass(frozen=True, slots=True)
class Changes:
    """How often an axis of a station is set: in the order of the plan, and part by part."""

    station: str
    axis: str
    here: int
    part_by_part: int


def changes_of(plan: Plan) -> tuple[Changes, ...]:
    """Return all axes that are ever set, stations and their axes in the order of the shop file.

    Whatever a piece needs set is set at least once in every order, so both have the same rows.
    """
    counts = Counter((step.station, axis) for step in plan.steps for axis in step.changed)
    return tuple(
        Changes(station, axis, counts[station, axis], other)
        for station, axis, other in plan.totals.part_by_part.by_axis
    )


def set_often(rows: tuple[Changes, ...]) -> tuple[Changes, ...]:
    """Return the rows that tell something: what is set more than once, here or part by part."""
    return tuple(row for row in rows if max(row.here, row.part_by_part) > 1)


def set_once(rows: tuple[Changes, ...]) -> str:
    """Return the others in words, by station; empty where there is none."""
    by_station: dict[str, list[str]] = {}
    for row in rows:
        if row not in set_often(rows):
            by_station.setdefault(row.station, []).append(row.axis)
    said = ", ".join(f"{station} ({', '.join(axes)})" for station, axes in by_station.items())
    return f"Set once either way: {said}" if said else ""
