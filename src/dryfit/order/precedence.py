"""The graph of precedences: contradictions in it, and an order that keeps it."""

from collections import deque
from collections.abc import Sequence

import networkx as nx

from dryfit.order.problem import Precedence, Problem


def cycle(problem: Problem) -> tuple[Precedence, ...] | None:
    """A shortest chain of precedences that bites its own tail, or None.

    Each one's `after` is the next one's `before`, and the last one's `after` is the first one's
    `before`. Of several shortest, the one through the task declared first. Precedences that name
    unknown tasks are passed over.
    """
    known = {task.id for task in problem.tasks}
    edges = tuple(e for e in problem.precedences if e.before in known and e.after in known)
    edges = _inside_cycles(edges)
    leaving: dict[str, list[Precedence]] = {}
    for edge in edges:
        leaving.setdefault(edge.before, []).append(edge)
    shortest: tuple[Precedence, ...] | None = None
    for task in problem.tasks:
        if task.id in leaving:
            chain = chain_between(leaving, task.id, {task.id})
            if chain is not None and (shortest is None or len(chain) < len(shortest)):
                shortest = chain
    return shortest


def chain_between(
    leaving: dict[str, list[Precedence]], start: str, ends: set[str]
) -> tuple[Precedence, ...] | None:
    """A shortest chain of at least one precedence from a task to any of `ends`, or None.

    `leaving` holds the precedences by their `before`.
    """
    reached_by: dict[str, Precedence] = {}
    queue = deque([start])
    while queue:
        for edge in leaving.get(queue.popleft(), ()):
            if edge.after in reached_by:
                continue
            reached_by[edge.after] = edge
            if edge.after in ends:
                return _chain_back(reached_by, start, edge)
            queue.append(edge.after)
    return None


def topological(predecessors: Sequence[int]) -> tuple[int, ...]:
    """All tasks, each after its predecessors, as low indexes as possible first.

    `predecessors` is one bit mask per task. The graph must have no cycle.
    """
    waiting = list(range(len(predecessors)))
    done = 0
    order: list[int] = []
    while waiting:
        later: list[int] = []
        for task in waiting:
            if predecessors[task] & ~done:
                later.append(task)
            else:
                done |= 1 << task
                order.append(task)
        assert len(later) < len(waiting), "a cycle got past the check"
        waiting = later
    return tuple(order)


def _chain_back(
    reached_by: dict[str, Precedence], start: str, last: Precedence
) -> tuple[Precedence, ...]:
    chain = [last]
    while chain[-1].before != start:
        chain.append(reached_by[chain[-1].before])
    return tuple(reversed(chain))


def _inside_cycles(edges: tuple[Precedence, ...]) -> tuple[Precedence, ...]:
    """Edges that lie on some cycle."""
    graph: nx.DiGraph[str] = nx.DiGraph((edge.before, edge.after) for edge in edges)
    component = {
        name: number
        for number, names in enumerate(nx.strongly_connected_components(graph))
        for name in names
    }
    return tuple(edge for edge in edges if component[edge.before] == component[edge.after])
