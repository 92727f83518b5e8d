"""Doors that open against a wall (TRADE H34): the pull meets it before the door stands square."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.checks.finding import finding
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.geometry.box import Box, spanning
from dryfit.piece.declared import thing_of
from dryfit.piece.declared.site import PlaceWords, Room
from dryfit.placing.model import Joint, Model

_PULLS = ("knob", "pull", "handle")
_PROUD = Fraction(40)
"""How far a pull stands out, mm: 25 to 40 are usual (common practice)."""


def check_doors_at_walls(model: Model, place: PlaceWords) -> Iterator[Diagnostic]:
    """Yield each hinged door whose pull meets the wall beside it, once for a door.

    Open at a right angle, a door lies with its face along the line of its hinges.
    Findings: door-meets-wall.
    """
    room = place.room
    if room is None or room.width is None:
        return
    for joint in model.joints:
        if joint.kind == "hinges" and _has_pull(model, joint):
            yield from _meets(model, place, room, joint)


def _meets(model: Model, place: PlaceWords, room: Room, joint: Joint) -> Iterator[Diagnostic]:
    door = _door(model, joint)
    left = abs(joint.region.low[0] - door.low[0]) <= abs(door.high[0] - joint.region.high[0])
    side = "left" if left else "right"
    edge = door.low[0] if left else model.overall[0] - door.high[0]
    clear = edge + _beside(model, place, room, side)
    if clear >= _PROUD:
        return
    shown = model.display.with_unit
    yield finding(
        "H34",
        "door-meets-wall",
        Severity.WARNING,
        f"{thing_of(joint.guest)}: its hinges are {shown(clear)} from the {side} wall, and a pull "
        f"stands some {shown(_PROUD)} out: it meets the wall before the door is open square",
        joint.span,
        figures={"clear": clear, "pull": _PROUD},
        remedy=f"leave {shown(_PROUD - clear)} more there, by a wider strip or stile, take a flat "
        "pull, or hang the door on the other side",
    )


def _beside(model: Model, place: PlaceWords, room: Room, side: str) -> Fraction:
    """Return how far the wall is outside the piece, less than nothing where it is scribed to it."""
    assert room.width is not None
    spare = room.width[0] - model.overall[0]
    scribe = next((each.amount for each in place.scribes if each.side == side), None)
    if scribe is not None:
        return max(-scribe, min(spare, Fraction(0)))
    return spare / 2


def _door(model: Model, joint: Joint) -> Box:
    thing = thing_of(joint.guest)
    copies = (copy for part in model.parts for copy in part.copies)
    return spanning(tuple(copy.box for copy in copies if thing_of(copy.name) == thing))


def _has_pull(model: Model, joint: Joint) -> bool:
    name = thing_of(model.part_of(joint.guest).name)
    return any(
        any(word in thing.name for word in _PULLS) and name in thing.purpose
        for thing in model.bought
    )
