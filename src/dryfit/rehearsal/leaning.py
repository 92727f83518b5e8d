"""Legs that lean: played upright, as they are placed, once it is seen that they are cut aslant.

A leaning copy is sawn longer than it stands high, and is counted upright from then on.  Work on it
must be led by its slopes: a shoulder line on a face by that of the other way, a hole by both.  When
it is glued in, its foot is scribed over a block; the block must be as high as what stands too long
by then, so that the piece comes out at its height.  Slopes are exact, lengths rounded to 1/1000.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.geometry.frame import LENGTH, SURFACES, THICKNESS, WIDTH
from dryfit.geometry.lean import UP, Lean, rounded_root
from dryfit.plan.operation import Operation, Work
from dryfit.rehearsal.fault import Fault, Reason, Trouble
from dryfit.rehearsal.goal import Goal, Mark, Ranges, WantedCopy, WantedJoint
from dryfit.rehearsal.members import members_of
from dryfit.rehearsal.state import Place, State

_NEAR = Fraction(5, 1000)
"""What several figures that are rounded to 1/1000 mm may come to differ."""
_SPARE = Fraction(10)
"""Longer than it has to be, and rounded up, a leg is sawn by no more than this; common practice."""
Slopes = dict[str, Fraction]


def stood_up(state: State, name: str, operation: Operation) -> Iterator[Trouble]:
    """Count a leaning copy upright once it is sawn to its length, and yield where that is wrong."""
    copy, blank, part = state.copies[name], state.blanks[name], state.part_of[name]
    if copy.lean is None or operation.kind != "length":
        return
    joint = _joint_of(state.goal, name)
    if joint is not None and part.sloped is not None:
        needed = part.sloped[1] + _beyond_shoulder(copy, joint)
        sawn = blank.sizes[LENGTH]
        if not needed <= sawn <= needed + _SPARE:
            yield Trouble(
                Reason.SIZE,
                f"it leans, and is sawn {float(sawn):g} long",
                f"{float(needed):g} or a little more, along its slope",
            )
    blank.resize(LENGTH, copy.box.extent(copy.frame.axes[LENGTH][0]))


def misled(
    state: State, work: Work, copy: WantedCopy, marks: tuple[Mark, ...]
) -> Iterator[Trouble]:
    """Yield work that is led by other slopes than the leaning leg needs, or square to its part."""
    led = dict(work.slopes)
    for mark in marks:
        wanted = _wanted(state.goal, copy, mark)
        out = state.part_of[copy.name].slopes_out
        if out is not None and mark.kind == "mitre":
            # The side of a box that slopes out comes in as it goes down, and its mitres with it.
            wanted = {copy.frame.surface_facing(UP, -1): out}
        if wanted == led:
            continue
        yield Trouble(
            Reason.CUT,
            f"{mark.id} is cut {_words(led)}",
            _words(wanted),
        )


def driven_apart(operation: Operation, goal: Goal) -> Iterator[tuple[str, Trouble]]:
    """Yield what is put onto several legs that lean: they point apart, and go in one by one."""
    order = operation.glue_up.parts if operation.glue_up is not None else ()
    for index, host in enumerate(order):
        there = {copy for name in order[:index] for copy in members_of(goal, name)}
        before = [
            guest.lean.per_down
            for joint in goal.joints
            if joint.host == host
            and joint.guest in there
            and (guest := _copy(goal, joint.guest)) is not None
            and guest.lean is not None
        ]
        if len(set(before)) > 1:
            message = f"it goes onto {len(before)} legs at once that lean each to its own side"
            yield host, Trouble(Reason.ORDER, message, "the legs driven into it one after another")


def levelled(state: State, work: Work, place: Place) -> None:
    """Saw the feet of leaning copies to a line over a block, and tell where that is wrong."""
    for name in work.copies:
        for trouble in _levelled(state, work, name):
            state.tell(place, trouble, name)
        state.on_their_feet.add(name)


def never_levelled(state: State) -> Iterator[Fault]:
    """Yield each leaning copy whose foot is still square to its length in the end."""
    for copy in state.copies.values():
        if copy.lean is not None and copy.name not in state.on_their_feet:
            yield Fault(
                Reason.COUNT,
                f"{copy.name} leans, and its foot is never levelled",
                "all feet scribed and sawn when the legs are glued in",
            )


def _levelled(state: State, work: Work, name: str) -> Iterator[Trouble]:
    copy, part = state.copies.get(name), state.part_of.get(name)
    if copy is None or part is None or copy.lean is None or part.sloped is None:
        yield Trouble(Reason.COUNT, "it does not lean", "the feet of legs that do")
        return
    joint = _joint_of(state.goal, name)
    if name not in state.glued:
        yield Trouble(Reason.ORDER, "its foot is levelled before it is glued in", "the glue before")
    if name in state.on_their_feet:
        yield Trouble(Reason.COUNT, "its foot is levelled twice", "once")
    block = work.passes[0].spacer if work.passes else None
    if block is None or joint is None:
        yield Trouble(Reason.SETTING, "nothing says how high its foot is scribed", "a block")
        return
    lean, drop = copy.lean, _drop(copy)
    height = joint.region.low[UP] - copy.box.low[UP]
    # The middle of the square foot is as far below the floor line as its lowest corner, less half
    # of what the corners differ; all measured along the leg.
    shoulder = lean.along(height) + lean.along(block) - drop / 2
    if abs(shoulder - part.sloped[1]) > _NEAR:
        off = (shoulder - part.sloped[1]) * height / lean.along(height)
        yield Trouble(
            Reason.SIZE,
            f"scribed over a block of {float(block):g} it comes out {float(abs(off)):g} too "
            f"{'low' if off > 0 else 'high'}",
            "a block as high as what stands too long",
        )
    if block < drop * height / lean.along(height):
        yield Trouble(
            Reason.SIZE,
            f"over a block of {float(block):g} the line runs off its foot",
            f"{float(drop):g} at least",
        )


def _wanted(goal: Goal, copy: WantedCopy, mark: Mark) -> Slopes:
    """Return by which slopes a mark is cut, from the leans of the copy and of what goes into it."""
    normal = copy.frame.axes[SURFACES[mark.surface][0]][0]
    if mark.declared:
        return {}
    box = copy.frame.to_piece(copy.box, mark.ranges)
    if copy.lean is not None:
        square = _across_its_lean(goal, copy, box)
        return {} if square else _slopes(copy, copy.lean, normal)
    for joint in goal.joints:
        guest = _copy(goal, joint.guest)
        inside = joint.host == copy.name and joint.region.overlap(box) is not None
        if inside and guest is not None and guest.lean is not None:
            return _slopes(copy, guest.lean, normal)
    return {}


def upright(
    state: State, copy: WantedCopy, work: Work, taken: tuple[Ranges, ...], marks: tuple[Mark, ...]
) -> tuple[Ranges, ...]:
    """Return what a stop let a machine take from a leaning leg, where it is in the upright leg.

    At the machine the leg is as long as its slope: the stop counts along that from a square end.
    What comes out at a mark but for the rounding is that mark's.
    """
    part, end = state.part_of[copy.name], work.hold.at_stop if work.hold is not None else None
    joint = _joint_of(state.goal, copy.name)
    if copy.lean is None or part.sloped is None or joint is None or end is None:
        return taken
    long = copy.box.extent(copy.frame.axes[LENGTH][0])
    further = part.sloped[0] - long if end == "R2" else Fraction(0)
    stretch = copy.lean.along(Fraction(1_000_000)) / 1_000_000
    level = joint.region.low[UP] - copy.box.low[UP]
    return tuple(
        _shifted(ranges, level - (part.sloped[1] - further - _middle(ranges)) / stretch, marks)
        for ranges in taken
    )


def _shifted(ranges: Ranges, middle: Fraction, marks: tuple[Mark, ...]) -> Ranges:
    for mark in marks:
        if abs(_middle(mark.ranges) - middle) <= _NEAR:
            middle = _middle(mark.ranges)
    by = middle - _middle(ranges)
    low, high = ranges[LENGTH]
    return (low + by, high + by), ranges[WIDTH], ranges[THICKNESS]


def _middle(ranges: Ranges) -> Fraction:
    return sum(ranges[LENGTH], Fraction(0)) / 2


def _across_its_lean(goal: Goal, copy: WantedCopy, box: Box) -> bool:
    """Return whether a cut takes in what runs across the way a leg leans: square into its side."""
    for joint in goal.joints:
        guest = _copy(goal, joint.guest)
        if joint.host != copy.name or guest is None or joint.region.overlap(box) is None:
            continue
        assert copy.lean is not None
        along = guest.frame.axes[LENGTH][0]
        return along != UP and not copy.lean.per_down[along]
    return False


def _slopes(copy: WantedCopy, lean: Lean, normal: int) -> Slopes:
    return {
        copy.frame.surface_facing(axis, 1 if rise > 0 else -1): abs(rise)
        for axis, rise in enumerate(lean.per_down)
        if rise and axis != normal
    }


def _beyond_shoulder(copy: WantedCopy, joint: WantedJoint) -> Fraction:
    """Return how long the tenon has to be to come out with its whole end, along the leg."""
    assert copy.lean is not None
    across, back = copy.lean.per_down
    radius = joint.region.extent(copy.frame.axes[WIDTH][0]) / 2
    aslant = rounded_root(radius * radius * (across * across + back * back))
    return copy.lean.along(joint.region.extent(UP)) + aslant


def _drop(copy: WantedCopy) -> Fraction:
    """Return how much farther the innermost corner of a square end reaches than the outermost."""
    assert copy.lean is not None
    return sum(
        (
            copy.box.extent(axis) * abs(copy.lean.per_down[axis])
            for axis in (copy.frame.axes[each][0] for each in (WIDTH, THICKNESS))
        ),
        Fraction(0),
    )


def _joint_of(goal: Goal, name: str) -> WantedJoint | None:
    return next((joint for joint in goal.joints if joint.guest == name), None)


def _copy(goal: Goal, name: str) -> WantedCopy | None:
    return next((copy for part in goal.parts for copy in part.copies if copy.name == name), None)


def _words(slopes: Slopes) -> str:
    if not slopes:
        return "square to its part"
    each = (f"{float(slope):g} a mm toward {side}" for side, slope in sorted(slopes.items()))
    return f"leaning {' and '.join(each)}"
