"""When all boards are cut: every one is accounted for, to the last shaving of a kerf."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.geometry.frame import LENGTH, WIDTH
from dryfit.rehearsal.blank import ZERO
from dryfit.rehearsal.fault import Fault, Reason
from dryfit.rehearsal.sawing.boards import Boards, shown
from dryfit.rehearsal.state import State


def unaccounted(boards: Boards, label: str) -> Fraction:
    """Return what of a board's volume, in cubic mm, is neither blank nor fallen nor kerf."""
    board = boards.rows[label]
    whole = (each for each in boards.pieces() if each.board is board and each.sawn_by is None)
    pieces = sum((each.sizes[LENGTH] * each.sizes[WIDTH] for each in whole), ZERO)
    return board.thickness * (board.length * board.width - pieces - boards.kerfs[label])


def boards_closed(state: State) -> Iterator[Fault]:
    """Yield boards that have one label, or whose wood is not all told of, and strips left uncut."""
    for label in state.boards.twice:
        yield Fault(Reason.COUNT, f"two boards are called {label}", "a label for each board")
    for label in state.boards.rows:
        lost = unaccounted(state.boards, label)
        if lost:
            yield Fault(
                Reason.SUMS,
                f"board {label}: {shown(lost)} cubic mm are neither blank nor kerf, nor fell",
                "blanks, kerfs and what falls together the board",
            )
    told: set[str] = set()
    for blank in state.blanks.values():
        sawn = blank.sawn
        if sawn is not None and sawn.uncut and sawn.name not in told:
            told.add(sawn.name)
            message = f"{sawn.name} is never resawn into {sawn.leaves} leaves"
            yield Fault(Reason.COUNT, message, "every strip resawn")
    for name in sorted(state.boards.names - state.boards.freed.keys()):
        yield Fault(Reason.COUNT, f"{name} never comes out of its board", "every blank sawn out")
