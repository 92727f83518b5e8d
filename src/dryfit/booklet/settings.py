"""The boxes on top of a step: which settings change, in large figures, and which stay."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from dryfit.booklet.text import Amount, Mark, Piece, Say, Text, capital
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
    label: str
    value: Text
    recheck: int | None


@dataclass(frozen=True, slots=True)
class SettingsView:
    """What to set before a step: `change` these, `keep` those."""

    change: tuple[SettingBox, ...]
    keep: tuple[Kept, ...]


def settings_view(step: Step, plan: Plan, shop: Shop, say: Say) -> SettingsView:
    """Return the boxes of the axes that change, and the axes that stay as they are.

    An axis that was set on an earlier day is to be checked again before it is trusted.
    """
    values = {axis: setting for axis, setting in step.settings if setting is not None}
    words = _cutter_word(step.station, values.get("cutter"), shop)
    base = _base(values.get("accessory"), shop)
    change = tuple(
        _box(values[axis], words, base, say)
        for axis, _ in step.settings
        if axis in step.changed and axis in values
    )
    days = _days_set(step, plan)
    keep = tuple(
        Kept(
            axis,
            _label(setting, words).lower(),
            _value(setting, say),
            days[axis] if days[axis] < step.starts.day else None,
        )
        for axis, setting in values.items()
        if axis not in step.changed
    )
    return SettingsView(change, keep)


def _box(setting: Setting, cutter: str, base: Fraction, say: Say) -> SettingBox:
    return SettingBox(
        axis=setting.axis,
        label=_label(setting, cutter),
        value=_value(setting, say),
        figure=isinstance(setting.value, Fraction),
        details=_details(setting, cutter, base, say),
        waits=setting.measure,
    )


def _label(setting: Setting, cutter: str) -> str:
    if setting.axis == "cutter":
        return capital(cutter)
    if setting.axis == "height":
        return f"{capital(cutter)} height"
    return _LABELS.get(setting.axis, capital(setting.axis))


def _value(setting: Setting, say: Say) -> Text:
    if isinstance(setting.value, str):
        return (setting.value,)
    if setting.unit == "deg":
        return (say.angle(setting.value),)
    if setting.at_least is not None:
        return (say.setting(setting.at_least), " or more")
    if setting.axis == "stop" and setting.to == "both" and setting.far is not None:
        return (say.setting(setting.value), " – ", say.setting(setting.far))
    return (say.setting(setting.value),)


def _details(setting: Setting, cutter: str, base: Fraction, say: Say) -> tuple[Text, ...]:
    if isinstance(setting.value, str) or setting.unit == "deg":
        return ()
    if setting.axis == "height":
        return _height_details(setting, base, say)
    if setting.axis in {"stop", "fence"}:
        return _distance_details(setting, cutter, say)
    return ()


def _height_details(setting: Setting, base: Fraction, say: Say) -> tuple[Text, ...]:
    rows: list[Text] = [("above the table",)]
    if base and isinstance(setting.value, Fraction):
        if setting.at_least is None:
            cut = say.setting(setting.value - base)
            rows.append((cut, " deep + sled floor ", say.setting(base)))
        else:
            rows.append(("sled floor ", say.setting(base), " included"))
    if setting.at_least is not None:
        rows.append(("cuts right through",))
    return tuple(rows)


def _distance_details(setting: Setting, cutter: str, say: Say) -> tuple[Text, ...]:
    rows: list[Text] = []
    if setting.to == "both":
        rows.append(("first and last limit",))
    elif setting.to in {"near", "far"}:
        rows.append((f"to the {setting.to.upper()} side of the {cutter}",))
        if setting.to == "near" and setting.far is not None:
            rows.append(("far side then at ", say.setting(setting.far)))
    if setting.origin is not None:
        touches: list[Piece] = [_surface_word(setting.origin), " ", Mark(setting.origin)]
        rows.append((*touches, " against it"))
    if setting.side is not None:
        rows.append((f"on the {setting.side}",))
    return tuple(rows)


def _surface_word(mark: str) -> str:
    return {"R": "end", "E": "edge", "F": "face", "B": "face"}.get(mark[:1], "side")


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


def waiting_amount(setting: Setting, say: Say) -> Amount | None:
    """Return the nominal figure of a setting that waits for a measurement, or None."""
    if setting.measure is None or isinstance(setting.value, str):
        return None
    return say.size(setting.value)
