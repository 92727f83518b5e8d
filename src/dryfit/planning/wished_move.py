"""A step wished before another: the plan that keeps the wish, or the chain that forbids it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from dryfit.operations.wishes import said_in_notes
from dryfit.order import Unsolvable, moved
from dryfit.order.validity import require_solvable
from dryfit.placing.model import Model
from dryfit.plan.chain import Link
from dryfit.plan.favour import price_of
from dryfit.plan.operation import Rule, WorkList
from dryfit.plan.plan import Plan, Step
from dryfit.planning.chains import links_of
from dryfit.planning.make_plan import make_plan
from dryfit.planning.problem_of import problem_of
from dryfit.planning.reasons import reasoned
from dryfit.shop.shop import Shop

ASKED = "you ask for it"


@dataclass(frozen=True, slots=True)
class Wished:
    """What becomes of the wish that all of one step is done before another.

    plan       the best plan found that keeps it, None where there is none
    chain      rules that contradict it, the wish among them: each leads to the next
    line       a line of the notes that sees to it, None where there is no such line
    with_line  the plan that the notes have with that line; it may ask for more than the wish
    """

    plan: Plan | None
    chain: tuple[Link, ...] = ()
    line: str | None = None
    with_line: Plan | None = None


def wished_move(
    model: Model, shop: Shop, work: WorkList, now: Plan, first: Step, then: Step
) -> Wished:
    """Plan anew with all operations of the `first` step before those of the other.

    What comes back is never dearer than the plan as it is `now` with one of the two steps moved.
    """
    rules = tuple(
        Rule(before.id, after.id, ASKED) for before in first.operations for after in then.operations
    )
    chain = _forbidden(work, rules, shop)
    if chain:
        return Wished(None, chain)
    near = _as_moved(now, work, first, then, shop)
    plan = _cheaper(
        _planned(model, shop, _with(work, rules), now.favour),
        _planned(model, shop, _with(work, rules), now.favour, near),
    )
    said = said_in_notes(model, work, first.operations, then.operations)
    if said is None or _forbidden(work, said[1], shop):
        return Wished(plan)
    line, asked = said
    return Wished(plan, (), line, _planned(model, shop, _with(work, asked), now.favour))


def _as_moved(now: Plan, work: WorkList, first: Step, then: Step, shop: Shop) -> tuple[str, ...]:
    """Return the order as it is with one of the two steps moved past the other, at least cost."""
    known = reasoned(now, work, shop)
    late, early = first.number - 1, then.number - 1
    places = [(late, before) for before in range(early, -1, -1)]
    places += [(early, before) for before in range(late + 1, len(now.steps) + 1)]
    moves = [move for place in places if (move := moved(known.row, *place)) is not None]
    best = min(moves, key=lambda move: move.price(known.worth), default=None)
    if best is None:
        return tuple(operation.id for step in now.steps for operation in step.operations)
    return best.order


def _planned(
    model: Model, shop: Shop, work: WorkList, favour: str, previous: Sequence[str] = ()
) -> Plan | None:
    return make_plan(model, shop, work, favour=favour, previous=previous)[0]


def _cheaper(one: Plan | None, other: Plan | None) -> Plan | None:
    """Return the plan that the order would be chosen by; the first of equals."""
    plans = [plan for plan in (one, other) if plan is not None]
    return min(plans, key=price_of, default=None)


def _with(work: WorkList, rules: tuple[Rule, ...]) -> WorkList:
    return replace(work, rules=(*work.rules, *rules))


def _forbidden(work: WorkList, rules: tuple[Rule, ...], shop: Shop) -> tuple[Link, ...]:
    """Return the chain of rules that contradicts these ones, nothing where they can be kept."""
    try:
        require_solvable(problem_of(_with(work, rules), shop))
    except Unsolvable as reason:
        return links_of(reason.chain, work)
    return ()
