"""A glue-up: the parts in place, where glue goes, numbered clamps, and the diagonals to compare.

A flat frame is drawn from its side, anything else in the view of the cover.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import hypot, isqrt

from dryfit.booklet.drawing.balloons import RADIUS, draw_balloon
from dryfit.booklet.drawing.canvas import BOLD, DASHED, FINE, Canvas, Svg, text_room, width_of
from dryfit.booklet.drawing.cut_shapes import placed_copies
from dryfit.booklet.drawing.dimension import FIGURE
from dryfit.booklet.drawing.lettering import SMALLEST
from dryfit.booklet.drawing.piece import FROM_FRONT_RIGHT, copy_corners, draw_scene
from dryfit.booklet.drawing.placement import Placement
from dryfit.booklet.drawing.rect import Point, Rect
from dryfit.booklet.drawing.shapes import caption
from dryfit.booklet.text import Say, Text
from dryfit.geometry.box import Triple
from dryfit.geometry.hidden_lines import Scene
from dryfit.geometry.view import View
from dryfit.kinds.joints import is_clamped_over, is_lapped, joint_kind
from dryfit.placing.model import Assembly, Copy, Joint, Model, Part
from dryfit.placing.pulled import pulled
from dryfit.quantities import Display

_ROOM = (92.0, 78.0)
_FLAT = Fraction(1, 4)
_BEYOND = 9.0
_POINT = 0.01
UP = 2
_SIDES = {0: View((1, 0, 0)), 1: View((0, -1, 0)), 2: View((0, 0, 1))}


@dataclass(frozen=True, slots=True)
class _Bar:
    """One clamp: the line that it presses along, from outside to outside, in the piece."""

    start: Triple
    end: Triple


def glue_up_drawing(
    model: Model, assembly: Assembly, labels: Mapping[str, str], display: Display
) -> Svg:
    """Return the assembly with its clamps numbered in order and its diagonals with their length.

    `labels` maps a copy's name to its label (``C1``); copies without one stay unnamed.
    """
    names = copies_in(model, assembly)
    copies = tuple(row for row in placed_copies(model) if row[1].name in names)
    flat = flat_axis(assembly)
    view = FROM_FRONT_RIGHT if flat is None else _SIDES[flat]
    canvas = Canvas()
    scene, placement, _ = draw_scene(canvas, copies, view, _ROOM)
    joints = [model.joint(joint) for joint in assembly.joints]
    if flat is not None:
        _hatch_glue(canvas, joints, placement)
    ends = _diagonals(canvas, assembly, placement)
    rooms: list[Rect] = []
    number = 0
    clamped = assembly.pressed is None
    for bar in _bars(model, joints) if clamped else ():
        number += 1
        rooms += _draw_bar(canvas, bar, number, placement, whole=flat is not None)
    for joint in joints if flat is not None and clamped else ():
        if is_clamped_over(joint.kind):
            number += 1
            rooms.append(_draw_lap_clamp(canvas, joint, number, placement))
    rooms += _diagonal_figure(canvas, ends, assembly, Say(display), rooms)
    shown = _named(assembly, joints)
    _name_copies(canvas, scene, [c for c in copies if c[1].name in shown], labels, placement, rooms)
    note = "Numbered: clamps, in this order." if number else "The clamps stand in the list."
    if all(joint.kind == "round tenon" for joint in joints):
        note = "No clamps: the tenons are driven home."
    note = note if clamped else f"Shut by {assembly.pressed}."
    if flat is not None:
        note += " Hatched: glue."
    caption(canvas, 0.0, canvas.bottom() + 3.0, note, room=104.0)
    return canvas.finish(f"{assembly.name}, glued{' and clamped' if clamped else ''}")


def copies_in(model: Model, assembly: Assembly) -> frozenset[str]:
    """Return the names of all copies in an assembly, those of its assemblies among them."""
    inner = {other.name: other for other in model.assemblies}
    found: set[str] = set()
    waiting = list(assembly.of)
    while waiting:
        name = waiting.pop()
        if name in inner:
            waiting += inner[name].of
        else:
            found.add(name)
    return frozenset(found)


def flat_axis(assembly: Assembly) -> int | None:
    """Return the axis through a flat frame, or None for an assembly that is not flat."""
    sizes = [assembly.box.extent(axis) for axis in range(3)]
    thin = min(range(3), key=lambda axis: sizes[axis])
    others = [size for axis, size in enumerate(sizes) if axis != thin]
    return thin if sizes[thin] <= min(others) * _FLAT else None


def _named(assembly: Assembly, joints: Sequence[Joint]) -> frozenset[str]:
    """Return the copies that this glue-up brings together: its own and those that joints meet."""
    met = {name for joint in joints for name in (joint.guest, joint.host)}
    return frozenset(met | set(assembly.of))


def _bars(model: Model, joints: Sequence[Joint]) -> tuple[_Bar, ...]:
    """Return a bar along each member that is pulled into others, through its joints' middle.

    Of a half lap the member that lies level is pulled; of a box joint both are.
    """
    lines: dict[str, list[tuple[Joint, str]]] = {}
    for joint in joints:
        if joint_kind(joint.kind).corner or joint.kind in {"mitre", "glued butt", "round tenon"}:
            members = pulled(joint, model)
        else:
            level = is_lapped(joint.kind)
            level = level and _axis(model, joint.host) < _axis(model, joint.guest)
            members = (joint.host if level else joint.guest,)
        for name in members:
            other = joint.host if name == joint.guest else joint.guest
            lines.setdefault(name, []).append((joint, other))
    bars = []
    for name, held in lines.items():
        axis = _axis(model, name)
        count = 2 * len(held)
        middle = [
            sum((j.region.low[at] + j.region.high[at] for j, _ in held), Fraction(0)) / count
            for at in range(3)
        ]
        hosts = [model.copy(other).box for _, other in held]
        ends = []
        for value in (
            min(box.low[axis] for box in hosts),
            max(box.high[axis] for box in hosts),
        ):
            point = list(middle)
            point[axis] = value
            ends.append((point[0], point[1], point[2]))
        bars.append(_Bar(ends[0], ends[1]))
    # From the floor up and from the front back, as hands reach them.
    return tuple(sorted(bars, key=lambda bar: (bar.start[2], bar.start[1], bar.start[0])))


def _axis(model: Model, copy: str) -> int:
    return model.copy(copy).frame.axes[0][0]


def _draw_bar(
    canvas: Canvas, bar: _Bar, number: int, placement: Placement, *, whole: bool
) -> tuple[Rect, ...]:
    """Draw the bar's two jaws with its number; `whole` also draws the bar between them.

    A bar that presses through a frame that is seen flat is its number alone, as that of a lap is.
    Returns the rooms of the balloons.
    """
    start, end = placement.on_paper(bar.start), placement.on_paper(bar.end)
    length = hypot(end[0] - start[0], end[1] - start[1])
    if length < _POINT:
        draw_balloon(canvas, start, str(number))
        return (_round(start),)
    across, down = (end[0] - start[0]) / length, (end[1] - start[1]) / length
    if whole:
        canvas.lines([(start, end)], DASHED)
    rooms = []
    for jaw, way in ((start, -1.0), (end, 1.0)):
        tail = jaw[0] + way * across * _BEYOND, jaw[1] + way * down * _BEYOND
        _pad(canvas, jaw, (way * across, way * down))
        canvas.lines([(jaw, tail)], BOLD)
        centre = tail[0] + way * across * 3.0, tail[1] + way * down * 3.0
        draw_balloon(canvas, centre, str(number))
        rooms.append(_round(centre))
    return rooms[0], rooms[1]


def _draw_lap_clamp(canvas: Canvas, joint: Joint, number: int, placement: Placement) -> Rect:
    """Draw the clamp that presses a lap as its number on the lap."""
    low, high = (placement.on_paper(corner) for corner in (joint.region.low, joint.region.high))
    centre = (low[0] + high[0]) / 2, (low[1] + high[1]) / 2
    draw_balloon(canvas, centre, str(number))
    return _round(centre)


def _round(centre: Point) -> Rect:
    return Rect(centre[0], centre[1], centre[0], centre[1]).grown(RADIUS)


def _pad(canvas: Canvas, at: Point, way: Point) -> None:
    """Draw a jaw's pad on the wood: a black block across the way out."""
    half, thick = 2.6, 1.8
    canvas.polygon(
        (
            (at[0] - way[1] * half, at[1] + way[0] * half),
            (at[0] + way[1] * half, at[1] - way[0] * half),
            (at[0] + way[1] * half + way[0] * thick, at[1] - way[0] * half + way[1] * thick),
            (at[0] - way[1] * half + way[0] * thick, at[1] + way[0] * half + way[1] * thick),
        ),
        fill="black",
        pen=None,
    )


def _hatch_glue(canvas: Canvas, joints: Sequence[Joint], placement: Placement) -> None:
    for joint in joints:
        first, second = (
            placement.on_paper(corner) for corner in (joint.region.low, joint.region.high)
        )
        xs, ys = sorted((first[0], second[0])), sorted((first[1], second[1]))
        rect = Rect(xs[0], ys[0], xs[1], ys[1])
        canvas.hatch(rect)
        canvas.rect(rect, pen=FINE)


def _diagonals(canvas: Canvas, assembly: Assembly, placement: Placement) -> tuple[Point, ...]:
    """Draw both diagonals dashed; return the ends of the first, if there are any."""
    if assembly.square is None or assembly.square_axes is None:
        return ()
    first, second = assembly.square_axes
    low, high = assembly.box.low, assembly.box.high
    corners = []
    for a, b in ((low, low), (high, low), (high, high), (low, high)):
        point = list(high)  # the upper side, where a tape reaches
        point[first], point[second] = a[first], b[second]
        corners.append(placement.on_paper((point[0], point[1], point[2])))
    canvas.lines([(corners[0], corners[2]), (corners[1], corners[3])], DASHED)
    return corners[0], corners[2]


_ALONG = (0.5, 0.375, 0.625, 0.25, 0.75)
"""Where on a diagonal its figure may stand, the best place first."""


def _diagonal_figure(
    canvas: Canvas, ends: Sequence[Point], assembly: Assembly, say: Say, rooms: Sequence[Rect]
) -> tuple[Rect, ...]:
    """Write the length of the diagonals on one, clear of what stands there; return its rooms."""
    if not ends or assembly.square is None:
        return ()
    text: Text = (say.setting(diagonal(*assembly.square)),)
    words = "both ways"
    half = width_of(words) / 2 + 1
    (left, top), (right, bottom) = ends
    found: list[tuple[Point, Rect, Rect]] = []
    for share in _ALONG:
        middle = left + (right - left) * share, top + (bottom - top) * share
        figure = text_room(middle, text, size=FIGURE, bold=True).grown(1.2)
        low = figure.bottom + SMALLEST / 2 + 3.0
        backing = Rect(middle[0] - half, figure.bottom - 0.5, middle[0] + half, low)
        found.append((middle, figure, backing))
    middle, figure, backing = next(
        (row for row in found if not any(room.meets(other) for room in row[1:] for other in rooms)),
        found[0],
    )
    for rect in (figure, backing):
        canvas.rect(rect, fill="white", pen=None)
    canvas.text(middle, text, size=FIGURE, bold=True)
    canvas.text((middle[0], figure.bottom + SMALLEST / 2), words)
    return figure, backing


def diagonal(first: Fraction, second: Fraction) -> Fraction:
    """Return the diagonal of a rectangle in mm, rounded once, to a thousandth."""
    squared = (first * first + second * second) * 1_000_000
    twice = isqrt(4 * squared.numerator // squared.denominator)
    return Fraction((twice + 1) // 2, 1000)


def _name_copies(
    canvas: Canvas,
    scene: Scene,
    copies: Sequence[tuple[Part, Copy]],
    labels: Mapping[str, str],
    placement: Placement,
    rooms: Sequence[Rect],
) -> None:
    """Write each copy's label on it, where it is seen and nothing else is written."""
    taken = list(rooms)
    for _, copy in copies:
        label = labels.get(copy.name)
        places = _places(scene, copy, placement, label) if label else ()
        for place in places:
            room = text_room(place, label or "", size=SMALLEST, bold=True).grown(0.8)
            if not any(room.meets(other) for other in taken):
                taken.append(room)
                canvas.rect(room, fill="white", pen=None)
                canvas.text(place, label or "", bold=True)
                break


def _places(scene: Scene, copy: Copy, placement: Placement, label: str) -> tuple[Point, ...]:
    """Return where the copy's label may stand: in the middle of a face, or below a slim one."""
    axis = copy.frame.axes[0][0]
    outside = copy.box
    found: list[tuple[bool, Fraction, int, Point]] = []
    for face in range(3):
        if face == axis or scene.view.towards[face] == 0:
            continue
        other = ({0, 1, 2} - {axis, face}).pop()
        for order, step in enumerate((8, 6, 10, 4, 12, 3, 13)):
            point = [(outside.low[at] + outside.high[at]) / 2 for at in range(3)]
            point[face] = outside.high[face] if scene.view.towards[face] > 0 else outside.low[face]
            point[axis] = outside.low[axis] + outside.extent(axis) * step / 16
            at = (point[0], point[1], point[2])
            at = at if copy.lean is None else copy.lean.placed(at)
            if not scene.hides(at):
                slim = axis == UP and _slim(outside.extent(other), placement, label)
                found.append((slim, -outside.extent(other), order, placement.on_paper(at)))
    feet = [placement.on_paper(corner) for corner in copy_corners(copy)]
    below = sum(x for x, _ in feet) / len(feet), max(y for _, y in feet) + 3.6
    if axis == UP:
        found.append((False, Fraction(0), 0, below))
    return tuple(place for *_, place in sorted(found))


def _slim(extent: Fraction, placement: Placement, label: str) -> bool:
    return float(extent) * placement.scale < width_of("M" * len(label), bold=True)
