"""The boxes beside a step: which settings change, in large figures, and which stay."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from dryfit.booklet.bench import Bench
from dryfit.booklet.drawing.lettering import text_width
from dryfit.booklet.machine_words import (
    Machine,
    details_of,
    label_of,
    large_value_of,
    machine_at,
    side_of,
    value_of,
)
from dryfit.booklet.text import Text, plain
from dryfit.plan.plan import Plan, Step
from dryfit.plan.setting import Setting

MM_OF_A_POINT = 25.4 / 72
POINT_SIZES = (40, 32, 26, 20)
COLUMN_MM = 42.0
"""Room for a figure in the column beside drawing and text."""


@dataclass(frozen=True, slots=True)
class SettingBox:
    """One axis to set: its label, the value in large type, and what the value is measured to.

    `figure` tells a number from a name, which is set smaller; `short` is the label with the side
    of the cutter, for a box without details; `waits` is the name of the measurement that gives the
    value, which then is a blank to fill in.
    """

    axis: str
    label: str
    short: str
    value: Text
    figure: bool
    details: tuple[Text, ...]
    waits: str | None = None


@dataclass(frozen=True, slots=True)
class Kept:
    """An axis that stays: ``height 27``, and the day it was set on if that was an earlier one."""

    axis: str
    value: Text
    recheck: int | None


@dataclass(frozen=True, slots=True)
class SettingsView:
    """What to set before a step.

    `fit` are cutters, guides and angles, `change` the figures to set, `keep` what stays.
    `points` is the type size at which the figures find room in the column beside the text.
    """

    fit: tuple[SettingBox, ...]
    change: tuple[SettingBox, ...]
    keep: tuple[Kept, ...]
    points: int


def settings_view(step: Step, bench: Bench) -> SettingsView:
    """Return the boxes of the axes that change, and the axes that stay as they are.

    An axis that was set on an earlier day is to be checked again before it is trusted.
    """
    values = {axis: setting for axis, setting in step.settings if setting is not None}
    machine = machine_at(step, values, bench)
    boxes = tuple(
        box for axis in values if axis in step.changed for box in _boxes(values[axis], machine)
    )
    asked = {setting.axis for op in step.operations for setting in op.settings} or set(values)
    days = _days_set(step, bench.plan)
    figures = tuple(box for box in boxes if box.figure)
    fit = tuple(box for box in boxes if not box.figure)
    keep = tuple(
        _kept(setting, machine, days[axis] if days[axis] < step.starts.day else None)
        for axis, setting in values.items()
        if axis in asked and axis not in step.changed
    )
    points = _largest(lambda points: all(_width(box, points) <= COLUMN_MM for box in figures))
    return SettingsView(fit, figures, keep, points)


def _largest(fits: Callable[[int], bool]) -> int:
    return next((points for points in POINT_SIZES if fits(points)), POINT_SIZES[-1])


def _width(box: SettingBox, points: int) -> float:
    return text_width(plain(box.value), points * MM_OF_A_POINT, bold=True)


def _boxes(setting: Setting, machine: Machine) -> Iterator[SettingBox]:
    """Yield the box of a setting, or two for a pair of stops."""
    label, value = label_of(setting, machine), large_value_of(setting, machine)
    figure = isinstance(setting.value, Fraction) and setting.unit == "mm"
    details = details_of(setting, machine)
    if setting.to == "both" and setting.far is not None:
        far = (machine.say.setting(setting.far),)
        first, second = _pair_labels(label, machine)
        yield SettingBox(setting.axis, first, first, value[:1], figure, ())
        yield SettingBox(setting.axis, second, second, far, figure, details)
    else:
        side = side_of(setting, machine)
        short = f"{label}, {side}" if side else label
        yield SettingBox(setting.axis, label, short, value, figure, details, setting.waits)


def _pair_labels(label: str, machine: Machine) -> tuple[str, str]:
    """Return the names of two limits: two stops, or at a router table where the cut runs."""
    if machine.cutter == "bit":
        return "Cut from", "Cut to"
    return f"First {label.lower()}", f"Second {label.lower()}"


def _kept(setting: Setting, machine: Machine, day: int | None) -> Kept:
    value = large_value_of(setting, machine)
    if not isinstance(setting.value, Fraction):
        return Kept(setting.axis, value, None)
    side = f", {side_of(setting, machine)}" if value != value_of(setting, machine) else ""
    return Kept(setting.axis, (f"{label_of(setting, machine).lower()} ", *value, side), day)


def _days_set(step: Step, plan: Plan) -> Mapping[str, int]:
    """Return for each axis of the station the day on which it got the value it now has."""
    days: dict[str, int] = {axis: step.starts.day for axis, _ in step.settings}
    for earlier in plan.steps:
        if earlier.number > step.number:
            break
        if earlier.station == step.station:
            days.update((axis, earlier.starts.day) for axis in earlier.changed)
    return days
