"""Keys sawn across the glued corners of a frame (TRADE B12)."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.joinery.cut import Cut, Placed
from dryfit.joinery.form import PlacedForm, Side
from dryfit.joinery.slopes import DIAGONAL
from dryfit.placing.features.task import Made, Misfit, Task, box_of


def keys(task: Task, members: Sequence[Placed]) -> Made:
    """Return the slots for keys at each corner of a frame, spread evenly over its thickness.

    The depth is measured from the corner, square to the slope of the cut: the slot then runs along
    either side by the diagonal of a square of that depth.
    """
    thick, deep = task.size("thickness"), task.size("depth")
    assert thick is not None
    assert deep is not None
    first, second, through = task.copy.axes
    count = task.feature.count or 1
    between = (task.box.extent(through) - count * thick) / (count + 1)
    if between <= 0:
        return Misfit("so many do not fit into its thickness", "write fewer or thinner keys")
    if task.feature.count is None:
        task.assume(f"the {task.name} are one at each corner", "1 a corner")
    corners = _corners(task, members)
    if not corners:
        return Misfit("it has no corner where two parts end", "name the glue-up of such parts")
    reach = deep * DIAGONAL
    if reach > min(task.box.extent(first), task.box.extent(second)):
        return Misfit("they are deeper than the frame is wide", "write a smaller depth")
    return tuple(
        _slot(task, ((first, one), (second, two)), reach, (through, low, low + thick))
        for one, two in corners
        for turn in range(count)
        for low in [task.box.low[through] + between + turn * (thick + between)]
    )


def _corners(task: Task, members: Sequence[Placed]) -> list[tuple[int, int]]:
    """Return the corners that are keyed: all four of a frame, else where two members end."""
    every = [(one, two) for one in (-1, 1) for two in (-1, 1)]
    if _is_frame(task, members):
        return every
    return [corner for corner in every if len(_ending_at(task, members, corner)) > 1]


def _ending_at(task: Task, members: Sequence[Placed], corner: tuple[int, int]) -> set[int]:
    """Return along which ways the members run that end in a corner of the whole."""
    ways = tuple(zip(task.copy.axes[:2], corner, strict=True))
    return {
        member.axes[0]
        for member in members
        if all(_bound(member.box, *way) == _bound(task.box, *way) for way in ways)
    }


def _bound(box: Box, axis: int, side: int) -> Fraction:
    return box.high[axis] if side > 0 else box.low[axis]


def _is_frame(task: Task, members: Sequence[Placed]) -> bool:
    axes = {member.axes[0] for member in members}
    return len(members) >= 4 and set(task.copy.axes[:2]) <= axes


def _slot(
    task: Task,
    corner: tuple[Side, Side],
    reach: Fraction,
    layer: tuple[int, Fraction, Fraction],
) -> Cut:
    layers = [layer]
    for axis, side in corner:
        low, high = task.box.low[axis], task.box.high[axis]
        layers.append((axis, low, low + reach) if side < 0 else (axis, high - reach, high))
    face, toward = corner
    feature = task.feature
    form = PlacedForm("key slot", feature.sizes, toward)
    return Cut(
        task.copy.name,
        box_of(task.box, layers),
        "notch",
        "key slot",
        *face,
        None,
        None,
        feature.span,
        feature.after,
        form,
    )
