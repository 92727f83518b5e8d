"""TRADE H34: drawers that can be pulled out, and doors and lids that swing free.

A pull that is bought has no place in the notes, and is not looked for.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator
from dataclasses import dataclass
from fractions import Fraction

from dryfit.checks.finding import finding
from dryfit.checks.runners import UP, cut_away
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.geometry.box import Box
from dryfit.joinery.cut import bounded
from dryfit.kinds.joints import RUNNERS
from dryfit.kinds.roles import HINGE_RECESS
from dryfit.placing.model import Copy, Joint, Model

_LOOSE = RUNNERS | {"hinges", "rest"}
"""What these join moves apart."""


def check_ways_out(model: Model) -> Iterator[Diagnostic]:
    """Yield, once for two parts, what stands before a drawer, or where a door swings.

    Findings: drawer-blocked, door-blocked.
    """
    told: set[tuple[str, str, str]] = set()
    for joint in model.joints:
        for name, other, each in _of(model, joint):
            key = each.code, model.part_of(name).name, model.part_of(other).name
            if key not in told:
                told.add(key)
                yield each


Met = tuple[str, str, Diagnostic]
"""What moves, what it meets, and what is said of it."""


def _of(model: Model, joint: Joint) -> Iterator[Met]:
    if joint.kind in RUNNERS:
        yield from _drawer(model, joint)
    elif joint.kind == "hinges":
        yield from _door(model, joint)


def moved_with(model: Model, name: str, stays: str) -> frozenset[str]:
    """Return the copies that move with one: empty where what stays is fast to it besides."""
    mates: dict[str, set[str]] = {}
    for joint in model.joints:
        if joint.kind not in _LOOSE:
            mates.setdefault(joint.guest, set()).add(joint.host)
            mates.setdefault(joint.host, set()).add(joint.guest)
    found, waiting = {name}, [name]
    while waiting:
        new = mates.get(waiting.pop(), set()) - found
        found |= new
        waiting += sorted(new)
    return frozenset() if stays in found else frozenset(found)


def _others(model: Model, moving: Collection[str]) -> Iterator[Copy]:
    return (copy for part in model.parts for copy in part.copies if copy.name not in moving)


def _drawer(model: Model, joint: Joint) -> Iterator[Met]:
    """Yield what stands before a drawer, which comes out at the front end of its runner."""
    run = model.copy(joint.guest).frame.axes[0][0]
    moving = moved_with(model, joint.host, joint.guest) if run != UP else frozenset()
    # A groove runs along its runner, and that may begin before it.
    runners = {each.guest for each in model.joints if each.kind in RUNNERS}
    ways = [_before(model.copy(name).box, run) for name in sorted(moving)]
    for other in _others(model, moving | runners) if moving else ():
        part = model.part_of(other.name)
        common = [each for way in ways if (each := other.box.overlap(way)) is not None]
        common = [each for each in common if not cut_away(part, other, each)]
        if common:
            yield joint.host, other.name, _pulled(model, joint, other, (common[0], run))


def _before(box: Box, run: int) -> Box:
    return bounded(box, run, box.low[run] - _FAR, box.low[run])


_FAR = Fraction(100_000)
"""Further than any piece is large, mm."""


def _pulled(model: Model, joint: Joint, other: Copy, way: tuple[Box, int]) -> Diagnostic:
    common, run = way
    show = model.display.with_unit
    wide, high = common.extent(3 - run - UP), common.extent(UP)
    return finding(
        "H34",
        "drawer-blocked",
        Severity.WARNING,
        f"{joint.host}: {other.name} stands before its drawer, {show(wide)} wide and {show(high)} "
        "high, so that it cannot be pulled out",
        joint.span,
        figures={"wide": wide, "high": high},
        remedy=f"make the drawer narrower or lower, or move the {model.part_of(other.name).name}",
    )


@dataclass(frozen=True, slots=True)
class _Swing:
    """The quarter circle of a door: from the hinge across it, and out; lengths from the hinge."""

    across: tuple[int, int]
    out: tuple[int, int]
    row: int
    hinge: tuple[Fraction, Fraction]
    radius: Fraction
    door: Box

    def meets(self, box: Box) -> Fraction | None:
        """Return how far before the door something stands that it swings against, or None."""
        if box.low[self.row] >= self.door.high[self.row]:
            return None
        if box.high[self.row] <= self.door.low[self.row]:
            return None
        near: list[Fraction] = []
        for (axis, side), start in zip((self.across, self.out), self.hinge, strict=True):
            ends = sorted(side * (each - start) for each in (box.low[axis], box.high[axis]))
            if ends[1] <= 0:
                return None
            near.append(max(ends[0], Fraction(0)))
        return near[1] if near[0] ** 2 + near[1] ** 2 < self.radius**2 else None


def _door(model: Model, joint: Joint) -> Iterator[Met]:
    """Yield what a door or lid swings against within a right angle."""
    swing = _swing(model, joint)
    moving = moved_with(model, joint.guest, joint.host)
    for other in _others(model, moving) if moving and swing is not None else ():
        before = swing.meets(other.box) if swing is not None else None
        if before is not None:
            yield joint.guest, other.name, _swung(model, joint, other, before)


def _swing(model: Model, joint: Joint) -> _Swing | None:
    copy, part = model.copy(joint.guest), model.part_of(joint.guest)
    mate = model.part_of(joint.host).name
    axis = next((each for each in range(3) if joint.region.extent(each) == 0), None)
    leaves = [
        each.box(copy.box, copy.frame)
        for each in part.features
        if each.role == HINGE_RECESS and each.mate == mate and copy.hand in each.hands
    ]
    if axis is None or not leaves:
        return None
    row = max((each for each in range(3) if each != axis), key=joint.region.extent)
    out = 3 - axis - row
    side = -1 if leaves[0].low[out] == copy.box.low[out] else 1
    face = copy.box.low[out] if side < 0 else copy.box.high[out]
    hinge = joint.region.low[axis]
    way = 1 if copy.box.low[axis] + copy.box.high[axis] > 2 * hinge else -1
    far = copy.box.high[axis] if way > 0 else copy.box.low[axis]
    return _Swing((axis, way), (out, side), row, (hinge, face), abs(far - hinge), copy.box)


def _swung(model: Model, joint: Joint, other: Copy, before: Fraction) -> Diagnostic:
    where = f"{model.display.with_unit(before)} before it" if before else "right before it"
    return finding(
        "H34",
        "door-blocked",
        Severity.WARNING,
        f"{joint.guest}: {other.name} stands {where}, and it opens against that",
        joint.span,
        figures={"before": before},
        remedy=f"set the {model.part_of(other.name).name} back or aside, or hang the "
        f"{model.part_of(joint.guest).name} at another side",
    )
