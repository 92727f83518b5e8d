"""Things made by patterns that stand in each other: told once, of the things themselves."""

from __future__ import annotations

from collections.abc import Sequence

from dryfit.diagnostics import Diagnostic, Hint, Note, Severity, Span
from dryfit.geometry.box import Box, spanning
from dryfit.piece.declared import INSIDE
from dryfit.placing.face_seats import apart_words
from dryfit.placing.model import Copy, Part
from dryfit.placing.site import Site


def thing_of(name: str) -> str | None:
    """Return the thing made by a pattern that a part or a copy of that name is in, or None."""
    thing, inside, _ = name.partition(INSIDE)
    return thing if inside else None


def in_different_things(copy: Copy, other: Copy) -> bool:
    """Return whether two copies are parts of different things made by patterns."""
    things = thing_of(copy.name), thing_of(other.name)
    return None not in things and things[0] != things[1]


def things_overlap(
    site: Site, parts: Sequence[Part], one: tuple[Part, Copy], two: tuple[Part, Copy]
) -> Diagnostic:
    """Return the finding that two things made by patterns stand in each other, or in one place."""
    boxes = [_box_of(parts, thing_of(copy.name)) for _, copy in (one, two)]
    lines = [_own_line(part) for part, _ in (one, two)]
    first, second = (str(thing_of(copy.name)) for _, copy in (one, two))
    shown = [f"{site.shown(box.low[2])} to {site.shown(box.high[2])}" for box in boxes]
    both = f"{first} and {second}"
    high = f"in height from {shown[0]}"
    same = boxes[0] == boxes[1]
    message = (
        f"{both} are in one place, {high}"
        if same
        else f"{both} take up the same space: {high} and from {shown[1]}"
    )
    others = [line for line in lines[1:] if line is not None and line != lines[0]]
    return Diagnostic(
        "copies-in-one-place" if same else "overlap",
        Severity.ERROR,
        message,
        lines[0],
        rule="H28",
        notes=tuple(Note(f"{second} is put here", line) for line in others),
        hints=(Hint(apart_words(site.declared.display) if not others else "move one of them"),),
    )


def _box_of(parts: Sequence[Part], thing: str | None) -> Box:
    copies = (copy for part in parts for copy in part.copies)
    return spanning(tuple(copy.box for copy in copies if thing_of(copy.name) == thing))


def _own_line(part: Part) -> Span | None:
    span = part.spans[0] if part.spans else None
    return span.used_by or span if span else None
