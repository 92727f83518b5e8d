"""TRADE H-a, geometry of joints: H01 to H11, as far as the joints built so far need them."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import combinations

from dryfit.checks.finding import finding
from dryfit.diagnostics import Diagnostic, Findings, Note, Severity
from dryfit.geometry.box import Box
from dryfit.geometry.frame import LENGTH, SURFACES, THICKNESS, WIDTH
from dryfit.joinery.feature import Feature
from dryfit.placing.model import Copy, Joint, Model, Part
from dryfit.shop.shop import Shop

_WALL = Fraction(3)
_NEAR = Fraction(5)
_BEHIND = Fraction(5)
_END_GRAIN = Fraction(12)
_TENTH = Fraction(1, 10)
_TRENCHES = frozenset({"end lap", "cross slot", "long slot"})


def check_geometry(model: Model, shop: Shop) -> Findings:
    """Return what is wrong inside single parts and between joint mates."""
    found: list[Diagnostic] = []
    for part in model.parts:
        if part.made:
            continue
        found += _opposed(model, part)
        found += _too_deep(model, part)
        found += _mortises(model, part)
        found += _mortise_near_lap(model, part)
        found += _short_grain(model, part)
        found += _cutters(model, part, shop)
    found += _tenons(model)
    found += _laps(model)
    found += _slot_widths(model)
    return tuple(found)


def _sizes(part: Part) -> tuple[Fraction, Fraction, Fraction]:
    return (part.length, part.width, part.thickness)


def _overlap(first: tuple[Fraction, Fraction], second: tuple[Fraction, Fraction]) -> bool:
    return max(first[0], second[0]) < min(first[1], second[1])


def _pairs(part: Part) -> Iterator[tuple[Feature, Feature]]:
    for first, second in combinations(part.features, 2):
        if set(first.hands) & set(second.hands):
            yield first, second


def _opposed(model: Model, part: Part) -> Iterator[Diagnostic]:
    """H01: trenches on opposite faces must leave wood between them."""
    for first, second in _pairs(part):
        if {first.surface, second.surface} != {"F", "B"}:
            continue
        if not {first.kind, second.kind} <= _TRENCHES or first.role == "tenon cheek":
            continue
        if not (_overlap(first.along, second.along) and _overlap(first.across, second.across)):
            continue
        left = part.thickness - first.depth - second.depth
        if left < _WALL:
            show = model.display.shown
            yield finding(
                "H01",
                "opposed-slots",
                Severity.ERROR if left <= 0 else Severity.WARNING,
                f"{part.name}: {first.id} and {second.id} on opposite faces leave "
                f"{show(max(left, Fraction(0)))} of {show(part.thickness)}",
                second.span,
                figures={"left": left},
                remedy="move one of them along the part, or make it shallower",
            )


def _too_deep(model: Model, part: Part) -> Iterator[Diagnostic]:
    """H02: a trench deeper than half of the wood warns, deeper than two thirds is wrong."""
    for feature in part.features:
        if feature.kind not in _TRENCHES or feature.role == "tenon cheek":
            continue
        size = _sizes(part)[SURFACES[feature.surface][0]]
        if feature.depth * 2 <= size:
            continue
        wrong = feature.depth * 3 > size * 2
        show = model.display.shown
        yield finding(
            "H02",
            "slot-too-deep",
            Severity.ERROR if wrong else Severity.WARNING,
            f"{part.name}: {feature.id} is {show(feature.depth)} deep in {show(size)}; the usual "
            f"limit is half, {show(size / 2)}",
            feature.span,
            figures={"depth": feature.depth, "limit": size / 2},
            remedy="make it shallower, or the part thicker",
        )


def _mortises(model: Model, part: Part) -> Iterator[Diagnostic]:
    """H05: mortises that meet inside a leg (TRADE B3.5), or leave under 3 mm between them."""
    seen: set[tuple[str, str]] = set()
    for copy in part.copies:
        mortises = [
            (feature, feature.box(copy.box, copy.frame))
            for feature in part.features
            if feature.kind == "mortise" and copy.hand in feature.hands
        ]
        for (first, box), (second, other) in combinations(mortises, 2):
            if (first.id, second.id) in seen:
                continue
            report = _mortise_pair(model, copy, (first, box), (second, other))
            if report is not None:
                seen.add((first.id, second.id))
                yield report


def _mortise_pair(
    model: Model, copy: Copy, one: tuple[Feature, Box], two: tuple[Feature, Box]
) -> Diagnostic | None:
    (first, box), (second, other) = one, two
    if SURFACES[first.surface][0] == SURFACES[second.surface][0]:
        return None
    show = model.display.shown
    names = f"{first.mate} and {second.mate}"
    notes = (Note("the other mortise", first.span),) if first.span else ()
    common = box.overlap(other)
    if common is not None:
        depth = min(common.extent(axis) for axis in range(3))
        shorter = min(first.depth, second.depth) - depth
        return finding(
            "H05",
            "mortises-collide",
            Severity.ERROR,
            f"{copy.name}: the mortises for {names} collide by {show(depth)}",
            second.span,
            figures={"overlap": depth},
            remedy=f"make the tenons shorter, so that the mortises are {show(shorter - _WALL)} "
            "deep, or set the rails further out, or use thicker legs",
            notes=notes,
        )
    wall = _gap(box, other)
    if wall is not None and wall < _WALL:
        return finding(
            "H05",
            "mortises-close",
            Severity.WARNING,
            f"{copy.name}: only {show(wall)} of wood between the mortises for {names}",
            second.span,
            figures={"wall": wall},
            remedy="make one tenon a little shorter",
            notes=notes,
        )
    return None


def _gap(first: Box, second: Box) -> Fraction | None:
    """Return the least distance between two boxes that face each other, else None."""
    gaps = [
        max(first.low[axis], second.low[axis]) - min(first.high[axis], second.high[axis])
        for axis in range(3)
    ]
    apart = [gap for gap in gaps if gap >= 0]
    return apart[0] if len(apart) == 1 else None


def _mortise_near_lap(model: Model, part: Part) -> Iterator[Diagnostic]:
    """H06: a mortise that meets a lap or housing of the same part, or stands under 5 from it."""
    for first, second in _pairs(part):
        mortise, lap = (first, second) if first.kind == "mortise" else (second, first)
        if mortise.kind != "mortise" or lap.kind not in _TRENCHES or lap.role == "groove":
            continue
        if mortise.after or mortise.role == "button slot":
            continue
        gap = max(mortise.along[0], lap.along[0]) - min(mortise.along[1], lap.along[1])
        if gap >= _NEAR or not _across_meets(part, mortise, lap):
            continue
        show = model.display.shown
        yield finding(
            "H06",
            "mortise-meets-lap",
            Severity.ERROR if gap < 0 else Severity.WARNING,
            f"{part.name}: {mortise.id} at {show(mortise.along[0])} to {show(mortise.along[1])} "
            + (f"runs {show(-gap)} into" if gap < 0 else f"is {show(gap)} from")
            + f" {lap.id}",
            mortise.span,
            figures={"gap": gap},
            remedy="place the tenon with a phrase such as `5 from bottom`, or make it narrower",
            notes=(Note(lap.id, lap.span),) if lap.span else (),
        )


def _across_meets(part: Part, first: Feature, second: Feature) -> bool:
    sizes = _sizes(part)
    own, other = first.ranges(sizes), second.ranges(sizes)
    return all(_overlap(own[side], other[side]) for side in (WIDTH, THICKNESS)) or (
        first.surface == second.surface
    )


def _short_grain(model: Model, part: Part) -> Iterator[Diagnostic]:
    """H10: little end grain beyond a mortise may break out."""
    for feature in part.features:
        if feature.kind != "mortise" or SURFACES[feature.surface][0] == LENGTH:
            continue
        left = min(feature.along[0], part.length - feature.along[1])
        if left < _END_GRAIN:
            show = model.display.shown
            yield finding(
                "H10",
                "mortise-near-end",
                Severity.WARNING,
                f"{part.name}: {show(left)} of wood is left beyond {feature.id}",
                feature.span,
                figures={"left": left},
                remedy="leave a horn of 20 at the end and saw it off after the glue-up, or move "
                "the tenon",
            )


def _cutters(model: Model, part: Part, shop: Shop) -> Iterator[Diagnostic]:
    """H11: a mortise as wide as a chisel that the shop has."""
    chisels = [cutter.narrowest for cutter in shop.cutters_at("mortiser")]
    if not chisels:
        return
    show = model.display.shown
    for feature in part.features:
        if feature.kind != "mortise":
            continue
        wide = feature.across[1] - feature.across[0]
        if wide not in chisels:
            listed = ", ".join(show(size) for size in sorted(chisels))
            nearest = min((abs(size - wide), size) for size in chisels)[1]
            yield finding(
                "H11",
                "no-such-chisel",
                Severity.ERROR,
                f"{part.name}: {feature.id} is {show(wide)} wide; the shop's chisels are {listed}",
                feature.span,
                figures={"width": wide, "nearest": nearest},
                remedy=f"make the tenon {show(nearest)} thick, or add the chisel to the shop file",
            )


def _tenons(model: Model) -> Iterator[Diagnostic]:
    """H03, H04, H09: a tenon's length against its mate, its thickness, its width."""
    seen: set[tuple[str, str]] = set()
    for joint in model.joints:
        if joint.kind != "mortise and tenon":
            continue
        rail, host = model.part_of(joint.guest), model.part_of(joint.host)
        if (rail.name, host.name) in seen:
            continue
        seen.add((rail.name, host.name))
        yield from _tenon(model, joint, rail, host)


def _tenon(model: Model, joint: Joint, rail: Part, host: Part) -> Iterator[Diagnostic]:
    show = model.display.shown
    copy, mate = model.copy(joint.guest), model.copy(joint.host)
    axes = [axis for axis, _ in copy.frame.axes]
    length, width, thick = (joint.region.extent(axis) for axis in axes)
    room = mate.box.extent(axes[LENGTH]) - joint.clearance - _BEHIND
    if length > room:
        yield finding(
            "H03",
            "tenon-too-long",
            Severity.ERROR,
            f"{rail.name}: a tenon {show(length)} long does not fit {host.name}, "
            f"{show(mate.box.extent(axes[LENGTH]))} deep; the longest is {show(room)}",
            joint.span,
            figures={"length": length, "longest": room},
            remedy=f"write `tenon {show(room)} long`",
        )
    if length < max(thick * Fraction(3, 2), Fraction(15)):
        yield finding(
            "H04",
            "tenon-short",
            Severity.WARNING,
            f"{rail.name}: a tenon only {show(length)} long has little glue area",
            joint.span,
            figures={"length": length},
            remedy=f"make it {show(max(thick * Fraction(3, 2), Fraction(15)))} or longer",
        )
    if thick * 2 > rail.thickness:
        yield finding(
            "H04",
            "tenon-thick",
            Severity.WARNING,
            f"{rail.name}: a tenon {show(thick)} thick leaves little shoulder on "
            f"{show(rail.thickness)}; a third is usual",
            joint.span,
            figures={"thickness": thick},
            remedy=f"make it about {show(rail.thickness / 3)} thick",
        )
    if width > 5 * thick:
        yield finding(
            "H09",
            "tenon-wide",
            Severity.WARNING,
            f"{rail.name}: a tenon {show(width)} wide is more than five times its thickness",
            joint.span,
            figures={"width": width, "limit": 5 * thick},
            remedy=f"make it {show(5 * thick)} wide or less",
        )


def _laps(model: Model) -> Iterator[Diagnostic]:
    """H07: the two depths of a lap add up to the thinner part's thickness."""
    seen: set[tuple[str, str]] = set()
    for joint in model.joints:
        if joint.kind != "half lap":
            continue
        first, second = model.part_of(joint.guest), model.part_of(joint.host)
        if (first.name, second.name) in seen:
            continue
        seen.add((first.name, second.name))
        depths = [
            feature.depth
            for part, mate in ((first, second), (second, first))
            for feature in part.features
            if feature.role == "lap" and feature.mate == mate.name
        ]
        thin = min(first.thickness, second.thickness)
        total = depths[0] + depths[-1]
        if abs(total - thin) > _TENTH:
            show = model.display.shown
            yield finding(
                "H07",
                "lap-not-flush",
                Severity.ERROR,
                f"{first.name} and {second.name}: the laps are {show(total)} deep together, the "
                f"wood is {show(thin)}; the faces will be {show(abs(total - thin))} out of flush",
                joint.span,
                figures={"sum": total, "thickness": thin},
                remedy="give both parts one thickness",
            )


def _slot_widths(model: Model) -> Iterator[Diagnostic]:
    """H08: a housing as wide as the part that enters it is thick."""
    for part in model.parts:
        for feature in part.features:
            if feature.role != "housing" or feature.mate is None:
                continue
            mate = model.part(feature.mate)
            sides = (feature.along, feature.across)
            narrow = min(high - low for low, high in sides)
            if abs(narrow - mate.thickness) > _TENTH:
                show = model.display.shown
                yield finding(
                    "H08",
                    "slot-width",
                    Severity.WARNING,
                    f"{part.name}: {feature.id} is {show(narrow)} wide, but {mate.name} is "
                    f"{show(mate.thickness)} thick",
                    feature.span,
                    figures={"width": narrow, "thickness": mate.thickness},
                    remedy="cut it to the part",
                )
