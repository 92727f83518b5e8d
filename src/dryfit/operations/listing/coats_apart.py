"""Coats that a wish keeps apart: what has to be dry before the other is glued has its own visit."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

import networkx as nx

from dryfit.operations.coats import coat_id
from dryfit.operations.wishes import WHY_WISHED
from dryfit.placing.model import Coating, Model
from dryfit.plan.operation import Operation, Rule


def coats_apart(
    model: Model, operations: Sequence[Operation], rules: Sequence[Rule]
) -> Model | None:
    """Return the model with what wishes keep apart coated in visits of their own, or None.

    One visit saves setting out and cleaning brushes, no more: where a wish needs other work
    between two first coats, it is the wish that counts.  None where it changes nothing.
    """
    if not model.wishes:
        return None
    free = _graph(rule for rule in rules if rule.reason != WHY_WISHED)
    wished = _graph(rules)
    first = {coat_id(each, 1): each for each in model.coatings}
    group_of = {op.id: op.together for op in operations if op.id in first and op.together}
    visit = dict.fromkeys(first, 0)
    in_order = nx.topological_sort(wished)
    for name in (each for each in in_order if each in group_of):
        for other in (each for each in group_of if group_of[each] == group_of.get(name)):
            if other != name and nx.has_path(wished, other, name):
                apart = not nx.has_path(free, other, name)
                earlier, later = nx.ancestors(wished, name), nx.descendants(wished, other)
                parted = apart and not earlier.intersection(later) <= set(group_of)
                visit[name] = max(visit[name], visit[other] + parted)
    if not any(visit.values()):
        return None
    numbers = {id(coating): visit[name] for name, coating in first.items()}
    rows: tuple[Coating, ...] = tuple(
        replace(each, visit=each.visit + numbers[id(each)]) for each in model.coatings
    )
    return replace(model, coatings=rows)


def _graph(rules: Iterator[Rule] | Sequence[Rule]) -> nx.DiGraph[str]:
    graph: nx.DiGraph[str] = nx.DiGraph()
    graph.add_edges_from((rule.before, rule.after) for rule in rules)
    return graph
