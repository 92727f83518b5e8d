"""A lower bound from combined settings: the shortest tree that links them all.

Tasks that demand the same of all axes are one node. Any order goes from node to node until it has
been at every one, so the links that it uses first hold a tree of all nodes; and to go from one
node to another it must change every axis of which they demand values that exclude one another.
No order can therefore do with less than the shortest tree (Prim 1957), and the first setting of
each axis that stands at nothing comes on top. Precedences play no part in it.

The costs of each axis may be counted in part only; the rest is then free for another bound, and
the two add up.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from dryfit.order.axes import AxisTable
from dryfit.order.instance import Instance
from dryfit.order.sets import members

MOST = 400
"""Nodes beyond which no tree is tried."""

Node = tuple[int, ...]
"""Per axis: the values (bits) that will do, 0 where the axis does not matter."""


@dataclass(frozen=True, slots=True)
class Nodes:
    """What a tree is made of.

    firsts  per axis: the cheapest first setting, 0 if none is needed
    links   per node, per node: per axis the cost of the change between them
    """

    firsts: tuple[int, ...]
    links: tuple[tuple[tuple[int, ...], ...], ...]


def nodes_of(instance: Instance) -> Nodes:
    """Nodes of the tasks of one station, as `projected` makes it, and of what stands there."""
    standing = tuple(1 << value if value else 0 for value in instance.standing)
    found = {_node(instance, task) for task in range(len(instance.station))} | {standing}
    nodes = sorted(node for node in found if any(node))
    if len(nodes) > MOST:
        nodes = []
    known: dict[tuple[int, int, int], int] = {}
    links = [tuple(_change(instance.axes, known, one, other) for other in nodes) for one in nodes]
    return Nodes(tuple(_first(instance, axis) for axis in range(len(instance.axes))), tuple(links))


def shortest_tree(nodes: Nodes, shares: Sequence[int]) -> int:
    """What linking all nodes costs, where each axis counts with its share of the true costs."""
    total = sum(first * share for first, share in zip(nodes.firsts, shares, strict=True))
    left = list(range(1, len(nodes.links)))
    nearest = dict.fromkeys(left, 1 << 60)
    joined = 0
    while left:
        row = nodes.links[joined]
        for place in left:
            if nearest[place]:
                cost = sum(map(int.__mul__, row[place], shares))
                nearest[place] = min(cost, nearest[place])
        joined = min(left, key=nearest.__getitem__)
        left.remove(joined)
        total += nearest[joined]
    return total


def _node(instance: Instance, task: int) -> Node:
    will_do = {axis: 1 << value for axis, value in instance.demands[task]}
    if instance.choices:
        will_do.update(instance.choices[task])
    return tuple(will_do.get(axis, 0) for axis in range(len(instance.axes)))


def _first(instance: Instance, axis: int) -> int:
    if instance.standing[axis]:
        return 0
    table = instance.axes[axis]
    wanted = (value for value, tasks in enumerate(table.wanted) if tasks)
    return min((table.costs[0][value] for value in wanted), default=0)


def _change(
    axes: tuple[AxisTable, ...], known: dict[tuple[int, int, int], int], one: Node, other: Node
) -> tuple[int, ...]:
    """Per axis: the cheapest change between two nodes, either way."""
    changes = []
    for axis, here, there in zip(range(len(axes)), one, other, strict=True):
        key = axis, here, there
        if key not in known:
            excluded = here and there and not here & there
            known[key] = _cheapest(axes[axis], here, there) if excluded else 0
        changes.append(known[key])
    return tuple(changes)


def _cheapest(table: AxisTable, here: int, there: int) -> int:
    costs = table.costs
    return min(
        min(costs[one][other], costs[other][one])
        for one in members(here)
        for other in members(there)
    )
