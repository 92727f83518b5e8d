"""Damages of settings: the machine stands a little wrong, and the cut with it."""

import random
from collections.abc import Callable, Iterator
from dataclasses import replace
from fractions import Fraction

from tests.rehearsal_damage.kind import Kind, kind
from tests.rehearsal_damage.places import Cut, joint_cuts, shuffled, stood_otherwise
from tests.rehearsal_damage.retelling import retold
from tests.rehearsal_damage.wanted import copy_of, from_surface, spoils, with_range

from dryfit.geometry.frame import SURFACES
from dryfit.plan.plan import Plan
from dryfit.plan.setting import Setting
from dryfit.rehearsal.fault import Reason
from dryfit.rehearsal.goal import Goal, Range, Ranges

FROM_ABOVE = frozenset({"mortiser", "drill press"})
ONE = Fraction(1)


def number(setting: Setting | None) -> Fraction | None:
    """The value of a setting in mm, or None."""
    return setting.value if setting is not None and isinstance(setting.value, Fraction) else None


def shifted(setting: Setting, by: Fraction) -> Setting:
    """A distance with near and far face moved."""
    assert isinstance(setting.value, Fraction)
    far = None if setting.far is None else setting.far + by
    return replace(setting, value=setting.value + by, far=far)


def sweep_at(cut: Cut, axis: str, setting: Setting) -> tuple[int, Range] | None:
    """What of the mark a setting of the stop or the fence limits, as a range of the part."""
    hold = cut.work.hold
    value = number(setting)
    if hold is None or value is None or setting.far is None:
        return None
    if axis == "fence":
        # A fence with several passes in one operation is no single limit.
        if hold.against_fence is None or any(p.fence is not None for p in cut.work.passes):
            return None
        return from_surface(hold.against_fence, (value, setting.far), cut.copy)
    if hold.at_stop is None:
        return None
    spacers = [each.spacer for each in cut.work.passes if each.spacer is not None]
    low = value - max(spacers, default=Fraction(0))
    if not spacers and any(each.between for each in cut.work.passes):
        low = Fraction(0)
    return from_surface(hold.at_stop, (low, setting.far), cut.copy)


def misplaced(cut: Cut, axis: str, new: Setting, goal: Goal) -> bool:
    """Whether the joint is spoilt when the stop or fence stands so."""
    old = cut.settings.get(axis)
    was = sweep_at(cut, axis, old) if old is not None else None
    now = sweep_at(cut, axis, new)
    if was is None or now is None:
        return False
    direction, limits = was
    before = with_range(cut.mark.ranges, direction, limits)
    after = with_range(cut.mark.ranges, *now)
    return spoils(goal, cut.copy, cut.mark, [before], [after])


def restood(
    plan: Plan,
    goal: Goal,
    chance: random.Random,
    axis: str,
    news: Callable[[Cut, Setting], Iterator[Setting]],
) -> Plan | None:
    """The plan with stop or fence of one joint's cut at a value that spoils the joint."""
    for cut in shuffled(chance, joint_cuts(plan, goal)):
        old = cut.settings.get(axis)
        if old is None or cut.work.hold is None or number(old) is None:
            continue
        for new in shuffled(chance, news(cut, old)):
            if new.token() != old.token() and misplaced(cut, axis, new, goal):
                return retold(plan, stood_otherwise(plan, cut.at, axis, new))
    return None


def a_millimetre_off(_cut: Cut, old: Setting) -> Iterator[Setting]:
    """One to either side, but never beyond the stop itself."""
    value = number(old)
    assert value is not None
    yield shifted(old, ONE)
    if value >= ONE:
        yield shifted(old, -ONE)


def stop_a_millimetre_off(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    return restood(plan, goal, chance, "stop", a_millimetre_off)


def fence_a_millimetre_off(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    return restood(plan, goal, chance, "fence", a_millimetre_off)


def value_for_the_far_face(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """The far limit is set at the near face: the cut lies a cutter's width too far off."""

    def news(_cut: Cut, old: Setting) -> Iterator[Setting]:
        value = number(old)
        if old.to == "near" and old.far is not None and value is not None:
            yield shifted(old, old.far - value)

    axis = chance.choice(("stop", "fence"))
    other = {"stop": "fence", "fence": "stop"}[axis]
    first = restood(plan, goal, chance, axis, news)
    return first if first is not None else restood(plan, goal, chance, other, news)


def value_for_the_near_face(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """As if the cut began where it has to end: it lies a cutter's width too near."""

    def news(_cut: Cut, old: Setting) -> Iterator[Setting]:
        value = number(old)
        if old.to == "near" and old.far is not None and value is not None:
            by = value - old.far
            if value + by >= 0:
                yield shifted(old, by)

    axis = chance.choice(("stop", "fence"))
    other = {"stop": "fence", "fence": "stop"}[axis]
    first = restood(plan, goal, chance, axis, news)
    return first if first is not None else restood(plan, goal, chance, other, news)


def faces_of_the_cutter_exchanged(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """Near and far change their places: no cutter stands so."""
    for cut in shuffled(chance, joint_cuts(plan, goal)):
        for axis in ("stop", "fence"):
            old = cut.settings.get(axis)
            if old is None or old.to != "near" or old.far is None or cut.work.hold is None:
                continue
            value = number(old)
            assert value is not None
            new = replace(old, value=old.far, far=value)
            return retold(plan, stood_otherwise(plan, cut.at, axis, new))
    return None


def spacer_added(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """The stop stands at the near limit, as if the spacer moved the cut away from the end."""

    def news(cut: Cut, old: Setting) -> Iterator[Setting]:
        value = number(old)
        for each in cut.work.passes:
            if each.spacer is not None and value is not None and value >= each.spacer:
                yield shifted(old, -each.spacer)

    return restood(plan, goal, chance, "stop", news)


def height_stop(cut: Cut) -> tuple[str, Setting] | None:
    """The axis that says how deep the cut is, with its setting."""
    for axis in ("depth", "height"):
        setting = cut.settings.get(axis)
        if setting is not None and number(setting) is not None and cut.work.hold is not None:
            return axis, setting
    return None


def deep(cut: Cut, depth: Fraction) -> Ranges:
    """The mark as it is with another depth."""
    direction, limits = from_surface(cut.mark.surface, (Fraction(0), depth), cut.copy)
    return with_range(cut.mark.ranges, direction, limits)


def depth_of(cut: Cut) -> Fraction:
    """How deep the mark is."""
    low, high = cut.mark.ranges[SURFACES[cut.mark.surface][0]]
    return high - low


def at_depth(
    plan: Plan, goal: Goal, chance: random.Random, by: Callable[[Cut], Iterator[Fraction]]
) -> Plan | None:
    """The plan with a joint's cut deeper or shallower by so much, where that spoils the joint."""
    for cut in shuffled(chance, joint_cuts(plan, goal)):
        found = height_stop(cut)
        if found is None:
            continue
        axis, old = found
        for more in shuffled(chance, by(cut)):
            value = number(old)
            depth = depth_of(cut) + more
            if value is None or value + more < 0 or more == 0:
                continue
            after = [deep(cut, depth)] if depth > 0 else []
            if spoils(goal, cut.copy, cut.mark, [cut.mark.ranges], after):
                new = replace(old, value=value + more)
                return retold(plan, stood_otherwise(plan, cut.at, axis, new))
    return None


def depth_a_millimetre_off(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    return at_depth(plan, goal, chance, lambda _: iter((ONE, -ONE)))


def sled_forgotten(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """The height is that above the sled's floor, set above the table (TRADE 0.5)."""
    base = dict(plan.accessories)

    def by(cut: Cut) -> Iterator[Fraction]:
        accessory = cut.settings.get("accessory")
        if accessory is not None and base.get(str(accessory.value)):
            yield -base[str(accessory.value)]

    return at_depth(plan, goal, chance, by)


def stops_short_of_the_tenon(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """A mortise is a millimetre less deep than its tenon is long."""

    def by(cut: Cut) -> Iterator[Fraction]:
        if cut.mark.kind != "mortise":
            return
        direction = SURFACES[cut.mark.surface][0]
        for joint in goal.joints:
            found = copy_of(goal, joint.host)
            if joint.kind != "mortise and tenon" or found is None or joint.host != cut.copy.name:
                continue
            axis, _ = cut.copy.frame.axes[direction]
            yield joint.region.extent(axis) - ONE - depth_of(cut)

    return at_depth(plan, goal, chance, by)


_CUT = (Reason.CUT, Reason.FIT)
KINDS: tuple[Kind, ...] = (
    kind(stop_a_millimetre_off, *_CUT),
    kind(fence_a_millimetre_off, *_CUT),
    kind(value_for_the_far_face, *_CUT),
    kind(value_for_the_near_face, *_CUT),
    kind(faces_of_the_cutter_exchanged, Reason.SETTING),
    kind(spacer_added, *_CUT),
    kind(depth_a_millimetre_off, *_CUT),
    kind(sled_forgotten, *_CUT),
    kind(stops_short_of_the_tenon, *_CUT),
)
