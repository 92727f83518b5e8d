"""TRADE B21: drawers on wooden runners that cannot run, or are weakened by their grooves."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.checks.finding import finding
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.geometry.box import Box
from dryfit.joinery.cut import bounded
from dryfit.joinery.feature import Feature
from dryfit.placing.model import Copy, Joint, Model, Part
from dryfit.placing.stages import copies_inside

_APART = Fraction(6)
"""Wood between the groove for a runner and another on the drawer's side, mm (common practice)."""

UP = 2


def check_runners(model: Model) -> Iterator[Diagnostic]:
    """Yield, once for a runner, what keeps its drawer from running.

    Findings: runner-blocked, runner-groove-close.
    """
    pieces = {copy.name: (part, copy) for part in model.parts for copy in part.copies}
    told: set[tuple[str, str]] = set()
    for joint in (each for each in model.joints if each.kind == "runner"):
        for each in (*_blocked(model, joint, pieces), *_close(model, joint, pieces)):
            key = each.code, pieces[joint.guest][0].name
            if key not in told:
                told.add(key)
                yield each


def _blocked(
    model: Model, joint: Joint, pieces: dict[str, tuple[Part, Copy]]
) -> Iterator[Diagnostic]:
    """Yield a part of the drawer that the runner would hit when the drawer is pushed in."""
    runner, run = pieces[joint.guest][1], pieces[joint.guest][1].frame.axes[0][0]
    drawer = drawer_of(model, joint)
    far = max(pieces[name][1].box.high[run] for name in (joint.host, *drawer))
    way = bounded(runner.box, run, runner.box.low[run], far)
    for name in sorted(drawer - {joint.host}):
        part, copy = pieces[name]
        common = copy.box.overlap(way)
        if common is None or cut_away(part, copy, common):
            continue
        yield finding(
            "H57",
            "runner-blocked",
            Severity.ERROR,
            f"{joint.guest}: {name} stands in its way when the drawer is pushed in",
            joint.span,
            figures={"wide": common.extent(3 - run - UP), "high": common.extent(UP)},
            remedy=f"notch the {part.name}, or end it above the runner",
        )


def drawer_of(model: Model, joint: Joint) -> set[str]:
    """Return the copies that are glued up with what runs on the runner of a joint."""
    wholes = copies_inside(model.assemblies).values()
    around = (each for each in wholes if joint.host in each and joint.guest not in each)
    return set[str]().union(*around)


def cut_away(part: Part, copy: Copy, common: Box) -> bool:
    """Return whether one cut of a copy takes all of a box."""
    cuts = (each for each in part.features if copy.hand in each.hands)
    return any(each.box(copy.box, copy.frame).contains(common) for each in cuts)


def _close(
    model: Model, joint: Joint, pieces: dict[str, tuple[Part, Copy]]
) -> Iterator[Diagnostic]:
    """Yield a groove in the same part that comes too near to that of the runner."""
    part, copy = pieces[joint.host]
    run = copy.frame.axes[0][0]
    mate = pieces[joint.guest][0].name
    own = [each for each in part.features if each.role == "groove" and each.mate == mate]
    grooves = [each for each in part.features if each.role in {"groove", "rabbet"}]
    for mine in own:
        box = mine.box(copy.box, copy.frame)
        for other in (each for each in grooves if each.id not in {one.id for one in own}):
            beside = other.box(copy.box, copy.frame)
            across = 3 - run - copy.frame.axes[2][0]
            if beside.extent(run) < beside.extent(across):
                # A rabbet for the front or the back crosses it: no strip is left beside the groove.
                continue
            gap = max(beside.low[across] - box.high[across], box.low[across] - beside.high[across])
            if gap >= _APART:
                continue
            left = model.display.with_unit(max(gap, Fraction(0)), fitted=True)
            yield finding(
                "H01",
                "runner-groove-close",
                Severity.WARNING,
                f"{part.name}: only {left} of wood is left between the groove for the {mine.mate} "
                f"and the {_called(other)}",
                joint.span,
                figures={"left": gap, "least": _APART},
                remedy=f"move the {mine.mate} up or down, so that "
                f"{model.display.with_unit(_APART)} or more are left",
            )
            return


def _called(cut: Feature) -> str:
    return f"{cut.role} for the {cut.mate}" if cut.mate else cut.role
