"""Plays the cuts of boards: the piece in hand is there, is parted right through, and frees blanks.

Nothing is taken from the layout but the cuts: where a blank lies follows from them alone.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from dryfit.geometry.frame import LENGTH, WIDTH
from dryfit.plan.operation import Operation
from dryfit.plan.sawing import BoardCut
from dryfit.rehearsal.at_machines.standing import Axes
from dryfit.rehearsal.blank import ZERO
from dryfit.rehearsal.fault import Fault, Reason, Trouble
from dryfit.rehearsal.goal import Range
from dryfit.rehearsal.sawing.at_saws import leaves_straight, wrong_at_saw
from dryfit.rehearsal.sawing.boards import Boards, Piece, owner_of, shown
from dryfit.rehearsal.sawing.freeing import freed
from dryfit.rehearsal.state import Place, State

DEEDS = {"rough length": "crosscut", "rip": "rip"}
"""Kinds of operations that cut boards, and which way each goes."""


def saw(state: State, operation: Operation, place: Place) -> None:
    """Play the cuts of boards that an operation makes, in their order."""
    axes = state.standing.at(operation.station)
    for trouble in _named_in_vain(state.boards, operation):
        state.tell(place, trouble, operation.id)
    for cut in operation.board_cuts:
        who = f"board {cut.board}"
        for trouble in _sawn(state, operation, axes, cut):
            state.tell(place, trouble, who)


def _named_in_vain(boards: Boards, operation: Operation) -> Iterator[Trouble]:
    """Yield the copies that an operation names and that come out of none of its cuts."""
    if not operation.board_cuts:
        return
    coming = {
        name
        for cut in operation.board_cuts
        for name in boards.coming.get((cut.board, cut.after, cut.side), ())
    }
    others = [name for row in operation.work for name in row.copies if name not in coming]
    if others:
        message = f"{', '.join(others)} comes out of none of its cuts"
        yield Trouble(Reason.COUNT, message, "copies that its cuts are for")


def whole_boards(state: State) -> Iterator[Fault]:
    """Make blanks of the boards that no cut parts, yielding what is wrong with them."""
    for label, board in state.boards.rows.items():
        if board.becomes is not None:
            piece = state.boards.whole[label]
            piece.becomes = board.becomes
            for trouble in freed(state, piece, board.becomes):
                message = f"board {label}: {trouble.message}"
                yield Fault(trouble.reason, message, trouble.needed)


def _sawn(state: State, operation: Operation, axes: Axes, cut: BoardCut) -> Iterator[Trouble]:
    if DEEDS.get(operation.kind) != cut.saw:
        yield Trouble(
            Reason.MACHINE,
            f"cut {cut.number} is a {cut.saw}, which {operation.kind} makes none of",
            "crosscuts to rough length, rips to rough width",
        )
    if (cut.board, cut.number) in state.boards.sides:
        message = f"two cuts have the number {cut.number}"
        yield Trouble(Reason.COUNT, message, "a number for each cut of a board")
        return
    piece = _in_hand(state.boards, cut)
    if isinstance(piece, Trouble):
        yield piece
        return
    wrong = _beyond(cut, piece)
    if wrong is not None:
        yield wrong
        return
    yield from wrong_at_saw(state, operation, axes, cut, piece)
    sides = _parted(state.boards, cut, piece, straight=leaves_straight(operation, axes))
    for side, becomes in zip(sides, (cut.first, cut.rest), strict=True):
        if becomes is None:
            continue
        if side is None:
            message = f"cut {cut.number} leaves nothing of which {becomes.name} could be"
            yield Trouble(Reason.SIZE, message, f"wood for {becomes.name} beyond the saw")
            continue
        side.becomes = becomes
        yield from freed(state, side, becomes)


def before_freed(boards: Boards, kind: str, name: str) -> bool:
    """Return whether a deed is done to the board before it is parted into blanks.

    A copy that comes out of a board is ripped by the board's cuts, and of the pieces that are still
    in one the edge is made straight.
    """
    return kind == "rip" or (kind == "straight edge" and name not in boards.freed)


def sawn_with(state: State, operation: Operation) -> tuple[str, ...]:
    """Return the copies that a deed on pieces of boards is for: those it names, or its part's."""
    if operation.work:
        return tuple(name for work in operation.work for name in work.copies)
    part = state.part_named(operation.part)
    own = {copy.name for copy in part.copies} if part is not None else set[str]()
    return tuple(name for name in state.boards.names if owner_of(name) in own)


def straightened(boards: Boards, names: Iterable[str]) -> tuple[Piece, ...]:
    """Make the reference edge straight of every piece in hand that some copies will come out of.

    Of pieces that only spares come out of nobody says whose they are.  Returns the pieces of which
    it was not straight before.
    """
    wanted, found = set(names), []
    for piece in boards.pieces():
        coming = boards.coming.get(piece.origin, frozenset())
        if piece.sawn_by is None and (not coming or wanted & coming):
            if coming and not piece.straight and piece.becomes is None:
                found.append(piece)
            piece.straight = True
    return tuple(found)


def _in_hand(boards: Boards, cut: BoardCut) -> Piece | Trouble:
    """Return the piece that a cut parts, or why it cannot be in hand."""
    if cut.board not in boards.rows:
        message = f"cut {cut.number} is of no board that there is"
        return Trouble(Reason.COUNT, message, "a board of the plan")
    if cut.after is None:
        piece: Piece | None = boards.whole[cut.board]
    else:
        sides = boards.sides.get((cut.board, cut.after))
        if sides is None:
            message = f"cut {cut.number} is made in what cut {cut.after} leaves, before that"
            return Trouble(Reason.ORDER, message, f"cut {cut.after} before cut {cut.number}")
        piece = sides[0] if cut.side == "first" else sides[1]
    if piece is None:
        message = f"cut {cut.number} is made in what cut {cut.after} leaves, which is nothing"
        return Trouble(Reason.CUT, message, "wood beyond the saw")
    if piece.sawn_by is not None:
        message = f"cut {cut.number} is made in a piece that cut {piece.sawn_by} has parted"
        return Trouble(Reason.COUNT, message, "each piece parted once")
    if piece.becomes is not None:
        message = f"cut {cut.number} parts {piece.becomes.name}, which is sawn out already"
        return Trouble(Reason.COUNT, message, "blanks left whole")
    return piece


def _beyond(cut: BoardCut, piece: Piece) -> Trouble | None:
    direction = LENGTH if cut.saw == "crosscut" else WIDTH
    size, word = piece.sizes[direction], ("long", "wide")[direction]
    # At nothing the saw takes a rough edge or bark away, and nothing falls beside it.
    if not ZERO <= cut.at < size:
        return Trouble(
            Reason.SIZE,
            f"cut {cut.number} at {shown(cut.at)} does not lie in a piece {shown(size)} {word}",
            f"a piece more than {shown(cut.at)} {word}",
        )
    return None


def _parted(
    boards: Boards, cut: BoardCut, piece: Piece, *, straight: bool
) -> tuple[Piece, Piece | None]:
    """Part a piece right through, and return what falls and what is left; a kerf may take all."""
    piece.sawn_by = cut.number
    limits = piece.along if cut.saw == "crosscut" else piece.across
    near = (limits[0], limits[0] + cut.at)
    far = (min(near[1] + max(cut.kerf, ZERO), limits[1]), limits[1])
    first = _side(cut, "first", piece, near, straight=piece.straight)
    on = piece.straight if cut.saw == "crosscut" else straight
    rest = _side(cut, "rest", piece, far, straight=on) if far[0] < far[1] else None
    other = piece.sizes[WIDTH] if cut.saw == "crosscut" else piece.sizes[LENGTH]
    boards.kerfs[cut.board] += (far[0] - near[1]) * other
    boards.sides[cut.board, cut.number] = (first, rest)
    return first, rest


def _side(cut: BoardCut, side: str, piece: Piece, limits: Range, *, straight: bool) -> Piece:
    crosscut = cut.saw == "crosscut"
    return Piece(
        piece.board,
        (cut.board, cut.number, side),
        limits if crosscut else piece.along,
        piece.across if crosscut else limits,
        straight,
    )
