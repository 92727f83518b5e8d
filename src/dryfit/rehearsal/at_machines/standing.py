"""What every axis of every station stands at, from the first step on."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from fractions import Fraction

from dryfit.plan.operation import Operation
from dryfit.plan.plan import Step
from dryfit.plan.setting import Setting
from dryfit.rehearsal.fault import Fault, Reason
from dryfit.shop.shop import Shop, Station

Axes = dict[str, Setting | None]
BARE_TEETH = Fraction(12)
"""A blade stands no higher above what a cut right through needs, mm (common practice: its teeth
come 3 mm out of the work, and no more than 15)."""


@dataclass(slots=True)
class Standing:
    """The axes of the stations as the steps before have left them."""

    shop: Shop
    axes: dict[str, Axes] = field(default_factory=dict)
    turned: Counter[tuple[str, str]] = field(default_factory=Counter)
    """How often each axis of each station has been moved or spoiled."""

    def change(self, step: Step) -> Iterator[Fault]:
        """Turn the axes that the step announces, and find those that do not stand as it says."""
        station = self.shop.stations.get(step.station)
        if station is None:
            yield _fault(
                step, Reason.MACHINE, f"the shop has no {step.station}", "a station that it has"
            )
            return
        said = dict(step.settings)
        if list(said) != [axis.name for axis in station.axes]:
            yield _fault(
                step,
                Reason.SETTING,
                f"it shows {', '.join(said) or 'no axis'}",
                f"every axis of the {station.name}, in order",
            )
        before = self.axes.get(step.station, {})
        now = _turned(before, station, step)
        self.axes[step.station] = now
        spoiled = _unset(station, step)
        self.turned.update((step.station, axis) for axis in {*step.changed, *spoiled})
        for axis in station.axes:
            # What is spoiled is set again, even to the same figure.
            was = None if axis.name in spoiled else before.get(axis.name)
            yield from _checked(step, axis.name, was, now.get(axis.name), said)

    def at(self, station: str) -> Axes:
        """Return the axes of a station as they stand."""
        return self.axes.get(station, {})


def _turned(before: Axes, station: Station, step: Step) -> Axes:
    said, changed, unset = dict(step.settings), set(step.changed), _unset(station, step)
    now: Axes = {}
    for axis in station.axes:
        if axis.name in changed:
            now[axis.name] = said.get(axis.name)
        else:
            now[axis.name] = None if axis.name in unset else before.get(axis.name)
    return now


def _unset(station: Station, step: Step) -> set[str]:
    """Return the axes that a change of others spoils, as a new cutter does the height."""
    return {name for axis in station.axes if axis.name in step.changed for name in axis.unsets}


def _checked(
    step: Step,
    axis: str,
    before: Setting | None,
    now: Setting | None,
    said: dict[str, Setting | None],
) -> Iterator[Fault]:
    shown = said.get(axis)
    if stands_at(now) != stands_at(shown):
        yield _fault(
            step,
            Reason.SETTING,
            f"the {axis} is said to stand at {_words(shown)}, but it stands at {_words(now)}",
            f"a change of the {axis} that is announced",
        )
    elif axis in step.changed and (now is None or stands_at(before) == stands_at(now)):
        yield _fault(
            step,
            Reason.SETTING,
            f"the {axis} is changed to what it was, {_words(now)}",
            "a change only where the value differs",
        )


def unmet(operation: Operation, axes: Axes) -> Iterator[tuple[str, str, str]]:
    """Yield (axis, what stands, what is needed) for every setting that an operation lacks.

    Of a pair of stops one stands on either side: what is measured from neither runs against them.
    """
    stop = axes.get("stop")
    measured = any(setting.axis == "stop" for setting in operation.settings)
    if stop is not None and stop.to == "both" and not measured:
        yield "stop", _words(stop), "off"
    for wanted in operation.settings:
        stands = axes.get(wanted.axis)
        if not _meets(stands, wanted):
            yield wanted.axis, _words(stands), _words(wanted)


def _meets(stands: Setting | None, wanted: Setting) -> bool:
    if stands is None:
        return False
    least = wanted.at_least
    if least is not None and isinstance(stands.value, Fraction):
        return least <= stands.value <= least + BARE_TEETH
    return stands_at(stands) == stands_at(wanted)


def stands_at(setting: Setting | None) -> object:
    """Return what the machine must stand at; which end of the part touches does not count.

    Both faces of the cutter do: under a cutter of another width the fence stands elsewhere.
    """
    if setting is None:
        return None
    return setting.value, setting.unit, setting.far, setting.side, setting.measure


def _words(setting: Setting | None) -> str:
    if setting is None:
        return "nothing"
    value = setting.value
    return value if isinstance(value, str) else f"{float(value):g} {setting.unit}"


def _fault(step: Step, reason: Reason, message: str, needed: str) -> Fault:
    return Fault(reason, message, needed, step.number, step.id)
