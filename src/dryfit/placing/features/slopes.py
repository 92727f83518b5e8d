"""Cuts that are no boxes: tapers, eased and moulded edges, curves, bevels (TRADE B0)."""

from __future__ import annotations

from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.joinery.form import PlacedForm, Side
from dryfit.joinery.slopes import rise
from dryfit.piece.declared import SurfaceWords
from dryfit.placing.features.stretches import Run, is_said, runs
from dryfit.placing.features.surfaces import Arris, arrises, faces, low_side
from dryfit.placing.features.task import (
    Made,
    Misfit,
    Task,
    box_of,
    cut_of,
    gathered,
    under,
)
from dryfit.placing.features.trenches import along_edge, broad_first, on_faces
from dryfit.placing.lines import with_words
from dryfit.placing.site import SIDE_WORDS

_HALF_SQUARE = Fraction(45)


def taper(task: Task) -> Made:
    """Return a taper in each face named: from the full size at one end of it to less at the other.

    Findings: taper-start.
    """
    length = task.copy.axes[0]
    stretches = runs(task, length)
    if isinstance(stretches, Misfit):
        return stretches
    tapered: list[Side] = []
    for surface in task.feature.surfaces:
        found = _tapered_faces(task, surface)
        if isinstance(found, Misfit):
            return found
        tapered += found
    shares = {face: 2 if (face[0], -face[1]) in tapered else 1 for face in tapered}
    if 2 in shares.values():
        task.assume(f"the {task.name} takes half of what is off from each of opposite faces", None)
    made = [_taper(task, face, run, shares[face]) for face in shares for run in stretches]
    return gathered(made)


def _tapered_faces(task: Task, surface: SurfaceWords) -> tuple[Side, ...] | Misfit:
    found = faces(task, surface)
    length, width, thickness = task.copy.axes
    square = task.box.extent(width) == task.box.extent(thickness)
    if square and not surface.words and surface.noun == "face":
        # `all faces` of a board are its two broad ones; a square leg has four alike.
        return tuple((axis, side) for axis in sorted((width, thickness)) for side in (-1, 1))
    if isinstance(found, Misfit) or len(found) > 1:
        return found
    corner = length == 2 and square
    if corner and set(surface.words) <= {"inside", "outside"} and surface.noun != "edge":
        # A square leg looks inwards with two faces alike.
        sign = 1 if surface.words[0] == "inside" else -1
        task.assume(f"the {task.name} is cut on both {surface.words[0]} faces", None)
        return tuple((axis, sign * task.inward[axis]) for axis in sorted((width, thickness)))
    return found


def _taper(task: Task, face: Side, run: Run, share: int) -> Made:
    length = task.copy.axes[0]
    if face[0] == length:
        return Misfit("an end cannot be tapered", "name a face or an edge along the part")
    start, end = task.feature.ranges[0]
    size, toward = task.box.extent(face[0]), run.toward
    if start < end:
        start, end, toward = end, start, -toward
    if start != size:
        _not_from_full(task, start, size)
        return ()
    off = (size - end) / share
    box = box_of(under(task, face, off), [(length, run.low, run.high)])
    form = PlacedForm("taper", (("from", start), ("to", start - off)), (length, toward))
    return cut_of(task, box, "taper", face, form)


def _not_from_full(task: Task, start: Fraction, size: Fraction) -> None:
    show = task.site.shown
    finding = Diagnostic(
        "taper-start",
        Severity.ERROR,
        f"{task.name}: it begins at {show(start)}, but the wood is {show(size)} there",
        task.feature.span,
        rule="H26",
        figures={"written": start, "size": size},
        hints=(Hint(f"begin it at {show(size)}, the full size"),),
    )
    if finding not in task.site.findings:
        task.site.findings.append(finding)


def eased(task: Task) -> Made:
    """Return a chamfer, a round-over or a moulding along each edge named."""
    made: list[Made] = []
    for surface in task.feature.surfaces:
        found = arrises(task, surface)
        made += [found] if isinstance(found, Misfit) else [_eased(task, each) for each in found]
    return gathered(made)


def _eased(task: Task, arris: Arris) -> Made:
    feature = task.feature
    face, edge = broad_first(task, arris)
    width, depth, sizes = _section(task)
    form = PlacedForm(feature.kind, sizes, edge, feature.profile)
    return along_edge(task, (face, edge), (width, depth), "profile", form)


def _section(task: Task) -> tuple[Fraction, Fraction, tuple[tuple[str, Fraction], ...]]:
    """Return the width from the edge, the depth into the broad face, and what is told of both.

    A chamfer with one size is cut at 45 degrees; of a moulding with one size both are taken alike.
    """
    radius = task.size("radius")
    if radius is not None:
        return radius, radius, (("radius", radius),)
    width = task.size("width")
    assert width is not None
    depth, angle = task.size("depth"), task.size("angle")
    if depth is None and angle is not None and angle != _HALF_SQUARE:
        depth = width * rise(angle)
    if depth is None and task.feature.kind == "profile":
        task.assume(f"the {task.name} is as deep as it is wide", f"{task.site.shown(width)} deep")
    return width, depth or width, (("width", width), ("depth", depth or width))


def curve(task: Task) -> Made:
    """Return an arch sawn out of each edge named, deepest in the middle of its stretch."""
    return on_faces(task, lambda face: _curve(task, face))


def _curve(task: Task, face: Side) -> Made:
    length, width, _ = task.copy.axes
    along = length if face[0] != length else width
    stretches = runs(task, along) if is_said(task) else _between_mates(task, along)
    if isinstance(stretches, Misfit):
        return stretches
    rising = task.size("depth")
    assert rising is not None
    return gathered(
        cut_of(
            task,
            box_of(under(task, face, rising), [(along, run.low, run.high)]),
            "curve",
            face,
            PlacedForm("curve", (("rise", rising), ("span", run.high - run.low)), (along, 1)),
        )
        for run in stretches
    )


def _between_mates(task: Task, along: int) -> tuple[Run, ...] | Misfit:
    """Return the stretch between what the part enters at its ends: nothing shows beyond."""
    low, high = task.box.low[along], task.box.high[along]
    for other in task.around.near(task.box):
        if other.name == task.copy.name or other.box.overlap(task.box) is None:
            continue
        if other.box.low[along] <= task.box.low[along]:
            low = max(low, other.box.high[along])
        if other.box.high[along] >= task.box.high[along]:
            high = min(high, other.box.low[along])
    if low >= high:
        return Misfit("no stretch of that edge is free", "say from where to where it runs")
    first, last = SIDE_WORDS[along, -1], SIDE_WORDS[along, 1]
    shown = task.site.shown
    before, behind = low - task.box.low[along], task.box.high[along] - high
    task.assume(
        f"the {task.name} spans all of the edge that is free",
        f"from {shown(before)} from {first} to {shown(behind)} from {last}",
    )
    return (Run(low, high, 1),)


def bevel(task: Task) -> Made:
    """Return a bevel over the whole of each edge or end named."""
    made: list[Made] = []
    for surface in task.feature.surfaces:
        found = faces(task, surface)
        if isinstance(found, Misfit):
            return found
        made += [_bevel(task, surface, face) for face in found]
    return gathered(made)


def _bevel(task: Task, surface: SurfaceWords, face: Side) -> Made:
    angle = task.size("angle")
    assert angle is not None
    length, width, thickness = task.copy.axes
    low = low_side(task, surface, face)
    if low is None:
        axis = thickness if face[0] != thickness else width
        # `outside` in front of the words says the same.
        low = (axis, task.copy.outward[axis])
        said = with_words(surface.span, f"outside {surface.span.text()}")
        task.site.assume_line(f"the {task.name} falls to the outside", task.feature.span, said)
    deep = task.box.extent(low[0]) * rise(angle)
    form = PlacedForm("bevel", (("angle", angle),), low)
    kind = "mitre" if face[0] == length else "bevel"
    return cut_of(task, under(task, face, deep), kind, face, form)
