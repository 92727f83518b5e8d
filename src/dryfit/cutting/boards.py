"""Boards that the search has opened: a frame of first cuts, and plots with trees of blanks."""

import random
from fractions import Fraction

from dryfit.cutting.instance import Instance
from dryfit.cutting.slicing import (
    BLANK,
    Node,
    Plot,
    Saws,
    Space,
    copy_plot,
    put,
    spaces_of,
    take,
)
from dryfit.cutting.zoned import Frame, Framer


class Open:
    """A board being cut. It is never changed once another state of the search refers to it.

    shut     kinds of blanks that none of its spaces holds, as far as somebody has tried
    trouble  what its cuts cost, and what its largest leftover is worth; None until asked
    weighed  what it takes of the worth of the stock, and its cuts with settings; None until asked
    """

    __slots__ = ("frame", "free", "plots", "shut", "spaces", "stock", "trouble", "weighed")

    def __init__(self, stock: int, frame: Frame, plots: list[Plot], free: int) -> None:
        self.stock = stock
        self.frame = frame
        self.plots = plots
        self.free = free
        self.shut: set[int] = set()
        self.spaces: list[Space] = []
        self.trouble: tuple[Fraction, Fraction] | None = None
        self.weighed: tuple[Fraction, int] | None = None


class Bench:
    """What every move needs: the job in numbers, its saws, and a lot to draw from."""

    def __init__(self, instance: Instance, seed: int) -> None:
        rules = instance.job.rules
        self.instance = instance
        self.rng = random.Random(seed)  # noqa: S311 - a search, not a secret
        self.saws = Saws((rules.crosscut_kerf, rules.rip_kerf), rules.stages, rules.least_rip)
        self.framers = [Framer(instance, stock, self.saws) for stock in range(len(instance.stocks))]
        self.faces = [blank.length * blank.width for blank in instance.blanks]
        self.runs = [blank.run for blank in instance.blanks]
        self.touchy = [
            blank.run or min(blank.shortest, blank.width) < rules.least_rip
            for blank in instance.blanks
        ]
        self.work = 0

    def opened(self, stock: int) -> Open:
        """A board of a stock, with a frame drawn by lot and nothing in it."""
        frame, plots = self.framers[stock].frame(self.rng)
        board = Open(stock, frame, plots, sum(plot.along * plot.across for plot in plots))
        self.refresh(board)
        return board

    def copied(self, board: Open, twins: dict[Node, Node] | None = None) -> Open:
        """The same board, to be changed; `twins` learns its nodes. Its spaces are not listed."""
        learns = {} if twins is None else twins
        plots = [copy_plot(plot, learns) for plot in board.plots]
        return Open(board.stock, board.frame, plots, board.free)

    def copied_with(self, board: Open, space: Space) -> tuple[Open, Space]:
        """The same board, to be changed, and one of its spaces there."""
        twins: dict[Node, Node] = {}
        twin = self.copied(board, twins)
        along, across, have_along, have_across, plot, node, how = space
        within = twin.plots[board.plots.index(plot)]
        inside = None if node is None else twins[node]
        return twin, (along, across, have_along, have_across, within, inside, how)

    def refresh(self, board: Open) -> None:
        """List the spaces anew after a change."""
        spaces: list[Space] = []
        for plot in board.plots:
            spaces_of(plot, self.saws, spaces)
        board.spaces = spaces
        board.shut.clear()
        self.work += len(spaces)

    def insert(self, board: Open, space: Space, blank: int, size: tuple[int, int]) -> bool:
        """Put a blank into a space of this very board; undone and False if a rule forbids it."""
        plot = space[4]
        leaf = put(space, blank, *size, self.saws)
        plot.touchy += self.touchy[blank]
        if plot.touchy and self.offender(plot) is not None:
            take(plot, leaf, self.saws)
            plot.touchy -= self.touchy[blank]
            return False
        board.free -= self.faces[blank]
        self.refresh(board)
        return True

    def remove(self, board: Open, plot: Plot, node: Node) -> list[int]:
        """Take a node out, and whatever breaks a rule without it. The blanks that came out."""
        freed = leaves_of(node)
        take(plot, node, self.saws)
        plot.touchy -= sum(self.touchy[leaf.blank] for leaf in freed)
        while plot.touchy and (other := self.offender(plot)) is not None:
            freed.append(other)
            take(plot, other, self.saws)
            plot.touchy -= self.touchy[other.blank]
        board.free += sum(self.faces[leaf.blank] for leaf in freed)
        return [leaf.blank for leaf in freed]

    def offender(self, plot: Plot) -> Node | None:
        """A blank that would have to be ripped too short, or a run with no stage left for it."""
        root = plot.root
        if root is None:
            return None
        width = plot.across if root.way == 0 else root.across
        return self._offender(root, width, plot.stage[root.way])

    def _offender(self, row: Node, across: int, stage: int) -> Node | None:
        for kid in row.kids:
            if kid.way != BLANK:
                found = self._offender(kid, across if row.way == 0 else kid.across, stage + 1)
                if found is not None:
                    return found
            elif row.way == 0:
                blank = self.instance.blanks[kid.blank]
                shortest = blank.shortest if self.runs[kid.blank] else kid.along
                if kid.across < across and shortest < self.saws.least_rip:
                    return kid
            elif self.runs[kid.blank] and stage + 1 > self.saws.stages:
                return kid
        return None


def leaves_of(node: Node) -> list[Node]:
    """All blanks below a node, in order."""
    found: list[Node] = []
    _collect(node, found)
    return found


def _collect(node: Node, found: list[Node]) -> None:
    if node.way == BLANK:
        found.append(node)
        return
    for kid in node.kids:
        if kid.way == BLANK:
            found.append(kid)
        else:
            _collect(kid, found)


def blanks_of(board: Open) -> list[int]:
    """All blanks of a board, in order."""
    return [leaf.blank for plot in board.plots if plot.root for leaf in leaves_of(plot.root)]
