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

    stage   of a first cut in direction 0, and in direction 1
    touchy  how many blanks in it may come to break a rule where others come or go
    """

    __slots__ = ("across", "along", "root", "stage", "touchy")

    def __init__(self, along: int, across: int, stage: tuple[int, int]) -> None:
        self.along = along
        self.across = across
        self.stage = stage
        self.root: Node | None = None
        self.touchy = 0


Space = tuple[int, int, int, int, Plot, Node | None, int]
"""Room along and across, what of it is spoken for already, and how a blank gets in there."""


def copy_tree(node: Node, up: Node | None, twins: dict[Node, Node]) -> Node:
    """The same tree again, to be changed; `twins` learns which node has become which."""
    twin = Node(node.way, node.blank, node.along, node.across)
    twin.up = up
    twins[node] = twin
    if node.kids:
        twin.kids = [copy_tree(kid, twin, twins) for kid in node.kids]
    return twin


def copy_plot(plot: Plot, twins: dict[Node, Node]) -> Plot:
    """The same plot with a tree of its own."""
    twin = Plot(plot.along, plot.across, plot.stage)
    twin.touchy = plot.touchy
    if plot.root is not None:
        twin.root = copy_tree(plot.root, None, twins)
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
    """Work out a row and all that it lies in, as far as that changes."""
    while node is not None:
        along, across = node.along, node.across
        measure(node, saws)
        if node.along == along and node.across == across:
            return
        node = node.up


def spaces_of(plot: Plot, saws: Saws, out: list[Space]) -> None:
    """All places of a plot where one more blank may go, as far as stages allow."""
    root = plot.root
    along, across = plot.along, plot.across
    if root is None:
        out.extend(
            (along, across, along, across, plot, None, way)
            for way in (0, 1)
            if plot.stage[way] <= saws.stages and (way == 0 or along >= saws.least_rip)
        )
        return
    if root.way == 0:
        snug = along - root.along - saws.kerfs[0]
        deepest = _walk_along(plot, root, (along, across, snug, across), plot.stage[0], saws, out)
        room = across - root.across - saws.kerfs[1]
        later = plot.stage[1] + deepest - plot.stage[0] + 1
        if later <= saws.stages and room > 0 and along >= saws.least_rip:
            out.append((along, room, along, room, plot, root, WRAP_ALL))
    else:
        snug = across - root.across - saws.kerfs[1]
        deepest = _walk_across(plot, root, (along, across, along, snug), plot.stage[1], saws, out)
        room = along - root.along - saws.kerfs[0]
        later = plot.stage[0] + deepest - plot.stage[1] + 1
        if later <= saws.stages and room > 0:
            out.append((room, across, room, across, plot, root, WRAP_ALL))


Limits = tuple[int, int, int, int]
"""How far a row may grow along and across, and what it has so far for one piece more: along and
across. The first two are sizes of the row, of the other two that in its direction is a rest."""


def _walk_along(
    plot: Plot, node: Node, limits: Limits, stage: int, saws: Saws, out: list[Space]
) -> int:
    """Collect the places in a row along the board; the last stage in it."""
    along, across, snug, have = limits
    kerf_along, kerf_across = saws.kerfs
    deepest = stage
    spare = along - node.along
    if spare > kerf_along:
        out.append((spare - kerf_along, across, snug, have, plot, node, APPEND))
    deeper = stage < saws.stages
    least_rip = saws.least_rip
    for kid in node.kids:
        grown = spare + kid.along
        beside = kid.across + kerf_across
        if kid.way >= 0:
            inner = (grown, across, kid.along, have - beside)
            deepest = max(deepest, _walk_across(plot, kid, inner, stage + 1, saws, out))
        elif deeper and across > beside and grown >= least_rip:
            out.append((grown, across - beside, kid.along, have - beside, plot, kid, WRAP))
    return deepest


def _walk_across(
    plot: Plot, node: Node, limits: Limits, stage: int, saws: Saws, out: list[Space]
) -> int:
    """Collect the places in a row across the board; the last stage in it."""
    along, across, have, snug = limits
    kerf_along, kerf_across = saws.kerfs
    deepest = stage
    spare = across - node.across
    if spare > kerf_across:
        out.append((along, spare - kerf_across, have, snug, plot, node, APPEND))
    deeper = stage < saws.stages
    for kid in node.kids:
        grown = spare + kid.across
        beside = kid.along + kerf_along
        if kid.way >= 0:
            inner = (along, grown, have - beside, kid.across)
            deepest = max(deepest, _walk_along(plot, kid, inner, stage + 1, saws, out))
        elif deeper and along > beside:
            out.append((along - beside, grown, have - beside, kid.across, plot, kid, WRAP))
    return deepest


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
