"""What cup, bow and twist leave of a blank when one face and then the other are made true.

TRADE A1: cup and bow are arcs and fall with the square of what is sawn out of the board, twist in
proportion; cup costs itself once and not twice, and twist half, since a blank is wedged level.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.geometry.frame import LENGTH, THICKNESS, WIDTH
from dryfit.plan.sawing import SawnBoard
from dryfit.rehearsal.blank import ZERO, Blank, Sizes
from dryfit.rehearsal.fault import Reason, Trouble
from dryfit.rehearsal.sawing.boards import owner_of, shown
from dryfit.rehearsal.state import State


def warp_lost(board: SawnBoard, sizes: Sizes) -> Fraction:
    """Return the thickness in mm that making a piece of a board flat costs, its clean-up apart."""
    along = sizes[LENGTH] / board.length
    across = sizes[WIDTH] / board.width
    return board.cup * across**2 + board.bow * along**2 + board.twist * along * across / 2


def flat_of(blank: Blank, facing: Fraction) -> Fraction | None:
    """Return how thick a blank can be planed flat at its present size; None of no board.

    Both faces of rough or warped wood lose `facing` together until they are clean.
    """
    if blank.sawn is None or blank.sawn.board.sheet:
        return None
    board = blank.sawn.board
    lost = warp_lost(board, blank.sizes)
    return blank.sizes[THICKNESS] - lost - (facing if board.rough or lost else ZERO)


def faced(state: State, blank: Blank) -> None:
    """Keep how thick a blank can still become, when its face is made true at this size."""
    if blank.flat is None:
        blank.flat = flat_of(blank, state.shop.allowances.get("facing", ZERO))


def too_warped(state: State, blank: Blank, size: Fraction | None) -> Iterator[Trouble]:
    """Yield where a blank has less wood than it is planed to; by hand that is what it becomes."""
    if blank.sawn is None or blank.flat is None:
        return
    board, flat = blank.sawn.board, blank.flat
    finals = (state.final(owner_of(name)) for name in blank.sawn.pieces)
    least = max((final[THICKNESS] for final in finals if final is not None), default=ZERO)
    wanted = least if size is None else size
    if wanted <= flat:
        return
    yield Trouble(
        Reason.WOOD,
        f"board {board.label}: {_because(board, blank.sizes)} leaves {shown(flat)} of "
        f"{shown(board.thickness)}, {shown(wanted)} wanted",
        f"a blank that can be planed flat to {shown(wanted)}",
    )


def _because(board: SawnBoard, sizes: Sizes) -> str:
    """Return what of a board's warp a piece of these sizes keeps, in words."""
    rows = (
        ("cup", board.cup, board.width, sizes[WIDTH]),
        ("bow", board.bow, board.length, sizes[LENGTH]),
    )
    words = [
        f"{word} {shown(whole)} over {shown(over)}" + _kept(whole * (own / over) ** 2, over, own)
        for word, whole, over, own in rows
        if whole
    ]
    if board.twist:
        words.append(f"twist {shown(board.twist)}")
    return " and ".join(words) or "cleaning both faces"


def _kept(left: Fraction, over: Fraction, own: Fraction) -> str:
    return "" if own == over else f", {shown(left)} over {shown(own)},"
