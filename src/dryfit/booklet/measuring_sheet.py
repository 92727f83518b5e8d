"""The measuring sheet of a place (M18): blanks to fill on site before the first cut."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.booklet.bench import Bench
from dryfit.booklet.text import Text
from dryfit.piece.declared.site import PlaceWords, Room


@dataclass(frozen=True, slots=True)
class SheetRow:
    """One thing to measure: where three figures are taken, and what the notes say so far."""

    what: str
    places: tuple[str, ...]
    said: Text


def measuring_sheet(place: PlaceWords, bench: Bench) -> tuple[SheetRow, ...]:
    """Return the rows of the sheet; none where the notes name no place or all of it exactly."""
    room = place.room
    if room is None or _exact(room):
        return ()
    skirting = () if room.skirting is None else bench.say.sizes(room.skirting)
    out = (bench.say.size_with_unit(room.out), " out") if room.out else ()
    return (
        SheetRow("Width, wall to wall", ("floor", "middle", "top"), _said(room.width, bench)),
        SheetRow("Depth", ("left", "middle", "right"), _said(room.depth, bench)),
        SheetRow("Floor to ceiling", ("left", "middle", "right"), _said(room.ceiling, bench)),
        SheetRow("Walls out of plumb, over their height", ("left", "right", "back"), ()),
        SheetRow("Corners out of square, over the depth", ("left", "right", ""), ()),
        SheetRow("Floor out of level, over the piece", ("across", "deep", ""), out),
        SheetRow("Skirting, high and thick", ("left", "right", "back"), skirting),
        SheetRow("Socket, switch, pipe: from left, up", ("first", "second", "third"), ()),
        SheetRow("Window sill, door swing, radiator", ("from left", "up", "out"), ()),
        SheetRow("Way in, at its narrowest", ("wide", "high", "turn"), _ways(place, bench)),
    )


def _exact(room: Room) -> bool:
    """Return whether width, depth, ceiling and skirting are all told, each by one figure."""
    spans = (room.width, room.depth, room.ceiling)
    return room.skirting is not None and all(span and span[0] == span[1] for span in spans)


def _said(span: tuple[Fraction, Fraction] | None, bench: Bench) -> Text:
    if span is None:
        return ()
    least, most = span
    if least == most:
        return (bench.say.size_with_unit(least),)
    return (bench.say.size(least), " to ", bench.say.size_with_unit(most))


def _ways(place: PlaceWords, bench: Bench) -> Text:
    if not place.ways:
        return ()
    way = place.ways[0]
    turn: Text = (", turn ", bench.say.size(way.turn)) if way.turn is not None else ()
    return (bench.say.size(way.width), " × ", bench.say.size_with_unit(way.height), *turn)
