"""Layouts from the trees of the search: positions, cuts and leftovers."""

from collections.abc import Sequence

from dryfit.cutting.boards import Open
from dryfit.cutting.clear import clear_rectangles
from dryfit.cutting.instance import Blank, Instance
from dryfit.cutting.problem import Area, Board, Rules
from dryfit.cutting.result import Cut, Layout, Leftover, Piece, Saw, Side, stage_after
from dryfit.cutting.slicing import BLANK, Node
from dryfit.cutting.zoned import Frame, Split, Whole, parted

SAWS: tuple[Saw, Saw] = ("crosscut", "rip")

Hand = tuple[int | None, Side]
"""A piece in hand: the cut that it came from, and which side of it."""


def layouts_of(instance: Instance, boards: Sequence[Open]) -> tuple[Layout, ...]:
    """All boards of a state in the order of the job, those of one id counted from 1."""
    used: dict[int, int] = {}
    layouts = []
    for board in sorted(boards, key=lambda board: board.stock):
        used[board.stock] = used.get(board.stock, 0) + 1
        layouts.append(Sawing(instance, board).layout(used[board.stock]))
    return tuple(layouts)


class Sawing:
    """Takes one board apart, cut by cut."""

    def __init__(self, instance: Instance, board: Open) -> None:
        self.instance = instance
        self.board: Board = instance.stocks[board.stock].board
        self.rules: Rules = instance.job.rules
        self.kerfs = (self.rules.crosscut_kerf, self.rules.rip_kerf)
        self.cuts: list[Cut] = []
        self.pieces: list[Piece] = []
        self.leftovers: list[Leftover] = []
        hand: Hand = (None, "")
        whole = Area(0, self.board.length, 0, self.board.width)
        trim = self.rules.end_trim
        if trim:
            at = max(0, trim - self.kerfs[0])
            _, rest, hand = self._sawn(whole, hand, 0, at, trim - at)
            assert rest is not None
            whole = rest
        self.plots = board.plots
        self._frame(board.frame, whole, hand)

    def layout(self, copy: int) -> Layout:
        """The board with all its cuts done."""
        return Layout(
            self.board.id, copy, tuple(self.cuts), tuple(self.pieces), tuple(self.leftovers)
        )

    def _sawn(
        self, area: Area, hand: Hand, way: int, at: int, kerf: int
    ) -> tuple[Area | None, Area | None, Hand]:
        """Both sides of a new cut, and the rest as the piece in hand.

        The end that is trimmed off, which alone has a kerf of its own and no cut before it, falls
        as a leftover.
        """
        after, side = hand
        trimming = after is None and way == 0 and self.rules.end_trim > 0
        before = self.cuts[after - 1] if after is not None else None
        stage = 0 if trimming else stage_after(before, SAWS[way])
        first, rest, taken = parted(area, way, at, kerf)
        number = len(self.cuts) + 1
        self.cuts.append(Cut(number, after, side, SAWS[way], at, taken, stage, area))
        if trimming and first is not None:
            self._fallen(first)
        return first, rest, (number, "rest")

    def _frame(self, frame: Frame | None, area: Area | None, hand: Hand) -> None:
        if frame is None or area is None:
            return
        if not self._used(frame):
            self._fallen(area)
            return
        if isinstance(frame, Split):
            root = self._root(frame.first)
            if root is not None and root.way == frame.way and not self._used(frame.rest):
                # The row cuts itself off from what is of no use beyond.
                self._row(root, area, hand)
                return
            first, rest, beyond = self._sawn(area, hand, frame.way, frame.at, self.kerfs[frame.way])
            self._frame(frame.first, first, (beyond[0], "first"))
            self._frame(frame.rest, rest, beyond)
            return
        root = self._root(frame)
        assert root is not None
        self._row(root, area, hand)

    def _root(self, frame: Frame | None) -> Node | None:
        """The tree of a plot, None for everything else."""
        if isinstance(frame, Whole) and frame.plot >= 0:
            return self.plots[frame.plot].root
        return None

    def _used(self, frame: Frame | None) -> bool:
        """Whether any blank comes out of it, so that scrap is not cut up."""
        if isinstance(frame, Split):
            return self._used(frame.first) or self._used(frame.rest)
        return self._root(frame) is not None

    def _row(self, row: Node, area: Area, hand: Hand) -> None:
        """Cut the pieces of a row off one after another; what is left falls."""
        left: Area | None = area
        for kid, size, blank, members in self._pieces_of(row):
            assert left is not None
            piece, piece_hand = left, hand
            if size < (left.length if row.way == 0 else left.width):
                first, left, beyond = self._sawn(left, hand, row.way, size, self.kerfs[row.way])
                assert first is not None
                piece, piece_hand, hand = first, (beyond[0], "first"), beyond
            else:
                left = None
            if blank is None:
                self._row(kid, piece, piece_hand)
            elif row.way == 1 and blank.run:
                self._run(blank, piece, piece_hand)
            else:
                self._blank(kid, members[0], row.way, piece, piece_hand)
        if left is not None:
            self._fallen(left)

    def _pieces_of(
        self, row: Node
    ) -> list[tuple[Node, int, Blank | None, tuple[tuple[int, int], ...]]]:
        """Pieces of a row with their sizes along it; runs along the board come blank by blank."""
        found: list[tuple[Node, int, Blank | None, tuple[tuple[int, int], ...]]] = []
        for kid in row.kids:
            size = kid.along if row.way == 0 else kid.across
            if kid.way != BLANK:
                found.append((kid, size, None, ()))
                continue
            blank = self.instance.blanks[kid.blank]
            if row.way == 0 and blank.run:
                for member in blank.members:
                    length = self.instance.job.parts[member[0]].length
                    found.append((kid, length, blank, (member,)))
            else:
                found.append((kid, size, blank, blank.members))
        return found

    def _run(self, blank: Blank, area: Area, hand: Hand) -> None:
        """Crosscut a ripped strip into the blanks of a run."""
        left: Area | None = area
        for member in blank.members:
            assert left is not None
            length = self.instance.job.parts[member[0]].length
            piece = left
            if length < left.length:
                first, left, hand = self._sawn(left, hand, 0, length, self.kerfs[0])
                assert first is not None
                piece = first
            else:
                left = None
            self._done(member, piece)
        if left is not None:
            self._fallen(left)

    def _blank(self, kid: Node, member: tuple[int, int], way: int, area: Area, hand: Hand) -> None:
        """One size of the piece is its blank's; the other one is trimmed where it is not."""
        size, run = (kid.across, area.width) if way == 0 else (kid.along, area.length)
        piece = area
        if size < run:
            first, rest, _ = self._sawn(area, hand, 1 - way, size, self.kerfs[1 - way])
            assert first is not None
            piece = first
            if rest is not None:
                self._fallen(rest)
        self._done(member, piece)

    def _done(self, member: tuple[int, int], area: Area) -> None:
        part = self.instance.job.parts[member[0]]
        turned = (area.length, area.width) != (part.length, part.width)
        self.pieces.append(Piece(part.id, member[1], area, turned))

    def _fallen(self, area: Area) -> None:
        self.leftovers.append(leftover(self.board, self.rules, area))


def leftover(board: Board, rules: Rules, area: Area) -> Leftover:
    """A piece that falls, with its largest clear rectangle, one that is kept if there is one."""
    clear = max(
        clear_rectangles(area, board.zones),
        key=lambda one: (_kept(rules, one), one.size),
        default=None,
    )
    return Leftover(area, clear, clear is not None and _kept(rules, clear))


def _kept(rules: Rules, area: Area) -> bool:
    least = rules.keep_length, rules.keep_width
    return min(least) > 0 and area.length >= least[0] and area.width >= least[1]
