"""How high a blade stands that cuts right through: as its thickest work asks.

Several cuts share one height.  Whoever sets the blade once for all of them has to know what the
thickest of them needs, also where that one comes some steps later (TRADE 0.5).  Bare teeth high
above thin work are a danger: where the blade is set anew they are lowered to what is cut until the
next setting, which costs nothing then; elsewhere the step says so.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from dryfit.plan.operation import Operation
from dryfit.plan.plan import Step
from dryfit.plan.setting import Setting

HEIGHT = "height"
HIGH = Fraction(12)
"""Teeth more than 15 mm out of the work are too high, 3 of them being usual (common practice)."""
Run = tuple[Step, ...]


def with_least_heights(steps: tuple[Step, ...]) -> tuple[Step, ...]:
    """Return the steps, no height far above its work, and `at_least` good for all cut at it.

    A height that some cut needs exactly, for its depth, is left alone and has no `at_least`.
    """
    set_of: dict[int, tuple[Fraction, Fraction | None]] = {}
    for runs in _runs(steps).values():
        before: Fraction | None = None
        for run, after in zip(runs, (*map(_value, runs[1:]), None), strict=True):
            value, least = _value(run), _least(run)
            if value is None:
                before = None
                continue
            if least is not None and value - least > HIGH and least not in {before, after}:
                # Equal to a neighbour it would not be a change of setting any more.
                value = least
            set_of.update((step.number, (value, least)) for step in run)
            before = value
    return tuple(
        _set(step, *set_of[step.number]) if step.number in set_of else step for step in steps
    )


def _runs(steps: tuple[Step, ...]) -> dict[str, list[Run]]:
    """Return by station the steps between one setting of the height and the next."""
    runs: dict[str, list[Run]] = {}
    for step in steps:
        if HEIGHT not in dict(step.settings):
            continue
        here = runs.setdefault(step.station, [])
        if not here or HEIGHT in step.changed or _value(here[-1]) != _value((step,)):
            here.append(())
        here[-1] = (*here[-1], step)
    return runs


def _value(run: Run) -> Fraction | None:
    setting = dict(run[0].settings)[HEIGHT]
    return setting.value if setting is not None and isinstance(setting.value, Fraction) else None


def _least(run: Run) -> Fraction | None:
    asked = [
        setting.at_least
        for step in run
        for operation in step.operations
        for setting in operation.settings
        if setting.axis == HEIGHT
    ]
    bounds = [bound for bound in asked if bound is not None]
    return max(bounds) if bounds and len(bounds) == len(asked) else None


def _set(step: Step, value: Fraction, least: Fraction | None) -> Step:
    settings = tuple(
        (
            axis,
            replace(setting, value=value, at_least=least)
            if setting and axis == HEIGHT
            else setting,
        )
        for axis, setting in step.settings
    )
    operations = tuple(_operation_at(operation, value) for operation in step.operations)
    return replace(step, settings=settings, operations=operations)


def _operation_at(operation: Operation, value: Fraction) -> Operation:
    def at_height(setting: Setting) -> Setting:
        return replace(setting, value=value) if setting.axis == HEIGHT else setting

    settings = tuple(map(at_height, operation.settings))
    high = tuple(
        ("One height serves the thicker parts too; ", least, " is enough here: keep the guard down")
        for setting in operation.settings
        if setting.axis == HEIGHT
        and (least := setting.at_least) is not None
        and value - least > HIGH
    )
    return replace(operation, settings=settings, details=(*operation.details, *high))
