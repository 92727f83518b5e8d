"""How the cuts of boards are told: what is sawn for which part, and each cut with its figure.

A cut is called by its board and its number, ``A2``.  Every figure counts from the end or edge of
the piece in hand that lies towards those of the board from which its drawing counts: on the left,
and below.  So no kerf adds up.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence

from dryfit.operations.boards.board_saws import BENCH, SawWay
from dryfit.operations.boards.layout_cuts import LayoutCut
from dryfit.operations.boards.straight_edges import SLED
from dryfit.operations.words import listed
from dryfit.placing.model import Model
from dryfit.plan.operation import Detail
from dryfit.plan.sawing import Becomes
from dryfit.stock.laid_out import NamedBlank, StockBoard

FRESH_END: Detail = (
    "Measure each from the piece's left end as drawn, freshly sawn, never on from the last mark",
)
FRESH_EDGE: Detail = (
    (
        "The piece's lower edge as drawn runs along the fence; what is kept comes off between "
        "fence and blade"
    ),
)
OWN_EDGE: Detail = (
    ("Measure each from the piece's left end or lower edge as drawn, never on from the last mark"),
)

LEFTOVER = "a leftover to keep"


def sawing_sentence(cuts: Sequence[LayoutCut], way: SawWay, model: Model) -> str:
    """Return what is sawn for which parts, without a figure.

    Each cut is told with its board; here no board is named, so that what is said of several parts
    is said once for all of them.
    """
    thing = of_parts(cuts[0].owner, model)
    wood = f"the wood for {thing}"
    if cuts[0].board.line.kind == "sheet":
        return f"Break down the sheets for {thing} along a straight edge, on supports"
    if cuts[0].cut.saw == "crosscut":
        hand = " by hand" if way.station == BENCH else ""
        return f"Crosscut {wood}{hand} to chalk marks"
    if all(cut.trims for cut in cuts):
        if way.on_sled:
            return f"Saw the raw edge off {wood}, on the {SLED}"
        hand = ", with a hand saw" if way.station == BENCH else ""
        return f"Saw the raw edge off {wood}, along a chalk line{hand}"
    if way.fence is not None:
        straight = ", the straight edge at the fence" if way.straight else " along the fence"
        return f"Rip {wood}{straight}"
    if way.station == BENCH:
        return f"Rip {wood} with a hand saw"
    if way.on_sled:
        return f"Rip {wood} on the {SLED}, its line at the sled's edge"
    return f"Rip {wood} without the fence, along a chalk line"


def of_parts(blank: NamedBlank, model: Model) -> str:
    """Return the parts of a blank as a sentence names them: ``the posts``, ``the top staves``."""
    part = next((part for part in model.parts if part.name == blank.part), None)
    if part is None or blank.subject != part.name:
        return f"the {blank.subject}s"
    return f"the {part.written.lower() if len(part.copies) > 1 else part.name}"


def board_name(board: StockBoard) -> str:
    """Return a board by its kind and letter: ``board A``, ``sheet C``."""
    return f"{board.line.kind} {board.label}"


def sawing_details(cuts: Sequence[LayoutCut], way: SawWay) -> Iterator[Detail]:
    """Yield what must be known beside the cuts."""
    if any(not cut.board.on_hand for cut in cuts):
        bought = dict.fromkeys(board_name(cut.board) for cut in cuts if not cut.board.on_hand)
        yield (f"To be bought first: {listed(bought)}",)
    yield from dict.fromkeys(filter(None, (way.why,)))
    if cuts[0].board.line.kind == "sheet":
        yield OWN_EDGE
    elif cuts[0].cut.saw == "crosscut":
        yield FRESH_END
    elif way.fence is not None:
        yield FRESH_EDGE


def cut_lines(cuts: Sequence[LayoutCut]) -> Iterator[Detail]:
    """Yield each cut in order; neighbours in a row at one figure are told in one line."""
    told: set[tuple[str, int]] = set()
    for row in _alike(cuts):
        yield _told(row, told)
        told |= {cut.key for cut in row}


def _alike(cuts: Sequence[LayoutCut]) -> Iterator[list[LayoutCut]]:
    row: list[LayoutCut] = []
    for cut in cuts:
        last = row[-1] if row else None
        if (
            last is not None
            and not last.trims
            and cut.parent == last.key
            and cut.run == last.run
            and cut.cut.at == last.cut.at
            and (bool(cut.letters), cut.keep[0]) == (bool(last.letters), last.keep[0])
        ):
            row.append(cut)
            continue
        if row:
            yield row
        row = [cut]
    if row:
        yield row


def _told(row: Sequence[LayoutCut], told: Collection[tuple[str, int]]) -> Detail:
    """Return what is said of cuts alike, after those that are told already."""
    first, last = row[0], row[-1]
    names = listed(f"{cut.board.label}{cut.cut.number}" for cut in row)
    where = _in_hand(first, told)
    if first.trims:
        raw = "end" if first.cut.saw == "crosscut" else "edge"
        if not first.cut.at:
            return (f"Cut {names}{where}: the raw {raw}, no more than the saw takes",)
        return (f"Cut {names}{where}: the raw {raw}, ", first.cut.at)
    each = "each " if len(row) > 1 else ""
    counted_from = "end" if first.cut.saw == "crosscut" else "edge"
    if first.along_bark:
        counted_from = "edge with the bark, where that comes in farthest"
    cuts = "Cuts" if len(row) > 1 else "Cut"
    return (
        f"{cuts} {names}{where}: {each}",
        first.cut.at,
        f" from the {counted_from}; {_falls(row)}{_left(last)}",
    )


def _in_hand(cut: LayoutCut, told: Collection[tuple[str, int]]) -> str:
    """Return where the piece in hand comes from; one goes on with what the cut above it left."""
    if cut.parent is None or (cut.run != cut.cut.number and cut.parent in told):
        return ""
    label, number = cut.parent
    took = "took off" if cut.cut.side == "first" else "left"
    return f", in what {label}{number} {took}"


def _falls(row: Sequence[LayoutCut]) -> str:
    """Return what comes off: blanks, the wood for more of them, what is worth keeping, or waste."""
    off = [_named(cut.first) for cut in row if cut.first is not None]
    more = {letter for cut in row if cut.first is None for letter in cut.letters}
    letters = listed(sorted(more, key=lambda letter: (len(letter), letter)))
    off += [f"the wood for {letters}"] if letters else []
    if off:
        comes = "come" if len(off) > 1 else "comes"
        return f"off {comes} {listed(off)}"
    if any(cut.keep[0] for cut in row):
        return f"what falls is {LEFTOVER}"
    return "what falls is waste"


def _left(cut: LayoutCut) -> str:
    if cut.keep[1]:
        return f", and what is left is {LEFTOVER}"
    return f", and what is left is {_named(cut.rest)}" if cut.rest is not None else ""


def _named(becomes: Becomes) -> str:
    return f"{becomes.name} ({becomes.letter})"
