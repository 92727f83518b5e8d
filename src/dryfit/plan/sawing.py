"""Boards and the cuts that part them, as a plan carries them: plain data, in exact mm.

Along a board counts from its left end as it lies, across from the edge towards the maker.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal


@dataclass(frozen=True, slots=True)
class BadZone:
    """Wood of a board that nothing may be made of, and why."""

    along: tuple[Fraction, Fraction]
    across: tuple[Fraction, Fraction]
    why: str


@dataclass(frozen=True, slots=True)
class Becomes:
    """The rough piece that one side of a cut is: its letter on drawings, and what it becomes.

    `pieces` are copies or staves as operations name them; a spare or a test piece becomes none.
    `leaves` is how many are resawn out of it, 1 where it is not resawn.
    """

    name: str
    letter: str
    pieces: tuple[str, ...]
    leaves: int = 1


@dataclass(frozen=True, slots=True)
class SawnBoard:
    """A board before it is cut.

    `sheet` goods are true as they come; a `rough` board is true nowhere.  `cup`, `bow` and `twist`
    are how far the whole board is out of flat.  A board that is not `on_hand` is bought first; of a
    `damp` one nobody told the moisture.  `grain` runs along its length; a sheet without one may be
    cut either way round.  `becomes` is what a board is that no cut parts.  `waney` counts its
    edges under bark: two, or the far one.  `ends` are its widths at its left and right end, None
    where it is as wide all along.
    """

    label: str
    timber: str | None
    length: Fraction
    width: Fraction
    thickness: Fraction
    rough: bool
    sheet: bool = False
    cup: Fraction = Fraction(0)
    bow: Fraction = Fraction(0)
    twist: Fraction = Fraction(0)
    zones: tuple[BadZone, ...] = ()
    on_hand: bool = True
    damp: bool = False
    grain: bool = True
    becomes: Becomes | None = None
    waney: int = 0
    ends: tuple[Fraction, Fraction] | None = None


@dataclass(frozen=True, slots=True)
class BoardCut:
    """One cut right through the piece in hand; cuts of a board are numbered from 1.

    `after` and `side` say which piece is in hand: what fell at the reference end or edge of that
    cut (``first``) or what was left beyond it (``rest``); None is the whole board.  `at` is the
    size of what falls, from the fresh end (crosscut) or edge (rip) to the saw, which takes `kerf`
    beyond.  `first` and `rest` are what the two sides are when no further cut parts them, None
    where they fall, or are cut further.
    """

    board: str
    number: int
    after: int | None
    side: Literal["", "first", "rest"]
    saw: Literal["crosscut", "rip"]
    at: Fraction
    kerf: Fraction
    first: Becomes | None = None
    rest: Becomes | None = None
