"""The place, the way in, the wall and the users: their sums worked out."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity, Span
from dryfit.notes.tree import (
    Notes,
    PlaceLine,
    RoomLine,
    ScribeLine,
    SizeWord,
    Sum,
    WallLine,
    WayInLine,
)
from dryfit.piece.declared.site import OnWall, PlaceWords, Room, Scribe, WayIn
from dryfit.piece.sums import Sums

_SAID = (
    ("width", "the width of the place"),
    ("depth", "the depth of the place"),
    ("ceiling", "the ceiling"),
    ("skirting", "the skirting"),
    ("out", "how the floor lies"),
)


def place_words(notes: Notes, sums: Sums) -> PlaceWords | None:
    """Return what the notes say of the place, None for nothing; said twice the first line holds.

    Findings: place-twice, place-upside-down.
    """
    rooms: list[Room] = []
    walls: list[OnWall] = []
    scribes: list[Scribe] = []
    ways: list[WayIn] = []
    words: dict[str, Span] = {}
    for line in notes.statements:
        if isinstance(line, RoomLine):
            rooms.append(_room(line, sums))
        elif isinstance(line, WallLine):
            up = sums.length(line.up) if line.up is not None else None
            walls.append(OnWall(line.hangs, line.wall, up, line.span))
        elif isinstance(line, ScribeLine):
            amount = sums.size(line.amount)
            if amount is not None:
                scribes += (Scribe(side, amount, line.span) for side in line.places)
        elif isinstance(line, WayInLine):
            ways += _way(line, sums)
        elif isinstance(line, PlaceLine):
            words.setdefault(line.kind, line.span)
    _told_twice(tuple(wall.span for wall in walls), "how it is held to the wall", sums)
    sides: dict[str, Scribe] = {}
    for each in scribes:
        first = sides.setdefault(each.side, each)
        _told_twice((first.span, each.span) if first is not each else (), "a scribe there", sums)
    said = PlaceWords(
        _one_room(rooms, sums),
        tuple(sides[side] for side in sorted(sides)),
        tuple(ways),
        walls[0] if walls else None,
        words.get("children"),
        words.get("built"),
    )
    return None if said == PlaceWords() else said


def _one_room(rooms: list[Room], sums: Sums) -> Room | None:
    """Return the place of all lines about it; each of its sizes is said once."""
    if not rooms:
        return None
    one, *others = rooms
    for other in others:
        for name, what in _SAID:
            first, second = getattr(one, name), getattr(other, name)
            if first and second:
                _tell("place-twice", f"{what} is given twice", other.span, sums)
            elif second:
                one = replace(one, **{name: second})
    return one


def _room(line: RoomLine, sums: Sums) -> Room:
    sizes = {dimension: _between(least, most, sums) for dimension, least, most in line.sizes}
    return Room(
        line.span,
        sizes.get("width"),
        sizes.get("depth"),
        _between(*line.ceiling, sums) if line.ceiling else None,
        _skirting(line.skirting, sums),
        _length(line.out, sums),
    )


def _between(least: Sum, most: Sum, sums: Sums) -> tuple[Fraction, Fraction] | None:
    low = sums.size(least)
    high = low if most is least else sums.size(most)
    if low is None or high is None:
        return None
    if high < low:
        _tell("place-upside-down", "the least is more than the most", least.span, sums)
    return low, high


def _length(amount: Sum | None, sums: Sums) -> Fraction:
    return (sums.length(amount) if amount is not None else None) or Fraction(0)


def _skirting(words: tuple[SizeWord, ...], sums: Sums) -> tuple[Fraction, Fraction] | None:
    """Return height and thickness: by their words, else the larger figure is the height."""
    sizes = [(sums.size(word.amount), word.dimension) for word in words]
    known = [(size, dimension) for size, dimension in sizes if size is not None]
    if len(known) != 2:
        return None
    (one, named), (two, also) = known
    if "height" in (named, also):
        return (one, two) if named == "height" else (two, one)
    return max(one, two), min(one, two)


def _way(line: WayInLine, sums: Sums) -> Iterator[WayIn]:
    sizes = {word.dimension: sums.size(word.amount) for word in line.sizes}
    turn = sums.size(line.turn) if line.turn is not None else None
    wide, high = sizes.get("width"), sizes.get("height")
    if wide is not None and high is not None and (turn is not None or line.turn is None):
        yield WayIn(wide, high, turn, line.span)


def _told_twice(spans: tuple[Span, ...], what: str, sums: Sums) -> None:
    for span in spans[1:]:
        _tell("place-twice", f"{what} is given twice", span, sums)


def _tell(code: str, message: str, span: Span, sums: Sums) -> None:
    advice = "write the smaller figure first" if code == "place-upside-down" else "keep one line"
    sums.findings.append(Diagnostic(code, Severity.ERROR, message, span, hints=(Hint(advice),)))
