"""B22: a solid top that is held along one side only lifts and cups at the other."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from dryfit.checks.finding import finding
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.geometry.box import Box
from dryfit.kinds.joints import lets_move
from dryfit.placing.model import Copy, Fitting, Joint, Model, Part

_SIDES = (("left", "right"), ("front", "back"))
_UP = 2
_STARTS = Fraction(1, 4)
"""Fixings count as one side's where none lies farther in than a quarter of the top."""


def check_tops_held(model: Model) -> Iterator[Diagnostic]:
    """Yield each top whose fixings all lie along one side, with nothing else that holds it.

    Findings: top-held-on-one-side.
    """
    for part in model.parts:
        own = [each for each in model.fittings if each.part == part.name]
        if part.stock != "solid" or not any(lets_move(each.kind) for each in own):
            continue
        for copy in part.copies:
            held = _held_at(model, own, copy)
            side = _only_side(copy.box, held) if held else None
            if side is not None:
                yield _told(model, part, copy, own[0], side)
                break


def _held_at(model: Model, own: Sequence[Fitting], copy: Copy) -> list[Box]:
    """Return where a copy of a top is held, by whatever kind of fixing or joint."""
    fixed = {name for each in own for name in each.joints}
    return [
        joint.region
        for joint in model.joints
        if joint.kind != "rest"
        and (joint.id in fixed or copy.name in {joint.guest, joint.host})
        and _under(joint, copy.box)
    ]


def _under(joint: Joint, top: Box) -> bool:
    return all(
        top.low[axis] <= joint.region.low[axis] and joint.region.high[axis] <= top.high[axis]
        for axis in (0, 1)
    )


def _only_side(top: Box, held: Sequence[Box]) -> tuple[int, int] | None:
    """Return the axis and side along which alone a top is held, or None."""
    for axis in (0, 1):
        reach = top.extent(axis) * _STARTS
        if all(box.high[axis] <= top.low[axis] + reach for box in held):
            return axis, -1
        if all(box.low[axis] >= top.high[axis] - reach for box in held):
            return axis, 1
    return None


def _told(model: Model, part: Part, copy: Copy, own: Fitting, side: tuple[int, int]) -> Diagnostic:
    axis, at = side
    held, loose = _SIDES[axis][at > 0], _SIDES[axis][at < 0]
    others = _carriers(model, part, copy, axis, -at)
    return finding(
        "B22",
        "top-held-on-one-side",
        Severity.WARNING,
        f"the {part.name} is held along the {held} only: at the {loose} it can lift and cup",
        own.span,
        figures={},
        remedy=f"hold it at the {loose} too, with a line such as "
        f"`{part.written} onto {others}: slotted screws`"
        if others
        else f"put a rail under it at the {loose} that takes its fixings, or make room for them",
    )


def _carriers(model: Model, part: Part, copy: Copy, axis: int, side: int) -> str:
    """Return the first rail under the loose half of a top, as it is written; else nothing."""
    top, middle = copy.box, copy.box.low[axis] + copy.box.extent(axis) / 2
    for other in model.parts:
        if other is part or other.made or other.stock != "solid":
            continue
        for each in other.copies:
            touch = each.box.contact(top)
            if touch is None or touch[0] != _UP or each.box.low[_UP] >= top.low[_UP]:
                continue
            beyond = each.box.high[axis] <= middle if side < 0 else each.box.low[axis] >= middle
            if beyond and each.frame.axes[0][0] != _UP:
                return other.written if len(other.copies) == 1 else each.name
    return ""
