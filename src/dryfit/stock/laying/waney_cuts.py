"""Waney blanks and the cuts that free them, before what is laid out in the rest of their slab."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction
from itertools import islice
from typing import Literal

from dryfit.quantities import Display
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.needs import SHORT
from dryfit.stock.laid_out import (
    BoardLayout,
    Bought,
    Fallen,
    LaidOut,
    NamedBlank,
    Placed,
    Reach,
    SawCut,
    StockBoard,
    Verdict,
)
from dryfit.stock.laying.buying import large_enough
from dryfit.stock.laying.composed import lying_nowhere
from dryfit.stock.laying.job import key
from dryfit.stock.laying.labels import SMALL_LETTERS, labels
from dryfit.stock.laying.lacking import lacking
from dryfit.stock.laying.sawn import named
from dryfit.stock.laying.waney import Lying, Slab, Waney, room_of, surely, why_nowhere
from dryfit.stock.saws import KEEP, ROUGH_EDGE, crosscut_at_boards, rip_at_boards

ZERO = Fraction(0)
Side = Literal["", "first", "rest"]


def with_waney(
    laid: LaidOut, waney: Waney, boards: Sequence[StockBoard], shop: Shop, display: Display
) -> LaidOut:
    """Return what is laid out with the waney blanks before it; `boards` are those on hand."""
    blanks = _named_blanks(waney, laid)
    there = {one.board.label: one for one in waney.slabs}
    whole = {board.label: board for board in boards}
    layouts = {one.board.label: one for one in laid.layouts}
    for label, slab in there.items():
        layouts[label] = _layout(slab, layouts.get(label), blanks, shop)
    bought = tuple(board for board in laid.boards if board.label not in whole)
    lost = [blank for blank, _ in waney.nowhere]
    whys = {key(blank): why_nowhere(blank, boards, shop, display) for blank in lost}
    missing = lacking(lost, tuple(blanks.values()), tuple(layouts.values()), whys)
    short = f"{SHORT} ({', '.join(waney.short)})" if waney.short else ""
    verdict, proofs = _verdict(laid, waney, boards, shop, display)
    room, tightest = _room(laid, waney, shop)
    return replace(
        laid,
        verdict=verdict,
        proofs=proofs,
        boards=(*boards, *bought),
        blanks=(*laid.blanks, *blanks.values()),
        layouts=tuple(
            layouts[board.label] for board in (*boards, *bought) if board.label in layouts
        ),
        missing=(*laid.missing, *missing),
        buy=(*laid.buy, *_to_buy(waney, shop)),
        spare_room=room if verdict == "enough" else None,
        tightest=tightest,
        spare_board=laid.spare_board if tightest == laid.tightest else None,
        way="; ".join(filter(None, (laid.way, short))),
        first_to_buy=laid.first_to_buy if tightest == laid.tightest else None,
    )


def _verdict(
    laid: LaidOut, waney: Waney, boards: Sequence[StockBoard], shop: Shop, display: Display
) -> tuple[Verdict, tuple[str, ...]]:
    """Return the verdict; what lies in what is left of a slab proves nothing of the whole slab."""
    alone = [blank for blank, _ in waney.nowhere if surely(blank, boards, shop)]
    if alone:
        why = why_nowhere(alone[0], boards, shop, display)
        return "not enough", (*laid.proofs, f"{alone[0].part.name}: {why}")
    if waney.nowhere or (laid.verdict == "not enough" and waney.slabs):
        return "not found", ()
    if not laid.blanks and waney.slabs:
        return "enough", ()
    return laid.verdict, laid.proofs


def _room(laid: LaidOut, waney: Waney, shop: Shop) -> tuple[Fraction | None, str]:
    rooms = [(room_of(slab, shop), slab.board.label) for slab in waney.slabs]
    if laid.spare_room is not None:
        rooms.append((laid.spare_room, laid.tightest))
    return min(rooms, default=(None, laid.tightest), key=lambda one: one[0])


def _to_buy(waney: Waney, shop: Shop) -> Iterator[Bought]:
    """Yield slabs that would do; what the yard sells is not looked at."""
    for blank, count in Counter(blank for blank, _ in waney.nowhere).items():
        line = large_enough([blank], shop)
        if line is not None:
            yield Bought(line, count, None, at_yard=False)


def _named_blanks(waney: Waney, laid: LaidOut) -> dict[str, NamedBlank]:
    """Return the waney blanks by name, with the letters behind those of the others."""
    lying = [
        (slab.board, one) for slab in waney.slabs for column in slab.columns for one in column.lying
    ]
    free = islice(labels(SMALL_LETTERS), len(laid.blanks), None)
    found = {one.name: _blank(one, board, next(free)) for board, one in lying}
    for blank, index in waney.nowhere:
        name = blank.names[index]
        found[name] = lying_nowhere(blank, index, name, next(free))
    return found


def _blank(one: Lying, board: StockBoard, letter: str) -> NamedBlank:
    blank, rough = one.blank, one.rough
    wide = one.across[1] - one.across[0]
    lost = rough.allowance
    edges = "both raw edges stay" if len(blank.part.waney) > 1 else "a raw edge of it stays"
    return NamedBlank(
        one.name,
        letter,
        blank.subject,
        blank.part.name,
        blank.pieces_of(one.index),
        rough.length,
        wide,
        board.sizes[2],
        (lost[0], wide - blank.to_width, lost[2]),
        "; ".join(each for each in (rough.reason, edges) if each),
        1,
        blank.what,
        between_strips=blank.between_strips,
    )


@dataclass(slots=True)
class _Saw:
    """The cuts of one slab as they are made, and what they leave."""

    board: StockBoard
    shop: Shop
    cuts: list[SawCut] = field(default_factory=list)
    placed: list[Placed] = field(default_factory=list)
    fallen: list[Fallen] = field(default_factory=list)

    def cut(
        self,
        hand: tuple[int | None, Side],
        saw: Literal["crosscut", "rip"],
        at: Fraction,
        stage: int,
        piece: tuple[Reach, Reach],
    ) -> int:
        """Make a cut and return its number."""
        along, across = piece
        kerf = (crosscut_at_boards if saw == "crosscut" else rip_at_boards)(self.shop)
        limits = along if saw == "crosscut" else across
        kerf = min(kerf, limits[1] - limits[0] - at)
        number = len(self.cuts) + 1
        self.cuts.append(SawCut(number, *hand, saw, at, kerf, stage, along, across, (), ()))
        return number

    def waste(self, along: Reach, across: Reach, clear: tuple[Reach, Reach] | None = None) -> None:
        """Let a piece fall, if there is any, to be kept where enough of it is sound."""
        if along[0] == along[1] or across[0] == across[1]:
            return
        keep = clear is not None and all(
            limits[1] - limits[0] >= least for limits, least in zip(clear, KEEP, strict=True)
        )
        self.fallen.append(Fallen(along, across, clear, keep))


def _layout(
    slab: Slab, rest: BoardLayout | None, blanks: dict[str, NamedBlank], shop: Shop
) -> BoardLayout:
    board, saw = slab.board, _Saw(slab.board, shop)
    long, wide, _ = board.sizes
    kerf = crosscut_at_boards(shop)
    across, begin = (ZERO, wide), ZERO
    hand: tuple[int | None, Side] = (None, "")
    for column in slab.columns:
        start, end = column.along
        if start > begin:
            piece = ((begin, long), across)
            at = start - begin - kerf
            number = saw.cut(hand, "crosscut", at, 0 if begin == 0 else 1, piece)
            saw.waste((begin, begin + at), across, _sound(board, (begin, begin + at), shop))
            hand = (number, "rest")
        number = saw.cut(hand, "crosscut", end - start, 1, ((start, long), across))
        _column(saw, (number, "first"), column.along, column.lying, column.narrowest, blanks)
        hand, begin = (number, "rest"), end + kerf
    if rest is None:
        saw.waste((begin, long), across, _sound(board, (begin, long), shop))
    else:
        _go_on(saw, hand, rest, begin)
    placed = tuple(saw.placed)
    return BoardLayout(
        board, placed, tuple(named(cut, placed) for cut in saw.cuts), tuple(saw.fallen)
    )


def _sound(board: StockBoard, along: Reach, shop: Shop) -> tuple[Reach, Reach] | None:
    """Return what of a length of a slab is sound between its raw ends, edges and bad places.

    That is what lies before the first bad place in it, or behind it where that is longer.
    """
    long, wide, _ = board.sizes
    trim, line = shop.allowances["end_trim"], board.line
    begin, end = max(along[0], trim), min(along[1], long - trim)
    for bad in line.avoid:
        low, high = bad.along or (ZERO, long)
        if low < end and begin < high:
            begin, end = max(((begin, low), (high, end)), key=lambda one: one[1] - one[0])
    low = ROUGH_EDGE if line.waney > 1 else ZERO
    high = min(wide, line.sizes[1] or wide, line.other_width or wide) - ROUGH_EDGE
    return ((begin, end), (low, high)) if begin < end and low < high else None


def _column(
    saw: _Saw,
    hand: tuple[int | None, Side],
    along: Reach,
    lying: Sequence[Lying],
    narrowest: Fraction,
    blanks: dict[str, NamedBlank],
) -> None:
    """Rip the blanks of one length of the slab out of it, from its near edge on."""
    low, high = ZERO, saw.board.sizes[1]
    kerf = rip_at_boards(saw.shop)
    for one in lying:
        begin, end = one.across
        if begin > low:
            at = begin - kerf - low
            number = saw.cut(hand, "rip", at, 2, (along, (low, high)))
            sound = (low + (ROUGH_EDGE if low == 0 else ZERO), low + at)
            saw.waste(along, (low, low + at), (along, sound) if sound[0] < sound[1] else None)
            hand, low = (number, "rest"), begin
        if end < high:
            number = saw.cut(hand, "rip", end - low, 2, (along, (low, high)))
            hand, low = (number, "rest"), end + kerf
        else:
            low = high
        blanks[one.name] = _longer(blanks[one.name], along)
        saw.placed.append(Placed(blanks[one.name], along, (begin, end)))
    if low < high:
        sound = (low, narrowest - ROUGH_EDGE)
        saw.waste(along, (low, high), (along, sound) if sound[0] < sound[1] else None)


def _longer(blank: NamedBlank, along: Reach) -> NamedBlank:
    """Return a blank as long as its column: beside a longer one it is not cut once more."""
    more = along[1] - along[0] - blank.length
    length, *others = blank.allowance
    return replace(
        blank, length=blank.length + more, allowance=(length + more, others[0], others[1])
    )


def _go_on(saw: _Saw, hand: tuple[int | None, Side], rest: BoardLayout, begin: Fraction) -> None:
    """Go on with what is laid out in the rest of the slab; its first end is sawn already."""
    before = len(saw.cuts)

    def moved(reach: Reach) -> Reach:
        return reach[0] + begin, reach[1] + begin

    for cut in rest.cuts:
        after, side = hand if cut.after is None else (cut.after + before, cut.side)
        fresh = cut.after is None and cut.saw == "crosscut"
        saw.cuts.append(
            replace(
                cut,
                number=cut.number + before,
                after=after,
                side=side,
                along=moved(cut.along),
                stage=1 if fresh else cut.stage,
            )
        )
    saw.placed += [replace(one, along=moved(one.along)) for one in rest.placed]
    for one in rest.fallen:
        clear = None if one.clear is None else (moved(one.clear[0]), one.clear[1])
        saw.fallen.append(replace(one, along=moved(one.along), clear=clear))
