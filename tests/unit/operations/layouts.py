"""Layouts made by hand for the boot bench: those of TRADE I1, and others by lot."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from random import Random
from typing import Literal

from dryfit.piece.declared import Have
from dryfit.placing.model import Model
from dryfit.stock.laid_out import (
    BoardLayout,
    LaidOut,
    NamedBlank,
    Placed,
    SawCut,
    StockBoard,
)

Way = Literal["crosscut", "rip"]
KERF = Fraction(16, 5)
TRIM = Fraction(22)
"""And its kerf: at least 25 off the end (TRADE A5.1)."""
ZERO = Fraction(0)


@dataclass(frozen=True, slots=True)
class Row:
    """What a piece in hand is sawn into, one cut a member: sizes from its reference end or edge."""

    saw: Way
    members: tuple[tuple[Fraction, "Row | NamedBlank | None"], ...]


def blank(
    subject: str, number: int, pieces: Sequence[str], sizes: tuple[int, Fraction], letter: str
) -> NamedBlank:
    """A blank of 27 mm; without pieces a spare."""
    what = "blank" if pieces else "spare"
    return NamedBlank(
        name=f"{subject} {what} {number}",
        letter=letter,
        subject=subject,
        part=subject.removesuffix(" stave"),
        pieces=tuple(pieces),
        length=Fraction(sizes[0]),
        width=sizes[1],
        thickness=Fraction(27),
        allowance=(Fraction(25), Fraction(5), Fraction(5)),
    )


def across(*members: tuple[int | Fraction, Row | NamedBlank | None]) -> Row:
    """Crosscuts, one after the other."""
    return Row("crosscut", tuple((Fraction(size), what) for size, what in members))


def along(*members: tuple[int | Fraction, Row | NamedBlank | None]) -> Row:
    """Rips, one after the other."""
    return Row("rip", tuple((Fraction(size), what) for size, what in members))


def cut_up(board: StockBoard, row: Row) -> BoardLayout:
    """The layout of a board whose raw end is sawn off first, then what the row says."""
    long, wide, _ = board.sizes
    sawing = _Sawing(board)
    names = tuple(one.name for one in _blanks_in(row))
    sawing.cuts.append(
        SawCut(1, None, "", "crosscut", TRIM, KERF, 0, (ZERO, long), (ZERO, wide), (), names)
    )
    sawing.part(row, (TRIM + KERF, long), (ZERO, wide), (1, "rest"), 1)
    return BoardLayout(board, tuple(sawing.placed), tuple(sawing.cuts), ())


def _blanks_in(row: Row) -> Iterator[NamedBlank]:
    for _, member in row.members:
        if isinstance(member, Row):
            yield from _blanks_in(member)
        elif member is not None:
            yield member


class _Sawing:
    """A board while it is cut up."""

    def __init__(self, board: StockBoard) -> None:
        """Begin with the whole board."""
        self.board = board
        self.cuts: list[SawCut] = []
        self.placed: list[Placed] = []

    def part(
        self,
        row: Row,
        along: tuple[Fraction, Fraction],
        across: tuple[Fraction, Fraction],
        hand: tuple[int, Literal["first", "rest"]],
        stage: int,
    ) -> None:
        """Saw a piece in hand into the members of a row, and those on."""
        for index, (size, member) in enumerate(row.members):
            lies = along if row.saw == "crosscut" else across
            first = tuple(one.name for one in _blanks_in(Row(row.saw, ((size, member),))))
            rest = tuple(one.name for one in _blanks_in(Row(row.saw, row.members[index + 1 :])))
            number = len(self.cuts) + 1
            kerf = min(KERF, lies[1] - lies[0] - size)
            assert kerf >= 0, (self.board.label, row.saw, size, lies)
            self.cuts.append(
                SawCut(number, *hand, row.saw, size, kerf, stage, along, across, first, rest)
            )
            falls, left = (lies[0], lies[0] + size), (lies[0] + size + kerf, lies[1])
            own = (falls, across) if row.saw == "crosscut" else (along, falls)
            if isinstance(member, Row):
                self.part(member, *own, (number, "first"), stage + 1)
            elif member is not None:
                self.placed.append(Placed(member, *own))
            along, across = (left, across) if row.saw == "crosscut" else (along, left)
            hand = number, "rest"


def laid(layouts: Sequence[BoardLayout], missing: Sequence[NamedBlank] = ()) -> LaidOut:
    """All wood, with layouts made by hand."""
    placed = tuple(one.blank for layout in layouts for one in layout.placed)
    return LaidOut(
        verdict="enough",
        proofs=(),
        boards=tuple(layout.board for layout in layouts),
        blanks=(*placed, *missing),
        layouts=tuple(layouts),
        missing=(),
        buy=(),
        searched=0,
    )


def boards(model: Model) -> tuple[StockBoard, ...]:
    """The boards of the notes, one of each line."""
    return tuple(StockBoard("ABCDEFGH"[index], line) for index, line in enumerate(model.stock))


def in_the_rough(board: StockBoard, **changes: object) -> StockBoard:
    """A board with words of its line changed."""
    line: Have = replace(board.line, **changes)  # type: ignore[arg-type]
    return replace(board, line=line)


STAVE = Fraction(193, 2)


def blanks_of_the_bench() -> dict[str, NamedBlank]:
    """The blanks of TRADE I1 by letter, with a test piece and a spare out of the third strips."""
    posts = ("front left post", "front right post", "back left post", "back right post")
    rows = (
        blank("post", 1, posts[:2], (985, Fraction(50)), "M"),
        blank("post", 2, posts[2:], (985, Fraction(50)), "N"),
        blank("post", 1, (), (985, Fraction(50)), "O"),
        blank(
            "top end rail",
            1,
            ("left top end rail", "right top end rail"),
            (805, Fraction(50)),
            "P",
        ),
        blank(
            "bottom end rail",
            1,
            ("left bottom end rail", "right bottom end rail"),
            (805, Fraction(50)),
            "Q",
        ),
        blank("top end rail", 1, (), (805, Fraction(50)), "R"),
        blank("apron", 1, ("front apron",), (1060, Fraction(105)), "S"),
        blank("apron", 2, ("back apron",), (1060, Fraction(105)), "T"),
        *(
            blank("top stave", number, (f"top stave {number}",), (1120, STAVE), letter)
            for number, letter in zip(range(1, 5), "UVWX", strict=True)
        ),
        *(
            blank("slat", number, (f"slat {number}",), (1060, Fraction(45)), letter)
            for number, letter in zip(range(1, 6), "FGHIJ", strict=True)
        ),
    )
    return {each.letter: each for each in rows}


def trade_example(model: Model) -> LaidOut:
    """The stock of TRADE I1: seven sections, ripped to 50, 105, 96.5 and 45."""
    of, (a, b, c, d) = blanks_of_the_bench(), boards(model)
    return laid(
        (
            cut_up(
                a,
                across(
                    (985, along((50, of["M"]), (50, of["N"]), (50, of["O"]))),
                    (805, along((50, of["P"]), (50, of["Q"]), (50, of["R"]))),
                ),
            ),
            cut_up(
                b,
                across(
                    (1060, along((105, of["S"]), (45, of["F"]))),
                    (1060, along((105, of["T"]), (45, of["G"]))),
                ),
            ),
            cut_up(
                c,
                across(
                    (1120, along((STAVE, of["U"]), (STAVE, of["V"]))),
                    (1120, along((STAVE, of["W"]), (STAVE, of["X"]))),
                ),
            ),
            cut_up(d, across((1060, along((45, of["H"]), (45, of["I"]), (45, of["J"]))))),
        )
    )


def by_lot(model: Model, seed: int) -> LaidOut:
    """The same blanks on boards long and wide enough, cut up in up to four stages by lot."""
    lot = Random(seed)  # noqa: S311 - lots, not secrets
    every = list(blanks_of_the_bench().values())
    lot.shuffle(every)
    share = len(every) // 4 + 1
    layouts = []
    for index, board in enumerate(boards(model)):
        own = every[index * share : (index + 1) * share]
        large = in_the_rough(board, sizes=(Fraction(40000), Fraction(4000), board.line.sizes[2]))
        if own:
            first: Way = lot.choice(("crosscut", "rip"))
            layouts.append(cut_up(large, _by_lot(own, first, lot, 1)[0]))
    return laid(layouts)


def _by_lot(
    own: Sequence[NamedBlank], saw: Way, lot: Random, depth: int
) -> tuple[Row, Fraction, Fraction]:
    """A row that frees the blanks, with the length and width that it takes."""
    members: list[tuple[Fraction, Row | NamedBlank | None]] = []
    other: Way = "rip" if saw == "crosscut" else "crosscut"
    run, beside = ZERO, ZERO
    left = list(own)
    while left:
        count = lot.randint(1, len(left)) if depth < 3 else 1
        some, left = left[:count], left[count:]
        inner: Row | NamedBlank
        if count == 1 and depth >= 3:
            inner, long, wide = some[0], some[0].length, some[0].width
        else:
            inner, long, wide = _by_lot(some, other, lot, depth + 1)
        size = long if saw == "crosscut" else wide
        members.append((size, inner))
        run += size + KERF
        beside = max(beside, wide if saw == "crosscut" else long)
    length, width = (run, beside) if saw == "crosscut" else (beside, run)
    return Row(saw, tuple(members)), length, width
