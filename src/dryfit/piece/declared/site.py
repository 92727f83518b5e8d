"""Where the piece will stand, how it gets there, and who uses it, as the notes say; mm."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.diagnostics import Span


@dataclass(frozen=True, slots=True)
class Room:
    """The place between its walls: least and most of width, depth and ceiling, None if not said.

    `skirting` is (height, thickness); `out` how far the floor is out of level.
    """

    span: Span
    width: tuple[Fraction, Fraction] | None = None
    depth: tuple[Fraction, Fraction] | None = None
    ceiling: tuple[Fraction, Fraction] | None = None
    skirting: tuple[Fraction, Fraction] | None = None
    out: Fraction = Fraction(0)


@dataclass(frozen=True, slots=True)
class Scribe:
    """What may be cut away on site at one side: left, right, top, bottom or back."""

    side: str
    amount: Fraction
    span: Span


@dataclass(frozen=True, slots=True)
class WayIn:
    """A clear opening, and the width of the passage into which one turns behind it."""

    width: Fraction
    height: Fraction
    turn: Fraction | None
    span: Span


@dataclass(frozen=True, slots=True)
class OnWall:
    """That the piece hangs on a wall, or is fixed to it where it stands.

    `wall` is stud, masonry, board or None; `up` the height of its lower edge above the floor.
    """

    hangs: bool
    wall: str | None
    up: Fraction | None
    span: Span


@dataclass(frozen=True, slots=True)
class PlaceWords:
    """All that the notes say of the place, the way in, the wall and the users."""

    room: Room | None = None
    scribes: tuple[Scribe, ...] = ()
    ways: tuple[WayIn, ...] = ()
    wall: OnWall | None = None
    children: Span | None = None
    built: Span | None = None
