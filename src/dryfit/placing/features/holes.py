"""Holes and rows of holes; distances go to their middles (common practice)."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.joinery.form import Side
from dryfit.piece.declared import PLACE_SIDE, PlacedAmount, RowOfCuts
from dryfit.placing.features.surfaces import faces
from dryfit.placing.features.task import (
    ENDS,
    MIDDLE,
    Made,
    Misfit,
    Task,
    axis_of,
    box_of,
    cut_of,
    gathered,
    position,
    third_axis,
    under,
)
from dryfit.placing.site import SIDE_WORDS

Middles = tuple[Fraction, ...] | Misfit


def hole(task: Task) -> Made:
    """Return the holes of a line: at each place along each row, in each face named."""
    found = [faces(task, surface) for surface in task.feature.surfaces]
    made: list[Made] = []
    for each in found:
        made += [each] if isinstance(each, Misfit) else [_holes(task, face) for face in each]
    holes = gathered(made)
    if not isinstance(holes, Misfit):
        _check_count(task, len(holes))
    return holes


def _check_count(task: Task, found: int) -> None:
    """Tell, once for a line, that it names another number of holes than it puts.

    Findings: holes-miscounted.
    """
    count = task.feature.count
    if count is None or task.feature.each is not None or count == found:
        return
    finding = Diagnostic(
        "holes-miscounted",
        Severity.ERROR,
        f"{task.name}: {count} are named, but the line puts {found} on each",
        task.feature.span,
        rule="H27",
        hints=(
            Hint(
                task.site.declared.display.examples(
                    "give each a place, or a row such as `4 at {32} from {100}`"
                )
            ),
        ),
    )
    if finding not in task.site.findings:
        task.site.findings.append(finding)


def _holes(task: Task, face: Side) -> Made:
    first, second = (axis for axis in range(3) if axis != face[0])
    if task.feature.rows:
        along = _row_axis(task, face)
        if isinstance(along, Misfit):
            return along
        across = third_axis(face[0], along)
        lines, marks = _places(task, across), _in_rows(task, along, task.feature.rows)
    else:
        across, along = first, second
        lines, marks = _places(task, across), _places(task, along)
    if isinstance(lines, Misfit):
        return lines
    if isinstance(marks, Misfit):
        return marks
    return gathered(
        _drilled(task, face, {across: line, along: mark}) for line in lines for mark in marks
    )


def _drilled(task: Task, face: Side, middle: dict[int, Fraction]) -> Made:
    diameter = task.size("diameter")
    assert diameter is not None
    depth = task.size("depth") or task.box.extent(face[0])
    layers = [(axis, at - diameter / 2, at + diameter / 2) for axis, at in middle.items()]
    return cut_of(task, box_of(under(task, face, depth), layers), "hole", face)


def _row_axis(task: Task, face: Side) -> int | Misfit:
    """Return the axis along which the rows run: not the one from whose sides they stand."""
    lines = {axis_of(place) for place in task.feature.places} - {None}
    free = [axis for axis in range(3) if axis != face[0] and axis not in lines]
    if not free or face[0] in lines:
        return Misfit(
            "the rows stand at distances from all sides, and none is left to run along",
            "say how far the rows are from two opposite sides, such as `rows {37} from front`",
        )
    length = task.copy.axes[0]
    return length if length in free else free[0]


def _places(task: Task, axis: int) -> Middles:
    middles: list[Fraction] = []
    for place in task.feature.places:
        if place.place == ENDS:
            middles += _at_ends(task, axis, place)
        elif axis_of(place) == axis:
            found = position(task, place)
            if isinstance(found, Misfit):
                return found
            middles.append(found[1])
    if task.feature.each == ENDS and axis == task.copy.axes[0]:
        both = task.box.low[axis] + task.box.high[axis]
        middles += [both - middle for middle in middles]
    if middles:
        return tuple(dict.fromkeys(middles))
    if not any(place.place == MIDDLE for place in task.feature.places):
        words = f"{SIDE_WORDS[axis, -1]} and {SIDE_WORDS[axis, 1]}"
        task.assume(f"the {task.name} is in the middle between {words}", "centred")
    return ((task.box.low[axis] + task.box.high[axis]) / 2,)


def _at_ends(task: Task, axis: int, place: PlacedAmount) -> list[Fraction]:
    if axis != task.copy.axes[0]:
        return []
    return [task.box.low[axis] + place.value, task.box.high[axis] - place.value]


def _in_rows(task: Task, axis: int, rows: Sequence[RowOfCuts]) -> Middles:
    middles: list[Fraction] = []
    for row in rows:
        low, high = task.box.low[axis], task.box.high[axis]
        span = (row.count - 1) * row.pitch
        if row.start is None:
            start = (low + high - span) / 2
            task.assume(
                f"the rows of the {task.name} begin as far from one end as they stop from "
                "the other",
                None,
            )
            middles += [start + turn * row.pitch for turn in range(row.count)]
            continue
        side = -1 if row.place is None else PLACE_SIDE[row.place][1]
        if row.place is not None and PLACE_SIDE[row.place][0] != axis:
            return Misfit(
                f"the rows do not run from the {row.place}",
                f"count from the {SIDE_WORDS[axis, -1]} or the {SIDE_WORDS[axis, 1]}",
            )
        first = low + row.start if side < 0 else high - row.start
        middles += [first - side * turn * row.pitch for turn in range(row.count)]
    return tuple(dict.fromkeys(middles))
