"""The piece taken apart: every copy off its place the way it comes off, with its label.

Fine lines run from where a part stands in the picture to where it goes.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from dryfit.booklet.drawing.balloons import Wanted
from dryfit.booklet.drawing.canvas import Canvas, Pen, Svg
from dryfit.booklet.drawing.cut_shapes import cut_shapes, placed_copies
from dryfit.booklet.drawing.labelling import draw_labels
from dryfit.booklet.drawing.piece import FINEST, FROM_FRONT_RIGHT, copy_corners, draw_seen
from dryfit.booklet.drawing.placement import Placement, fitted
from dryfit.booklet.drawing.targets import targets_on
from dryfit.geometry.box import Box
from dryfit.geometry.convex import Vector, of_box
from dryfit.geometry.edges import Line
from dryfit.geometry.hidden_lines import Scene
from dryfit.geometry.shape import Shape
from dryfit.placing.apart import Apart, taken_apart
from dryfit.placing.model import Model, Part

ROOM = (150.0, 172.0)
"""Width and height that the view itself may take, mm."""

_GAP = 10
"""The gap between parts as a share of the mean of width, depth and height: one tenth."""

_CENTRE = Pen(0.2, (4.0, 1.2, 0.8, 1.2))
_NAMED = 2
"""Copies of a part, moved alike, up to which each is named by itself."""

_LINES = 4
"""Lines to one group of copies, at most."""


@dataclass(frozen=True, slots=True)
class _Group:
    """Copies of one part that one label names: moved alike, or a single one."""

    label: str
    copies: tuple[str, ...]


def exploded_drawing(model: Model, labels: Mapping[str, str], letters: Mapping[str, str]) -> Svg:
    """Return the piece taken apart.

    `labels` maps a copy's name to its label (``C1``), `letters` a part's name to its letter.
    """
    apart = taken_apart(model, float(sum(model.overall)) / 3 / _GAP)
    copies = placed_copies(model)
    outer = [
        _by(apart.offsets[copy.name])((float(x), float(y), float(z)))
        for _, copy in copies
        for x, y, z in copy_corners(copy)
    ]
    placement = fitted(outer, FROM_FRONT_RIGHT, ROOM)
    shapes = cut_shapes(copies, finest=FINEST / placement.scale)
    moved = {
        copy.name: shape.mapped(_by(apart.offsets[copy.name]))
        for (_, copy), shape in zip(copies, shapes, strict=True)
    }
    ways = _ways(model, apart)
    scene = Scene([*moved.values(), *ways], FROM_FRONT_RIGHT)
    seen = [piece for piece in scene.pieces() if piece.visible]
    canvas = Canvas()
    between = tuple(
        (placement.on_paper(piece.start), placement.on_paper(piece.end))
        for piece in seen
        if piece.solid >= len(moved)
    )
    canvas.lines(between, _CENTRE)
    parts = [piece for piece in seen if piece.solid < len(moved)]
    drawn = draw_seen(canvas, placement, scene, parts)
    wanted = _wanted(_groups(model, apart, labels, letters), moved, scene, placement)
    draw_labels(canvas, wanted, (*drawn, *between))
    return canvas.finish(f"{model.piece}, taken apart")


def _by(offset: Vector) -> Callable[[Vector], Vector]:
    x, y, z = offset

    def moved(point: Vector) -> Vector:
        return point[0] + x, point[1] + y, point[2] + z

    return moved


def _groups(
    model: Model, apart: Apart, labels: Mapping[str, str], letters: Mapping[str, str]
) -> tuple[_Group, ...]:
    """Return the copies that one label serves: those of a part in a row, else each by itself."""
    found = []
    for part in model.parts:
        rows: dict[Vector, list[str]] = {}
        for copy in part.copies:
            rows.setdefault(apart.offsets[copy.name], []).append(copy.name)
        each_its_own = _own_places(part)
        for names in rows.values():
            if (len(names) > _NAMED and not each_its_own) or (part.made and len(names) > 1):
                found.append(_Group(letters.get(part.name, ""), tuple(names)))
            else:
                found += [_Group(labels.get(name, ""), (name,)) for name in names]
    return tuple(group for group in found if group.label)


def _own_places(part: Part) -> bool:
    """Return whether copies are not to be exchanged: of two hands, or each leaning its own way."""
    return len({(copy.hand, copy.lean) for copy in part.copies}) > 1


def _wanted(
    groups: Sequence[_Group], shapes: Mapping[str, Shape], scene: Scene, placement: Placement
) -> list[Wanted]:
    found = []
    for group in groups:
        targets = targets_on(scene, [shapes[name] for name in group.copies], placement)
        if targets:
            found.append(Wanted(group.label, targets))
    return found


def _ways(model: Model, apart: Apart) -> list[Shape]:
    """Return a line for each joint that was pulled open, a few to what was pulled off together."""
    regions = {joint.id: joint.region for joint in model.joints}
    found = []
    for pulled in apart.pulled:
        mates: dict[tuple[str, str], str] = {}
        for one, other, joint in pulled.pairs:
            mates.setdefault((one, other), joint)
        step = max(1, -(-len(mates) // _LINES))
        for (one, other), joint in list(mates.items())[::step]:
            middle = _middle(regions[joint])
            ends = [_by(apart.offsets[name])(middle) for name in (one, other)]
            if ends[0] != ends[1]:
                found.append(_line(ends[0], ends[1]))
    return found


def _middle(box: Box) -> Vector:
    x, y, z = (float(low + high) / 2 for low, high in zip(box.low, box.high, strict=True))
    return x, y, z


def _line(start: Vector, end: Vector) -> Shape:
    """Return a line that hides nothing."""
    low = [Fraction(min(a, b)) - 1 for a, b in zip(start, end, strict=True)]
    high = [Fraction(max(a, b)) + 1 for a, b in zip(start, end, strict=True)]
    around = Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))
    return Shape(of_box(around), (), (Line(start, end),))
