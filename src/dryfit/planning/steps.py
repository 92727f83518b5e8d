"""From an order of operations to numbered steps: settings as they stand, changes, waits, times."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from dryfit.order import Entry, Schedule
from dryfit.order.hours import hours_of
from dryfit.plan.operation import Held, Operation, WorkList
from dryfit.plan.plan import Step, StepMinutes
from dryfit.plan.setting import Setting
from dryfit.planning.dust import clean_from
from dryfit.planning.least_heights import as_used, with_least_heights
from dryfit.planning.moments import moment
from dryfit.planning.problem_of import calendar_of
from dryfit.planning.releases import with_releases
from dryfit.planning.starts import released_at, start_of
from dryfit.planning.waits import Waiting, waiting_of, waits_for
from dryfit.shop.shop import Shop

Standing = dict[str, Setting | None]


@dataclass(frozen=True, slots=True)
class Run:
    """Entries one after the other at one station, no axis changed inside, and the axes after."""

    entries: tuple[Entry, ...]
    standing: tuple[tuple[str, Setting | None], ...]
    visit: int


def step_lengths(schedule: Schedule, work: WorkList, shop: Shop) -> tuple[int, ...]:
    """Return how many operations each step of a schedule has."""
    operations = {operation.id: operation for operation in work.operations}
    released = released_at(schedule.entries, work)
    return tuple(len(run.entries) for run in _runs(schedule.entries, operations, released, shop))


def steps_of(schedule: Schedule, work: WorkList, shop: Shop) -> tuple[Step, ...]:
    """Return the steps of a schedule in order, numbered from 1."""
    by_id = {operation.id: operation for operation in work.operations}
    operations = {
        entry.task: as_used(_with_clamps_at_hand(by_id[entry.task], entry), entry)
        for entry in schedule.entries
    }
    released = released_at(schedule.entries, work)
    runs = _runs(schedule.entries, operations, released, shop)
    number_of = {
        entry.task: number for number, run in enumerate(runs, start=1) for entry in run.entries
    }
    waiting = waiting_of(work, number_of)
    steps = tuple(
        _step(number, run, operations, waiting, start_of(run.entries[0], released, shop), shop)
        for number, run in enumerate(runs, start=1)
    )
    released_steps = with_releases(
        with_least_heights(steps), work, hours_of(calendar_of(shop)), shop
    )
    return tuple(_with_meanwhile(step, steps) for step in released_steps)


def _with_clamps_at_hand(operation: Operation, entry: Entry) -> Operation:
    """Return the operation with the clamps that it really takes: longer ones where they serve."""
    if not entry.instead:
        return operation
    taken = {held.resource: held for held in operation.held}
    for asked, clamp, count in entry.instead:
        short, more = taken[asked], taken.get(clamp, Held(clamp, 0, taken[asked].lag))
        taken[asked] = replace(short, count=short.count - count)
        taken[clamp] = replace(more, count=more.count + count)
    return replace(operation, held=tuple(held for held in taken.values() if held.count))


def _runs(
    entries: Sequence[Entry],
    operations: Mapping[str, Operation],
    released: Mapping[str, int],
    shop: Shop,
) -> tuple[Run, ...]:
    runs: list[Run] = []
    row: list[Entry] = []
    standing: dict[str, Standing] = {}
    visit = 0
    clean = clean_from(entries, operations, shop)
    for entry in entries:
        begun = start_of(row[0], released, shop) if row else 0
        waits = max(released[entry.task], clean.get(entry.task, 0)) > begun
        if row and (_breaks(row[-1], entry, operations) or waits):
            runs.append(_run(row, standing, visit))
            row = []
        if (not runs and not row) or (row or runs[-1].entries)[-1].station != entry.station:
            visit += 1
        _set(standing, operations[entry.task], entry, shop)
        row.append(entry)
    if row:
        runs.append(_run(row, standing, visit))
    return tuple(runs)


def _breaks(last: Entry, entry: Entry, operations: Mapping[str, Operation]) -> bool:
    """Return whether a new step begins: elsewhere, with another setting, or after a pause.

    What cures or dries afterwards stands alone, so that its wait counts from its own end.
    """
    moved = last.station != entry.station or bool(entry.changed)
    rests = operations[last.task].after_tenths > 0 or operations[entry.task].after_tenths > 0
    return moved or entry.waiting > 0 or rests


def _run(row: list[Entry], standing: Mapping[str, Standing], visit: int) -> Run:
    return Run(tuple(row), tuple(standing[row[0].station].items()), visit)


def _set(standing: dict[str, Standing], operation: Operation, entry: Entry, shop: Shop) -> None:
    """Put the axes where the operation wants them; a new cutter leaves what it unsets not set."""
    station = shop.stations[operation.station]
    axes = standing.setdefault(operation.station, {axis.name: None for axis in station.axes})
    for axis in station.axes:
        if axis.name in entry.changed:
            for spoiled in axis.unsets:
                axes[spoiled] = None
    axes.update({setting.axis: setting for setting in operation.settings})


def _step(
    number: int,
    run: Run,
    operations: Mapping[str, Operation],
    waiting: Waiting,
    starts: int,
    shop: Shop,
) -> Step:
    first = run.entries[0]
    own = tuple(operations[entry.task] for entry in run.entries)
    waits = waits_for(number, tuple(operation.id for operation in own), waiting)
    return Step(
        number=number,
        visit=run.visit,
        station=first.station,
        settings=run.standing,
        changed=first.changed,
        operations=own,
        minutes=StepMinutes(
            walk=sum(entry.walk for entry in run.entries),
            changeover=sum(entry.changeover for entry in run.entries),
            tests=sum(entry.trial for entry in run.entries),
            work=sum(operation.tenths for operation in own),
            after=max(operation.after_tenths for operation in own),
        ),
        tests=_tests(run, own),
        starts=moment(starts, shop),
        ends=moment(run.entries[-1].end, shop),
        waits_for=waits,
    )


def _tests(run: Run, own: Iterable[Operation]) -> int:
    """Return the test cuts that fall due in the step: those of the trials it is first to need."""
    return sum(
        operation.tests
        for entry, operation in zip(run.entries, own, strict=True)
        if entry.trial > 0
    )


def _with_meanwhile(step: Step, steps: tuple[Step, ...]) -> Step:
    """Return the step with what is done while its glue cures."""
    glued = [operation.glue_up for operation in step.operations if operation.glue_up is not None]
    if not glued:
        return step
    out = max(lag.tenths for glue in glued for lag in glue.lags if lag.until == "out of clamps")
    free = step.ends.tenths + out
    return replace(
        step,
        meanwhile=tuple(
            later.number
            for later in steps
            if later.number > step.number and later.starts.tenths < free
        ),
    )
