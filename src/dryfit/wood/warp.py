"""What the warp of a board costs in thickness, and how far sawing it smaller helps (TRADE A1).

Cup and bow are arcs: what is left of them falls with the square of the piece.  Twist is a slope and
falls in proportion to it.  Lengths in exact mm.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

HAND_MARGIN = Fraction(1, 2)
"""What should be left for work by hand once a board is flat, in mm; TRADE A1.5, common practice."""
CLEAN_UP = Fraction(1)
"""What both faces together lose until they are clean, rough from the planer mill, in mm."""
CLEAN_UP_BANDSAWN = Fraction(2)


@dataclass(frozen=True, slots=True)
class Warp:
    """A board as measured: its size, and by how much it is out of flat, all in mm.

    `cup` is the hollow over the full width, `bow` that over the full length, and `twist` how far
    the fourth corner lifts off when three lie on a flat table.
    """

    length: Fraction
    width: Fraction
    thickness: Fraction
    cup: Fraction = Fraction(0)
    bow: Fraction = Fraction(0)
    twist: Fraction = Fraction(0)


def cup_left(board: Warp, width: Fraction) -> Fraction:
    """Return the cup of a strip so wide: a quarter in one of half the width (A1.1).

    The arc is taken as a parabola; for a cup of a fortieth of the width, which is much, this is
    within half a percent of the circle.
    """
    return board.cup * (width / board.width) ** 2


def bow_left(board: Warp, length: Fraction) -> Fraction:
    """Return the bow of a piece so long (A1.3)."""
    return board.bow * (length / board.length) ** 2


def twist_left(board: Warp, length: Fraction, width: Fraction) -> Fraction:
    """Return how far the fourth corner of a piece lifts (A1.4): in proportion, not by squares."""
    return board.twist * (length / board.length) * (width / board.width)


def flat_thickness(
    board: Warp,
    length: Fraction,
    width: Fraction,
    clean_up: Fraction = CLEAN_UP,
    *,
    wedged: bool = True,
) -> Fraction:
    """Return the greatest thickness that a piece sawn from the board can be planed flat to.

    Cup costs itself once, not twice: the two planes bite at the edges on one side and in the
    middle on the other (A1.2).  Twist costs half where the piece is wedged level before its first
    face is planed, else all of it.  What is not there comes out below nothing.
    """
    twist = twist_left(board, length, width)
    lost = cup_left(board, width) + bow_left(board, length) + (twist / 2 if wedged else twist)
    return board.thickness - lost - clean_up


def margin(flat: Fraction, finished: Fraction) -> Fraction:
    """Return what is left over a finished thickness and the margin for hand work; less is short."""
    return flat - finished - HAND_MARGIN
