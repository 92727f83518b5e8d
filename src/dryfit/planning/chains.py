"""The chain of a contradiction in words: the order library gives a visit by its name alone."""

from __future__ import annotations

from collections.abc import Iterable

from dryfit.operations import visit_words
from dryfit.order import Precedence
from dryfit.plan.chain import Link
from dryfit.plan.operation import WorkList

ONE_VISIT = "one visit: "


def links_of(chain: Iterable[Precedence], work: WorkList) -> tuple[Link, ...]:
    """Return a chain of the order library with the reasons of its rules and of its visits."""
    return tuple(_link(each, work) for each in chain)


def _link(edge: Precedence, work: WorkList) -> Link:
    _, visit, group = edge.reason.partition(ONE_VISIT)
    together = [op for op in work.operations if visit and op.together == group]
    reason = visit_words(together) if together else edge.reason
    return Link(edge.before, edge.after, reason, visit=bool(together))
