"""Damages of what the machines can do, and of what the maker is told to change at them."""

import random
from dataclasses import replace
from fractions import Fraction
from types import MappingProxyType

from tests.rehearsal_damage.hours import SHOP
from tests.rehearsal_damage.kind import Kind, kind, unhurt
from tests.rehearsal_damage.places import copies_of, deeds, joint_cuts, shuffled, stood_otherwise
from tests.rehearsal_damage.retelling import key_of, retold
from tests.rehearsal_damage.wanted import copy_of, sizes

from dryfit.plan.plan import Plan, Step
from dryfit.plan.setting import Setting
from dryfit.rehearsal.fault import Reason
from dryfit.rehearsal.goal import Goal
from dryfit.shop import Shop


def _renounced(plan: Plan, at: int, changed: tuple[str, ...]) -> Plan:
    """The plan with what a step announces replaced; all else is true."""
    own = key_of(plan.steps[at])

    def said(step: Step) -> tuple[str, ...]:
        return changed if key_of(step) == own else step.changed

    return retold(plan, plan.steps, announced=said)


def change_not_announced(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    for at in shuffled(chance, range(len(plan.steps))):
        step = plan.steps[at]
        if step.changed:
            gone = chance.choice(step.changed)
            return _renounced(plan, at, tuple(axis for axis in step.changed if axis != gone))
    return None


def change_announced_in_vain(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    for at in shuffled(chance, range(len(plan.steps))):
        step = plan.steps[at]
        unset = {
            name
            for axis in SHOP.stations[step.station].axes
            if axis.name in step.changed
            for name in axis.unsets
        }
        still = [
            axis
            for axis, setting in step.settings
            if setting is not None
            and axis not in step.changed
            and axis not in unset
            # Another cutter is as good a reason to set the fence again.
            and "cutter" not in step.changed
            and not SHOP.stations[step.station].axis(axis).unsets
        ]
        if still:
            more = {chance.choice(still), *step.changed}
            return _renounced(plan, at, tuple(axis for axis, _ in step.settings if axis in more))
    return None


def blade_beyond_its_height(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """A cut right through is made higher than the machine's blade rises."""
    for at, step, op in shuffled(chance, deeds(plan)):
        limit = SHOP.stations[step.station].limits.get("depth")
        height = {each.axis: each for each in op.settings}.get("height")
        if limit is not None and height is not None and height.at_least is not None:
            new = replace(height, value=limit + 1)
            return retold(plan, stood_otherwise(plan, at, "height", new))
    return None


def blade_high_above_thin_work(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """A cut right through is made with teeth more than 15 mm out of the work (common practice)."""
    for at, step, op in shuffled(chance, deeds(plan)):
        limit = SHOP.stations[step.station].limits.get("depth")
        height = {each.axis: each for each in op.settings}.get("height")
        if limit is None or height is None or height.at_least is None:
            continue
        if height.at_least + 13 <= limit:
            new = replace(height, value=height.at_least + 13)
            return retold(plan, stood_otherwise(plan, at, "height", new))
    return None


def cutter_of_another_machine(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    for cut in shuffled(chance, joint_cuts(plan, goal)):
        old = cut.settings.get("cutter")
        width = dict(plan.cutters).get(str(old.value)) if old is not None else None
        if old is None or width is None or cut.work.hold is None:
            continue
        other = next(c for c in SHOP.cutters if c.station not in {cut.step.station, "table saw"})
        told = retold(plan, stood_otherwise(plan, cut.at, "cutter", replace(old, value=other.name)))
        return replace(told, cutters=(*plan.cutters, (other.name, width)))
    return None


def machine_too_small(plan: Plan, goal: Goal, shop: Shop, chance: random.Random) -> Shop | None:
    """A limit of a machine in use falls a millimetre short of a finished part that it works."""
    places: list[tuple[str, str, Fraction]] = []
    for _, step, op in deeds(plan):
        found = [copy_of(goal, name) for name in copies_of(op)]
        worked = [sizes(each[1]) for each in found if each is not None]
        if not worked or not any(work.hold is not None for work in op.work):
            continue
        if op.kind == "thickness" and step.station == "planer":
            places += [
                ("planer", "widest", worked[0][1] - 1),
                ("planer", "thickest", worked[0][2] - 1),
            ]
        if op.kind == "face" and step.station == "jointer":
            places.append(("jointer", "widest", worked[0][1] - 1))
        if op.kind == "length" and step.station == "mitre saw":
            places += [
                ("mitre saw", "widest", worked[0][1] - 1),
                ("mitre saw", "longest_stop", worked[0][0] - 1),
                ("mitre saw", "depth", worked[0][2] - 1),
            ]
        if op.kind == "width" and step.station == "table saw":
            places += [
                ("table saw", "widest_rip", worked[0][1] - 1),
                ("table saw", "depth", _height(op.settings) - 1),
            ]
        if any(setting.value == "tenon jig" for setting in op.settings):
            places.append(("table saw", "longest_on_jig", worked[0][0] - 1))
        if op.kind == "mortise" and step.station == "mortiser":
            places.append(("mortiser", "depth", _height(op.settings) - 1))
    for station, limit, value in shuffled(chance, places):
        row = shop.stations[station]
        if value > 0 and limit in row.limits:
            limits = MappingProxyType({**row.limits, limit: value})
            smaller = replace(row, limits=limits)
            return replace(shop, stations=MappingProxyType({**shop.stations, station: smaller}))
    return None


def _height(settings: tuple[Setting, ...]) -> Fraction:
    values = [s.value for s in settings if s.axis in {"height", "depth"}]
    return next((value for value in values if isinstance(value, Fraction)), Fraction(0))


KINDS: tuple[Kind, ...] = (
    kind(change_not_announced, Reason.SETTING),
    kind(change_announced_in_vain, Reason.SETTING),
    kind(blade_beyond_its_height, Reason.MACHINE),
    kind(blade_high_above_thin_work, Reason.SETTING),
    kind(cutter_of_another_machine, Reason.MACHINE),
    Kind("machine too small", unhurt, frozenset({Reason.MACHINE}), machine_too_small),
)
