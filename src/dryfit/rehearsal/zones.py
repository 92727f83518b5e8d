"""Where wood may go: for each copy the boxes that its joints and its declared shapes give free.

Read from the placed boxes, the joint regions and the kinds of joints alone (TRADE B1, B3, B7, B9,
B17, B22; common practice).  Whether everything goes that must go is told by the parts themselves:
put together, they may not share space.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction

from dryfit.geometry.box import Box, Triple
from dryfit.geometry.frame import LENGTH, THICKNESS, WIDTH
from dryfit.kinds.joints import overlaps_mate
from dryfit.rehearsal.goal import Goal, Mark, WantedCopy, WantedJoint
from dryfit.rehearsal.hanging import for_hinges
from dryfit.rehearsal.pin_rows import for_pins
from dryfit.rehearsal.pocketing import for_pockets
from dryfit.rehearsal.running import for_runner
from dryfit.rehearsal.top_fixing import for_fixings

TONGUED = "tongue and groove"
SHIP_LAP = "ship lap"
TENONS = frozenset({"mortise and tenon", "round tenon"})
GROOVED = frozenset({"groove", TONGUED, "slid panel", "back rabbet"})
"""Joints in whose grooves something has room to swell."""
SLIDE = Fraction(1)
"""Room that a tongue of a button has in its slot, to either side in mm: common practice."""


HAIR = Fraction(1, 10)
"""What a cutter may be off the size that is called for, mm: 8 mm and 5/16 in are 0.06 apart."""

GLUE_ROOM = Fraction(4)
"""Room for glue that a hole has at most beyond its dowel, mm: 2 to 3 is usual (TRADE B5, H16)."""


@dataclass(frozen=True, slots=True)
class Zone:
    """A box in the piece frame from which wood may go, for a joint or for a declared shape.

    A `bore` lets only holes go that are so wide, along the axis it names.
    """

    box: Box
    joint: str | None
    bore: tuple[int, Fraction] | None = None

    def lets(self, cut: Box) -> bool:
        """Return whether the zone is open to a cut of this size."""
        return self.bore is None or is_bore(cut, *self.bore)


def is_bore(cut: Box, axis: int, diameter: Fraction) -> bool:
    """Return whether a cut is a hole of the diameter along the axis, by a hair at most.

    A drill of 8 mm bores for a peg of 5/16 in.
    """
    return all(abs(cut.extent(each) - diameter) <= HAIR for each in range(3) if each != axis)


def open_zones(goal: Goal) -> dict[str, tuple[Zone, ...]]:
    """Return, for each copy, where wood may be taken from it."""
    copies = {copy.name: copy for part in goal.parts for copy in part.copies}
    zones: dict[str, list[Zone]] = {name: [] for name in copies}
    for joint in goal.joints:
        guest, host = copies.get(joint.guest), copies.get(joint.host)
        if guest is not None and host is not None:
            zones[guest.name] += (Zone(box, joint.id) for box in in_guest(joint, guest))
            zones[host.name] += (Zone(box, joint.id) for box in in_host(joint, guest, host))
            zones[host.name] += (Zone(box, joint.id) for box in for_fixings(joint, host))
            zones[host.name] += (Zone(box, joint.id) for box in for_pins(joint, host))
            zones[host.name] += for_pegs(joint, guest, host)
            zones[host.name] += (Zone(box, joint.id) for box in for_runner(joint, guest, host))
            for copy in (guest, host):
                zones[copy.name] += (Zone(box, joint.id) for box in around_loose(joint, copy))
                zones[copy.name] += (Zone(box, joint.id) for box in for_pockets(joint, copy))
                zones[copy.name] += (Zone(box, joint.id) for box in for_hinges(joint, copy))
    for part in goal.parts:
        for copy in part.copies:
            zones[copy.name] += (Zone(box, None) for box in shapes_of(copy, part.marks))
            if part.made:
                zones[copy.name].append(Zone(copy.box, None))
    return {name: tuple(own) for name, own in zones.items()}


def shapes_of(copy: WantedCopy, marks: tuple[Mark, ...]) -> Iterator[Box]:
    """Yield the boxes of the declared shapes that a copy carries, in the piece frame."""
    for mark in marks:
        if mark.declared and copy.hand in mark.hands:
            yield copy.frame.to_piece(copy.box, mark.ranges)


def in_guest(joint: WantedJoint, guest: WantedCopy) -> Iterator[Box]:
    """Yield where a joint takes wood from the part that enters or lies on the other."""
    if overlaps_mate(joint.kind):
        yield joint.region
    elif joint.kind == TONGUED:
        yield _beside_the_tongue(joint, guest)
    elif joint.kind == SHIP_LAP:
        yield _over_the_lap(joint, guest)
    elif joint.kind in {"groove", "slid panel"}:
        yield from _beside_the_edge(joint, guest)
    elif joint.kind in TENONS:
        yield _beyond_the_shoulder(joint, guest)
    elif joint.kind == "screws":
        yield _through(joint.region, guest)


def in_host(joint: WantedJoint, guest: WantedCopy, host: WantedCopy) -> Iterator[Box]:
    """Yield where a joint takes wood from the part that carries the other."""
    if overlaps_mate(joint.kind) or joint.kind in {"housing", "rabbet"}:
        yield joint.region
    elif joint.kind == SHIP_LAP:
        yield _over_the_lap(joint, host)
    elif joint.kind in TENONS:
        axis = guest.frame.axes[LENGTH][0]
        for box in joint.entering():
            yield _deeper(box, guest.box, axis, joint.clearance)
        for box in joint.sliding_room:
            yield _deeper(box, guest.box, axis, joint.clearance)
        if joint.haunch is not None:
            yield _run_out(_deeper(joint.haunch, guest.box, axis, joint.clearance), guest, host)
    elif joint.kind in GROOVED:
        along = _along_the_run(joint, guest, host)
        yield _open_outside(along, guest, host) if joint.kind == "back rabbet" else along
    elif joint.kind == "buttons":
        yield from _slots_of_buttons(joint, guest, host)
    elif joint.kind == "screws":
        yield _through(joint.region, host)


def around_loose(joint: WantedJoint, copy: WantedCopy) -> Iterator[Box]:
    """Yield where a copy is bored or slotted for dowels and the like, with room for their glue."""
    for piece in joint.loose_pieces:
        axis = next(each for each in range(3) if joint.region.extent(each) == 0)
        low = _with(piece.low, axis, piece.low[axis] - GLUE_ROOM)
        inside = Box(low, _with(piece.high, axis, piece.high[axis] + GLUE_ROOM)).overlap(copy.box)
        if inside is not None:
            yield inside


def for_pegs(joint: WantedJoint, guest: WantedCopy, host: WantedCopy) -> Iterator[Zone]:
    """Yield where the host is bored for the pegs of a tenon: across its mortise, right through."""
    if joint.pegs is not None:
        axis = guest.frame.axes[THICKNESS][0]
        low, high = joint.region.low, joint.region.high
        whole = Box(_with(low, axis, host.box.low[axis]), _with(high, axis, host.box.high[axis]))
        yield Zone(whole, joint.id, (axis, joint.pegs.diameter))


def takes_a_peg(joint: WantedJoint, guest: WantedCopy, cut: Box) -> bool:
    """Return whether a cut is a hole for one of the joint's pegs."""
    axis = guest.frame.axes[THICKNESS][0]
    if joint.pegs is None:
        return False
    across = guest.frame.axes[WIDTH][0]
    longest = joint.pegs.diameter + 2 * joint.pegs.slide
    return is_bore(cut, axis, joint.pegs.diameter) or (
        # The hole in a tenon that slides is as much longer as the wood moves.
        joint.pegs.diameter < cut.extent(across) <= longest
        and cut.extent(guest.frame.axes[LENGTH][0]) == joint.pegs.diameter
    )


def bored(joint: WantedJoint) -> int | None:
    """Return the axis along which a joint is bored, or None where nothing is."""
    if joint.kind != "screws":
        return None
    return next(axis for axis in range(3) if joint.region.extent(axis) == 0)


def rooms_of(joint: WantedJoint, guest: WantedCopy, wood: Iterable[Box]) -> Iterator[Box]:
    """Yield the room that stays free before the end of each piece of `wood` that enters.

    Glue needs it in a mortise, a panel needs it to swell (TRADE B3, B9, J10).
    """
    if joint.clearance <= 0 or joint.kind not in {*TENONS, *GROOVED}:
        return
    tenon = joint.kind in TENONS
    axis = guest.frame.axes[LENGTH][0] if tenon else depth_axis(joint, guest)
    at_low = _at_low_end(joint.region, guest.box, axis)
    ends = {box.low[axis] if at_low else box.high[axis] for box in joint.entering()}
    for box in wood:
        low, high = box.low[axis], box.high[axis]
        if at_low and low in ends:
            yield Box(_with(box.low, axis, low - joint.clearance), _with(box.high, axis, low))
        elif not at_low and high in ends:
            yield Box(_with(box.low, axis, high), _with(box.high, axis, high + joint.clearance))


def depth_axis(joint: WantedJoint, guest: WantedCopy) -> int:
    """Return the axis along which a panel enters its groove: the shorter way into it."""
    thickness = guest.frame.axes[THICKNESS][0]
    return min(
        (axis for axis in range(3) if axis != thickness),
        key=lambda axis: (joint.region.extent(axis), axis),
    )


def _beyond_the_shoulder(joint: WantedJoint, guest: WantedCopy) -> Box:
    # Cheeks and edge shoulders are sawn from the shoulder to the end.
    axis = guest.frame.axes[LENGTH][0]
    low, high = list(guest.box.low), list(guest.box.high)
    if _at_low_end(joint.region, guest.box, axis):
        high[axis] = joint.region.high[axis] + joint.floats
    else:
        low[axis] = joint.region.low[axis] - joint.floats
    return Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))


def room_before_tongue(joint: WantedJoint, guest: WantedCopy) -> Iterator[Box]:
    """Yield the room for glue before the end of a tongue, which lies between the tenons."""
    if joint.haunch is not None:
        axis = guest.frame.axes[LENGTH][0]
        deep = _deeper(joint.haunch, guest.box, axis, joint.clearance)
        if _at_low_end(joint.region, guest.box, axis):
            yield Box(deep.low, _with(deep.high, axis, joint.haunch.low[axis]))
        else:
            yield Box(_with(deep.low, axis, joint.haunch.high[axis]), deep.high)


def _run_out(tongue: Box, guest: WantedCopy, host: WantedCopy) -> Box:
    """Return a tongue's groove as a saw cuts it, out at both ends; a haunch stays as it is."""
    wide = guest.frame.axes[WIDTH][0]
    if tongue.extent(wide) < guest.box.extent(wide) or host.frame.axes[LENGTH][0] != wide:
        return tongue
    low, high = host.box.low[wide], host.box.high[wide]
    return Box(_with(tongue.low, wide, low), _with(tongue.high, wide, high))


def _beside_the_tongue(joint: WantedJoint, guest: WantedCopy) -> Box:
    # Both faces are cut from the shoulder, which stands before the mate by the gap, to the edge.
    axis, thickness = depth_axis(joint, guest), guest.frame.axes[THICKNESS][0]
    low, high = list(joint.region.low), list(joint.region.high)
    low[thickness], high[thickness] = guest.box.low[thickness], guest.box.high[thickness]
    if _at_low_end(joint.region, guest.box, axis):
        high[axis] += joint.clearance
    else:
        low[axis] -= joint.clearance
    return Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))


def _at_low_end(region: Box, box: Box, axis: int) -> bool:
    return region.low[axis] + region.high[axis] < box.low[axis] + box.high[axis]


def _deeper(region: Box, guest: Box, axis: int, clearance: Fraction) -> Box:
    # The room for glue or movement lies before the end of what enters.
    if _at_low_end(region, guest, axis):
        return Box(_with(region.low, axis, region.low[axis] - clearance), region.high)
    return Box(region.low, _with(region.high, axis, region.high[axis] + clearance))


def _along_the_run(joint: WantedJoint, guest: WantedCopy, host: WantedCopy) -> Box:
    # A saw that ploughs a groove cannot stop: it may run out at the ends of its part.
    depth = depth_axis(joint, guest)
    thickness = guest.frame.axes[THICKNESS][0]
    (run,) = {0, 1, 2} - {depth, thickness}
    deep = _deeper(joint.region, guest.box, depth, joint.clearance)
    return Box(_with(deep.low, run, host.box.low[run]), _with(deep.high, run, host.box.high[run]))


def _beside_the_edge(joint: WantedJoint, panel: WantedCopy) -> Iterator[Box]:
    """Yield what a panel loses along an edge whose groove is narrower than it is thick (B20).

    As far in as the groove is deep, so that the shoulder stays clear of what the groove is in.
    """
    depth, normal = depth_axis(joint, panel), panel.frame.axes[THICKNESS][0]
    region, box = joint.region, panel.box
    if _at_low_end(region, box, depth):
        edge = box.low[depth], region.high[depth] + joint.clearance
    else:
        edge = region.low[depth] - joint.clearance, box.high[depth]
    for low, high in (
        (box.low[normal], region.low[normal]),
        (region.high[normal], box.high[normal]),
    ):
        if low < high:
            corners = (_with(box.low, normal, low), _with(box.high, normal, high))
            yield Box(_with(corners[0], depth, edge[0]), _with(corners[1], depth, edge[1]))


def _over_the_lap(joint: WantedJoint, board: WantedCopy) -> Box:
    """Return where a board is cut away for a ship lap: the lap, and the gap beside its shoulder."""
    axis = board.frame.axes[WIDTH][0]
    low, high = joint.region.low, joint.region.high
    if _at_low_end(joint.region, board.box, axis):
        return Box(low, _with(high, axis, high[axis] + joint.clearance))
    return Box(_with(low, axis, low[axis] - joint.clearance), high)


def _open_outside(box: Box, guest: WantedCopy, host: WantedCopy) -> Box:
    """Return a groove opened to the face of its part that the panel lies next to: a rabbet."""
    axis = guest.frame.axes[THICKNESS][0]
    low, high = guest.box.low[axis] - host.box.low[axis], host.box.high[axis] - guest.box.high[axis]
    if low < high:
        return Box(_with(box.low, axis, host.box.low[axis]), box.high)
    return Box(box.low, _with(box.high, axis, host.box.high[axis]))


def _slots_of_buttons(joint: WantedJoint, guest: WantedCopy, host: WantedCopy) -> Iterator[Box]:
    # One groove for all buttons, or a slot for each that is a little wider than its tongue.
    axis = guest.frame.axes[LENGTH][0]
    deep = _deeper(joint.region, guest.box, axis, joint.clearance)
    run = host.frame.axes[LENGTH][0]
    (up,) = {0, 1, 2} - {axis, run}
    wide = Box(
        _with(deep.low, up, deep.low[up] - SLIDE), _with(deep.high, up, deep.high[up] + SLIDE)
    )
    yield Box(_with(wide.low, run, host.box.low[run]), _with(wide.high, run, host.box.high[run]))


def _through(region: Box, copy: WantedCopy) -> Box:
    axis = next(axis for axis in range(3) if region.extent(axis) == 0)
    return Box(
        _with(region.low, axis, copy.box.low[axis]), _with(region.high, axis, copy.box.high[axis])
    )


def _with(corner: Triple, axis: int, value: Fraction) -> Triple:
    changed = list(corner)
    changed[axis] = value
    return changed[0], changed[1], changed[2]
