"""A plan told again after a damage, so that nothing but what was damaged is wrong in it.

Settings stand on from step to step, what changes is announced and paid for, moments follow from the
minutes, and the totals from the steps.  A step whose minutes differ, or that is moved, is done two
weeks later: so every wait of the others only grows.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

from tests.rehearsal_damage.hours import SHOP, WEEK, between, in_one_day, moment, worked

from dryfit.plan.operation import Operation
from dryfit.plan.plan import Plan, Step, StepMinutes, Totals
from dryfit.plan.setting import Setting

Key = tuple[str, ...]
Announced = Callable[[Step], tuple[str, ...]]


def key_of(step: Step) -> Key:
    """What a step is known by while steps move: its operations."""
    return tuple(operation.id for operation in step.operations)


def retold(
    plan: Plan,
    steps: Sequence[Step],
    *,
    moved: frozenset[Key] = frozenset(),
    tight: frozenset[Key] = frozenset(),
    announced: Announced | None = None,
) -> Plan:
    """The plan with these steps in this order.

    `moved` are done at another time than before, `tight` at once after the step before.
    `announced` may say otherwise which axes change; the minutes stay those of the truth.
    """
    settled = _settled(steps, announced)
    known = {key_of(step): step for step in plan.steps}
    timed = _timed(settled, known, moved, tight)
    return replace(plan, steps=_waiting(timed), totals=totals_of(plan.totals, timed))


def _settled(steps: Sequence[Step], announced: Announced | None) -> list[Step]:
    standing: dict[str, dict[str, Setting | None]] = {}
    tried: set[str] = set()
    trials = _trials(steps)
    rows: list[Step] = []
    visit, at = 0, ""
    for number, step in enumerate(steps, start=1):
        walk = SHOP.walk if step.station != at else 0
        visit += step.station != at
        at = step.station
        axes = standing.setdefault(at, {axis.name: None for axis in SHOP.stations[at].axes})
        changed, cost = _set(axes, step)
        new = replace(step, settings=tuple(axes.items()), changed=changed)
        if announced is not None:
            new = replace(new, changed=announced(new))
        due = [op for op in step.operations if op.trial is not None and op.trial not in tried]
        first = {op.trial: op for op in reversed(due)}
        tried |= {op.trial for op in due if op.trial is not None}
        minutes = StepMinutes(
            walk=walk,
            changeover=cost,
            tests=sum(trials[trial] for trial in first if trial is not None),
            work=sum(op.tenths for op in step.operations),
            after=max(op.after_tenths for op in step.operations),
        )
        tests = sum(op.tests for op in first.values())
        rows.append(replace(new, number=number, visit=visit, minutes=minutes, tests=tests))
    return rows


def _trials(steps: Sequence[Step]) -> Mapping[str, int]:
    costs: dict[str, int] = {}
    for step in steps:
        for op in step.operations:
            if op.trial is not None:
                cost = op.tests * SHOP.stations[step.station].test_cut
                costs[op.trial] = max(costs.get(op.trial, 0), cost)
    return costs


def _set(axes: dict[str, Setting | None], step: Step) -> tuple[tuple[str, ...], int]:
    """Put the axes where the step wants them; which change, and what that costs."""
    wanted = _wanted(step)
    station = SHOP.stations[step.station]
    before = dict(axes)
    changed: list[str] = []
    cost = 0
    for axis in station.axes:
        new, old = wanted.get(axis.name), axes[axis.name]
        if new is None or (old is not None and old.token() == new.token()):
            if new is not None:
                axes[axis.name] = new
            continue
        changed.append(axis.name)
        cost += _price(axis.name, before[axis.name], new, step.station)
        axes[axis.name] = new
        for spoiled in axis.unsets:
            axes[spoiled] = None
    return tuple(changed), cost


def _wanted(step: Step) -> dict[str, Setting]:
    """What the operations want; where the step says the same, as the step says it."""
    said = dict(step.settings)
    wanted: dict[str, Setting] = {}
    for operation in step.operations:
        for setting in operation.settings:
            own = said.get(setting.axis)
            same = own is not None and own.token() == setting.token()
            wanted[setting.axis] = own if own is not None and same else setting
    return wanted


def _price(axis: str, old: Setting | None, new: Setting | None, station: str) -> int:
    names = {str(each.value) for each in (old, new) if each is not None}
    families = {name: family_of(name) for name in names}
    before = str(old.value) if old is not None else None
    after = str(new.value) if new is not None else ""
    row = SHOP.stations[station].axis(axis)
    # A value that is set anew after it was spoiled costs as any change does.
    return row.cost(None if before == after else before, after, families)


def family_of(name: str) -> str:
    """The cutter of the shop file that a name with a built-up width belongs to."""
    return next(
        (c.name for c in SHOP.cutters if name == c.name or name.startswith(f"{c.name} ")), name
    )


def setup_of(step: Step) -> int:
    """Walking, changing and trying, in tenths."""
    return step.minutes.walk + step.minutes.changeover + step.minutes.tests


def _timed(
    steps: Sequence[Step],
    known: Mapping[Key, Step],
    moved: frozenset[Key],
    tight: frozenset[Key],
) -> list[Step]:
    rows: list[Step] = []
    free, later = 0, 0
    for step in steps:
        own, total = key_of(step), setup_of(step) + step.minutes.work
        before = known.get(own)
        if own in tight:
            starts = in_one_day(free, total)
            ends = worked(starts, total)
        elif before is None or own in moved or before.minutes != step.minutes:
            starts = (free // WEEK + 2) * WEEK
            ends = worked(starts, total)
        else:
            while before.starts.tenths + later < free:
                later += WEEK
            starts, ends = before.starts.tenths + later, before.ends.tenths + later
        rows.append(replace(step, starts=moment(starts), ends=moment(ends)))
        free = ends
    return rows


def _waiting(steps: Sequence[Step]) -> tuple[Step, ...]:
    """The steps, each with its waits by the new numbers; a rule that is broken is not told."""
    number_of = {op.id: step.number for step in steps for op in step.operations}
    rows: list[Step] = []
    for step in steps:
        waits = tuple(
            replace(wait, step=number_of[wait.operation])
            for wait in step.waits_for
            if number_of.get(wait.operation, step.number) < step.number
        )
        rows.append(replace(step, waits_for=tuple(dict.fromkeys(waits))))
    return with_meanwhile(rows)


def with_meanwhile(steps: Sequence[Step]) -> tuple[Step, ...]:
    """The steps, each with what is done while its glue cures, by their moments."""
    return tuple(
        replace(
            step,
            release=None,
            meanwhile=tuple(
                other.number
                for other in steps
                if other.number > step.number
                and other.starts.tenths < step.ends.tenths + max(map(_cure, step.operations))
            ),
        )
        for step in steps
    )


def _cure(operation: Operation) -> int:
    lags = operation.glue_up.lags if operation.glue_up is not None else ()
    return max((lag.tenths for lag in lags if lag.until == "out of clamps"), default=0)


def totals_of(before: Totals, steps: Sequence[Step]) -> Totals:
    """The totals that follow from the steps; the bound stays where it is not passed."""
    changeover = sum(step.minutes.changeover for step in steps)
    walk = sum(step.minutes.walk for step in steps)
    tests = sum(step.minutes.tests for step in steps)
    work = sum(step.minutes.work for step in steps)
    setup = changeover + walk + tests
    fewest = min(before.fewest, changeover)
    over = changeover - fewest
    gap = Fraction(100 * over, fewest) if fewest else Fraction(100 * over)
    return replace(
        before,
        changeovers=sum(len(step.changed) for step in steps),
        changeover=changeover,
        walk=walk,
        tests=tests,
        setup=setup,
        work=work,
        attended=setup + work,
        waiting=between(0, steps[-1].ends.tenths) - setup - work,
        elapsed=max(step.ends.tenths + step.minutes.after for step in steps),
        fewest=fewest,
        proven=over == 0,
        gap_percent=Fraction(round(10 * gap), 10),
        part_by_part=replace(before.part_by_part, attended=before.part_by_part.setup + work),
    )
