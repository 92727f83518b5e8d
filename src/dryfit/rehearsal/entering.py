"""Whether the parts of a glue-up can be brought together at all (TRADE C1.2, C1.3, H57).

What goes together along straight lines comes apart along them.  So the finished assembly is taken
apart: whoever can be drawn off in one of six directions past all that is left is drawn off, which
never locks in anyone else.  Where nobody can go alone, groups are tried.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import combinations

from dryfit.geometry.box import Box
from dryfit.rehearsal.blank import left_of
from dryfit.rehearsal.goal import WantedCopy, WantedJoint
from dryfit.rehearsal.mitres import shut_ways
from dryfit.rehearsal.state import State, cuts_in_piece

Unit = tuple[str, tuple[Box, ...]]
Shut = frozenset[tuple[str, str, int, int]]
DIRECTIONS = tuple((axis, side) for axis in range(3) for side in (-1, 1))
MOST_UNITS_IN_GROUPS = 10
"""With more units than this left over, groups are too many to try; then nothing is said."""


def locked(state: State, units: Sequence[str]) -> tuple[str, ...]:
    """Return the units of an assembly that cannot be brought together, or none."""
    left = [(name, _solid(state, name, units)) for name in units]
    shut = _shut(state, units)
    while len(left) > 1:
        free = next((unit for unit in left if _comes_off([unit], left, shut)), None)
        if free is not None:
            left.remove(free)
            continue
        group = _group(left, shut)
        if group is None:
            return () if len(left) > MOST_UNITS_IN_GROUPS else tuple(name for name, _ in left)
        rest = [unit for unit in left if unit not in group]
        inner = locked_units(group, shut)
        if inner:
            return inner
        left = rest
    return ()


def locked_units(units: Sequence[Unit], shut: Shut = frozenset()) -> tuple[str, ...]:
    """Return the units of a group that cannot be taken apart, or none; `shut` as in `_shut`."""
    left = list(units)
    while len(left) > 1:
        free = next((unit for unit in left if _comes_off([unit], left, shut)), None)
        if free is None:
            return tuple(name for name, _ in left)
        left.remove(free)
    return ()


def _group(left: Sequence[Unit], shut: Shut) -> tuple[Unit, ...] | None:
    if len(left) > MOST_UNITS_IN_GROUPS:
        return None
    for size in range(2, len(left) // 2 + 1):
        for group in combinations(left, size):
            if _comes_off(group, left, shut):
                return group
    return None


def _comes_off(group: Sequence[Unit], left: Sequence[Unit], shut: Shut) -> bool:
    others = [box for unit in left if unit not in group for box in unit[1]]
    own = [box for _, boxes in group for box in boxes]
    inside = {name for name, _ in group}
    outside = {name for name, _ in left} - inside
    held = {(axis, side) for name, mate, axis, side in shut if name in inside and mate in outside}
    return any(
        (axis, side) not in held
        and not any(_passing(box, axis, side).overlap(other) for box in own for other in others)
        for axis, side in DIRECTIONS
    )


def _shut(state: State, units: Sequence[str]) -> Shut:
    """Return which unit a mitre keeps from being drawn off which other, by axis and side."""
    unit_of = {member: unit for unit in units for member in state.members.get(unit, (unit,))}
    return frozenset(
        (unit_of[name], unit_of[mate], axis, side)
        for joint in _mitres(state, unit_of)
        for name, mate, axis, side in shut_ways(state, joint)
    )


def _mitres(state: State, unit_of: Mapping[str, str]) -> Iterator[WantedJoint]:
    """Yield the mitres between two of the units."""
    for joint in state.goal.joints:
        pair = unit_of.get(joint.guest), unit_of.get(joint.host)
        if joint.kind == "mitre" and None not in pair and pair[0] != pair[1]:
            yield joint


def _passing(box: Box, axis: int, side: int) -> Box:
    """Return the space through which a box goes when it is drawn off to one side."""
    low, high = list(box.low), list(box.high)
    if side > 0:
        high[axis] += _FAR
    else:
        low[axis] -= _FAR
    return Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))


_FAR = 100_000
"""Beyond every piece; mm."""


def _holding(state: State, copy: WantedCopy, cuts: Sequence[Box]) -> Iterator[Box]:
    """Yield the cuts of a copy, those of sloping sockets in halves, of which one is narrow."""
    sloping = {
        copy.frame.to_piece(copy.box, mark.ranges): mark.halves
        for mark in state.part_of[copy.name].marks
        if mark.halves and copy.hand in mark.hands
    }
    for cut in cuts:
        if cut in sloping:
            yield from (copy.frame.to_piece(copy.box, each) for each in sloping[cut])
        else:
            yield cut


def _solid(state: State, name: str, units: Sequence[str]) -> tuple[Box, ...]:
    members = state.members.get(name, (name,))
    unit_of = {member: unit for unit in units for member in state.members.get(unit, (unit,))}
    # The wood in a mitred corner is told by the ways that it shuts.
    corners = [joint.region for joint in _mitres(state, unit_of)]
    boxes: list[Box] = []
    for member in members:
        copy, blank = state.copies.get(member), state.blanks.get(member)
        if copy is not None and blank is not None:
            cuts = _holding(state, copy, cuts_in_piece(copy, blank))
            boxes += left_of(copy.box, (*cuts, *corners))
    # A dowel sits in what enters, and goes in with it.
    for joint in state.goal.joints:
        if joint.guest in members:
            boxes += joint.loose_pieces
    return tuple(boxes)
