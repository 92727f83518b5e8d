"""What a freed piece becomes: blanks of sound wood of the right timber, in their real sizes.

TRADE A5.1 (the ends of a board), A5.5 (sheets as they measure), A9.8 (grain along the part).
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.geometry.frame import LENGTH, THICKNESS, WIDTH
from dryfit.plan.sawing import Becomes, SawnBoard
from dryfit.rehearsal.blank import ZERO, Blank, Sawn, Sizes
from dryfit.rehearsal.fault import Reason, Trouble
from dryfit.rehearsal.goal import WantedPart
from dryfit.rehearsal.sawing.boards import Piece, owner_of, shown
from dryfit.rehearsal.state import UNKNOWN, State

SHEET = Fraction(1)
"""By how much a sheet may measure otherwise than it is called, mm (A5.5: 18 is 17.5 to 18.2)."""


def freed(state: State, piece: Piece, becomes: Becomes) -> Iterator[Trouble]:
    """Make the blanks of all that a piece becomes, yielding what is wrong with its wood.

    A spare or a test piece becomes none.
    """
    yield from _called(state, piece, becomes)
    yield from _bad_wood(state, piece, becomes)
    owners = [owner_of(name) for name in becomes.pieces]
    parts = [state.part_of.get(owner) for owner in owners]
    for name, part in zip(becomes.pieces, parts, strict=True):
        if part is None:
            yield Trouble(Reason.COUNT, f"{name}: {UNKNOWN.message}", UNKNOWN.needed)
            continue
        if name in state.boards.freed or name in state.blanks:
            yield Trouble(Reason.COUNT, f"{name} is sawn out a second time", "one blank")
            continue
        yield from _timber(part, piece.board, name)
        yield from _bark(state, part, piece, name)
        state.boards.freed[name] = piece
        state.blanks[name] = _blank(state, part, piece, becomes, name)
    known = [part for part in parts if part is not None]
    if known:
        yield from _too_short(state, piece, becomes, owners)


def _called(state: State, piece: Piece, becomes: Becomes) -> Iterator[Trouble]:
    """Letters tell boards and blanks apart: no two of them have one."""
    others = [each for each in state.boards.pieces() if each is not piece and each.becomes]
    for each in others:
        if each.becomes is not None and becomes.letter and each.becomes.letter == becomes.letter:
            message = f"{becomes.name} has the letter {becomes.letter} of {each.becomes.name}"
            yield Trouble(Reason.COUNT, message, "a letter for each blank")
    if becomes.letter in state.boards.rows:
        message = f"{becomes.name} has the letter of board {becomes.letter}"
        yield Trouble(Reason.COUNT, message, "a letter that no board has")


def _bad_wood(state: State, piece: Piece, becomes: Becomes) -> Iterator[Trouble]:
    board = piece.board
    for zone in board.zones:
        if _meet(piece.along, zone.along) and _meet(piece.across, zone.across):
            yield Trouble(
                Reason.WOOD,
                f"{becomes.name} from {shown(piece.along[0])} to {shown(piece.along[1])} holds "
                f"{zone.why or 'bad wood'} from {shown(zone.along[0])} to {shown(zone.along[1])}",
                "blanks beside it",
            )
    trim = state.shop.allowances.get("end_trim", ZERO) if board.rough else ZERO
    if piece.along[0] < trim or piece.along[1] > board.length - trim:
        yield Trouble(
            Reason.WOOD,
            f"{becomes.name} from {shown(piece.along[0])} to {shown(piece.along[1])} has a raw end "
            f"of a board {shown(board.length)} long",
            f"{shown(trim)} sawn off each end of the board before",
        )


def _meet(one: tuple[Fraction, Fraction], other: tuple[Fraction, Fraction]) -> bool:
    return max(one[0], other[0]) < min(one[1], other[1])


def _timber(part: WantedPart, board: SawnBoard, name: str) -> Iterator[Trouble]:
    if None not in (part.timber, board.timber) and part.timber != board.timber:
        yield Trouble(
            Reason.WOOD,
            f"{name} is to be {part.timber}, and the board is {board.timber}",
            f"a board of {part.timber}",
        )
    if (part.stock == "sheet") != board.sheet:
        needed = "a sheet" if part.stock == "sheet" else "a board"
        other = "a board" if part.stock == "sheet" else "a sheet"
        yield Trouble(Reason.WOOD, f"{name} is sawn out of {other}", needed)


def _bark(state: State, part: WantedPart, piece: Piece, name: str) -> Iterator[Trouble]:
    """Yield where an edge that is to stay as it grew is none, or too little lies along it.

    A slab that narrows lacks wood at its far edge.
    """
    if not part.waney:
        return
    board, (low, high) = piece.board, piece.across
    raw = (low == 0 and board.waney > 1) + (high == board.width and board.waney > 0)
    if raw < len(part.waney):
        yield Trouble(
            Reason.WOOD,
            f"{name} is to keep {len(part.waney)} waney, and its piece of board {board.label} has "
            f"{raw} edges under bark",
            "a piece along the raw edge of a slab",
        )
    here, there = board.ends or (board.width, board.width)
    narrowest = min(here + (there - here) * at / board.length for at in piece.along)
    final = state.final(name)
    wide = min(high, narrowest) - low
    if final is not None and wide < final[WIDTH]:
        yield Trouble(
            Reason.SIZE,
            f"{name} is {shown(wide)} wide where it is narrowest, {shown(final[WIDTH])} are wanted",
            "a piece where the slab is wider",
        )


def _blank(state: State, part: WantedPart, piece: Piece, becomes: Becomes, name: str) -> Blank:
    sawn = Sawn(piece.board, becomes.name, becomes.pieces, becomes.leaves, becomes.leaves > 1)
    blank = Blank(part.name, _lying(state, piece, name), sawn=sawn, waney=part.waney)
    if piece.board.sheet:
        # Faces are true as they come, and one end and one edge of what a sheet is cut into.
        blank.true |= {"F", "B", "E", "R"}
        if piece.origin[1] is None:
            # What no cut parts has the factory edges all round.
            blank.true |= {"E2", "R2"}
    elif not (piece.board.rough or piece.board.cup or piece.board.bow or piece.board.twist):
        blank.true |= {"F", "B"}
        if piece.sizes[1] == piece.board.width:
            # Both edges are the board's own, as they were planed.
            blank.true |= {"E", "E2"} - part.waney
    return blank


def _lying(state: State, piece: Piece, name: str) -> Sizes:
    """Return the sizes of a blank: its length along the board's grain, where that has one."""
    long, wide, thick = piece.sizes
    final = state.final(name)
    if piece.board.grain or final is None:
        return long, wide, thick
    if (long < final[LENGTH] or wide < final[WIDTH]) and (
        wide >= final[LENGTH] and long >= final[WIDTH]
    ):
        return wide, long, thick
    return long, wide, thick


def _too_short(
    state: State, piece: Piece, becomes: Becomes, owners: list[str]
) -> Iterator[Trouble]:
    """Yield where a blank, or a leaf of it, does not hold all that it becomes, end to end."""
    sizes = piece.sizes if not becomes.pieces else _lying(state, piece, becomes.pieces[0])
    finals = [final for owner in owners if (final := state.final(owner)) is not None]
    if not finals:
        return
    each = -(-len(finals) // becomes.leaves)
    longest = sorted((final[LENGTH] for final in finals), reverse=True)[:each]
    needed = sum(longest, ZERO) + (each - 1) * blade_kerf(state)
    if sizes[LENGTH] < needed:
        yield Trouble(
            Reason.SIZE,
            f"{becomes.name} is {shown(sizes[LENGTH])} long, and what it becomes {shown(needed)}",
            f"a blank at least {shown(needed)} long",
        )
    staves = all(name == owner for name, owner in zip(becomes.pieces, owners, strict=True))
    widest = max(final[WIDTH] for final in finals)
    if staves and sizes[WIDTH] < widest:
        yield Trouble(
            Reason.SIZE,
            f"{becomes.name} is {shown(sizes[WIDTH])} wide, and what it becomes {shown(widest)}",
            f"a blank at least {shown(widest)} wide",
        )
    thickest = max(final[THICKNESS] for final in finals)
    if sizes[THICKNESS] < thickest - (SHEET if piece.board.sheet else ZERO):
        yield Trouble(
            Reason.WOOD,
            f"{becomes.name} is {shown(sizes[THICKNESS])} thick, and what it becomes "
            f"{shown(thickest)}",
            f"a board at least {shown(thickest)} thick",
        )
    elif piece.board.sheet and sizes[THICKNESS] - thickest > SHEET:
        yield Trouble(
            Reason.WOOD,
            f"{becomes.name} is {shown(sizes[THICKNESS])} thick as the sheet measures, and what it "
            f"becomes {shown(thickest)}",
            "a sheet that measures what its parts do",
        )


def blade_kerf(state: State) -> Fraction:
    """Return the thinnest kerf by which copies of one blank can be sawn apart."""
    blades = (
        each.narrowest
        for each in state.shop.cutters
        if each.station in {"table saw", "mitre saw"} and each.kind == "blade"
    )
    return min(blades, default=ZERO)
