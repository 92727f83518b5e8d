"""What a step's minutes must be: walks, changes of axes, test cuts, work and rest (TRADE E1, E5).

What an axis stands at is played from step to step; what its change costs says the shop file.
"""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.plan.plan import Plan, Step
from dryfit.plan.setting import Setting
from dryfit.rehearsal.fault import Fault, Reason
from dryfit.rehearsal.times.working_hours import spoken
from dryfit.shop.shop import AxisChange, Shop, Station

Standing = dict[str, Setting | None]


def setting_up(plan: Plan, shop: Shop) -> Iterator[Fault]:
    """Yield steps whose minutes do not follow from their station, axes, tests and operations."""
    at: str | None = None
    standing: dict[str, Standing] = {}
    tried: set[str] = set()
    for step in plan.steps:
        walk = shop.walk if step.station != at else 0
        yield from _same(step, "walking", step.minutes.walk, walk)
        station = shop.stations.get(step.station)
        if station is not None:
            axes = standing.setdefault(step.station, {})
            yield from _same(
                step, "setting up", step.minutes.changeover, _turn(step, station, axes, shop)
            )
            yield from _tests(step, station, tried)
        work = sum(operation.tenths for operation in step.operations)
        yield from _same(step, "work", step.minutes.work, work)
        rest = max((operation.after_tenths for operation in step.operations), default=0)
        yield from _same(step, "rest", step.minutes.after, rest)
        at = step.station


def _turn(step: Step, station: Station, axes: Standing, shop: Shop) -> int:
    """Put the axes as they stand in the step, and return what all the changes cost."""
    now = dict(step.settings)
    cost = 0
    for axis in station.axes:
        before, after = axes.get(axis.name), now.get(axis.name)
        if after is None or (before is not None and before.token() == after.token()):
            continue
        cost += _cost(axis, before, after, shop)
        # A new cutter leaves what it spoils not set: the height is measured anew (TRADE E1).
        for spoiled in axis.unsets:
            axes[spoiled] = None
        axes[axis.name] = after
    return cost


def _cost(axis: AxisChange, before: Setting | None, after: Setting, shop: Shop) -> int:
    tokens = [each.token() for each in (before, after) if each is not None]
    families = {token: _family(token, shop) for token in tokens}
    return axis.cost(before.token() if before is not None else None, after.token(), families)


def _family(name: str, shop: Shop) -> str:
    """Return the cutter that a name with a built-up width belongs to: dado for ``dado 20``."""
    names = [cutter.name for cutter in shop.cutters if f"{name} ".startswith(f"{cutter.name} ")]
    return max(names, key=len, default=name)


def _tests(step: Step, station: Station, tried: set[str]) -> Iterator[Fault]:
    """Yield where test cuts are missing or too many: they are due when a trial's setting is new."""
    due = 0
    for operation in step.operations:
        if operation.trial is not None and operation.trial not in tried:
            tried.add(operation.trial)
            due += operation.tests
    if station.test_cut and step.tests != due:
        yield Fault(
            Reason.SUMS,
            f"step {step.number} has {step.tests} test cuts",
            f"{due} test cuts for its new settings",
            step.number,
        )
    yield from _same(step, "test cuts", step.minutes.tests, step.tests * station.test_cut)


def _same(step: Step, what: str, said: int, right: int) -> Iterator[Fault]:
    if said != right:
        yield Fault(
            Reason.SUMS,
            f"step {step.number} counts {spoken(said)} for {what}",
            f"{spoken(right)} for {what}",
            step.number,
        )
