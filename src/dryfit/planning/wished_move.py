"""A step wished before another: the plan that keeps the wish, or the chain that forbids it."""

from __future__ import annotations

from dataclasses import dataclass, replace

from dryfit.operations import visit_words
from dryfit.operations.wishes import said_in_notes
from dryfit.order import Unsolvable
from dryfit.order.validity import require_solvable
from dryfit.placing.model import Model
from dryfit.plan.operation import Rule, WorkList
from dryfit.plan.plan import Plan, Step
from dryfit.planning.make_plan import make_plan
from dryfit.planning.problem_of import problem_of
from dryfit.shop.shop import Shop

ASKED = "you ask for it"
ONE_VISIT = "one visit: "


@dataclass(frozen=True, slots=True)
class Wished:
    """What becomes of the wish that all of one step is done before another.

    plan     the best plan found that keeps it, None where there is none
    chain    rules that contradict it, the wish among them: each leads to the next
    line     a line of the notes that sees to it, None where there is no such line
    more     whether that line asks for more than the wish
    """

    plan: Plan | None
    chain: tuple[Rule, ...] = ()
    line: str | None = None
    more: bool = False


def wished_move(
    model: Model, shop: Shop, work: WorkList, first: Step, then: Step, favour: str
) -> Wished:
    """Plan anew with all operations of the `first` step before those of the other."""
    rules = tuple(
        Rule(before.id, after.id, ASKED) for before in first.operations for after in then.operations
    )
    chain = _forbidden(work, rules, shop)
    if chain:
        return Wished(None, chain)
    plan, _ = make_plan(model, shop, _with(work, rules), favour=favour)
    said = said_in_notes(model, work, first.operations, then.operations)
    if said is None or _forbidden(work, said[1], shop):
        return Wished(plan)
    more = {(rule.before, rule.after) for rule in said[1]} - {
        (rule.before, rule.after) for rule in rules
    }
    return Wished(plan, line=said[0], more=bool(more))


def _with(work: WorkList, rules: tuple[Rule, ...]) -> WorkList:
    return replace(work, rules=(*work.rules, *rules))


def _forbidden(work: WorkList, rules: tuple[Rule, ...], shop: Shop) -> tuple[Rule, ...]:
    """Return the chain of rules that contradicts these ones, nothing where they can be kept."""
    try:
        require_solvable(problem_of(_with(work, rules), shop))
    except Unsolvable as reason:
        return tuple(
            Rule(each.before, each.after, _in_words(each.reason, work), each.lag)
            for each in reason.chain
        )
    return ()


def _in_words(reason: str, work: WorkList) -> str:
    """Return a reason as it is; the order library gives a visit by its name alone."""
    _, visit, group = reason.partition(ONE_VISIT)
    together = [op for op in work.operations if visit and op.together == group]
    return visit_words(together) if together else reason
