"""Slicing trees: a clear rectangle of a board and the blanks cut from it, without positions.

A node is a row of pieces cut off one after another in one direction; pieces of a row are blanks
or rows in the other direction. Only the order is kept: how large a row must be follows from what
is in it, so that taking a blank out lets all others move up, and putting one in widens whatever
has room. Directions: 0 along the board (crosscuts lie between), 1 across (rips).
"""

from dataclasses import dataclass

APPEND, WRAP, WRAP_ALL = range(3)
BLANK = -1


class Node:
    """A row, or a blank (way BLANK). `along` and `across` are what it needs of the board."""

    __slots__ = ("across", "along", "blank", "kids", "up", "way")

    def __init__(self, way: int, blank: int, along: int, across: int) -> None:
        self.way = way
        self.blank = blank
        self.along = along
        self.across = across
        self.kids: list[Node] = []
        self.up: Node | None = None


@dataclass(frozen=True, slots=True)
class Saws:
    """Kerfs by direction, stages, and the shortest length that may be ripped."""

    kerfs: tuple[int, int]
    stages: int
    least_rip: int


class Plot:
    """A clear rectangle of a board and the tree in it.

    stage  of a first cut in direction 0, and in direction 1
    """

    __slots__ = ("across", "along", "root", "stage")

    def __init__(self, along: int, across: int, stage: tuple[int, int]) -> None:
        self.along = along
        self.across = across
        self.stage = stage
        self.root: Node | None = None


Space = tuple[int, int, int, int, Plot, Node | None, int]
"""Room along and across, what of it is spoken for already, and how a blank gets in there."""


def copy_tree(node: Node, up: Node | None = None) -> Node:
    """The same tree again, to be changed."""
    twin = Node(node.way, node.blank, node.along, node.across)
    twin.up = up
    twin.kids = [copy_tree(kid, twin) for kid in node.kids]
    return twin


def copy_plot(plot: Plot) -> Plot:
    """The same plot with a tree of its own."""
    twin = Plot(plot.along, plot.across, plot.stage)
    if plot.root is not None:
        twin.root = copy_tree(plot.root)
    return twin


def measure(node: Node, saws: Saws) -> None:
    """Work out what a row needs from what its pieces need."""
    kerf = saws.kerfs[node.way]
    if node.way == 0:
        along, across = -kerf, 0
        for kid in node.kids:
            along += kid.along + kerf
            across = max(across, kid.across)
    else:
        along, across = saws.least_rip, -kerf
        for kid in node.kids:
            across += kid.across + kerf
            along = max(along, kid.along)
    node.along = along
    node.across = across


def measure_up(node: Node | None, saws: Saws) -> None:
    """Work out a row and all that it lies in."""
    while node is not None:
        measure(node, saws)
        node = node.up


def spaces_of(plot: Plot, saws: Saws, out: list[Space]) -> None:
    """All places of a plot where one more blank may go, as far as stages allow."""
    root = plot.root
    if root is None:
        out.extend(
            (plot.along, plot.across, plot.along, plot.across, plot, None, way)
            for way in (0, 1)
            if plot.stage[way] <= saws.stages and (way == 0 or plot.along >= saws.least_rip)
        )
        return
    deepest = _walk(plot, root, plot.along, plot.across, plot.stage[root.way], saws, out)
    other = 1 - root.way
    if plot.stage[other] + deepest - plot.stage[root.way] + 1 > saws.stages:
        return
    if other == 0:
        room = plot.along - root.along - saws.kerfs[0]
        if room > 0:
            out.append((room, plot.across, room, plot.across, plot, root, WRAP_ALL))
    else:
        room = plot.across - root.across - saws.kerfs[1]
        if room > 0 and plot.along >= saws.least_rip:
            out.append((plot.along, room, plot.along, room, plot, root, WRAP_ALL))


def _walk(
    plot: Plot, node: Node, along: int, across: int, stage: int, saws: Saws, out: list[Space]
) -> int:
    """Collect the places in a row that may grow to `along` by `across`; the last stage in it."""
    top = node.up is None
    deepest = stage
    deeper = stage < saws.stages
    if node.way == 0:
        have = across if top else node.across
        room = along - node.along - saws.kerfs[0]
        if room > 0:
            have_along = room if top else _snug(plot, node) - saws.kerfs[0]
            out.append((room, across, have_along, have, plot, node, APPEND))
        for kid in node.kids:
            grown = along - node.along + kid.along
            if kid.way >= 0:
                deepest = max(deepest, _walk(plot, kid, grown, across, stage + 1, saws, out))
            elif deeper:
                high = across - kid.across - saws.kerfs[1]
                if high > 0 and grown >= saws.least_rip:
                    snug = have - kid.across - saws.kerfs[1]
                    out.append((grown, high, kid.along, snug, plot, kid, WRAP))
    else:
        have = along if top else node.along
        room = across - node.across - saws.kerfs[1]
        if room > 0:
            have_across = room if top else _snug(plot, node) - saws.kerfs[1]
            out.append((along, room, have, have_across, plot, node, APPEND))
        for kid in node.kids:
            grown = across - node.across + kid.across
            if kid.way >= 0:
                deepest = max(deepest, _walk(plot, kid, along, grown, stage + 1, saws, out))
            elif deeper:
                wide = along - kid.along - saws.kerfs[0]
                if wide > 0:
                    snug = have - kid.along - saws.kerfs[0]
                    out.append((wide, grown, snug, kid.across, plot, kid, WRAP))
    return deepest


def _snug(plot: Plot, node: Node) -> int:
    """What is left in the piece that a row is cut from, before that piece has to grow."""
    up = node.up
    assert up is not None
    if node.way == 0:
        return (plot.along if up.up is None else up.along) - node.along
    return (plot.across if up.up is None else up.across) - node.across


def put(space: Space, blank: int, along: int, across: int, saws: Saws) -> Node:
    """Put a blank into a space, and say which node it has become."""
    plot, node, how = space[4], space[5], space[6]
    leaf = Node(BLANK, blank, along, across)
    if node is None:
        row = Node(how, BLANK, 0, 0)
        row.kids = [leaf]
        plot.root = row
    elif how == APPEND:
        row = node
        row.kids.append(leaf)
    else:
        up = node.up
        way = (1 - node.way) if up is None else (1 - up.way)
        row = Node(way, BLANK, 0, 0)
        row.kids = [node, leaf]
        row.up = up
        node.up = row
        if up is None:
            plot.root = row
        else:
            up.kids[up.kids.index(node)] = row
    leaf.up = row
    measure_up(row, saws)
    return leaf


def take(plot: Plot, node: Node, saws: Saws) -> None:
    """Take a blank or a whole row out of its plot; what held it alone goes too."""
    up = node.up
    while up is not None:
        up.kids.remove(node)
        if up.kids:
            break
        node, up = up, up.up
    if up is None:
        plot.root = None
        return
    if len(up.kids) == 1 and (above := up.up) is not None:
        _lift(up, above)
        up = above
    elif len(up.kids) == 1 and up.kids[0].way >= 0:
        plot.root = up = up.kids[0]
        up.up = None
    measure_up(up, saws)


def _lift(row: Node, above: Node) -> None:
    """A row of one is no row: its only piece takes its place in the row above."""
    kid = row.kids[0]
    place = above.kids.index(row)
    heirs = kid.kids if kid.way == above.way else [kid]
    for heir in heirs:
        heir.up = above
    above.kids[place : place + 1] = heirs


def fits(plot: Plot) -> bool:
    """Whether the tree still lies within its plot."""
    root = plot.root
    return root is None or (root.along <= plot.along and root.across <= plot.across)
