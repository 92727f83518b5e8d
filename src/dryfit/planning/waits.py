"""What a step waits for: the rules that bind it, without those that others already imply."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import networkx as nx

from dryfit.operations import visit_words
from dryfit.plan.operation import Rule, WorkList
from dryfit.plan.plan import Waits


@dataclass(frozen=True, slots=True)
class Waiting:
    """The work list, the step number of every operation, and the rules that no others imply."""

    work: WorkList
    number_of: Mapping[str, int]
    needed: tuple[Rule, ...]


def waiting_of(work: WorkList, number_of: Mapping[str, int]) -> Waiting:
    """Return what all steps of a plan are asked by: which rules are needed is worked out once."""
    return Waiting(work, number_of, _needed(work.rules))


def waits_for(number: int, operations: tuple[str, ...], waiting: Waiting) -> tuple[Waits, ...]:
    """Return the reasons why a step stands after earlier ones, by the earlier step's number."""
    own = set(operations)
    rows = [
        Waits(waiting.number_of[rule.before], rule.before, rule.reason, rule.lag)
        for rule in waiting.needed
        if rule.after in own and rule.before not in own
    ]
    rows += _same_visit(number, operations, waiting)
    return tuple(sorted(dict.fromkeys(rows), key=lambda row: (row.step, row.operation)))


def _needed(rules: tuple[Rule, ...]) -> tuple[Rule, ...]:
    """Return the rules that no chain of others implies; a rule with a wait always stays."""
    graph: nx.DiGraph[str] = nx.DiGraph()
    graph.add_edges_from((rule.before, rule.after) for rule in rules)
    kept = set(nx.transitive_reduction(graph).edges)
    return tuple(rule for rule in rules if rule.lag > 0 or (rule.before, rule.after) in kept)


def _same_visit(number: int, operations: tuple[str, ...], waiting: Waiting) -> list[Waits]:
    """Return the earlier operation with which one of these is done in one visit."""
    by_id = {operation.id: operation for operation in waiting.work.operations}
    groups = {by_id[name].together for name in operations} - {None}
    rows: list[Waits] = []
    for group in sorted(name for name in groups if name is not None):
        members = [operation for operation in by_id.values() if operation.together == group]
        earlier = [each for each in members if waiting.number_of[each.id] < number]
        if earlier:
            last = max(earlier, key=lambda each: waiting.number_of[each.id])
            reason = visit_words(members)
            rows.append(Waits(waiting.number_of[last.id], last.id, reason, 0))
    return rows
