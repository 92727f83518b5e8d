"""A part on its own: the face that is worked, with the cuts marked out and measured."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from fractions import Fraction

from dryfit.booklet.drawing.canvas import DASHED, Canvas, width_of
from dryfit.booklet.drawing.lying import Lying, Region, by_hand, lying
from dryfit.booklet.drawing.rect import Rect
from dryfit.booklet.drawing.ruler import Ruler, Stretch, ruler
from dryfit.booklet.drawing.running import FIGURE, STEP, Tick, running_below, running_beside
from dryfit.booklet.drawing.shaped import SHAPES
from dryfit.booklet.drawing.shapes import caption, draw_body, draw_corner, draw_cut, draw_mark
from dryfit.booklet.drawing.splayed_leg import draw_sight_line
from dryfit.booklet.text import Say, Text
from dryfit.geometry.frame import LENGTH, OPPOSITE, SURFACES, THICKNESS, WIDTH
from dryfit.joinery.feature import Feature, Range
from dryfit.kinds.roles import TENON_HOLE
from dryfit.placing.model import Model
from dryfit.plan.operation import Work
from dryfit.plan.plan import Step
from dryfit.plan.setting import Hold

_ALL = 122.0
_ROOM = 40.0
_SPARE = 8.0
_MARKED = 7.0
_TALLEST = 26.0
_AROUND = 13.0


def draw_layout(canvas: Canvas, ways: Sequence[Lying], say: Say, y: float) -> None:
    """Draw the worked face of each part with its cuts, measured from R and the edge, from `y` on.

    All cuts in a surface stand in one drawing, hands apart.
    """
    for way in _by_surface(ways):
        y = _face(canvas, way, say, y)


def marked_ways(model: Model, step: Step) -> tuple[Lying, ...]:
    """Return the ways in which the parts of a step lie on the bench, what is cut looking up."""
    works = (work for operation in step.operations for work in operation.work)
    return tuple(way for work in works for way in _on_the_bench(model, work))


def _on_the_bench(model: Model, work: Work) -> Iterator[Lying]:
    part = next((part for part in model.parts if part.name == work.part), None)
    if part is None or part.sloped is not None or part.slopes_out is not None:
        # The sides of what leans are drawn unrolled.
        return
    # Tails have a picture of their own, and they mark their pins; so have shapes.
    plain = (
        feature for feature in part.features if feature.flare is None and feature.role not in SHAPES
    )
    features = tuple(feature for feature in plain if feature.id in work.features)
    for surface in _surfaces(features):
        names = tuple(f.id for f in features if _worked_on(f) == surface)
        lies = replace(work, features=names, hold=_lying_under(surface))
        yield from (lying(part, copies, lies, "behind") for copies in by_hand(part, lies))


def _by_surface(ways: Sequence[Lying]) -> tuple[Lying, ...]:
    """Return one way for each hand and surface of a part, with all that is cut there."""
    found: dict[tuple[object, ...], Lying] = {}
    for way in ways:
        key = way.part.name, way.hands, way.marks
        regions = found[key].regions + way.regions if key in found else way.regions
        found[key] = replace(way, regions=tuple(dict.fromkeys(regions)))
    return tuple(found.values())


def _face(canvas: Canvas, way: Lying, say: Say, top: float) -> float:
    """Draw the surface that looks up, its lower surface being on the bench."""
    shown = OPPOSITE[way.marks[2]]
    hands = f", hand {' and '.join(way.hands)}" if len(way.part.hands()) > 1 else ""
    top = caption(canvas, 0.0, top, f"{way.part.name}{hands}, {_surface_words(shown)}", bold=True)
    levels = _levels(way, say)
    scale = _scale(way, _ALL - _room_across(levels))
    high = float(way.sizes[1]) * scale.scale
    for region in way.regions:
        rect = _rect((region.from_stop, region.from_fence), scale, top)
        if region.slant is not None and region.slant[1] == 1:
            draw_corner(canvas, rect, right=region.slant[0], low=region.slant[2])
        elif region.from_table[1] == way.sizes[2]:
            if region.mouth is not None:
                # What runs under the surface is dashed.
                canvas.rect(rect, pen=DASHED)
                rect = _rect(region.mouth, scale, top)
            draw_cut(canvas, rect, drilled=region.drilled)
            if region.sight is not None:
                draw_sight_line(canvas, rect.middle, region.sight)
        else:
            canvas.rect(rect, pen=DASHED)
    draw_body(canvas, 0.0, scale.end, top, top + high, breaks=scale.breaks())
    _letter(canvas, way, top, high)
    along = {side for region in way.regions for side in _sides(region, along=True)}
    ticks = [
        Tick(scale.at(float(at)), (say.setting(at),))
        for at in sorted(along)
        if 0 < at < way.sizes[0]
    ]
    ticks.append(Tick(scale.end, (say.size(way.sizes[0]),), size=True))
    begin, down = (top, 1.0) if _marked_above(way) else (top + high, -1.0)
    across = [
        Tick(begin + down * level * scale.scale, figure, size=index == len(levels) - 1)
        for index, (level, figure) in enumerate(levels)
    ]
    room = (top - 2.0, top - 2.0 + max(high + 4.0, STEP * len(across)))
    right = running_beside(canvas, across, scale.end + 0.8, room=room)
    sides = (-_SPARE, max(right, scale.end + _SPARE))
    start = room[1] if room[1] > top + high + 2.5 else 0.0
    return running_below(canvas, ticks, top + high, room=sides, start=start) + 4.0


def _levels(way: Lying, say: Say) -> tuple[tuple[float, Text], ...]:
    """Return what is dimensioned across the part: the sides of its cuts, and its width last.

    All are measured from the marked edge, wherever the part's hand turns it.
    """
    sides = {side for region in way.regions for side in _sides(region, along=False)}
    if not _marked_above(way):
        sides = {way.sizes[1] - side for side in sides}
    cuts = sorted(side for side in sides if 0 < side < way.sizes[1])
    rows: list[tuple[float, Text]] = [(float(side), (say.setting(side),)) for side in cuts]
    return (*rows, (float(way.sizes[1]), (say.size(way.sizes[1]),)))


def _rect(shown: tuple[Range, Range], scale: Ruler, top: float) -> Rect:
    left, right = (scale.at(float(side)) for side in shown[0])
    near, far = (float(side) * scale.scale for side in shown[1])
    return Rect(left, top + near, right, top + far)


def _sides(region: Region, *, along: bool) -> tuple[Fraction, ...]:
    """Return what is measured of a cut: both its sides, of a hole the middle only.

    Of a slanted bore the jig knows how far it is from the end.
    """
    start, end = region.from_stop if along else region.from_fence
    if region.mouth is not None:
        slants = region.mouth[0 if along else 1] != (start, end)
        return () if slants else ((start + end) / 2,)
    return ((start + end) / 2,) if region.drilled else (start, end)


def _room_across(levels: Sequence[tuple[float, Text]]) -> float:
    return 8.0 + max(width_of(figure, size=FIGURE, bold=True) for _, figure in levels)


def _letter(canvas: Canvas, way: Lying, top: float, high: float) -> None:
    """Mark the end on the left, and beside it the edge that its hand turns up or down."""
    if high < _MARKED:
        return
    draw_mark(canvas, (5.0, top + high / 2), way.marks[0])
    upper = _marked_above(way)
    mark = way.marks[1] if upper else OPPOSITE[way.marks[1]]
    draw_mark(canvas, (-5.0, top + 2.5 if upper else top + high - 2.5), mark)


def _marked_above(way: Lying) -> bool:
    """Return whether the edge from which the part is measured is the upper one on paper."""
    return way.marks[1] in {"E", "F", "R"}


def _scale(way: Lying, room: float) -> Ruler:
    length = float(way.sizes[0])
    scale = min(1.0, _TALLEST / float(way.sizes[1]))
    around = _AROUND / scale
    wanted: list[Stretch] = [(0.0, around), (length - around, length)]
    wanted += [_stretch(region, around) for region in way.regions]
    return ruler(length, wanted, room=max(room, _ROOM), scale=scale)


def _stretch(region: Region, around: float) -> Stretch:
    begin, end = (float(side) for side in region.from_stop)
    return begin - around, end + around


def _surfaces(features: Iterable[Feature]) -> tuple[str, ...]:
    found = {_worked_on(feature) for feature in features}
    return tuple(sorted(found, key=list(SURFACES).index))


def _worked_on(feature: Feature) -> str:
    """Return the surface that is drawn for a cut by hand: tenons show both limits on the face."""
    return (
        "F"
        if feature.role.startswith("tenon") and feature.role != TENON_HOLE
        else _shown_on(feature)
    )


def _shown_on(feature: Feature) -> str:
    """Return the surface on which a cut is drawn: a mitre where its slant is seen."""
    if feature.role != "mitre" or feature.form is None:
        return feature.surface
    return "F" if feature.form.toward in {"E", "E2"} else "E"


def _lying_under(surface: str) -> Hold:
    """Return how a part lies with the surface up, its R end on the left."""
    return Hold(OPPOSITE[surface], None, "E" if SURFACES[surface][0] == LENGTH else "R")


def _surface_words(surface: str) -> str:
    kind = {THICKNESS: "face", WIDTH: "edge"}.get(SURFACES[surface][0], "end")
    return f"{kind} {surface}"
