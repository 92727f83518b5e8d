"""The order of work for the terminal: visits, steps, what to change, and the totals."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.plan.plan import Plan, Step, Totals, Visit
from dryfit.plan.setting import Setting
from dryfit.quantities import Display


def steps_table(plan: Plan, display: Display) -> str:
    """Return every visit with its steps, the settings that change, and what it all takes."""
    lines: list[str] = []
    for visit in plan.visits():
        lines += [
            _heading(visit),
            *(f"  {line}" for s in visit.steps for line in _step(s, display)),
        ]
    lines += ["", *_totals(plan.totals)]
    return "\n".join(lines) + "\n"


def _heading(visit: Visit) -> str:
    starts = visit.steps[0].starts
    return f"{visit.number}. {visit.station}, day {starts.day} at {starts.clock}"


def _step(step: Step, display: Display) -> Iterator[str]:
    for number, operation in enumerate(step.operations):
        label = f"{step.number:3}" if number == 0 else "   "
        yield f"{label}  {operation.id}"
    changed = [
        _setting(setting, display)
        for axis, setting in step.settings
        if axis in step.changed and setting is not None
    ]
    if changed:
        yield f"     set: {'; '.join(changed)}"
    if step.minutes.after:
        yield f"     then {_duration(step.minutes.after)} of rest"


def _setting(setting: Setting, display: Display) -> str:
    if isinstance(setting.value, str):
        return f"{setting.axis} {setting.value}"
    if setting.unit == "deg":
        return f"{setting.axis} {_degrees(setting.value)}"
    if setting.formula:
        return f"{setting.axis} {setting.formula} (measured)"
    words = f"{setting.axis} {display.with_unit(setting.value, fitted=True)}"
    if setting.far is not None:
        words += f" (far side {display.with_unit(setting.far, fitted=True)})"
    return words


def _degrees(angle: Fraction) -> str:
    return f"{float(angle):g} deg"


def _totals(totals: Totals) -> Iterator[str]:
    yield (
        f"work {_duration(totals.work)}, setting up {_duration(totals.setup)}, "
        f"waiting {_duration(totals.waiting)}"
    )
    yield (
        f"{totals.changeovers} settings changed in {_duration(totals.changeover)}; part by part "
        f"{totals.part_by_part.changeovers} in {_duration(totals.part_by_part.changeover)}"
    )
    least = _duration(totals.fewest)
    if totals.proven:
        yield f"the fewest minutes possible for changing settings, over {totals.over}: proved"
    else:
        yield (
            f"at least {least} must go into changing settings, over {totals.over}: this is at most "
            f"{float(totals.gap_percent):.0f} % above the best possible"
        )


def _duration(tenths: int) -> str:
    hours, minutes = divmod(round(tenths / 10), 60)
    return f"{hours} h {minutes:02} min" if hours else f"{minutes} min"
