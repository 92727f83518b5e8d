"""Blanks that keep a raw edge lie along it: they are laid out first, from one end of a slab on.

A blank with one waney edge lies along a raw edge of its board, and is ripped off at its other side;
one with two is a length of the whole slab.  What is left of the slab goes on as a board of its own,
for all other blanks (TRADE A2.6).  That is one way of several: that there is no better one is
never proved.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from math import ceil

from dryfit.piece.declared import Avoid, Have
from dryfit.quantities import Display
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.between_strips import cut_short
from dryfit.stock.blanks.blank import Blank
from dryfit.stock.blanks.rough_sizes import Rough, rough_sizes
from dryfit.stock.board_edges import TAPER, bad_places
from dryfit.stock.laid_out import Reach, StockBoard
from dryfit.stock.laying.at_least import HUNDREDTH, without_allowances
from dryfit.stock.saws import WANEY_ROOM, crosscut_at_boards, rip_at_boards

WANDERS = Fraction(60)
"""So much wider than its part a slab may be of which both edges stay, mm (our guess)."""
LEAST_REST = Fraction(150)
"""What is left of a slab and shorter is counted on for no other blank, mm (our guess)."""


@dataclass(frozen=True, slots=True)
class Lying:
    """A waney blank in its slab; `index` says which of those that are alike."""

    blank: Blank
    index: int
    across: Reach
    rough: Rough

    @property
    def name(self) -> str:
        """Return the name of the rough piece."""
        return self.blank.names[self.index]


@dataclass(frozen=True, slots=True)
class Column:
    """A length of a slab with the blanks that lie in it, from its near edge on."""

    along: Reach
    narrowest: Fraction
    lying: tuple[Lying, ...]


@dataclass(frozen=True, slots=True)
class Slab:
    """A slab of which waney blanks are cut, and what of it is left as a board, if any."""

    board: StockBoard
    columns: tuple[Column, ...]
    left: StockBoard | None
    begins: Fraction
    """Where what is left begins."""


@dataclass(frozen=True, slots=True)
class Waney:
    """Where waney blanks lie, the boards for all others, and the blanks that found no edge.

    `short` are the parts of which a blank had to be cut short to find one.
    """

    slabs: tuple[Slab, ...]
    boards: tuple[StockBoard, ...]
    nowhere: tuple[tuple[Blank, int], ...]
    short: tuple[str, ...]


def keeps_bark(blank: Blank) -> bool:
    """Return whether a blank keeps a raw edge; what is made only if there is room keeps none."""
    return bool(blank.part.waney) and not blank.if_room


def waney_first(blanks: Iterable[Blank], boards: Sequence[StockBoard], shop: Shop) -> Waney:
    """Return where the blanks lie that keep a raw edge, longest first, and what is left over."""
    wanted = [(one, index) for one in blanks if keeps_bark(one) for index in range(one.count)]
    wanted.sort(key=lambda one: (-len(one[0].part.waney), -one[0].length, one[0].names[one[1]]))
    columns: dict[str, list[Column]] = {}
    nowhere: list[tuple[Blank, int]] = []
    short = dict[str, None]()
    for blank, index in wanted:
        found = list(_all_places(blank, index, boards, columns, shop))
        if not found:
            found = list(_all_places(cut_short(blank, shop), index, boards, columns, shop))
            if found:
                short[blank.part.name] = None
        if not found:
            nowhere.append((blank, index))
            continue
        _, _, label, number, column = min(found, key=lambda one: one[:4])
        row = columns.setdefault(label, [])
        row[number : number + 1] = [column]
    slabs = tuple(
        _slab(board, columns[board.label], shop) for board in boards if board.label in columns
    )
    left = {slab.board.label: slab.left for slab in slabs}
    others = (left.get(board.label, board) for board in boards)
    return Waney(
        slabs, tuple(one for one in others if one is not None), tuple(nowhere), tuple(short)
    )


Place = tuple[Fraction, Fraction, str, int, Column]
"""What it takes of the length, what is left of it, the board, the number of the column, and it."""


def _all_places(
    blank: Blank,
    index: int,
    boards: Sequence[StockBoard],
    columns: Mapping[str, Sequence[Column]],
    shop: Shop,
) -> Iterator[Place]:
    for board in boards:
        yield from _places(blank, index, board, columns.get(board.label, ()), shop)


def _places(
    blank: Blank, index: int, board: StockBoard, columns: Sequence[Column], shop: Shop
) -> Iterator[Place]:
    """Yield where a blank may lie in a board: beside one that lies there, or behind the last."""
    line = board.line
    rough = rough_sizes(blank, line, shop)
    if rough is None:
        return
    long = board.sizes[0]
    end = long - shop.allowances["end_trim"]
    for number, column in enumerate(columns):
        along = column.along[0], column.along[0] + rough.length
        if along[1] <= column.along[1]:
            for lying in _across(blank, index, rough, board, column.along, column.lying, shop):
                both = tuple(sorted((*column.lying, lying), key=lambda one: one.across))
                beside = replace(column, lying=both)
                yield Fraction(0), Fraction(0), board.label, number, beside
    for start in _starts(blank, rough, board, columns, shop):
        along = start, start + rough.length
        if along[1] > end:
            return
        for lying in _across(blank, index, rough, board, along, (), shop):
            column = Column(along, _narrowest(line, along, board), (lying,))
            taken = along[1] - (columns[-1].along[1] if columns else Fraction(0))
            yield taken, end - along[1], board.label, len(columns), column
            return


def _starts(
    blank: Blank, rough: Rough, board: StockBoard, columns: Sequence[Column], shop: Shop
) -> Iterator[Fraction]:
    """Yield where a column may begin: behind the raw end or the last one, and further on.

    That is behind a bad place, and where a tapering slab comes to a width that suits the blank.
    """
    kerf = crosscut_at_boards(shop)
    first = columns[-1].along[1] + kerf if columns else shop.allowances["end_trim"]
    # What falls before a column is sawn off there once more.
    later = first + kerf if columns else max(first, kerf)
    ends = [bad.along[1] for bad in board.line.avoid if bad.along is not None]
    tapers = [_where(width, board) for width in (rough.width, _as_wide_at_most(blank))]
    yield first
    yield from sorted({max(at, later) for at in (*ends, *tapers) if at > first})


def _as_wide_at_most(blank: Blank) -> Fraction:
    """Return how wide a slab may be of which both edges stay."""
    return blank.to_width + WANEY_ROOM + WANDERS


def _where(width: Fraction, board: StockBoard) -> Fraction:
    """Return how far from its near end a tapering board is so wide, in whole mm; else 0."""
    here, there = board.line.sizes[1], board.line.other_width
    if here is None or there is None or here == there:
        return Fraction(0)
    return Fraction(ceil((width - here) / (there - here) * board.sizes[0]))


def _across(
    blank: Blank,
    index: int,
    rough: Rough,
    board: StockBoard,
    along: Reach,
    beside: Sequence[Lying],
    shop: Shop,
) -> Iterator[Lying]:
    """Yield the ways to lie along a raw edge there that are free, and without a bad place."""
    line, wide = board.line, board.sizes[1]
    narrow = _narrowest(line, along, board)
    kerf = rip_at_boards(shop)
    reaches: list[Reach] = []
    if len(blank.part.waney) > 1:
        suits = rough.width <= narrow and _widest(line, along, board) <= _as_wide_at_most(blank)
        if line.waney > 1 and suits:
            reaches.append((Fraction(0), wide))
    else:
        # What is less than a saw cut beside it stays on the blank.
        if line.waney > 1 and rough.width <= narrow:
            high = min((one.across[0] - kerf for one in beside), default=rough.width)
            near = high - kerf < rough.width < high
            reaches.append((Fraction(0), high if near else rough.width))
        if line.waney:
            low = max((one.across[1] + kerf for one in beside), default=Fraction(0))
            begin = narrow - rough.width
            reaches.append((low if low < begin < low + kerf else begin, wide))
    for across in reaches:
        apart = all(
            across[0] >= one.across[1] + kerf or across[1] + kerf <= one.across[0] for one in beside
        )
        bad = any(_meets(place, along, across, board) for place in line.avoid)
        if across[0] >= 0 and apart and not bad:
            yield Lying(blank, index, across, rough)


def _meets(bad: Avoid, along: Reach, across: Reach, board: StockBoard) -> bool:
    long, wide, _ = board.sizes
    zone = bad.along or (Fraction(0), long), bad.across or (Fraction(0), wide)
    return all(
        max(one[0], other[0]) < min(one[1], other[1])
        for one, other in zip(zone, (along, across), strict=True)
    )


def _width_at(line: Have, at: Fraction, board: StockBoard) -> Fraction:
    here, there = line.sizes[1], line.other_width
    if here is None or there is None:
        return board.sizes[1]
    return here + (there - here) * at / board.sizes[0]


def _narrowest(line: Have, along: Reach, board: StockBoard) -> Fraction:
    return min(_width_at(line, at, board) for at in along)


def _widest(line: Have, along: Reach, board: StockBoard) -> Fraction:
    return max(_width_at(line, at, board) for at in along)


def _slab(board: StockBoard, columns: Sequence[Column], shop: Shop) -> Slab:
    begins = columns[-1].along[1] + crosscut_at_boards(shop)
    return Slab(board, tuple(columns), _left(board, begins), begins)


def _left(board: StockBoard, begins: Fraction) -> StockBoard | None:
    """Return what is left of a slab beyond its waney blanks, as wide as the whole slab.

    Its warp falls as that of any piece does; what a taper lacks are bad places of it.
    """
    line, (long, wide, _) = board.line, board.sizes
    rest = long - begins
    if rest < LEAST_REST:
        return None
    lacks = [
        Avoid(bad.along, bad.across, bad.why, line.span)
        for bad in bad_places(board)
        if bad.why == TAPER
    ]
    avoid = [
        replace(bad, along=_shifted(bad.along or (Fraction(0), long), begins))
        for bad in (*line.avoid, *lacks)
        if bad.along is None or bad.along[1] > begins
    ]
    share = rest / long
    return StockBoard(
        board.label,
        replace(
            line,
            sizes=(rest, wide, line.sizes[2]),
            other_width=None,
            avoid=tuple(avoid),
            bow=line.bow * share**2,
            twist=line.twist * share,
        ),
        board.on_hand,
    )


def _shifted(along: Reach, by: Fraction) -> Reach:
    return max(Fraction(0), along[0] - by), along[1] - by


def room_of(slab: Slab, shop: Shop) -> Fraction:
    """Return how much longer or wider the waney blanks of a slab could be, in mm (M28)."""
    end = slab.board.sizes[0] - shop.allowances["end_trim"]
    rooms = [end - slab.columns[-1].along[1]]
    for column in slab.columns:
        taken = sum((one.rough.width for one in column.lying), Fraction(0))
        kerfs = (len(column.lying) - 1) * rip_at_boards(shop)
        rooms.append(column.narrowest - taken - kerfs)
    return max(Fraction(0), min(rooms))


EDGES = {1: "a raw edge", 2: "two raw edges"}


def why_nowhere(blank: Blank, boards: Sequence[StockBoard], shop: Shop, display: Display) -> str:
    """Return why no slab holds a waney blank, as a part of a sentence."""
    edges = len(blank.part.waney)
    there = [
        board
        for board in boards
        if board.line.waney >= edges and rough_sizes(blank, board.line, shop) is not None
    ]
    if not there:
        return f"no board on hand has {EDGES[edges]} and the thickness for it"
    widths = [_narrowest(board.line, (Fraction(0), board.sizes[0]), board) for board in there]
    wide = [width for width in widths if width > _as_wide_at_most(blank)]
    if edges > 1 and wide:
        say = display.with_unit
        return (
            f"both its edges stay, so that it is as wide as its slab: {say(wide[0])}, and "
            f"{say(blank.to_width)} is wanted"
        )
    return f"no board with {EDGES[edges]} has room for it along {'it' if edges == 1 else 'them'}"


def surely(blank: Blank, boards: Sequence[StockBoard], shop: Shop) -> bool:
    """Return whether no board could hold the blank even by itself, and cut as short as can be."""
    least, bare = replace(blank, between_strips=True, step=HUNDREDTH), without_allowances(shop)
    return not any(True for board in boards for _ in _places(least, 0, board, (), bare))
