"""The boxes on top of a step: which settings change, in large figures, and which stay."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from dryfit.booklet.drawing.lettering import text_width
from dryfit.booklet.text import Mark, Say, Text, capital, joined, plain
from dryfit.plan.plan import Plan, Step
from dryfit.plan.setting import Setting
from dryfit.shop.shop import Shop

_LABELS = {
    "accessory": "Guide",
    "tilt": "Blade tilt",
    "angle": "Saw angle",
    "depth": "Depth",
    "thickness": "Thickness",
    "product": "Finish",
}

_CUTTER_WORDS = {
    "mitre saw": "blade",
    "band saw": "blade",
    "table saw": "blade",
    "router table": "bit",
    "mortiser": "chisel",
    "drill press": "drill",
}

_KIND_WORDS = {
    "blade": "blade",
    "set": "dado set",
    "bit": "bit",
    "drill": "drill",
    "chisel": "chisel",
}


MM_OF_A_POINT = 25.4 / 72
POINT_SIZES = (40, 32, 26, 20)
ROW_MM = 174.0
NARROW_CELL_MM = 34.0
CELL_AIR_MM = 5.0
"""Room of the row of boxes on A4, and what a cell of names and the air of each cell take of it."""

COLUMN_MM = 45.0
"""Room for a figure in the column beside a drawing."""


@dataclass(frozen=True, slots=True)
class SettingBox:
    """One axis to set: its label, the value in large type, and what the value is measured to.

    `figure` tells a number from a name, which is set smaller; `waits` is the name of the
    measurement that gives the value, which then is a blank to fill in.
    """

    axis: str
    label: str
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

    `fit` are cutters, guides and angles, `change` the figures to set, `keep` what stays.  The boxes
    stand in a `column` beside the drawing or in a row above it; `points` is the type size at which
    the figures find room there, on the narrower paper.
    """

    fit: tuple[SettingBox, ...]
    change: tuple[SettingBox, ...]
    keep: tuple[Kept, ...]
    points: int
    column: bool


@dataclass(frozen=True, slots=True)
class _Machine:
    """What the words for one setting take from the others.

    `cutter` is its word, `base` the thickness of the guide's floor, `through` whether the cut
    severs the work, and `origins` the marks that touch fence or stop, in the order of work.
    """

    cutter: str
    base: Fraction
    through: bool
    origins: Mapping[str, tuple[str, ...]]
    say: Say


def settings_view(step: Step, plan: Plan, shop: Shop, say: Say, *, column: bool) -> SettingsView:
    """Return the boxes of the axes that change, and the axes that stay as they are.

    An axis that was set on an earlier day is to be checked again before it is trusted.
    """
    values = {axis: setting for axis, setting in step.settings if setting is not None}
    machine = _machine(step, values, shop, say)
    boxes = tuple(
        box for axis in values if axis in step.changed for box in _boxes(values[axis], machine)
    )
    asked = {setting.axis for op in step.operations for setting in op.settings} or set(values)
    days = _days_set(step, plan)
    figures = tuple(box for box in boxes if box.figure)
    fit = tuple(box for box in boxes if not box.figure)
    keep = tuple(
        _kept(setting, machine, days[axis] if days[axis] < step.starts.day else None)
        for axis, setting in values.items()
        if axis in asked and axis not in step.changed
    )
    beside = bool(fit) + bool(keep)
    points = _points_in_column(figures) if column else _points_in_row(figures, beside)
    return SettingsView(fit, figures, keep, points, column)


def _points_in_column(figures: tuple[SettingBox, ...]) -> int:
    """Return the largest type size at which each figure fits the column."""
    return _largest(lambda points: all(_width(box, points) <= COLUMN_MM for box in figures))


def _points_in_row(figures: tuple[SettingBox, ...], beside: int) -> int:
    """Return the largest type size at which the figures fit the row, with `beside` narrow cells."""
    room = ROW_MM - beside * NARROW_CELL_MM - len(figures) * CELL_AIR_MM
    return _largest(lambda points: sum(_width(box, points) for box in figures) <= room)


def _largest(fits: Callable[[int], bool]) -> int:
    return next((points for points in POINT_SIZES if fits(points)), POINT_SIZES[-1])


def _width(box: SettingBox, points: int) -> float:
    return text_width(plain(box.value), points * MM_OF_A_POINT, bold=True)


def _machine(step: Step, values: Mapping[str, Setting], shop: Shop, say: Say) -> _Machine:
    asked = [setting for op in step.operations for setting in op.settings] or values.values()
    origins: dict[str, tuple[str, ...]] = {}
    for setting in asked:
        if setting.origin is not None:
            before = origins.get(setting.axis, ())
            origins[setting.axis] = tuple(dict.fromkeys((*before, setting.origin)))
    return _Machine(
        cutter=_cutter_word(step.station, values.get("cutter"), shop),
        base=_base(values.get("accessory"), shop),
        through=not any(work.features for op in step.operations for work in op.work),
        origins=origins,
        say=say,
    )


def _boxes(setting: Setting, machine: _Machine) -> Iterator[SettingBox]:
    """Yield the box of a setting, or two for a pair of stops."""
    label, value = _label(setting, machine), _value(setting, machine.say)
    figure = isinstance(setting.value, Fraction) and setting.unit == "mm"
    details = _details(setting, machine)
    if setting.to == "both" and setting.far is not None:
        far = (machine.say.setting(setting.far),)
        yield SettingBox(setting.axis, f"First {label.lower()}", value[:1], figure, ())
        yield SettingBox(setting.axis, f"Second {label.lower()}", far, figure, details)
    else:
        yield SettingBox(setting.axis, label, value, figure, details, setting.measure)


def _kept(setting: Setting, machine: _Machine, day: int | None) -> Kept:
    value = _value(setting, machine.say)
    if isinstance(setting.value, Fraction):
        return Kept(setting.axis, (f"{_label(setting, machine).lower()} ", *value), day)
    return Kept(setting.axis, value, None)


def _label(setting: Setting, machine: _Machine) -> str:
    if setting.axis == "cutter":
        return capital(machine.cutter)
    if setting.axis == "height":
        return f"{capital(machine.cutter)} height"
    return _LABELS.get(setting.axis, capital(setting.axis))


def _value(setting: Setting, say: Say) -> Text:
    if isinstance(setting.value, str):
        return (setting.value,)
    if setting.unit == "deg":
        return (say.angle(setting.value),)
    if setting.axis == "stop" and setting.to == "both" and setting.far is not None:
        return (say.setting(setting.value), " – ", say.setting(setting.far))
    return (say.setting(setting.value),)


def _details(setting: Setting, machine: _Machine) -> tuple[Text, ...]:
    if isinstance(setting.value, str) or setting.unit == "deg":
        return ()
    rows: list[Text] = []
    if setting.axis == "height":
        rows += _height_details(setting, setting.value, machine)
    elif setting.axis in {"stop", "fence"}:
        rows += _distance_details(setting, machine)
    if setting.measure is not None:
        formula = setting.formula or setting.measure
        on_paper = machine.say.setting(setting.value)
        rows.append((f"= {formula}, as measured; on paper ", on_paper))
    return tuple(rows)


def _height_details(setting: Setting, height: Fraction, machine: _Machine) -> Iterator[Text]:
    say, base = machine.say, machine.base
    yield (f"above the {setting.above or 'table'}",)
    if base and setting.at_least is None:
        yield (say.setting(height - base), " deep + sled floor ", say.setting(base))
    elif base:
        yield ("sled floor ", say.setting(base), " included")
    if setting.at_least is not None:
        yield ("cuts right through; ", say.setting(setting.at_least), " or more will do")


def _distance_details(setting: Setting, machine: _Machine) -> Iterator[Text]:
    if setting.to == "both":
        yield ("the two limits of the cut",)
    elif setting.to is not None:
        yield (f"to the {setting.to.upper()} side of the {machine.cutter}",)
        if setting.far is not None and not machine.through:
            yield from _far_details(setting.far, setting.value, machine)
    marks = machine.origins.get(setting.axis, ())
    if marks:
        touching = joined(((_surface_word(mark), " ", Mark(mark)) for mark in marks), ", then ")
        yield (*touching, " against it")
    if setting.side is not None:
        yield (f"on the {setting.side}",)


def _far_details(far: Fraction, near: Fraction | str, machine: _Machine) -> Iterator[Text]:
    if machine.cutter == "drill" and isinstance(near, Fraction):
        yield ("its centre then at ", machine.say.setting((near + far) / 2))
    else:
        yield ("far side then at ", machine.say.setting(far))


def _surface_word(mark: str) -> str:
    return {"R": "end", "E": "edge"}.get(mark[:1], "face")


def _cutter_word(station: str, cutter: Setting | None, shop: Shop) -> str:
    """Return blade, dado set, bit, chisel or drill: by the cutter if it is known, by station."""
    name = "" if cutter is None else str(cutter.value)
    for known in shop.cutters_at(station):
        if name == known.name or name.startswith(f"{known.name} "):
            return _KIND_WORDS.get(known.kind, _CUTTER_WORDS.get(station, "cutter"))
    return _CUTTER_WORDS.get(station, "cutter")


def _base(accessory: Setting | None, shop: Shop) -> Fraction:
    if accessory is None:
        return Fraction(0)
    known = shop.accessory(str(accessory.value))
    return Fraction(0) if known is None else known.base


def _days_set(step: Step, plan: Plan) -> Mapping[str, int]:
    """Return for each axis of the station the day on which it got the value it now has."""
    days: dict[str, int] = {axis: step.starts.day for axis, _ in step.settings}
    for earlier in plan.steps:
        if earlier.number > step.number:
            break
        if earlier.station == step.station:
            days.update((axis, earlier.starts.day) for axis in earlier.changed)
    return days
