"""TRADE H-a, mortises: H05 colliding, H06 near laps, H10 near ends, H11 and H51 no chisel."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from dryfit.checks.finding import finding
from dryfit.checks.finding import listed as all_of
from dryfit.checks.regions import (
    TENON_ROLES,
    TRENCHES,
    on_opposite_surfaces,
    overlap,
    pairs,
    ranges,
    solid_parts,
)
from dryfit.checks.slots import LEAST_WALL
from dryfit.diagnostics import Diagnostic, Note, Severity
from dryfit.geometry.box import Box
from dryfit.geometry.frame import LENGTH, SURFACES
from dryfit.joinery.feature import Feature
from dryfit.joinery.proportions import LEAST_END_GRAIN, glue_gap
from dryfit.placing.model import Copy, Model, Part
from dryfit.placing.tenon_lengths import first_neighbour, least_tenon, rounded_down
from dryfit.quantities import Display
from dryfit.quantities.units import INCH
from dryfit.shop.shop import Shop

HORN = {"mm": Fraction(20), "in": INCH * 3 / 4}
"""How much longer a stile is left at an end (TRADE B3.3: 20 to 25 mm)."""
_NEAR = Fraction(5)
_NO_TENON = frozenset(
    {"slot", "peg slot", "haunch", "biscuit slot", "screw slot", "counterbore", "hinge recess"}
)
Placed = tuple[Feature, Box]


def check_mortises(model: Model, shop: Shop) -> Iterator[Diagnostic]:
    """Yield what is wrong with mortises.

    Findings: mortises-collide, mortises-close, mortise-meets-lap, mortise-near-end,
    no-such-chisel.
    """
    for part in solid_parts(model):
        yield from colliding(model, part)
        yield from near_laps(model, part)
        yield from near_ends(model, part)
        yield from without_chisel(model, part, shop)


def _is_mortise(feature: Feature) -> bool:
    # A slot that no tenon enters is a pocket too, but nothing has to fit its chisel or its depth;
    # the shallow one for a haunch runs into that of its tenon.
    return feature.kind == "mortise" and feature.role not in _NO_TENON


def colliding(model: Model, part: Part) -> Iterator[Diagnostic]:
    """H05: mortises that meet inside a part (TRADE B3.5), or leave under 3 mm between them."""
    told: set[tuple[str | None, str | None, str]] = set()
    for copy in part.copies:
        own = [
            (feature, feature.box(copy.box, copy.frame))
            for feature in part.features
            if _is_mortise(feature) and copy.hand in feature.hands
        ]
        for one, two in _neighbours(own, copy.frame.axes[LENGTH][0]):
            report = _pair(model, part, copy, *sorted((one, two), key=_by_line))
            if report is None or (one[0].mate, two[0].mate, report.code) in told:
                continue
            told.add((one[0].mate, two[0].mate, report.code))
            yield report


def _neighbours(placed: Sequence[Placed], axis: int) -> Iterator[tuple[Placed, Placed]]:
    # Along the part only those can meet that begin before another ends.
    in_order = sorted(placed, key=lambda each: (each[1].low[axis], each[0].id))
    for index, one in enumerate(in_order):
        for two in in_order[index + 1 :]:
            if two[1].low[axis] >= one[1].high[axis] + LEAST_WALL:
                break
            yield one, two


def _by_line(placed: Placed) -> tuple[int, int, str]:
    feature, _ = placed
    return (feature.span.line, feature.span.column, feature.id) if feature.span else (0, 0, "")


def _pair(model: Model, part: Part, copy: Copy, one: Placed, two: Placed) -> Diagnostic | None:
    (first, box), (second, other) = one, two
    show = model.display.shown
    names = f"{first.mate or first.id} and {second.mate or second.id}"
    notes = (Note("the other mortise", second.span),) if second.span else ()
    wall = _wall(box, other)
    if wall <= 0:
        shared = -wall
        deep = show(shared, fitted=True)  # whole steps of the page might say that it is nothing
        return finding(
            "H05",
            "mortises-collide",
            Severity.ERROR,
            f"{copy.name}: the mortises for {names} "
            + (f"collide by {deep}" if model.display.rounded(shared, fitted=True) else "meet"),
            first.span,
            figures={"overlap": shared},
            remedy=_apart(model, part, copy, ((first, box), (second, other))),
            notes=notes,
        )
    if wall >= LEAST_WALL:
        return None
    return finding(
        "H05",
        "mortises-close",
        Severity.WARNING,
        f"{copy.name}: only {show(wall, fitted=True)} of wood between the mortises for {names}",
        first.span,
        figures={"wall": wall},
        remedy=_apart(model, part, copy, ((first, box), (second, other))),
        notes=notes,
    )


def _apart(model: Model, part: Part, copy: Copy, mortises: tuple[Placed, Placed]) -> str:
    # Mortises are deeper than their tenons by the room for glue; a wall must be left.
    display = model.display
    show = display.shown
    (one, box), (two, other) = mortises
    starts = [_start_of(copy, one, box, other), _start_of(copy, two, other, box)]
    if "loose mortise" in {one.role, two.role}:
        return "make the tenons shorter or narrower, or move one of the rails"
    if None in starts or one.surface == two.surface:
        return "make one tenon narrower, or move one of the rails"
    if on_opposite_surfaces(one, two):
        deep = (copy.box.extent(copy.frame.axes[SURFACES[one.surface][0]][0]) - LEAST_WALL) / 2
    else:
        deep = min(start for start in starts if start is not None) - LEAST_WALL
    tenon = rounded_down(deep - glue_gap(display), display)
    least = max(least_tenon(_narrow_side(mortise), display) for mortise in (one, two))
    if tenon < least:
        thicker = show(part.thickness + least - tenon)
        room = f"; only {show(tenon)} would fit" if tenon > 0 else ""
        return (
            f"make the {part.name} at least {thicker} thick, or set the rails further out: tenons "
            f"need {show(least)}{room}"
        )
    return (
        f"write `tenon {show(tenon)} long` for both, which leaves {show(LEAST_WALL)} between the "
        "mortises; or set the rails further out, or use thicker wood"
    )


def _start_of(copy: Copy, mortise: Feature, box: Box, other: Box) -> Fraction | None:
    direction, end = SURFACES[mortise.surface]
    axis, sign = copy.frame.axes[direction]
    return first_neighbour(box, axis, copy.box, sign if end else -sign, (other,))


def _narrow_side(mortise: Feature) -> Fraction:
    return min(high - low for low, high in (mortise.along, mortise.across))


def _wall(first: Box, second: Box) -> Fraction:
    """Return the wood between two boxes along an axis, across a corner the larger measure.

    Less than nothing is how deep they run into each other.
    """
    return max(
        max(first.low[axis], second.low[axis]) - min(first.high[axis], second.high[axis])
        for axis in range(3)
    )


def near_laps(model: Model, part: Part) -> Iterator[Diagnostic]:
    """H06: a mortise that meets a lap or housing of the same part, or stands under 5 from it."""
    told: set[tuple[str | None, str, str | None]] = set()
    for first, second in pairs(part):
        mortise, lap = (first, second) if _is_mortise(first) else (second, first)
        if not _may_meet(mortise, lap):
            continue
        apart = _distance_along(part, mortise, lap)
        least = Fraction(0) if mortise.role == "button slot" else _NEAR
        cause = (mortise.mate, lap.role, lap.mate)
        if apart is None or apart >= least or cause in told:
            continue
        told.add(cause)
        show = model.display.shown
        yield finding(
            "H06",
            "mortise-meets-lap",
            Severity.ERROR if apart < 0 else Severity.WARNING,
            f"{part.name}: {mortise.id} at {show(mortise.along[0])} to {show(mortise.along[1])} "
            + (f"runs {show(-apart)} into" if apart < 0 else f"is {show(apart)} from")
            + f" {lap.id}",
            mortise.span,
            figures={"distance": apart},
            remedy=model.display.examples(
                "place the tenon with a phrase such as `{5} from bottom`, or make it narrower"
            )
            + _or_later(model, part, mortise, lap),
            notes=(Note(lap.id, lap.span),) if lap.span else (),
        )


def _or_later(model: Model, part: Part, mortise: Feature, lap: Feature) -> str:
    """Return the other way: to cut the mortise when the lap is glued, before its rail goes in."""
    inside: dict[str, set[str]] = {}
    for assembly in model.assemblies:
        copies = {copy for each in assembly.of for copy in inside.get(each, {each})}
        inside[assembly.name] = copies
        names = {model.part_of(copy).name for copy in copies}
        if {part.name, lap.mate} <= names and mortise.mate not in names:
            return f"; or cut it once the lap is glued, with `after glue up {assembly.stage}`"
    return ""


def _may_meet(mortise: Feature, lap: Feature) -> bool:
    if not _is_mortise(mortise) or lap.kind not in TRENCHES or mortise.after:
        return False
    # A groove may run into a mortise; the end that a tenon leaves is looked after by its joint.
    return lap.role not in {"groove", "tongue groove"} and lap.role not in TENON_ROLES


def _distance_along(part: Part, mortise: Feature, lap: Feature) -> Fraction | None:
    own, other = ranges(part, mortise), ranges(part, lap)
    across = all(overlap(own[i], other[i]) > 0 for i in range(3) if i != LENGTH)
    if not across and mortise.surface != lap.surface:
        return None
    return -overlap(own[LENGTH], other[LENGTH])


def near_ends(model: Model, part: Part) -> Iterator[Diagnostic]:
    """H10: little end grain beyond a mortise may break out."""
    told: set[str | None] = set()
    for feature in part.features:
        if not _is_mortise(feature) or SURFACES[feature.surface][0] == LENGTH:
            continue
        left = min(feature.along[0], part.length - feature.along[1]) + part.horns
        if left >= LEAST_END_GRAIN or feature.mate in told:
            continue
        told.add(feature.mate)
        show = model.display.shown
        yield finding(
            "H10",
            "mortise-near-end",
            Severity.WARNING,
            f"{part.name}: {show(left)} of wood is left beyond {feature.id}",
            feature.span,
            figures={"left": left},
            remedy=f"write `horns {show(HORN[model.display.unit])}` on its line, or "
            "`haunched`, or move the tenon",
        )


def without_chisel(model: Model, part: Part, shop: Shop) -> Iterator[Diagnostic]:
    """H11: a mortise as wide as a chisel that the shop has."""
    chisels = sorted({cutter.narrowest for cutter in shop.cutters_at("mortiser")})
    told: set[Fraction] = set()
    for feature in part.features if chisels else ():
        if not _is_mortise(feature):
            continue
        wide = _narrow_side(feature)
        if wide in chisels or wide in told:
            continue
        told.add(wide)
        mortises = (each for each in part.features if _is_mortise(each))
        alike = [each.id for each in mortises if _narrow_side(each) == wide]
        listed_ids = all_of(alike)
        listed = ", ".join(_exactly(size, model.display) for size in chisels)
        nearest = min((abs(size - wide), size) for size in chisels)[1]
        yield finding(
            "H11",
            "no-such-chisel",
            Severity.ERROR,
            f"{part.name}: {listed_ids} {'are' if len(alike) > 1 else 'is'} "
            f"{_exactly(wide, model.display)} wide; the shop's chisels are {listed}",
            feature.span,
            figures={"width": wide, "nearest": nearest},
            remedy=f"make the tenon {_exactly(nearest, model.display)} thick; or add the chisel to "
            "the shop file; or leave the mortiser out there (`station.mortiser = false`), so that "
            "the drill press or the bench does it",
        )


def _exactly(size: Fraction, display: Display) -> str:
    """Return a width so that it can be written again: a chisel of 1/4 in is no 6.5 mm."""
    if not display.moved(size, fitted=True):
        return display.shown(size, fitted=True)
    other = Display.inches() if display.unit == "mm" else Display()
    if not other.moved(size, fitted=True):
        return other.with_unit(size, fitted=True)
    return display.shown(size, fitted=True)
