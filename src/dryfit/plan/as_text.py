"""The order of work for the terminal: visits, steps, what to change, and the totals."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.plan.changes import changes_of
from dryfit.plan.changes_text import changes_figure
from dryfit.plan.lending import lent_hands
from dryfit.plan.plan import Plan, Release, Step, Visit
from dryfit.plan.setting import Setting
from dryfit.plan.sides import Side, Sides, cuts_through, distance, other_side
from dryfit.plan.totals_text import (
    ENDED_IN_WORDS,
    bound_in_words,
    done_in_words,
    duration,
    in_lines,
    saved_in_words,
    spending_in_words,
    spent_in_words,
)
from dryfit.plan.ways_as_text import weighed_ways
from dryfit.quantities import Display

UNREHEARSED = "UNREHEARSED: this plan was not played through before it was printed"


def steps_table(
    plan: Plan, sides: Sides, display: Display, *, rehearsed: bool = False, moved: str = ""
) -> str:
    """Return every visit with its steps, the settings that change, and what it all takes.

    `sides` are those of the cutters to which the distances are said, as in the booklet.  A plan
    that was not `rehearsed` says so in its first line.  `moved` says which day is the first where
    it is not that of the start.
    """
    lines = [] if rehearsed else [UNREHEARSED, ""]
    if moved:
        lines += [moved, ""]
    for visit in plan.visits():
        lines += [
            _heading(visit),
            *(f"  {line}" for s in visit.steps for line in _step(s, sides, display)),
        ]
    lines += ["", *_totals(plan), *_ways(plan)]
    return "\n".join(lines) + "\n"


def _lent(plan: Plan) -> Iterator[str]:
    """Yield when somebody has to be called, and for how long."""
    for row in lent_hands(plan):
        yield (
            f"call somebody for {row.steps} ({', '.join(row.deeds)}), {row.starts.on} at "
            f"{row.starts.clock}, for {duration(row.tenths)}: that takes {row.people} people"
        )


def _ways(plan: Plan) -> Iterator[str]:
    """Yield the other ways of cutting, and what they take."""
    ways = weighed_ways(plan.alternatives)
    if ways:
        yield ""
        yield "other ways of cutting, weighed with every setting that they need or share:"
        for way in ways:
            yield from in_lines(way, "  ")


def _heading(visit: Visit) -> str:
    starts = visit.steps[0].starts
    return f"{visit.number}. {visit.station}, {starts.on} at {starts.clock}"


def _step(step: Step, sides: Sides, display: Display) -> Iterator[str]:
    for number, operation in enumerate(step.operations):
        label = f"{step.number:3}" if number == 0 else "   "
        yield f"{label}  {operation.id}"
    counting, through = sides.get(step.number, {}), cuts_through(step)
    changed = [
        _setting(setting, counting.get(axis, Side.NEAR), display, through=through)
        for axis, setting in step.settings
        if axis in step.changed and setting is not None
    ]
    if changed:
        yield f"     set: {'; '.join(changed)}"
    yield from _wait(step.release)
    if step.minutes.after:
        yield f"     then {duration(step.minutes.after)} of rest"


def _wait(release: Release | None) -> Iterator[str]:
    if release is None:
        return
    begins = f"{release.opens.on} at {release.opens.clock}"
    if release.lag:
        yield f"     not before {begins}: {duration(release.lag)} after step {release.step}"
    else:
        yield f"     not before {begins}: {release.reason}"


def _setting(setting: Setting, side: Side, display: Display, *, through: bool) -> str:
    if isinstance(setting.value, str):
        return f"{setting.axis} {setting.value}"
    if setting.unit == "deg":
        return f"{setting.axis} {_degrees(setting.value)}"
    if setting.formula and not setting.taken:
        return f"{setting.axis} {setting.formula} (measured)"
    counts = distance(setting, side)
    if setting.axis == "jig" and setting.far is not None:
        near, far = (display.with_unit(each, fitted=True) for each in (setting.value, setting.far))
        return f"cleat {near} from the jig's edge at the stop, {far} where the blade comes in"
    if setting.far is None or isinstance(counts, str):
        return f"{setting.axis} {display.with_unit(setting.value, fitted=True)}"
    far = display.with_unit(setting.far, fitted=True)
    if setting.to == "both":
        near = display.with_unit(setting.value, fitted=True)
        return f"{setting.axis} {near} and {far}, the two limits of the cut"
    words = f"{setting.axis} {display.with_unit(counts, fitted=True)} to the {side.value}"
    other = other_side(setting, side)
    if other is not None and not through:
        words += f" ({other[0]}{display.with_unit(other[1], fitted=True)})"
    return words


def _degrees(angle: Fraction) -> str:
    return f"{float(angle):g} deg"


def _totals(plan: Plan) -> Iterator[str]:
    yield from changes_figure(changes_of(plan))
    yield ""
    totals = plan.totals
    told = (
        spent_in_words(totals),
        done_in_words(plan),
        *_lent(plan),
        saved_in_words(totals),
        bound_in_words(totals),
        spending_in_words(plan.favour),
        *((ENDED_IN_WORDS,) if plan.ended_early else ()),
    )
    for words in told:
        yield from in_lines(words)
