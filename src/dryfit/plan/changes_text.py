"""The changes of a setting as bars of characters, by station and axis."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.plan.changes import Changes, set_often, set_once
from dryfit.plan.totals_text import in_lines

HEAD = "Changes of a setting, by station and what is set"
LEGEND = {
    "#": "in this order",
    "-": "so many more part by part",
    "+": "so many more in this order",
}
WIDEST = 36
"""Characters of the longest bar: with the columns before it a line stays within 80."""


def changes_figure(rows: tuple[Changes, ...]) -> Iterator[str]:
    """Yield a line for each axis: the two counts and a bar; what is set once in words below."""
    yield from _bars(set_often(rows))
    yield from in_lines(set_once(rows), "  ")


def _bars(rows: tuple[Changes, ...]) -> Iterator[str]:
    if not rows:
        return
    most = max(max(row.here, row.part_by_part) for row in rows)
    wide = max(len("station"), *(len(row.station) for row in rows))
    axis = max(len("set"), *(len(row.axis) for row in rows))
    yield HEAD
    yield f"  {'station':{wide}}  {'set':{axis}}  here  part by part"
    station, drawn = "", set[str]()
    for row in rows:
        name = row.station if row.station != station else ""
        station = row.station
        counts = f"{row.here:4}  {row.part_by_part:4}"
        bar = _bar(row, most)
        drawn.update(bar)
        yield f"  {name:{wide}}  {row.axis:{axis}}  {counts}  {bar}"
    yield "  " + "; ".join(f"{sign}: {says}" for sign, says in LEGEND.items() if sign in drawn)


def _bar(row: Changes, most: int) -> str:
    here, other = (_long(count, most) for count in (row.here, row.part_by_part))
    if here > other:
        return "#" * other + "+" * (here - other)
    return "#" * here + "-" * (other - here)


def _long(count: int, most: int) -> int:
    """Return the characters of a count; a count is never nothing but for none."""
    if most <= WIDEST:
        return count
    return max(1, (2 * count * WIDEST + most) // (2 * most)) if count else 0
