"""The side of a box that slopes: where it stands, and the lines of its compound mitres unrolled."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from fractions import Fraction
from itertools import pairwise
from math import hypot

from dryfit.booklet.drawing.canvas import BOLD, FINE, Canvas
from dryfit.booklet.drawing.ruler import ruler
from dryfit.booklet.drawing.running import STEP, Tick, running_beside
from dryfit.booklet.drawing.shapes import caption, draw_body, draw_mark
from dryfit.booklet.text import Say
from dryfit.geometry.convex import Vector
from dryfit.geometry.frame import LENGTH, OPPOSITE, SURFACES
from dryfit.geometry.lean import UP
from dryfit.geometry.shape import Shape
from dryfit.joinery.feature import Feature
from dryfit.joinery.sloping import sloping_end
from dryfit.placing.model import Copy, Model, Part
from dryfit.plan.plan import Step

_ALL = 122.0
_FIGURES = 26.0
_TALLEST = 22.0
_AROUND = 22.0


def compound_in(model: Model, step: Step) -> tuple[Part, ...]:
    """Return the sides that slope whose mitres are cut in a step."""
    cut = {
        (work.part, name) for op in step.operations for work in op.work for name in work.features
    }
    return tuple(
        part
        for part in model.parts
        if part.slopes_out is not None
        and any((part.name, each.id) in cut for each in part.features if each.role == "mitre")
    )


def draw_compound(canvas: Canvas, parts: Sequence[Part], say: Say, top: float) -> float:
    """Draw each part's end unrolled below what stands there; return where the last one ends."""
    for part in parts:
        top = _unrolled(canvas, part, say, top)
    return top


def turned_out(part: Part, copy: Copy, shape: Shape) -> Shape:
    """Return a side where it stands: turned about its top outer edge, its ends in the corners.

    A mitre is as far from the end as from the outside, upright and sloping: so what a point comes
    in from the outside, it comes in from the end that it is nearer to.
    """
    slope = part.slopes_out
    assert slope is not None
    (run, _), (across, out) = copy.frame.axes[LENGTH], _outside(part, copy)
    steep = float(slope)
    sine, cosine = steep / hypot(1, steep), 1 / hypot(1, steep)
    top = float(copy.box.high[UP])
    face = float((copy.box.low if out < 0 else copy.box.high)[across])
    ends = float(copy.box.low[run]), float(copy.box.high[run])

    def placed(point: Vector) -> Vector:
        down, deep = top - point[UP], abs(point[across] - face)
        inward = down * sine + deep * cosine
        moved = list(point)
        moved[UP] = top - down * cosine + deep * sine
        moved[across] = face - out * inward
        # The middle of a body stays in its middle, however its ends are turned.
        share = 2 * (point[run] - ends[0]) / (ends[1] - ends[0]) - 1
        if abs(share) > _MIDDLE:
            moved[run] += (deep - inward) * (1 if share > 0 else -1)
        return moved[0], moved[1], moved[2]

    return _stood(shape.mapped(placed), float(copy.box.low[UP]))


_MIDDLE = 1e-6


def _stood(shape: Shape, floor: float) -> Shape:
    """Return a shape with its lowest corner at the height of the floor."""
    down = min(corner[UP] for body in shape.bodies for corner in body.corners()) - floor
    move: Callable[[Vector], Vector] = lambda point: (point[0], point[1], point[2] - down)  # noqa: E731
    return shape.mapped(move)


def _outside(part: Part, copy: Copy) -> tuple[int, int]:
    direction, far = SURFACES[_outer(part)]
    axis, sign = copy.frame.axes[direction]
    return axis, sign if far else -sign


def _mitre(part: Part) -> Feature:
    return next(each for each in part.features if each.role == "mitre")


def _outer(part: Part) -> str:
    form = _mitre(part).form
    assert form is not None
    assert form.toward is not None
    return OPPOSITE[form.toward]


def _unrolled(canvas: Canvas, part: Part, say: Say, top: float) -> float:
    assert part.slopes_out is not None
    end = sloping_end(part.slopes_out, part.width, part.thickness)
    ((down, _),) = _mitre(part).slopes
    outer = _outer(part)
    order = (outer, down, OPPOSITE[outer], OPPOSITE[down])
    back = {
        frozenset((outer, OPPOSITE[down])): Fraction(0),
        frozenset((outer, down)): end.lower,
        frozenset((OPPOSITE[outer], down)): end.lower + end.inner,
        frozenset((OPPOSITE[outer], OPPOSITE[down])): end.inner,
    }
    # With the outer face in front and its upper edge up, this is the end on the right.
    up_is_far = down in {"E", "F"}
    right_handed = (part.copies[0].frame.handedness() > 0) == (outer == "F")
    seen, other = ("R", "R2") if right_handed == up_is_far else ("R2", "R")
    title = f"{part.name}, unrolled: back from end {seen} to the mitre; end {other} is its mirror"
    top = caption(canvas, 0.0, top, title, bold=True, room=_ALL)
    scale = min(1.0, _TALLEST / float(max(part.width, part.thickness)))
    length, longest = float(part.length), float(end.lower + end.inner)
    shown = ruler(
        length,
        [(0.0, _AROUND / scale), (length - longest - _AROUND / scale, length)],
        room=_ALL - _FIGURES,
        scale=scale,
    )
    ticks: list[Tick] = []
    points, y = [], top
    for before, side in pairwise((order[-1], *order, order[0])):
        setback = back[frozenset((before, side))]
        points.append((shown.at(length - float(setback)), y))
        figure = say.setting(setback) if setback else "0"
        ticks.append(Tick(y, (figure, f" at {before}, {side}")))
        if len(points) > len(order):
            break
        high = float(part.width if side in {"F", "B"} else part.thickness) * scale
        if high > 3.0:
            draw_mark(canvas, (12.0, y + high / 2), side)
        y += high
    draw_body(canvas, 0.0, shown.end, top, y, breaks=shown.breaks())
    for _, level in points[1:-1]:
        canvas.lines([((0.0, level), (shown.end, level))], FINE)
    canvas.polyline(points, BOLD)
    room = (top - 2.0, max(y + 2.0, top - 2.0 + STEP * len(ticks)))
    running_beside(canvas, ticks, shown.end + 0.8, room=room)
    return room[1] + 4.0
