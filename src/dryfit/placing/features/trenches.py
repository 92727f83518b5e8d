"""Grooves, rabbets, notches and slots: cuts with square sides (TRADE B0)."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.joinery.form import PlacedForm, Side
from dryfit.piece.declared import PLACE_SIDE, PlacedAmount
from dryfit.placing.features.open_ends import runs_through
from dryfit.placing.features.stretches import is_said, runs
from dryfit.placing.features.surfaces import Arris, arrises, faces
from dryfit.placing.features.task import (
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


def groove(task: Task) -> Made:
    """Return a groove: in each face named, its near side at the distance, along the third axis."""
    return on_faces(
        task,
        lambda face: gathered(_groove(task, face, place) for place in task.feature.places),
    )


def on_faces(task: Task, make: Callable[[Side], Made]) -> Made:
    """Return what is made in each of the faces that the line names."""
    made: list[Made] = []
    for surface in task.feature.surfaces:
        found = faces(task, surface)
        made += [found] if isinstance(found, Misfit) else [make(face) for face in found]
    return gathered(made)


def _groove(task: Task, face: Side, place: PlacedAmount) -> Made:
    width, depth = task.size("width"), task.size("depth")
    assert width is not None
    assert depth is not None
    across = _layer(task, place, width, _beside(task, face))
    if isinstance(across, Misfit):
        return across
    if across[0] == face[0]:
        return Misfit("the face and the place do not fit each other")
    along = third_axis(face[0], across[0])
    stretches = runs(task, along)
    if isinstance(stretches, Misfit):
        return stretches
    if not is_said(task):
        runs_through(task, under(task, face, depth), [across], along)
    kind = "long slot" if along == task.copy.axes[0] else "cross slot"
    return gathered(
        cut_of(
            task,
            box_of(under(task, face, depth), [across, (along, run.low, run.high)]),
            kind,
            face,
        )
        for run in stretches
    )


def _beside(task: Task, face: Side) -> int:
    # Across a face that is not an end a groove lies beside the length, in the middle if it is said.
    length, width, thickness = task.copy.axes
    return next(axis for axis in (width, thickness, length) if axis not in {face[0], length})


def _layer(
    task: Task, place: PlacedAmount, width: Fraction, middle_of: int
) -> tuple[int, Fraction, Fraction] | Misfit:
    """Return the axis and the bounds of a width whose near side stands at a place.

    `middle_of` is the axis in whose middle it lies where the place is the middle.
    """
    if place.place == MIDDLE:
        low = (task.box.low[middle_of] + task.box.high[middle_of] - width) / 2
        return middle_of, low, low + width
    found = position(task, place)
    if isinstance(found, Misfit):
        return found
    axis, near, way = found
    far = near + way * width
    return axis, min(near, far), max(near, far)


def rabbet(task: Task) -> Made:
    """Return a rabbet along each edge named: depth into the broad face, width from the edge."""
    made: list[Made] = []
    for surface in task.feature.surfaces:
        found = arrises(task, surface)
        made += [found] if isinstance(found, Misfit) else [_rabbet(task, each) for each in found]
    return gathered(made)


def _rabbet(task: Task, arris: Arris) -> Made:
    width, depth = task.size("width"), task.size("depth")
    assert width is not None
    assert depth is not None
    face, edge = broad_first(task, arris)
    made = along_edge(task, (face, edge), (width, depth), "rabbet")
    if not is_said(task) and not isinstance(made, Misfit):
        layer, strip = _under_edge(task, (face, edge), (width, depth))
        runs_through(task, layer, [strip], third_axis(face[0], edge[0]))
    return made


def along_edge(
    task: Task,
    arris: Arris,
    section: tuple[Fraction, Fraction],
    kind: str,
    form: PlacedForm | None = None,
) -> Made:
    """Return a cut along an edge, so wide from its second face and so deep into its first."""
    face, edge = arris
    along = third_axis(face[0], edge[0])
    stretches = runs(task, along)
    if isinstance(stretches, Misfit):
        return stretches
    layer, strip = _under_edge(task, arris, section)
    return gathered(
        cut_of(task, box_of(layer, [strip, (along, run.low, run.high)]), kind, face, form)
        for run in stretches
    )


def _under_edge(
    task: Task, arris: Arris, section: tuple[Fraction, Fraction]
) -> tuple[Box, tuple[int, Fraction, Fraction]]:
    face, edge = arris
    width, depth = section
    beside = under(task, edge, width)
    return under(task, face, depth), (edge[0], beside.low[edge[0]], beside.high[edge[0]])


def broad_first(task: Task, arris: Arris) -> Arris:
    """Return the two faces of an edge, the broad one of the part first, an end last.

    In square wood no face is broader: there the one that was named first is.
    """
    length, width, thickness = task.copy.axes
    if arris[0][0] == length:
        return arris[1], arris[0]
    square = task.box.extent(width) == task.box.extent(thickness)
    if not square and arris[1][0] == thickness:
        return arris[1], arris[0]
    return arris


def notch(task: Task) -> Made:
    """Return a notch: into an edge, right through the wood, its near side at the distance."""
    places = (*task.feature.places, *_mirrored(task))
    return on_faces(task, lambda face: gathered(_notch(task, face, place) for place in places))


def _mirrored(task: Task) -> tuple[PlacedAmount, ...]:
    # `each end`: what is said from one end holds from the other one too.
    if task.feature.each != "end":
        return ()
    length = task.copy.axes[0]
    return tuple(
        PlacedAmount(place.value, SIDE_WORDS[length, -PLACE_SIDE[place.place][1]], place.span)
        for place in task.feature.places
        if axis_of(place) == length and not place.of
    )


def _notch(task: Task, face: Side, place: PlacedAmount) -> Made:
    width, depth = task.size("width"), task.size("depth")
    assert width is not None
    assert depth is not None
    length, wide, _ = task.copy.axes
    across = _layer(task, place, width, length if face[0] != length else wide)
    if isinstance(across, Misfit):
        return across
    if across[0] == face[0]:
        return Misfit(
            "the edge and the place do not fit each other",
            "name an edge and a distance along it, such as `bottom edge`, `at left`",
        )
    return cut_of(task, box_of(under(task, face, depth), [across]), "notch", face)


def slot(task: Task) -> Made:
    """Return a slot into a face: its long way along the part, closed at its ends."""
    return on_faces(task, lambda face: _slot(task, face))


def _slot(task: Task, face: Side) -> Made:
    length, width, _ = task.copy.axes
    along = length if face[0] != length else width
    across = third_axis(face[0], along)
    depth = task.size("depth") or task.box.extent(face[0])
    wide = task.size("width")
    assert wide is not None
    sides = _slot_side(task, across, wide)
    ends = _slot_ends(task, along)
    if isinstance(sides, Misfit):
        return sides
    if isinstance(ends, Misfit):
        return ends
    box = box_of(under(task, face, depth), [(across, *sides), (along, *ends)])
    return cut_of(task, box, "mortise", face)


def _slot_ends(task: Task, along: int) -> tuple[Fraction, Fraction] | Misfit:
    long = task.size("length")
    if long is not None:
        return _slot_side(task, along, long)
    stretches = runs(task, along)
    if isinstance(stretches, Misfit):
        return stretches
    return stretches[0].low, stretches[0].high


def _slot_side(task: Task, axis: int, size: Fraction) -> tuple[Fraction, Fraction] | Misfit:
    for place in task.feature.places:
        if axis_of(place) == axis:
            layer = _layer(task, place, size, axis)
            return layer if isinstance(layer, Misfit) else (layer[1], layer[2])
    box = task.box
    if not any(place.place == MIDDLE for place in task.feature.places):
        task.assume(f"the {task.name} is in the middle between {_between(axis)}", "centred")
    low = (box.low[axis] + box.high[axis] - size) / 2
    return low, low + size


def _between(axis: int) -> str:
    return f"{SIDE_WORDS[axis, -1]} and {SIDE_WORDS[axis, 1]}"
