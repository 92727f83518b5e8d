"""Virtual boards: rectangles that cuts part right through, until a side of a cut is a blank.

Along a board counts from its left end, across from the edge towards the maker, as in the plan.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from dryfit.plan.plan import Plan
from dryfit.plan.sawing import Becomes, BoardCut, SawnBoard
from dryfit.rehearsal.blank import ZERO, Sizes
from dryfit.rehearsal.goal import Range

STAVE = " stave "
Origin = tuple[str, int | None, str]
"""A board, the cut that a piece came from, and its side; of the whole board None and nothing."""


@dataclass(slots=True)
class Piece:
    """What a cut has left of a board, or the whole of it; its `origin` says of which.

    Its reference edge is `straight` where it can run along a fence.  `sawn_by` is the number of the
    cut that parted it again, None while it is whole.
    """

    board: SawnBoard
    origin: Origin
    along: Range
    across: Range
    straight: bool
    becomes: Becomes | None = None
    sawn_by: int | None = None

    @property
    def sizes(self) -> Sizes:
        """Return length, width and thickness as it lies in the board."""
        return extent(self.along), extent(self.across), self.board.thickness


@dataclass(slots=True)
class Boards:
    """All boards of a plan as the cuts so far have left them.

    `sides` holds for each cut what fell at its reference side and what was left beyond, None where
    the saw left nothing.  `kerfs` sums what it took of each board's face, in square mm.
    """

    rows: dict[str, SawnBoard] = field(default_factory=dict)
    twice: tuple[str, ...] = ()
    """Labels that several boards have."""
    whole: dict[str, Piece] = field(default_factory=dict)
    sides: dict[tuple[str, int], tuple[Piece, Piece | None]] = field(default_factory=dict)
    kerfs: dict[str, Fraction] = field(default_factory=dict)
    names: frozenset[str] = frozenset()
    """The copies and staves that come out of boards, by all the cuts of the plan."""
    freed: dict[str, Piece] = field(default_factory=dict)
    """The piece that each of them came out of."""
    lacking: frozenset[str] = frozenset()
    """Copies and staves for which there is no wood yet."""
    coming: dict[Origin, frozenset[str]] = field(default_factory=dict)
    """The copies and staves that come out of each piece in the end."""

    def pieces(self) -> Iterable[Piece]:
        """Yield every piece that there is or was."""
        yield from self.whole.values()
        for first, rest in self.sides.values():
            yield first
            if rest is not None:
                yield rest


def boards_of(plan: Plan) -> Boards:
    """Return the boards before the first cut: all but rough ones have straight edges (A2.5)."""
    rows = {board.label: board for board in plan.boards}
    labels = [board.label for board in plan.boards]
    cuts = [cut for step in plan.steps for each in step.operations for cut in each.board_cuts]
    return Boards(
        rows=rows,
        twice=tuple(sorted({label for label in labels if labels.count(label) > 1})),
        whole={
            label: Piece(
                board,
                (label, None, ""),
                (ZERO, board.length),
                (ZERO, board.width),
                straight=board.sheet or not board.rough,
            )
            for label, board in rows.items()
        },
        kerfs=dict.fromkeys(rows, ZERO),
        names=named(cuts, plan.boards),
        lacking=frozenset(plan.lacking),
        coming=_coming(cuts),
    )


def named(cuts: Iterable[BoardCut], boards: Iterable[SawnBoard] = ()) -> frozenset[str]:
    """Return the copies and staves that come out of cuts of boards, or are whole ones."""
    sides = [side for cut in cuts for side in (cut.first, cut.rest)]
    whole = [board.becomes for board in boards]
    return frozenset(name for becomes in (*sides, *whole) for name in made(becomes))


def made(becomes: Becomes | None) -> tuple[str, ...]:
    """Return the copies and staves that one side of a cut becomes."""
    return () if becomes is None else becomes.pieces


def _coming(cuts: Sequence[BoardCut]) -> dict[Origin, frozenset[str]]:
    """Return what comes out of each piece in the end; cuts may stand in any order."""
    found: dict[Origin, frozenset[str]] = {}
    for _ in range(len(cuts)):
        before = dict(found)
        for cut in cuts:
            sides = (("first", cut.first), ("rest", cut.rest))
            both = [
                found.get((cut.board, cut.number, side), frozenset[str]()) | {*made(becomes)}
                for side, becomes in sides
            ]
            origin = (cut.board, cut.after, cut.side)
            found[origin] = found.get(origin, frozenset()).union(*both)
        if found == before:
            break
    return found


def extent(limits: Range) -> Fraction:
    """Return how far a range reaches."""
    return limits[1] - limits[0]


def owner_of(name: str) -> str:
    """Return the copy that a stave is glued into, or the copy itself."""
    return name.rpartition(STAVE)[0] or name


def shown(size: Fraction) -> str:
    """Return a length as a fault shows it, to the hundredth of a millimetre."""
    return f"{float(round(size, 2)):g}"
