"""Parts put together: no two solids share space, and every joint region is filled by one of two."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import combinations

from dryfit.geometry.box import Box
from dryfit.kinds.joints import joint_kinds
from dryfit.rehearsal.at_machines.waney import unpeeled
from dryfit.rehearsal.blank import left_of
from dryfit.rehearsal.fault import Reason, Trouble
from dryfit.rehearsal.floating import shut
from dryfit.rehearsal.goal import WantedCopy, WantedJoint
from dryfit.rehearsal.hanging import unhinged
from dryfit.rehearsal.mitres import open_mitre, shared_out
from dryfit.rehearsal.pin_rows import without_pins
from dryfit.rehearsal.pocketing import unbored
from dryfit.rehearsal.running import stuck
from dryfit.rehearsal.state import State, cuts_in_piece, sizes_of
from dryfit.rehearsal.top_fixing import unfixed
from dryfit.rehearsal.zones import TENONS, room_before_tongue, rooms_of, takes_a_peg

FILLED = frozenset(
    {
        *TENONS,
        "tongue and groove",
        "ship lap",
        "housing",
        "rabbet",
        "groove",
        "slid panel",
        "back rabbet",
        *(kind.name for kind in joint_kinds() if kind.lapped),
    }
)
"""Kinds of joints whose region is full of wood when the joint is closed."""
_NAMES = ("length", "width", "thickness")


def put_together(state: State, names: Iterable[str]) -> Iterator[tuple[str, Trouble]]:
    """Yield what keeps copies from coming together, each with whom it is about."""
    ready: list[str] = []
    for name in dict.fromkeys(names):
        trouble = _unready(state, name)
        if trouble is not None:
            yield name, trouble
        elif name in state.blanks:
            ready.append(name)
    yield from _clashes(state, ready)
    inside = set(ready)
    for joint in state.goal.joints:
        for who, trouble in _wrong_in(state, joint) if {joint.guest, joint.host} <= inside else ():
            # Parts come together dry, then with glue, then in the finished piece.
            if (joint.id, who, trouble.message) not in state.told:
                state.told.add((joint.id, who, trouble.message))
                yield who, trouble


def _wrong_in(state: State, joint: WantedJoint) -> Iterator[tuple[str, Trouble]]:
    """Yield what keeps a joint of two copies from closing as it should."""
    if joint.kind in FILLED:
        yield from _unfilled(state, joint)
        yield from _tight(state, joint)
        yield from _held_fast(state, joint)
    yield from open_mitre(state, joint)
    yield from _no_room(state, joint)
    members = [_with_cuts(state, each) for each in (joint.guest, joint.host)]
    (guest, own), (host, cuts) = members
    yield from ((joint.guest, each) for each in unfixed(joint, host, cuts))
    yield from unbored(joint, members)
    yield from shut(joint, guest, own)
    yield from unhinged(joint, members)
    yield from stuck(joint, guest, host, cuts)
    yield from ((joint.guest, each) for each in without_pins(joint, host, cuts))


def _with_cuts(state: State, name: str) -> tuple[WantedCopy, Sequence[Box]]:
    copy = state.copies[name]
    return copy, tuple(cuts_in_piece(copy, state.blanks[name]))


def _unready(state: State, name: str) -> Trouble | None:
    copy, blank = state.copies.get(name), state.blanks.get(name)
    if copy is None:
        return Trouble(Reason.COUNT, "it is no part of the piece", "a copy that the piece has")
    if blank is None:
        return Trouble(Reason.ORDER, "it is not there yet", "the part, made before")
    if state.bare.get(name) or state.proud.get(name):
        return Trouble(Reason.ORDER, "its lips are not all on and trimmed yet", "its lips, flush")
    for word, now, final in zip(_NAMES, blank.sizes, sizes_of(copy), strict=True):
        if now != final:
            return Trouble(
                Reason.SIZE,
                f"its {word} is {float(now):g} and should be {float(final):g}",
                f"a {word} of {float(final):g}",
            )
    return unpeeled(blank)


def _clashes(state: State, names: list[str]) -> Iterator[tuple[str, Trouble]]:
    for first, second in combinations(names, 2):
        if (first, second) in state.told:
            continue
        one, two = state.copies[first], state.copies[second]
        common = one.box.overlap(two.box)
        if common is None or _is_room(state, (first, second), common):
            continue
        rest = left_of(common, cuts_in_piece(one, state.blanks[first]))
        second_cuts = cuts_in_piece(two, state.blanks[second])
        second_cuts = (*second_cuts, *shared_out(state, first, second))
        shared = [piece for box in rest for piece in left_of(box, second_cuts)]
        if shared:
            state.told.add((first, second))
            yield (
                first,
                Trouble(
                    Reason.FIT,
                    f"it shares {_size(shared[0])} with {second}",
                    "both cut so that one makes room for the other",
                ),
            )


def _is_room(state: State, pair: tuple[str, str], common: Box) -> bool:
    return any(
        wall in pair and common.extent(axis) <= wider for wall, axis, wider in state.goal.room
    )


def _unfilled(state: State, joint: WantedJoint) -> Iterator[tuple[str, Trouble]]:
    guest, host = state.copies[joint.guest], state.copies[joint.host]
    # What is cut from both is full of neither; where a peg goes through both, it fills them.
    empty = [
        both
        for box in joint.entering()
        for one in cuts_in_piece(guest, state.blanks[joint.guest])
        for two in cuts_in_piece(host, state.blanks[joint.host])
        if (own := one.overlap(box)) is not None
        and (both := own.overlap(two)) is not None
        and not takes_a_peg(joint, guest, one)
    ]
    passing = [
        zone.box
        for name in (joint.guest, joint.host)
        for zone in state.zones[name]
        if zone.joint != joint.id
    ]
    passing += (*joint.sliding_room, *room_before_tongue(joint, guest))
    holes = [piece for box in empty for piece in left_of(box, passing)]
    if holes:
        yield (
            joint.guest,
            Trouble(
                Reason.FIT,
                f"{_size(holes[0])} of its joint with {joint.host} stays empty",
                "a joint that is full of wood when it is closed",
            ),
        )


def _tight(state: State, joint: WantedJoint) -> Iterator[tuple[str, Trouble]]:
    guest, host = state.copies[joint.guest], state.copies[joint.host]
    cuts = cuts_in_piece(guest, state.blanks[guest.name])
    wood = [piece for box in joint.entering() for piece in left_of(box, cuts)]
    hollow = cuts_in_piece(host, state.blanks[host.name])
    full = any(
        (inside := room.overlap(host.box)) is not None and left_of(inside, hollow)
        for room in rooms_of(joint, guest, wood)
    )
    if full:
        yield (
            joint.guest,
            Trouble(
                Reason.FIT,
                f"it goes to the bottom of its joint with {joint.host}",
                f"room of {float(joint.clearance):g} before its end",
            ),
        )


def _held_fast(state: State, joint: WantedJoint) -> Iterator[tuple[str, Trouble]]:
    """Yield tenons that have to slide as the wood moves, and find no room beside them."""
    host = state.copies[joint.host]
    hollow = cuts_in_piece(host, state.blanks[host.name])
    inside = (room.overlap(host.box) for room in joint.sliding_room)
    if any(left_of(room, hollow) for room in inside if room is not None):
        yield (
            joint.guest,
            Trouble(
                Reason.FIT,
                f"its outer tenons cannot slide in {joint.host}",
                "mortises as much longer as the wood moves",
            ),
        )


def _no_room(state: State, joint: WantedJoint) -> Iterator[tuple[str, Trouble]]:
    """Yield a joint in which wood stands where a dowel or the like belongs."""
    for name in (joint.guest, joint.host):
        copy = state.copies[name]
        cuts = cuts_in_piece(copy, state.blanks[name])
        full = sum(
            (inside := piece.overlap(copy.box)) is not None and bool(left_of(inside, cuts))
            for piece in joint.loose_pieces
        )
        if full:
            yield (
                name,
                Trouble(
                    Reason.FIT,
                    f"{full} of {len(joint.loose_pieces)} dowels, or what takes their place in "
                    f"{joint.id}, find no hole in it",
                    "a hole for each, deep enough for it",
                ),
            )


def _size(box: Box) -> str:
    return " x ".join(f"{float(box.extent(axis)):g}" for axis in range(3))
