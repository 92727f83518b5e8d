"""Counted pieces, some of which serve for others, against a maximum flow found elsewhere."""

import networkx as nx
from hypothesis import given
from hypothesis import strategies as st
from tests.unit.order.shops import seeded

from dryfit.order import (
    Entry,
    Hold,
    Problem,
    Resource,
    Schedule,
    Station,
    Task,
    evaluate,
    violations,
)
from dryfit.order.pieces import Shortage, matched

NOTHING_ELSE = ((0,), (1,), (2,))
LONGER = ((0, 1, 2), (1, 2), (2,))
"""C-clamps, short bars, long bars: the longer serve for the shorter."""


def test_own_pieces_come_first() -> None:
    assert matched([(0, 2)], LONGER, [3, 5, 5]) == ((0, 0, 2),)


def test_the_shortest_that_serve_come_next() -> None:
    assert matched([(0, 6)], LONGER, [4, 1, 5]) == ((0, 0, 4), (0, 1, 1), (0, 2, 1))


def test_a_piece_is_handed_on_to_whom_nothing_else_serves() -> None:
    # Own first would give the only bar of kind 1 to itself; hold 1 then takes kind 2, which is
    # all that serves hold 0.
    crosswise = ((0, 2), (1,), (2, 1))
    assert matched([(2, 1), (0, 1)], crosswise, [0, 1, 1]) == ((0, 1, 1), (1, 2, 1))


def test_what_is_short_is_told_with_its_counts() -> None:
    assert matched([(0, 2), (1, 3), (2, 1)], LONGER, [2, 1, 2]) == Shortage((1, 2), 4, 3)
    assert matched([(0, 2), (1, 3)], NOTHING_ELSE, [5, 2, 9]) == Shortage((1,), 3, 2)


def most_given(problem: Problem, entries: tuple[Entry, ...], clock: int, task: Task) -> int:
    """How many pieces a task could be given at most at a moment, after what the entries hold."""
    names = [kind.name for kind in problem.resources]
    free = [kind.capacity for kind in problem.resources]
    holds = {each.id: each.holds for each in problem.tasks}
    for entry in entries:
        for hold in holds[entry.task]:
            if entry.start <= clock < entry.end + hold.lag:
                rows = [row for row in entry.instead if row[0] == hold.resource]
                free[names.index(hold.resource)] -= hold.count - sum(row[2] for row in rows)
                for _, kind, count in rows:
                    free[names.index(kind)] -= count
    serving = [
        [names.index(kind.name), *(names.index(each) for each in kind.instead)]
        for kind in problem.resources
    ]
    asked = [(names.index(hold.resource), hold.count) for hold in task.holds]
    return most(asked, serving, free)


@given(st.integers(0, 10**6))
def test_a_task_waits_only_while_no_free_pieces_can_serve_it(seed: int) -> None:
    rng = seeded(seed)
    kinds = (
        Resource("C-clamp", rng.randint(2, 4), ("bar", "long bar")),
        Resource("bar", rng.randint(1, 3), ("long bar",)),
        Resource("long bar", 2),
    )
    tasks = tuple(
        Task(
            f"stage {number}",
            "glue bench",
            (),
            rng.randint(1, 9),
            holds=tuple(
                Hold(kind.name, rng.randint(1, 2), rng.randint(0, 20))
                for kind in kinds
                if rng.random() < 0.5 and kind.capacity > 1
            ),
        )
        for number in range(7)
    )
    problem = Problem((Station("glue bench"),), tasks, resources=kinds)
    entries = evaluate(problem, [task.id for task in tasks])[0].entries
    assert violations(problem, Schedule(entries)) == ()
    for at, (task, entry) in enumerate(zip(tasks, entries, strict=True)):
        if entry.waiting:
            given_before = most_given(problem, entries[:at], entry.start - 1, task)
            assert given_before < sum(hold.count for hold in task.holds)


def most(asked: list[tuple[int, int]], serving: list[list[int]], free: list[int]) -> int:
    """How many pieces can be given out at most: a maximum flow, by networkx."""
    graph: nx.DiGraph[str] = nx.DiGraph()
    graph.add_nodes_from(("from", "to"))
    for hold, (kind, count) in enumerate(asked):
        graph.add_edge("from", f"hold {hold}", capacity=count)
        for other in serving[kind]:
            graph.add_edge(f"hold {hold}", f"kind {other}", capacity=count)
    for kind, count in enumerate(free):
        graph.add_edge(f"kind {kind}", "to", capacity=count)
    return int(nx.maximum_flow_value(graph, "from", "to"))


@st.composite
def shops(draw: st.DrawFn) -> tuple[list[tuple[int, int]], list[list[int]], list[int]]:
    kinds = draw(st.integers(1, 5))
    free = [draw(st.integers(0, 4)) for _ in range(kinds)]
    serving = [
        [own, *draw(st.lists(st.sampled_from(range(kinds)), unique=True, max_size=3))]
        for own in range(kinds)
    ]
    serving = [list(dict.fromkeys(row)) for row in serving]
    names = draw(st.lists(st.sampled_from(range(kinds)), unique=True, max_size=kinds))
    return [(kind, draw(st.integers(0, 5))) for kind in names], serving, free


@given(shops())
def test_all_are_served_whenever_that_is_possible(
    shop: tuple[list[tuple[int, int]], list[list[int]], list[int]],
) -> None:
    asked, serving, free = shop
    found = matched(asked, serving, free)
    possible = most(asked, serving, free) == sum(count for _, count in asked)
    assert isinstance(found, Shortage) != possible
    if isinstance(found, Shortage):
        kinds = {kind for at in found.holds for kind in serving[asked[at][0]]}
        assert found.needed == sum(asked[at][1] for at in found.holds)
        assert found.needed > found.there >= sum(free[kind] for kind in kinds)
        return
    for at, (kind, count) in enumerate(asked):
        mine = [row for row in found if row[0] == at]
        assert sum(row[2] for row in mine) == count
        assert {row[1] for row in mine} <= set(serving[kind])
    for kind, count in enumerate(free):
        assert sum(row[2] for row in found if row[1] == kind) <= count
