"""Together groups: tasks that must be done in one visit to their station.

Two groups, or a group and a task, that can be neither wholly before nor wholly after one another
stand in the same visit; that needs one station. Put as a graph: make each group one node. Nodes
on a common cycle share a visit; a cycle through two stations is a contradiction. What is left is
free of cycles, so a schedule exists: the merged groups in topological order, each in one go.

From it follows what a group waits for: every task of another station that leads to its node must
be done before the visit, hence before each of its tasks. With these precedences added, a visit
once begun can always be ended.
"""

from dataclasses import dataclass

import networkx as nx

from dryfit.order.precedence import chain_between
from dryfit.order.problem import Precedence, Problem, Unsolvable


@dataclass(frozen=True, slots=True)
class Visits:
    """Groups as the precedences widen them.

    groups  task indexes of each group of two tasks or more, ascending
    waits   per group: indexes of the tasks, at other stations, that must be done before it
    """

    groups: tuple[tuple[int, ...], ...]
    waits: tuple[tuple[int, ...], ...]


def visits_of(problem: Problem) -> Visits:
    """Widened together groups, in order of their first task.

    Raises
    ------
    Unsolvable
        a group spans two stations, or precedences make its visit impossible.
    """
    named = _named_groups(problem)
    if not named:
        return Visits((), ())
    index = {task.id: i for i, task in enumerate(problem.tasks)}
    node_of = {i: -1 - g for g, group in enumerate(named) for i in group}
    graph: nx.DiGraph[int] = nx.DiGraph()
    graph.add_nodes_from(node_of.get(i, i) for i in range(len(problem.tasks)))
    for edge in problem.precedences:
        before, after = index[edge.before], index[edge.after]
        if node_of.get(before, before) != node_of.get(after, after):
            graph.add_edge(node_of.get(before, before), node_of.get(after, after))
    condensed = nx.condensation(graph)
    tasks_of: dict[int, tuple[int, ...]] = {}
    for part in range(len(condensed)):
        nodes: set[int] = condensed.nodes[part]["members"]
        tasks_of[part] = tuple(sorted(i for node in nodes for i in _tasks_at(node, named)))
    for tasks in sorted(tasks_of.values()):
        _require_one_station(problem, tasks)
    parts = sorted((p for p in tasks_of if len(tasks_of[p]) > 1), key=tasks_of.__getitem__)
    waits = []
    for part in parts:
        station = problem.tasks[tasks_of[part][0]].station
        earlier = (i for p in sorted(nx.ancestors(condensed, part)) for i in tasks_of[p])
        waits.append(tuple(sorted(i for i in earlier if problem.tasks[i].station != station)))
    return Visits(tuple(tasks_of[part] for part in parts), tuple(waits))


def _tasks_at(node: int, named: tuple[tuple[int, ...], ...]) -> tuple[int, ...]:
    """Tasks of a node: one that stands for itself, or a group, numbered -1, -2, ..."""
    return named[-1 - node] if node < 0 else (node,)


def _named_groups(problem: Problem) -> tuple[tuple[int, ...], ...]:
    groups: dict[str, list[int]] = {}
    for i, task in enumerate(problem.tasks):
        if task.together is not None:
            groups.setdefault(task.together, []).append(i)
    for name, group in groups.items():
        stations = {problem.tasks[i].station for i in group}
        if len(stations) > 1:
            message = f"{name}: one visit cannot be at {' and '.join(sorted(stations))}"
            raise Unsolvable(message, tuple(problem.tasks[i].id for i in group))
    return tuple(tuple(group) for group in groups.values() if len(group) > 1)


def _require_one_station(problem: Problem, tasks: tuple[int, ...]) -> None:
    stations = {problem.tasks[i].station for i in tasks}
    if len(stations) == 1:
        return
    chain = _contradiction(problem, tasks)
    steps = "; ".join(f"{edge.before} before {edge.after} ({edge.reason})" for edge in chain)
    names = tuple(problem.tasks[i].id for i in tasks)
    raise Unsolvable(f"tasks that belong in one visit are kept apart by: {steps}", names, chain)


def _contradiction(problem: Problem, tasks: tuple[int, ...]) -> tuple[Precedence, ...]:
    """Precedences that close a circle through a group and a task of another station."""
    inside = {problem.tasks[i].id: problem.tasks[i] for i in tasks}
    leaving: dict[str, list[Precedence]] = {}
    for edge in problem.precedences:
        if edge.before in inside and edge.after in inside:
            leaving.setdefault(edge.before, []).append(edge)
    for one in inside.values():
        for other in inside.values():
            if one.together is not None and one.together == other.together and one is not other:
                leaving.setdefault(one.id, []).append(
                    Precedence(one.id, other.id, 0, f"one visit: {one.together}")
                )
    station = inside[problem.tasks[tasks[0]].id].station
    foreign = next(task for task in inside.values() if task.station != station)
    chain = chain_between(leaving, foreign.id, {foreign.id})
    assert chain is not None, "a strong component holds a circle through each of its tasks"
    return chain
