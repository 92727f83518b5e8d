"""From operations to an order problem: demands on axes, costs, counted clamps, the air."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from fractions import Fraction

from dryfit.order import (
    Axis,
    Calendar,
    Hold,
    Precedence,
    Problem,
    Range,
    Resource,
    Station,
    Task,
    Value,
)
from dryfit.plan.operation import Operation, WorkList
from dryfit.plan.setting import Setting
from dryfit.planning.dust import air_held, air_of
from dryfit.planning.places import place_held, places_of
from dryfit.shop.days import first_weekday, single_days_off
from dryfit.shop.shop import AxisChange, Shop


def problem_of(work: WorkList, shop: Shop) -> Problem:
    """Return the problem; tasks in the order of the operations, which settles ties."""
    stations = tuple(_station(name, work.operations, shop) for name in _used(work.operations))
    air = air_of(work.operations, shop)
    counted = (*_clamps(shop), *places_of(work.operations, shop))
    return Problem(
        stations=stations,
        tasks=tuple(_task(operation, air, shop) for operation in work.operations),
        precedences=tuple(
            Precedence(rule.before, rule.after, rule.lag, rule.reason) for rule in work.rules
        ),
        resources=counted if air is None else (*counted, air),
        calendar=calendar_of(shop),
        walk=shop.walk,
        trials=_trials(work.operations, shop),
        # Whoever lends a hand where the shop has too few is told when to come.
        workers=max((shop.workers, *(operation.hands for operation in work.operations))),
    )


def without_visits(problem: Problem) -> Problem:
    """Return the problem without together groups, as the part by part order needs it."""
    return replace(problem, tasks=tuple(replace(task, together=None) for task in problem.tasks))


def calendar_of(shop: Shop) -> Calendar:
    """Return the working hours of the shop, from day 1 on."""
    return Calendar(
        opens=shop.opens,
        closes=shop.closes,
        days_off=frozenset(shop.days_off),
        first_weekday=first_weekday(shop),
        closed=single_days_off(shop),
    )


def demands_of(operation: Operation, shop: Shop) -> Mapping[str, Value]:
    """Return what each axis must stand at; a value that another axis spoils carries that one.

    A new blade unsets the height, so the height names the cutter: the pair is what has to be set
    (DESIGN 5).  A plain number is a range that holds it alone, so that another cut which leaves a
    choice may share it.
    """
    settings = {setting.axis: setting for setting in operation.settings}
    found: dict[str, Value] = {}
    for axis in shop.stations[operation.station].axes:
        if axis.name in settings:
            spoilers = [
                f"with {settings[other.name].value}"
                for other in shop.stations[operation.station].axes
                if axis.name in other.unsets and other.name in settings
            ]
            found[axis.name] = _demand(settings[axis.name], " ".join(spoilers), axis)
    return found


def _demand(setting: Setting, of: str, axis: AxisChange) -> Value:
    value, least, most = setting.value, setting.at_least, setting.at_most
    if isinstance(value, Fraction) and setting.token() == str(value) and not axis.between:
        return Range(value if least is None else least, value if most is None else most, of)
    return f"{setting.token()} {of}".rstrip()


def _used(operations: Iterable[Operation]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(operation.station for operation in operations))


def _clamps(shop: Shop) -> tuple[Resource, ...]:
    """Return the clamps; one that opens as far or farther serves, the shortest first."""
    by_length = sorted(shop.clamps, key=lambda clamp: clamp.opens)
    return tuple(
        Resource(
            clamp.name,
            clamp.count,
            tuple(each.name for each in by_length if each.opens >= clamp.opens and each != clamp),
        )
        for clamp in shop.clamps
    )


def _station(name: str, operations: Iterable[Operation], shop: Shop) -> Station:
    here = tuple(operation for operation in operations if operation.station == name)
    axes = tuple(_axis(axis, here, shop) for axis in shop.stations[name].axes)
    return Station(name, axes)


def _axis(axis: AxisChange, operations: tuple[Operation, ...], shop: Shop) -> Axis:
    """Return an axis with the costs between the values that occur on it."""
    if not axis.between:
        return Axis(axis.name, axis.change)
    values: dict[str, Setting] = {}
    for operation in operations:
        for setting in operation.settings:
            if setting.axis == axis.name:
                values.setdefault(str(demands_of(operation, shop)[axis.name]), setting)
    families = {token: family_of(str(setting.value), shop) for token, setting in values.items()}
    rows: list[tuple[str | None, str, int]] = []
    for before in (None, *values):
        for after in values:
            cost = axis.cost(before, after, families)
            if before != after and cost != axis.change:
                rows.append((before, after, cost))
    return Axis(axis.name, axis.change, tuple(rows))


def family_of(name: str, shop: Shop) -> str:
    """Return the cutter of the shop file that a name with a built-up width belongs to."""
    for cutter in shop.cutters:
        if name == cutter.name or name.startswith(f"{cutter.name} "):
            return cutter.name
    return name


def _task(operation: Operation, air: Resource | None, shop: Shop) -> Task:
    clamps = tuple(Hold(held.resource, held.count, held.lag) for held in operation.held)
    return Task(
        id=operation.id,
        station=operation.station,
        demands=tuple(demands_of(operation, shop).items()),
        work=operation.tenths,
        after=operation.after_tenths,
        splittable=operation.splittable,
        holds=(*clamps, *place_held(operation, shop), *air_held(operation, air, shop)),
        trial=operation.trial,
        together=operation.together,
        workers=operation.hands,
    )


def _trials(operations: Iterable[Operation], shop: Shop) -> dict[str, int]:
    trials: dict[str, int] = {}
    for operation in operations:
        if operation.trial is not None:
            cost = operation.tests * shop.stations[operation.station].test_cut
            trials[operation.trial] = max(trials.get(operation.trial, 0), cost)
    return trials
