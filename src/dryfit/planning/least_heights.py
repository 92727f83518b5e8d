"""Heights of cuts right through, as the order has picked them from what would do.

Several cuts share one height.  Whoever sets the blade once for all of them has to know what the
thickest of them needs, also where that one comes some steps later, and how high the teeth may
stand above the thinnest (TRADE 0.5).
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction

from dryfit.order import Entry, Range
from dryfit.plan.operation import Operation
from dryfit.plan.plan import Step
from dryfit.plan.setting import Setting

HEIGHT = "height"
Run = tuple[Step, ...]


def as_used(operation: Operation, entry: Entry) -> Operation:
    """Return the operation with the values of its settings that the order has picked."""
    picked = {axis: Fraction(value.low) for axis, value in entry.values if isinstance(value, Range)}
    return replace(operation, settings=tuple(_used(each, picked) for each in operation.settings))


def _used(setting: Setting, picked: Mapping[str, Fraction]) -> Setting:
    if setting.at_least is None or setting.axis not in picked:
        return setting
    return replace(setting, value=picked[setting.axis])


def with_least_heights(steps: tuple[Step, ...]) -> tuple[Step, ...]:
    """Return the steps, the bounds of their heights good for all that is cut at one setting.

    A height that some cut needs exactly, for its depth, has no bounds.
    """
    bounds: dict[int, tuple[Fraction | None, Fraction | None]] = {}
    for runs in _runs(steps).values():
        for run in runs:
            bounds.update((step.number, _bounds(run)) for step in run)
    return tuple(
        _set(step, *bounds[step.number]) if step.number in bounds else step for step in steps
    )


def _runs(steps: tuple[Step, ...]) -> dict[str, list[Run]]:
    """Return by station the steps between one setting of the height and the next."""
    runs: dict[str, list[Run]] = {}
    for step in steps:
        if dict(step.settings).get(HEIGHT) is None:
            continue
        here = runs.setdefault(step.station, [])
        if not here or HEIGHT in step.changed:
            here.append(())
        here[-1] = (*here[-1], step)
    return runs


def _bounds(run: Run) -> tuple[Fraction | None, Fraction | None]:
    rows = [
        (setting.at_least, setting.at_most)
        for step in run
        for operation in step.operations
        for setting in operation.settings
        if setting.axis == HEIGHT
    ]
    least = [low for low, _ in rows if low is not None]
    most = [high for _, high in rows if high is not None]
    if not rows or len(least) < len(rows) or len(most) < len(rows):
        return None, None
    return max(least), min(most)


def _set(step: Step, least: Fraction | None, most: Fraction | None) -> Step:
    settings = tuple(
        (
            axis,
            replace(setting, at_least=least, at_most=most)
            if setting and axis == HEIGHT
            else setting,
        )
        for axis, setting in step.settings
    )
    return replace(step, settings=settings)
