"""What the boxes of the goal alone say: where copies meet, and whether a cut spoils that."""

from collections.abc import Iterable, Iterator
from fractions import Fraction

from tests.property.plan_oracle.regions import clipped, minus

from dryfit.geometry.box import Box
from dryfit.geometry.frame import SURFACES
from dryfit.rehearsal.goal import Goal, Mark, Range, Ranges, WantedCopy, WantedPart

CUTS = frozenset({"end lap", "cross slot", "notch", "rabbet", "mortise", "long slot"})
"""Marks that are boxes with a mate, and are told by their limits."""


def part_of(goal: Goal, name: str) -> WantedPart | None:
    """The part of that name, or None where the name is of staves or of an assembly."""
    return next((part for part in goal.parts if part.name == name), None)


def copy_of(goal: Goal, name: str) -> tuple[WantedPart, WantedCopy] | None:
    """A copy by its name, with its part."""
    for part in goal.parts:
        for copy in part.copies:
            if copy.name == name:
                return part, copy
    return None


def sizes(copy: WantedCopy) -> tuple[Fraction, Fraction, Fraction]:
    """Finished length, width and thickness of a copy; mm."""
    length, width, thickness = (copy.box.extent(axis) for axis, _ in copy.frame.axes)
    return length, width, thickness


def mark_of(part: WantedPart, name: str) -> Mark | None:
    """The mark with that id."""
    return next((mark for mark in part.marks if mark.id == name), None)


def members(goal: Goal, name: str) -> frozenset[str]:
    """The copies in an assembly, with those of the assemblies inside; of a copy, itself."""
    for assembly in goal.assemblies:
        if assembly.name == name:
            return frozenset().union(*(members(goal, each) for each in assembly.of))
    return frozenset({name})


def held_back(goal: Goal, copy: WantedCopy) -> Iterator[tuple[Ranges, list[Ranges]]]:
    """Where other copies stand in the outside of this one, and what they give up of it.

    All in the coordinates of this copy.  What neither cuts away is in the way of both.
    """
    for part in goal.parts:
        for other in part.copies:
            common = copy.box.overlap(other.box)
            if other is copy or common is None:
                continue
            given = [
                ranges_in(copy, box)
                for mark in part.marks
                if other.hand in mark.hands
                and (box := other.frame.to_piece(other.box, mark.ranges).overlap(copy.box))
            ]
            yield ranges_in(copy, common), given


def ranges_in(copy: WantedCopy, box: Box) -> Ranges:
    """A box of the piece in the coordinates of a copy."""
    along, across, deep = copy.frame.to_part(copy.box, box)
    return (along[0], along[1]), (across[0], across[1]), (deep[0], deep[1])


def spoils(
    goal: Goal, copy: WantedCopy, mark: Mark, before: Iterable[Ranges], after: Iterable[Ranges]
) -> bool:
    """Whether a joint is wrong when `after` is cut in place of `before`.

    Either wood stays where the mate stands, or wood goes that is in no joint, with its clearance,
    of the copy.
    """
    part_and_copy = copy_of(goal, copy.name)
    assert part_and_copy is not None
    part, _ = part_and_copy
    size = sizes(copy)
    # Else a cut that is merely planned elsewhere would look like the damage.
    was = [box for each in before if (box := clipped(each, size)) is not None]
    now = [box for each in after if (box := clipped(each, size)) is not None]
    if not was:
        return False
    others = [m.ranges for m in part.marks if copy.hand in m.hands and m.id != mark.id]
    lost = minus(was, [*now, *others])
    for common, given in held_back(goal, copy):
        if any(_meet(box, common) for box in (minus(lost, given) if lost else [])):
            return True
    gained = minus(now, [*was, *others]) if now else []
    allowed = [
        _wider(ranges_in(copy, joint.region), joint.clearance)
        for joint in goal.joints
        if copy.name in {joint.guest, joint.host}
    ]
    return bool(minus(gained, [mark.ranges, *allowed])) if gained else False


def _meet(one: Ranges, other: Ranges) -> bool:
    return all(max(a, c) < min(b, d) for (a, b), (c, d) in zip(one, other, strict=True))


def _wider(ranges: Ranges, by: Fraction) -> Ranges:
    along, across, deep = ((low - by, high + by) for low, high in ranges)
    return along, across, deep


def from_surface(surface: str, limits: Range, copy: WantedCopy) -> tuple[int, Range]:
    """Direction and range of what is measured from a surface into the copy."""
    direction, side = SURFACES[surface]
    size = sizes(copy)[direction]
    low, high = limits
    return direction, (size - high, size - low) if side else (low, high)


def with_range(ranges: Ranges, direction: int, limits: Range) -> Ranges:
    """Ranges with one of the three replaced."""
    row = list(ranges)
    row[direction] = limits
    return row[0], row[1], row[2]
