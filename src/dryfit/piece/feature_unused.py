"""What a line says of a cut that cuts of its kind do not take."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.notes.tree import FeatureLine

_PLACED = frozenset({"groove", "notch", "slot", "hole"})
_COUNTED = frozenset({"hole", "keys"})
_WHOLE = frozenset({"notch", "bevel", "hole", "keys"})
"""Kinds that have no stretch: they stand at a place, or run from end to end."""


def unused_words(line: FeatureLine) -> Iterator[str]:
    """Yield the words, beside its sizes, of which nothing would be made."""
    kind = line.kind
    if kind not in _PLACED:
        yield from (place.span.text() for place in line.places)
    if kind != "hole":
        yield from (row.span.text() for row in line.rows)
    if kind != "profile" and line.profile is not None:
        yield line.profile
    ranges = line.ranges[1:] if kind == "taper" else line.ranges
    yield from (f"{start.span.text()} to {end.span.text()}" for start, end in ranges)
    if kind in _WHOLE and line.extent is not None and line.extent.kind != "through":
        yield line.extent.span.text()
    if line.count is not None and not _is_counted(line):
        yield str(line.count)


def _is_counted(line: FeatureLine) -> bool:
    # "2 notches ... at left and right": as many as there are places.
    return (
        line.kind in _COUNTED
        or line.count in {1, len(line.places)}
        or (line.kind in _PLACED and line.each is not None)
    )
