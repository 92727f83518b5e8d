"""TRADE H-a, tenons: H03 too long, H04 short or thick, H06 cut by a groove, H09 too wide."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from dryfit.checks.finding import finding
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.geometry.box import Box
from dryfit.geometry.frame import LENGTH, THICKNESS, WIDTH
from dryfit.joinery.cut import bounded
from dryfit.joinery.proportions import glue_gap
from dryfit.placing.model import Copy, Joint, Model, Part
from dryfit.placing.tenon_lengths import (
    TenonRange,
    first_neighbour,
    least_tenon,
    length_remedy,
    longest_words,
    shortest_tenon,
    tenon_range,
)
from dryfit.quantities.units import INCH

_AT_A_CORNER = Fraction(6, 10)


@dataclass(frozen=True, slots=True)
class _Tenon:
    """One tenon with its rail and host, and its sizes in mm."""

    joint: Joint
    rail: Part
    copy: Copy
    host: Part
    mate: Copy
    length: Fraction
    width: Fraction
    thickness: Fraction


def check_tenons(model: Model) -> Iterator[Diagnostic]:
    """Yield what is wrong with tenons.

    Findings: tenon-too-long, tenon-short, tenon-thick, tenon-wide, tenon-wide-at-corner,
    groove-in-tenon, pegs-too-many.
    """
    copies = {copy.name: (part, copy) for part in model.parts for copy in part.copies}
    told: set[tuple[str, str]] = set()
    for joint in model.joints:
        if joint.kind != "mortise and tenon":
            continue
        (rail, copy), (host, mate) = copies[joint.guest], copies[joint.host]
        if (rail.name, host.name) in told:
            continue
        told.add((rail.name, host.name))
        axes = [axis for axis, _ in copy.frame.axes]
        sizes = [joint.region.extent(axes[each]) for each in (LENGTH, WIDTH, THICKNESS)]
        each = joint.tenon.width if joint.tenon else sizes[1]
        tenon = _Tenon(joint, rail, copy, host, mate, sizes[0], each, sizes[2])
        yield from too_long(model, tenon)
        yield from short(model, tenon)
        yield from thick(model, tenon)
        yield from wide(model, tenon)
        yield from grooved(model, tenon)
        yield from pegged(model, tenon)


def too_long(model: Model, tenon: _Tenon) -> Iterator[Diagnostic]:
    """H03: tenon, glue gap and 5 mm of wood behind it fit into the mate."""
    depth = tenon.mate.box.extent(tenon.copy.frame.axes[LENGTH][0])
    alone = tenon_range(depth, tenon.thickness, model.display)
    through = tenon.joint.tenon is not None and tenon.joint.tenon.through
    if tenon.length <= alone.longest or through:
        return
    show, allowed = model.display.shown, _allowed(model, tenon)
    comes_out = "comes out on the far side of" if tenon.length >= depth else "does not fit"
    yield finding(
        "H03",
        "tenon-too-long",
        Severity.ERROR,
        f"{tenon.rail.name}: a tenon {show(tenon.length)} long {comes_out} {tenon.host.name}, "
        f"{show(depth)} deep; {longest_words(alone, model.display)}",
        tenon.joint.span,
        figures={"length": tenon.length, "longest": alone.longest},
        remedy=length_remedy(allowed, tenon.length, tenon.host.name, model.display),
    )


def _allowed(model: Model, tenon: _Tenon) -> TenonRange:
    axis, host = tenon.copy.frame.axes[LENGTH][0], tenon.mate.box
    side = -1 if tenon.copy.box.low[axis] < host.low[axis] else 1
    run, gap = tenon.mate.frame.axes[LENGTH][0], glue_gap(model.display)
    least = least_tenon(tenon.thickness, model.display) + gap
    round_the_corner = next(each for each in range(3) if each not in {axis, run})
    others = (
        _at_least(joint.region, host, round_the_corner, least)
        for joint in model.joints
        if joint.kind == "mortise and tenon"
        and joint.host == tenon.mate.name
        and joint.guest != tenon.copy.name
    )
    neighbour = first_neighbour(tenon.joint.region, axis, host, side, others)
    return tenon_range(host.extent(axis), tenon.thickness, model.display, neighbour)


def _at_least(tenon: Box, host: Box, axis: int, least: Fraction) -> Box:
    """Return the mortise that enters a host along an axis as deep as it may have to be made.

    Where that tenon is too short as well, the remedies for both are followed at once.
    """
    low, high = tenon.low[axis], tenon.high[axis]
    if low == host.low[axis]:
        return bounded(tenon, axis, low, max(high, low + least))
    if high == host.high[axis]:
        return bounded(tenon, axis, min(low, high - least), high)
    return tenon


def short(model: Model, tenon: _Tenon) -> Iterator[Diagnostic]:
    """H04: a tenon of 15 mm and of one and a half times its thickness has glue enough.

    One that is less than 15 mm by a step is as long as there is room for: that is not told.
    """
    allowed = _allowed(model, tenon)
    floats = tenon.joint.tenon.floats if tenon.joint.tenon else Fraction(0)
    length = tenon.length + floats
    if length >= shortest_tenon(tenon.thickness, model.display):
        return
    little = model.display.either(Fraction(1), INCH / 16)
    fills = allowed.longest <= length and length * 2 >= tenon.thickness * 3
    if fills and length + little >= shortest_tenon(Fraction(0), model.display):
        return
    show = model.display.shown
    yield finding(
        "H04",
        "tenon-short",
        Severity.WARNING,
        f"{tenon.rail.name}: a tenon only {show(tenon.length)} long has little glue area",
        tenon.joint.span,
        figures={"length": tenon.length, "least": allowed.least},
        remedy=length_remedy(allowed, tenon.length, tenon.host.name, model.display),
    )


def thick(model: Model, tenon: _Tenon) -> Iterator[Diagnostic]:
    """B3.1: at most half of the rail's thickness, a third is usual."""
    across = tenon.rail.thickness
    if tenon.thickness * 2 <= across:
        return
    show = model.display.shown
    yield finding(
        "H04",
        "tenon-thick",
        Severity.WARNING,
        f"{tenon.rail.name}: a tenon {show(tenon.thickness)} thick leaves little shoulder on "
        f"{show(across)}; a third is usual",
        tenon.joint.span,
        figures={"thickness": tenon.thickness, "limit": across / 2},
        remedy=f"make it about {show(across / 3)} thick",
    )


def wide(model: Model, tenon: _Tenon) -> Iterator[Diagnostic]:
    """H09: at most five times the thickness, and 60 % of the rail where it ends with its mate."""
    show = model.display.shown
    limit = 5 * tenon.thickness
    if tenon.width > limit:
        yield finding(
            "H09",
            "tenon-wide",
            Severity.WARNING,
            f"{tenon.rail.name}: a tenon {show(tenon.width)} wide is more than five times its "
            "thickness",
            tenon.joint.span,
            figures={"width": tenon.width, "limit": limit},
            remedy=f"make it {show(limit)} wide or less, or write `2 tenons`",
        )
    limit = tenon.rail.width * _AT_A_CORNER
    if tenon.width > limit and _at_a_corner(tenon):
        yield finding(
            "H09",
            "tenon-wide-at-corner",
            Severity.WARNING,
            f"{tenon.rail.name}: a tenon {show(tenon.width)} wide at the end of the "
            f"{tenon.host.name} is more than 60 % of the rail",
            tenon.joint.span,
            figures={"width": tenon.width, "limit": limit},
            remedy=f"make it {show(limit)} wide or less, or write `haunched`",
        )


def _at_a_corner(tenon: _Tenon) -> bool:
    if tenon.joint.tenon is not None and tenon.joint.tenon.haunch is not None:
        return False
    axis = tenon.copy.frame.axes[WIDTH][0]
    if tenon.mate.frame.axes[LENGTH][0] != axis:
        return False
    rail, host = tenon.copy.box, tenon.mate.box
    return rail.low[axis] <= host.low[axis] or rail.high[axis] >= host.high[axis]


def grooved(model: Model, tenon: _Tenon) -> Iterator[Diagnostic]:
    """H06: a groove that runs along the rail must clear its tenon."""
    for feature in tenon.rail.features:
        if feature.role != "groove" or tenon.copy.hand not in feature.hands:
            continue
        common = feature.box(tenon.copy.box, tenon.copy.frame).overlap(tenon.joint.region)
        if common is None:
            continue
        lost = common.extent(tenon.copy.frame.axes[WIDTH][0])
        yield finding(
            "H06",
            "groove-in-tenon",
            Severity.WARNING,
            f"{tenon.rail.name}: {feature.id} takes {model.display.shown(lost)} off the tenon",
            tenon.joint.span,
            figures={"lost": lost},
            remedy=model.display.examples(
                "make the tenon narrower, or place it with a phrase such as `{5} from bottom`"
            ),
        )


def pegged(model: Model, tenon: _Tenon) -> Iterator[Diagnostic]:
    """Holes for pegs leave as much wood beside them as they take (common practice)."""
    sizes = tenon.joint.tenon
    if sizes is None or not sizes.pegs:
        return
    each = sizes.pegs_each
    if 2 * each * sizes.peg <= tenon.width:
        return
    show = model.display.shown
    fitting = tenon.width // (2 * sizes.peg)
    yield finding(
        "B3.6",
        "pegs-too-many",
        Severity.WARNING,
        f"{tenon.rail.name}: {each} {'peg' if each == 1 else 'pegs'} {show(sizes.peg)} thick leave "
        f"too little of a tenon {show(tenon.width)} wide",
        tenon.joint.span,
        figures={"peg": sizes.peg, "width": tenon.width},
        remedy=f"write `{fitting} pegs {show(sizes.peg)}`"
        if fitting
        else f"write `pegs {show(tenon.width / (2 * each))}` or thinner ones",
    )
