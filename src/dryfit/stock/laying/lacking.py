"""What the wood on hand does not give, by part, and what has to be bought."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence

from dryfit.piece.declared import Have
from dryfit.placing.model import Part
from dryfit.stock.blanks.blank import Blank
from dryfit.stock.laid_out import SPARE, BoardLayout, Bought, Lacking, NamedBlank
from dryfit.stock.laying.job import key
from dryfit.stock.laying.outcome import Outcome
from dryfit.stock.laying.reasons import NO_ROOM
from dryfit.stock.pricing import price_of


def lacking(
    blanks: Sequence[Blank],
    named: Sequence[NamedBlank],
    layouts: Sequence[BoardLayout],
    alone: Mapping[str, str],
    otherwise: str = NO_ROOM,
) -> Iterator[Lacking]:
    """Yield the parts that do not come out of boards on hand, with the reason.

    A panel lacks as a whole what one of its staves lacks.
    """
    there = {one.blank.name for layout in layouts if layout.board.on_hand for one in layout.placed}
    whys = {name: alone[key(each)] for each in blanks if key(each) in alone for name in each.names}
    parts = {blank.part.name: blank.part for blank in blanks if not blank.if_room}
    for part in parts.values():
        lost = [one for one in named if one.part == part.name and one.name not in there]
        spares = sum(not one.pieces for one in lost)
        pieces = [piece for one in lost for piece in one.pieces]
        why = next((whys[one.name] for one in lost if one.name in whys), otherwise)
        span = next(iter(part.spans), None)
        if pieces:
            yield Lacking(part.name, _copies(part, pieces), why, span)
        if spares:
            yield Lacking(part.name, spares, f"{SPARE}{why}", span)


def _copies(part: Part, pieces: Sequence[str]) -> int:
    if part.staves is None:
        return len(pieces)
    return sum(
        any(piece == copy.name or piece.startswith(f"{copy.name} stave ") for piece in pieces)
        for copy in part.copies
    )


def to_buy(outcome: Outcome, yard: Sequence[Have]) -> Iterator[Bought]:
    """Yield what is bought, line by line; of lines that nobody wrote, what would do."""
    boards = {board.label: board for board, _ in outcome.pieces if not board.on_hand}
    counts = Counter(id(board.line) for board in boards.values())
    lines = {id(board.line): board.line for board in boards.values()}
    for which, count in counts.items():
        line = lines[which]
        price = price_of(line)
        told = None if price is None else price * count
        yield Bought(line, count, told, at_yard=any(line is one for one in yard))
