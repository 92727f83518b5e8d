"""TRADE H-a, laps: H07 depths that make the thickness, B1.4 laps too wide to be glued across."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.checks.finding import finding
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.geometry.box import Box
from dryfit.geometry.frame import LENGTH
from dryfit.kinds.joints import is_lapped, joint_kind
from dryfit.placing.model import Copy, Joint, Model, Part

_TENTH = Fraction(1, 10)
_WIDE, _TOO_WIDE = Fraction(100), Fraction(150)


def check_laps(model: Model) -> Iterator[Diagnostic]:
    """Yield what is wrong with half laps and bridles.  Findings: lap-not-flush, lap-wide."""
    copies = {copy.name: (part, copy) for part in model.parts for copy in part.copies}
    told: set[tuple[str, str]] = set()
    for joint in model.joints:
        if not is_lapped(joint.kind) or joint_kind(joint.kind).corner:
            # Boards that meet at a corner are wide the same way, and move together.
            continue
        (first, copy), (second, mate) = copies[joint.guest], copies[joint.host]
        if (first.name, second.name) in told:
            continue
        told.add((first.name, second.name))
        if joint.kind == "half lap":
            yield from lap_depths(model, joint, (first, copy), (second, mate))
        yield from lap_width(model, joint, first, second)


def lap_depths(
    model: Model, joint: Joint, one: tuple[Part, Copy], two: tuple[Part, Copy]
) -> Iterator[Diagnostic]:
    """H07: the two depths of a lap add up to the thinner part's thickness."""
    (first, copy), (second, mate) = one, two
    axis = 3 - copy.frame.axes[LENGTH][0] - mate.frame.axes[LENGTH][0]
    thin = min(copy.box.extent(axis), mate.box.extent(axis))
    total = sum((_depth(part, own, joint.region) for part, own in (one, two)), Fraction(0))
    if abs(total - thin) <= _TENTH:
        return
    show = model.display.shown
    yield finding(
        "H07",
        "lap-not-flush",
        Severity.ERROR,
        f"{first.name} and {second.name}: the laps are {show(total)} deep together, the wood is "
        f"{show(thin)}; the faces will be {show(abs(total - thin))} out of flush",
        joint.span,
        figures={"sum": total, "thickness": thin},
        remedy="put their faces flush, or give both one thickness",
    )


def _depth(part: Part, copy: Copy, region: Box) -> Fraction:
    depths = [
        feature.depth
        for feature in part.features
        if feature.role == "lap"
        and copy.hand in feature.hands
        and feature.box(copy.box, copy.frame).overlap(region)
    ]
    return depths[0] if depths else Fraction(0)


def lap_width(model: Model, joint: Joint, first: Part, second: Part) -> Iterator[Diagnostic]:
    """B1.4: solid parts glued across each other over more than 100 mm move apart."""
    wide = min(first.width, second.width)
    if wide <= _WIDE or "sheet" in {first.stock, second.stock}:
        return
    show = model.display.shown
    yield finding(
        "B1.4",
        "lap-wide",
        Severity.ERROR if wide > _TOO_WIDE else Severity.WARNING,
        f"{first.name} and {second.name} are glued across each other over {show(wide)}; solid "
        f"wood may break the joint when it moves",
        joint.span,
        figures={"width": wide, "limit": _WIDE},
        remedy=f"make one of them {show(_WIDE)} wide or less",
    )
