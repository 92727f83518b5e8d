"""Lipped and banded sheets: solid wood across an end (TRADE G8), shapes that cut through a lip."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.checks.finding import finding
from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.geometry.frame import LENGTH, SURFACES
from dryfit.joinery.feature import Feature
from dryfit.placing.lip import Lip
from dryfit.placing.model import Model, Part
from dryfit.placing.strips import FLUSH, strip_parts

MOST_ACROSS = Fraction(12)
"""More solid wood than so many mm across the end of a sheet is seen to move (TRADE G8)."""
_ALONG_EDGES = frozenset({"chamfer", "round-over", "profile", "bevel"})
_INTO_EDGES = frozenset({"taper", "curve", "notch", "mitre"})
"""Shapes that stay in view; what a groove or a joint opens is covered by what goes into it."""


def check_lips(model: Model) -> Iterator[Diagnostic]:
    """Yield what shows once a sheet is lipped.

    Findings: lipping-thick, lip-cut-through, name-twice.
    """
    yield from _names_taken(model)
    for part in model.parts:
        across = [lip for lip in part.lips if SURFACES[lip.surface][0] == LENGTH]
        thick = [lip for lip in across if lip.thickness > MOST_ACROSS and not lip.banded]
        if thick:
            yield _across(model, part, thick[0])
        for feature in part.features:
            if feature.role in _ALONG_EDGES | _INTO_EDGES:
                yield from _cut_through(model, part, feature)


def _names_taken(model: Model) -> Iterator[Diagnostic]:
    """Yield parts that are called as the strips of another are in the steps."""
    strips = {
        each.name: part for part in model.parts if part.lips for each in strip_parts(part, FLUSH)
    }
    for part in model.parts if strips else ():
        lipped = strips.get(part.name)
        if lipped is not None:
            yield Diagnostic(
                "name-twice",
                Severity.ERROR,
                f"{part.name}: so the strips are called that lip the {lipped.name}",
                part.spans[0] if part.spans else None,
                hints=(Hint(f"give it another name, such as `{lipped.name} edging`"),),
            )


def _across(model: Model, part: Part, lip: Lip) -> Diagnostic:
    shown = model.display.with_unit
    return finding(
        "G8",
        "lipping-thick",
        Severity.WARNING,
        f"{part.name}: {shown(lip.thickness)} of solid wood across its end, which the sheet does "
        "not move with: it stands proud of the sheet in one season and shy of it in the other",
        lip.span,
        figures={"thick": lip.thickness, "most": MOST_ACROSS},
        remedy=f"make it {model.display.shown(MOST_ACROSS)} thick or less",
    )


def _cut_through(model: Model, part: Part, feature: Feature) -> Iterator[Diagnostic]:
    sizes = (part.length, part.width, part.thickness)
    ranges = feature.ranges(sizes)
    for lip in part.lips:
        direction, far = SURFACES[lip.surface]
        low, high = ranges[direction]
        at_it = high == sizes[direction] if far else low == 0
        deep = sizes[direction] - low if far else high
        extents = [end - start for start, end in ranges]
        # What runs along an edge ends at a lip across it, and does not cut through that.
        runs = feature.role in _ALONG_EDGES and extents[direction] == max(extents)
        into = feature.role in _ALONG_EDGES or feature.surface == lip.surface
        if at_it and into and not runs and lip.thickness < deep < sizes[direction]:
            yield _told(model, part, feature, lip, deep)
            return


def _told(model: Model, part: Part, feature: Feature, lip: Lip, deep: Fraction) -> Diagnostic:
    shown, what = model.display.with_unit, "banding" if lip.banded else "lipping"
    seen = "the plies show behind it"
    remedy = f"make the {what} {shown(deep)} thick or more, or the {feature.role} smaller"
    if feature.role == "mitre":
        seen, remedy = "it is sawn off again", "leave the mitred ends bare: the joint covers them"
    return finding(
        "A10",
        "lip-cut-through",
        Severity.WARNING,
        f"{part.name}: its {feature.role} reaches {shown(deep)} into an edge with "
        f"{shown(lip.thickness, fitted=lip.banded)} of {what}: {seen}",
        feature.span or lip.span,
        figures={"deep": deep, "lip": lip.thickness},
        remedy=remedy,
    )
