"""From boards and blanks to jobs of the layout library: which blank may lie on which board.

A job has the boards of one line as one, so many times; thickness and wood are told board by board.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from dryfit.cutting import Board, Job, Part
from dryfit.piece.declared import Have
from dryfit.shop.shop import Shop
from dryfit.stock import saws
from dryfit.stock.blanks.blank import Blank
from dryfit.stock.blanks.rough_sizes import Rough, rough_sizes
from dryfit.stock.board_edges import bad_areas, rough_edge, usable_face
from dryfit.stock.laid_out import StockBoard
from dryfit.stock.pricing import in_hundredths, price_of

OFFCUT = Fraction(2, 5)
"""What an offcut is worth of a board of its size, so that offcuts are used first (our trials)."""
SMALL = Fraction(1, 4)
"""A board on hand with no more of the face of the largest one is an offcut as well (our own)."""
MUCH_THICKER = Fraction(13, 2)
"""More than this, about 1/4 in, is not planed away as long as thinner boards do (our own)."""
ANY = 1
"""Thickness of everything in a job."""

Sizes = dict[str, Rough]
"""How a blank is sawn out of the boards of a line, by the label of the first of them."""


@dataclass(frozen=True, slots=True)
class Split:
    """Blanks and boards that have to do with one another, and with nothing else.

    The parts of the `job` are its `blanks`, called after the first of those that are alike (`key`);
    `boards` are called after the first of their line.  `least` has every blank as small as the most
    sparing of its boards lets it be, where boards are not alike in that; what is proved of it holds
    for `job`.
    """

    blanks: tuple[Blank, ...]
    boards: tuple[tuple[str, tuple[StockBoard, ...]], ...]
    job: Job
    least: Job | None

    def blank(self, part: str) -> Blank:
        """Return what a part of the job is."""
        return next(blank for blank in self.blanks if key(blank) == part)

    def board(self, name: str, copy: int) -> StockBoard:
        """Return a board of the job, `copy` from 1."""
        return dict(self.boards)[name][copy - 1]


def key(blank: Blank) -> str:
    """Return what the part of a job is called that stands for blanks that are alike."""
    return blank.names[0]


def by_line(boards: Sequence[StockBoard]) -> tuple[tuple[str, tuple[StockBoard, ...]], ...]:
    """Return the boards of each line, with the label of its first; those to buy apart.

    What is no wider than its rough edge gives nothing, and is left out.
    """
    lines: dict[tuple[int, bool], list[StockBoard]] = {}
    for board in boards:
        if board.sizes[1] <= rough_edge(board.line):
            continue
        lines.setdefault((id(board.line), board.on_hand), []).append(board)
    return tuple((alike[0].label, tuple(alike)) for alike in lines.values())


def splits_of(
    blanks: Sequence[Blank], boards: Sequence[StockBoard], shop: Shop, *, sparing: bool
) -> tuple[tuple[Split, ...], tuple[Blank, ...]]:
    """Return jobs that share nothing, and the blanks that come out of no board's wood.

    With `sparing` a blank comes out of no board that is much thicker than another would be.
    """
    lines = by_line(boards)
    sizes = [sizes_on(blank, lines, shop, sparing=sparing) for blank in blanks]
    splits = tuple(
        split_of([(blanks[place], sizes[place]) for place in group], lines, shop)
        for group in joined(sizes, blanks)
    )
    return splits, tuple(blank for blank, found in zip(blanks, sizes, strict=True) if not found)


def sizes_on(
    blank: Blank,
    lines: Sequence[tuple[str, tuple[StockBoard, ...]]],
    shop: Shop,
    *,
    sparing: bool,
) -> Sizes:
    """Return how a blank is sawn out of the boards of each line that it may come out of."""
    rough = ((name, rough_sizes(blank, alike[0].line, shop)) for name, alike in lines)
    found = {name: one for name, one in rough if one is not None}
    if not sparing:
        return found
    there = {name: alike[0].line for name, alike in lines}
    large = [one for name, one in found.items() if _holds(there[name], one, shop)]
    most = min((one.thickness for one in large), default=Fraction(0)) + MUCH_THICKER
    return {name: one for name, one in found.items() if not large or one.thickness <= most}


def _holds(line: Have, rough: Rough, shop: Shop) -> bool:
    """Return whether a board is long and wide enough, whatever bad places it has."""
    long, wide = usable_face(line, shop)
    return line.kind == "sheet" or (rough.length <= long and rough.width <= wide)


def joined(sizes: Sequence[Sizes], blanks: Sequence[Blank]) -> list[tuple[int, ...]]:
    """Return the places of blanks that may have a board in common, or belong together."""
    found: list[tuple[set[str], tuple[int, ...]]] = []
    for place, one in enumerate(sizes):
        if not one:
            continue
        group = blanks[place].group
        names = set(one) | ({f"group {group}"} if group else set())
        touched = [other for other in found if other[0] & names]
        joined = names.union(*(other[0] for other in touched))
        places = tuple(sorted((place, *(one for other in touched for one in other[1]))))
        found = [other for other in found if other not in touched] + [(joined, places)]
    return [places for _, places in sorted(found, key=lambda group: group[1])]


def split_of(
    wanted: Sequence[tuple[Blank, Sizes]],
    lines: Sequence[tuple[str, tuple[StockBoard, ...]]],
    shop: Shop,
) -> Split:
    """Return the job of these blanks with all boards that one of them may come out of."""
    used = frozenset(name for _, sizes in wanted for name in sizes)
    there = tuple(line for line in lines if line[0] in used)
    rules = saws.rules_for(shop, sheet=wanted[0][0].sheet)
    largest_face = max(_face(alike) for _, alike in there)
    boards = tuple(_board(name, alike, SMALL * largest_face) for name, alike in there)
    largest = tuple(part_of(blank, sizes, used, max) for blank, sizes in wanted)
    least = tuple(part_of(blank, sizes, used, min) for blank, sizes in wanted)
    job = Job(largest, boards, rules)
    return Split(
        tuple(blank for blank, _ in wanted),
        there,
        job,
        None if largest == least else replace(job, parts=least),
    )


def part_of(
    blank: Blank,
    sizes: Sizes,
    used: frozenset[str],
    which: Callable[[Iterable[Fraction]], Fraction],
) -> Part:
    """Return blanks that are alike as a part, in the largest or least of their sizes."""
    return Part(
        key(blank),
        saws.up(which(one.length for one in sizes.values())),
        saws.up(which(one.width for one in sizes.values())),
        ANY,
        quantity=blank.count,
        group=blank.group,
        rule=blank.rule,
        boards=None if used == set(sizes) else frozenset(sizes),
        losses=tuple(_losses(sizes)),
    )


def _losses(sizes: Sizes) -> Iterator[tuple[str, int]]:
    """Yield what is planed off beyond need on boards that are thicker than the thinnest one."""
    thinnest = min(one.thickness for one in sizes.values())
    for name, one in sizes.items():
        more = one.length * one.width * (one.thickness - thinnest) / saws.LITRE
        if more:
            yield name, saws.up(more)


def _face(alike: Sequence[StockBoard]) -> Fraction:
    long, wide, _ = alike[0].sizes
    return long * wide


def _board(name: str, alike: Sequence[StockBoard], small: Fraction) -> Board:
    """Return the boards of a line; those on hand that are `small` count as offcuts."""
    board = alike[0]
    long, wide, thick = board.sizes
    offcut = board.on_hand and (board.line.offcut or _face(alike) <= small)
    worth = long * wide * thick / saws.LITRE * (OFFCUT if offcut or board.line.offcut else 1)
    # Where no price is known, the least wood is bought.
    price = price_of(board.line) or worth
    return Board(
        name,
        saws.down(long),
        saws.down(wide - rough_edge(board.line)),
        ANY,
        zones=tuple(bad_areas(board)),
        grain=board.line.kind != "sheet" or board.line.grain,
        count=len(alike),
        value=saws.down(worth),
        price=None if board.on_hand else in_hundredths(price),
        offcut=offcut,
    )
