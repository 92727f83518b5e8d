"""The lines about where the piece will stand, how it gets there, and who will use it."""

from __future__ import annotations

from dataclasses import dataclass

from dryfit.diagnostics import Span
from dryfit.notes.tree.references import SizeWord
from dryfit.notes.tree.sums import Sum


@dataclass(frozen=True, slots=True)
class RoomLine:
    """``place 2398 to 2404 wide, ceiling 2400, skirting 60 x 15, floor 8 out``.

    `sizes` are (dimension, least, most), the two alike where one figure stands; `ceiling` is how
    high it is, at its lowest and its highest; `out` is how far the floor is out of level.
    """

    sizes: tuple[tuple[str, Sum, Sum], ...]
    ceiling: tuple[Sum, Sum] | None
    skirting: tuple[SizeWord, ...]
    out: Sum | None
    span: Span


@dataclass(frozen=True, slots=True)
class ScribeLine:
    """``scribe 30 at left and right``: what may be cut away there on site."""

    amount: Sum
    places: tuple[str, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class WayInLine:
    """``way in 720 wide, 1980 high, turn 900``: a door, and how wide the passage behind it is."""

    sizes: tuple[SizeWord, ...]
    turn: Sum | None
    span: Span


@dataclass(frozen=True, slots=True)
class WallLine:
    """``hangs on a stud wall, 1400 up`` or ``fixed to the wall``.

    `wall` is stud, masonry or board, None where the line does not say; `up` the height of the
    lower edge above the floor.
    """

    hangs: bool
    wall: str | None
    up: Sum | None
    span: Span
