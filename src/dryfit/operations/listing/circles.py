"""Rules that contradict one another: the circle, with the reason of every step (TRADE H81)."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import pairwise

import networkx as nx

from dryfit.diagnostics import Diagnostic, Hint, Note, Severity, Span
from dryfit.operations.wishes import NOT_KEPT
from dryfit.plan.operation import Rule

Edge = tuple[str, str]


def circle(rules: tuple[Rule, ...], spans: Mapping[Edge, Span]) -> Diagnostic | None:
    """Return the finding ``order-circle`` for one shortest circle of rules, or None.

    `spans` are the lines of the notes that a rule comes from; the finding points at the first.
    """
    chain = shortest_circle(rules)
    if not chain:
        return None
    steps = tuple(Note(f"{rule.before} before {rule.after}: {rule.reason}") for rule in chain)
    span = next(
        (spans[rule.before, rule.after] for rule in chain if (rule.before, rule.after) in spans),
        None,
    )
    first = chain[0]
    message = f"{first.before} would have to come before itself"
    if span is not None:
        wish = next(rule for rule in chain if (rule.before, rule.after) in spans)
        message = f"{wish.before} cannot come before {wish.after}"
    return Diagnostic(
        "order-circle",
        Severity.ERROR,
        message,
        span,
        rule="H81",
        notes=steps,
        hints=() if span is None else (Hint(NOT_KEPT),),
    )


def shortest_circle(rules: tuple[Rule, ...]) -> tuple[Rule, ...]:
    """Return the rules of a shortest circle, each one's end the next one's start, or nothing."""
    graph: nx.DiGraph[str] = nx.DiGraph()
    why: dict[Edge, Rule] = {}
    for rule in rules:
        graph.add_edge(rule.before, rule.after)
        why.setdefault((rule.before, rule.after), rule)
    best: tuple[Rule, ...] = ()
    for members in nx.strongly_connected_components(graph):
        if len(members) == 1 and not graph.has_edge(*[next(iter(members))] * 2):
            continue
        # A graph of its own, built from sorted edges: ties are then settled by name.
        inner: nx.DiGraph[str] = nx.DiGraph()
        inner.add_edges_from(sorted(pair for pair in why if set(pair) <= members))
        for before, after in inner.edges:
            path = nx.shortest_path(inner, after, before)
            row = (why[before, after], *(why[pair] for pair in pairwise(path)))
            if not best or len(row) < len(best):
                best = row
    return best
