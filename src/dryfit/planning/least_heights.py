"""How low a blade may stand that cuts right through: as its thickest work asks, not its thinnest.

Several cuts share one height.  Whoever sets the blade once for all of them has to know what the
thickest of them needs, also where that one comes some steps later (TRADE 0.5).
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from dryfit.plan.plan import Step

HEIGHT = "height"


def with_least_heights(steps: tuple[Step, ...]) -> tuple[Step, ...]:
    """Return the steps, `at_least` of each standing height good for all that is cut at it.

    A height that some cut needs exactly, for its depth, has no `at_least`.
    """
    least = {step.number: bound for run in _standing(steps) for step, bound in _bounds(run)}
    return tuple(
        _with_bound(step, least[step.number]) if step.number in least else step for step in steps
    )


def _standing(steps: tuple[Step, ...]) -> Iterator[tuple[Step, ...]]:
    """Yield the steps at one station between one setting of the height and the next."""
    runs: dict[str, list[Step]] = {}
    for step in steps:
        if HEIGHT not in dict(step.settings):
            continue
        if HEIGHT in step.changed and step.station in runs:
            yield tuple(runs.pop(step.station))
        runs.setdefault(step.station, []).append(step)
    yield from (tuple(run) for run in runs.values())


def _bounds(run: tuple[Step, ...]) -> Iterator[tuple[Step, Fraction | None]]:
    asked = [
        setting.at_least
        for step in run
        for operation in step.operations
        for setting in operation.settings
        if setting.axis == HEIGHT
    ]
    bounds = [bound for bound in asked if bound is not None]
    least = max(bounds) if bounds and len(bounds) == len(asked) else None
    yield from ((step, least) for step in run)


def _with_bound(step: Step, least: Fraction | None) -> Step:
    settings = tuple(
        (axis, replace(setting, at_least=least) if axis == HEIGHT and setting else setting)
        for axis, setting in step.settings
    )
    return replace(step, settings=settings)
