"""Settings as they stand: changed axes, what a cutter change unsets, heights of through-cuts."""

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from tests.property.plan_oracle.durations import exact, millimetres, minutes
from tests.property.plan_oracle.lipped import BANDED, core, strips_of
from tests.property.plan_oracle.reading import Json, PartRow, Row, length, parts_of, rows_of

BARE_TEETH = Fraction(12)
"""Teeth come 3 mm out of the work, and no more than 15 (common practice)."""


def changes(steps: Json, shop: Json) -> Iterator[str]:
    """Every axis stands as the step before left it, but for those that are said to change."""
    standing: dict[str, Json] = {}
    for step in steps["steps"]:
        axes = shop["station"][step["station"]].get("axis", {})
        before = standing.setdefault(step["station"], dict.fromkeys(axes))
        unset = {name for axis in step["changed"] for name in axes[axis].get("unsets", ())}
        spoiled = unset - set(step["changed"])
        if list(step["settings"]) != list(axes):
            yield f"step {step['number']}: shows {list(step['settings'])} of {list(axes)}"
            return
        for axis in axes:
            now, was = value(step["settings"][axis]), before[axis]
            if axis in spoiled:
                was = None
            if axis in step["changed"] and (now is None or (now == was and axis not in unset)):
                yield f"step {step['number']}: {axis} changes to what it was, {now}"
            if axis not in step["changed"] and now != was:
                yield f"step {step['number']}: {axis} stands at {was}, not at {now}"
            before[axis] = now
        # What a cutter costs depends on the one before: those steps are left to the order's tests.
        plain = [axes[axis] for axis in step["changed"] if "between" not in axes[axis]]
        cost = sum((minutes(axis["change"]) for axis in plain), Fraction(0))
        paid = exact(step["minutes"]["changeover"])
        if paid < cost or (len(plain) == len(step["changed"]) and paid != cost):
            yield f"step {step['number']}: changing takes {cost} min by the shop file, not {paid}"


def value(setting: object) -> object:
    """What the machine stands at; which end touches is a matter of the work, not of the machine.

    Where a drill is exchanged for one of another width, its near face is elsewhere, too.
    """
    if not isinstance(setting, dict):
        return setting
    far = setting["far"]["exact"] if setting.get("far") else None
    return setting["exact"], far, setting.get("side"), setting.get("measure")


def milling(steps: Json, parts: Json, shop: Json) -> Iterator[str]:
    """Planer, fence and stop stand at the finished sizes; cuts right through are high enough."""
    known = parts_of(parts)
    base = {each["name"]: length(each["base"]) for each in steps["accessories"]}
    planed = {row.subject for row in rows_of(steps) if row.deed == "plane to fit"}
    if strips_of(steps) or any(row.deed == BANDED for row in rows_of(steps)):
        known = {name: core(part, steps) for name, part in known.items()}
    for row in rows_of(steps):
        part = known.get(row.work["part"])
        if part is None or row.work["hold"] is None:
            continue
        if part.name in planed:
            part = replace(part, planed=part.planed + 5)
        for fault in _milled(row, part, base, shop):
            yield f"step {row.number}, {row.work['operation']}: {fault}"


def _milled(row: Row, part: PartRow, base: dict[str, Fraction], shop: Json) -> Iterator[str]:
    settings, (long, wide, thick) = row.step["settings"], part.sizes
    if row.deed == "thickness" and length(settings["thickness"]) != thick:
        yield f"planed to {length(settings['thickness'])} instead of {thick}"
    # What is planed in its opening is sawn a little larger.
    over = part.planed
    if row.deed == "width" and not wide <= length(settings["fence"]) <= wide + over:
        yield f"ripped to {length(settings['fence'])} instead of {wide}"
    if row.deed == "width" and "width" in part.waits and not settings["fence"].get("nominal"):
        yield "a measured width has to be nominal"
    if row.deed == "length" and row.work["hold"]["at_stop"] is not None:
        if not long <= length(settings["stop"]) <= long + over:
            yield f"cut {length(settings['stop'])} long instead of {long}"
        if "length" in part.waits and not settings["stop"].get("nominal"):
            yield "a measured length has to be nominal"
    if row.deed in {"width", "length"} and row.step["station"] == "table saw":
        need = thick + base[settings["accessory"]]
        limit = shop["station"]["table saw"]["limits"]["depth"]
        margin = millimetres(shop["allowance"]["through_cut"])
        if length(settings["height"]) < need + margin:
            yield f"{length(settings['height'])} does not go through {need}"
        if length(settings["height"]) > need + margin + BARE_TEETH:
            yield f"{length(settings['height'])} leaves bare teeth high above {need}"
        if length(settings["height"]) > millimetres(limit):
            yield f"the blade does not rise to {length(settings['height'])}"


def origins(steps: Json) -> Iterator[str]:
    """The end or edge that a setting is read from is one that touches in the step."""
    for step in steps["steps"]:
        for axis, held in (("stop", "at_stop"), ("fence", "against_fence")):
            setting = step["settings"].get(axis)
            if not isinstance(setting, dict) or axis not in step["changed"]:
                continue
            touching = {row["hold"][held] for row in step["work"] if row["hold"]}
            if setting.get("to") == "both" and None in touching:
                yield f"step {step['number']}: work without a stop runs against a pair of stops"
            if setting.get("from") is not None and setting["from"] not in touching:
                yield f"step {step['number']}: {axis} from {setting['from']}, held {touching}"
