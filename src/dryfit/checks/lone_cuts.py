"""Cuts with no mate must leave wood that holds: TRADE B0, B8, H16 and common practice."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from fractions import Fraction

from dryfit.checks.finding import finding, told_together
from dryfit.checks.regions import Ranges, ranges, sizes, solid_parts
from dryfit.checks.slots import LEAST_WALL
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.geometry.frame import LENGTH, SURFACES
from dryfit.joinery.feature import Feature
from dryfit.placing.model import Model, Part

LEAST_THIN_END = Fraction(10)
"""A taper's thin end splits when it is knocked if it is thinner (common practice)."""
_LEAST_ABOVE_ARCH = Fraction(20)
"""Wood that should stand above an arch so that a rail bears its load (common practice)."""
_STEEPEST = Fraction(45)
"""As far as saws tilt (common practice)."""


def check_lone_cuts(model: Model) -> Iterator[Diagnostic]:
    """Yield, once for a line of the notes, cuts that leave too little wood.

    Findings: rabbet-too-deep, rabbet-too-wide, hole-nearly-through, hole-near-edge, notch-too-deep,
    taper-thin, taper-stops-short, curve-leaves-little, bevel-steep.
    """
    yield from told_together(each for part in solid_parts(model) for each in _part(model, part))


def _part(model: Model, part: Part) -> Iterator[Diagnostic]:
    told: set[tuple[object, str]] = set()
    for feature in part.features:
        for found in _CHECKS.get(feature.role, _nothing)(model, part, feature):
            if (feature.span, found.code) not in told:
                told.add((feature.span, found.code))
                yield found


Check = Callable[[Model, Part, Feature], Iterator[Diagnostic]]


def _nothing(_model: Model, _part: Part, _feature: Feature) -> Iterator[Diagnostic]:
    return iter(())


def _rabbet(model: Model, part: Part, feature: Feature) -> Iterator[Diagnostic]:
    """B8: a rabbet is a third to two thirds deep, and leaves a lip beside and below it."""
    show = model.display.shown
    normal = SURFACES[feature.surface][0]
    size = sizes(part)[normal]
    lip = size - feature.depth
    if feature.depth * 3 > size * 2 or lip < LEAST_WALL:
        yield finding(
            "B8",
            "rabbet-too-deep",
            Severity.ERROR if lip < LEAST_WALL else Severity.WARNING,
            f"{part.name}: {feature.id} is {show(feature.depth)} deep in {show(size)}, which "
            f"leaves a lip of {show(lip)}",
            feature.span,
            figures={"depth": feature.depth, "lip": lip},
            remedy=f"make it {show(size * 2 / 3)} deep or less",
        )
    wide, across = _beside(part, feature)
    if across - wide < LEAST_WALL:
        yield finding(
            "B8",
            "rabbet-too-wide",
            Severity.ERROR,
            f"{part.name}: {feature.id} is {show(wide)} wide on a face of {show(across)}",
            feature.span,
            figures={"width": wide, "face": across},
            remedy="make it narrower, or make the part thinner all over",
        )


def _beside(part: Part, feature: Feature) -> tuple[Fraction, Fraction]:
    """Return the narrower way of a trench over its face, and the size of the part that way."""
    normal = SURFACES[feature.surface][0]
    flat = [axis for axis in range(3) if axis != normal]
    own: Ranges = ranges(part, feature)
    axis = min(flat, key=lambda each: own[each][1] - own[each][0])
    return own[axis][1] - own[axis][0], sizes(part)[axis]


def _hole(model: Model, part: Part, feature: Feature) -> Iterator[Diagnostic]:
    """A hole keeps clear of the far face and of the edges (H16 for dowels, common practice)."""
    show = model.display.shown
    normal = SURFACES[feature.surface][0]
    left = sizes(part)[normal] - feature.depth
    if 0 < left < LEAST_WALL:
        yield finding(
            "H18",
            "hole-nearly-through",
            Severity.WARNING,
            f"{part.name}: {feature.role} {show(feature.depth)} deep leaves {show(left)} of "
            f"{show(sizes(part)[normal])}; the tip of a drill goes deeper than its edge",
            feature.span,
            figures={"depth": feature.depth, "left": left},
            remedy=f"make it {show(feature.depth + left - LEAST_WALL)} deep or less, or write "
            "`through`",
        )
    wall, wide = _thinnest_wall(part, feature)
    least = max(LEAST_WALL, wide / 2)
    if wall < least:
        yield finding(
            "H16",
            "hole-near-edge",
            Severity.ERROR if wall < 1 else Severity.WARNING,
            f"{part.name}: {feature.role} {show(wide)} wide leaves a wall of {show(wall)} at the "
            "edge",
            feature.span,
            figures={"wall": wall, "least": least},
            remedy=f"leave {show(least)} or more between it and the edge",
        )


def _thinnest_wall(part: Part, feature: Feature) -> tuple[Fraction, Fraction]:
    normal = SURFACES[feature.surface][0]
    own = ranges(part, feature)
    flat = [axis for axis in range(3) if axis != normal]
    walls = [wall for axis in flat for wall in (own[axis][0], sizes(part)[axis] - own[axis][1])]
    return min(walls), min(own[axis][1] - own[axis][0] for axis in flat)


def _notch(model: Model, part: Part, feature: Feature) -> Iterator[Diagnostic]:
    show = model.display.shown
    size = sizes(part)[SURFACES[feature.surface][0]]
    left = size - feature.depth
    if feature.depth * 3 <= size * 2:
        return
    yield finding(
        "H02",
        "notch-too-deep",
        Severity.ERROR if left < LEAST_WALL else Severity.WARNING,
        f"{part.name}: {feature.id} is {show(feature.depth)} deep in {show(size)}, which leaves "
        f"{show(left)}",
        feature.span,
        figures={"depth": feature.depth, "left": left},
        remedy=f"make it {show(size * 2 / 3)} deep or less",
    )


def _taper(model: Model, part: Part, feature: Feature) -> Iterator[Diagnostic]:
    show = model.display.shown
    left = sizes(part)[SURFACES[feature.surface][0]] - feature.depth
    if left < LEAST_THIN_END:
        yield finding(
            "B0",
            "taper-thin",
            Severity.WARNING,
            f"{part.name}: {feature.id} ends {show(left)} thick, and splits there when it is "
            "knocked",
            feature.span,
            figures={"left": left, "least": LEAST_THIN_END},
            remedy=f"let it end {show(LEAST_THIN_END)} thick or more",
        )
    short = _short_of_end(part, feature)
    if short > 0:
        yield finding(
            "B0",
            "taper-stops-short",
            Severity.WARNING,
            f"{part.name}: {feature.id} ends {show(short)} before the end, where the wood stands "
            f"out by {show(feature.depth)}",
            feature.span,
            figures={"short": short, "step": feature.depth},
            remedy="let it run to the end, such as `to the bottom end`",
        )


def _short_of_end(part: Part, feature: Feature) -> Fraction:
    start, end = ranges(part, feature)[LENGTH]
    thin_end = feature.form.toward if feature.form else None
    return start if thin_end == "R" else part.length - end


def _curve(model: Model, part: Part, feature: Feature) -> Iterator[Diagnostic]:
    show = model.display.shown
    size = sizes(part)[SURFACES[feature.surface][0]]
    left, least = size - feature.depth, max(_LEAST_ABOVE_ARCH, size / 3)
    if left >= least:
        return
    yield finding(
        "B0",
        "curve-leaves-little",
        Severity.ERROR if left < LEAST_WALL else Severity.WARNING,
        f"{part.name}: {feature.id} leaves {show(left)} of {show(size)} in its middle",
        feature.span,
        figures={"left": left, "least": least},
        remedy=f"make it {show(size - least)} deep or less" if size > least else "use wider wood",
    )


def _bevel(model: Model, part: Part, feature: Feature) -> Iterator[Diagnostic]:
    angle = dict(feature.form.sizes).get("angle") if feature.form else None
    if angle is None or angle <= _STEEPEST:
        return
    yield finding(
        "B0",
        "bevel-steep",
        Severity.WARNING,
        f"{part.name}: a bevel of {angle} degrees, {model.display.shown(feature.depth)} over the "
        "edge, is steeper than a saw tilts",
        feature.span,
        figures={"depth": feature.depth},
        remedy="write 45 degrees or less, measured from the square cut, or plan to plane it",
    )


_CHECKS: Mapping[str, Check] = {
    "rabbet": _rabbet,
    "hole": _hole,
    "slot": _hole,
    "notch": _notch,
    "taper": _taper,
    "curve": _curve,
    "bevel": _bevel,
}
