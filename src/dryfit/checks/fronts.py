"""TRADE H76: solid doors and fronts that bind in their openings when they have swollen."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.checks.finding import finding
from dryfit.checks.regions import gap_beside
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.geometry.frame import WIDTH
from dryfit.placing.model import Copy, Model, Part
from dryfit.placing.stages import copies_inside

_FREE = Fraction(4, 5)
"""What must be left in mm when it is dampest: TRADE H76, common practice."""

_STEP = Fraction(1, 2)


def check_fronts(model: Model) -> Iterator[Diagnostic]:
    """Yield, once for an opening, solid wood in it that has no room to swell.

    Findings: front-swells.
    """
    wholes = copies_inside(model.assemblies).values()
    told: set[str] = set()
    for part in model.parts:
        if part.opening is None or part.opening in told or part.stock != "solid":
            continue
        for copy in part.copies:
            own = {copy.name}.union(*(each for each in wholes if copy.name in each))
            found = _binds(model, part, copy, own)
            if found is not None:
                told.add(part.opening)
                yield found
                break


def _binds(model: Model, part: Part, copy: Copy, own: set[str]) -> Diagnostic | None:
    axis = copy.frame.axes[WIDTH][0]
    boxes = [(each.name in own, each.box) for one in model.parts for each in one.copies]
    if any(
        mine and (box.low[axis] < copy.box.low[axis] or copy.box.high[axis] < box.high[axis])
        for mine, box in boxes
    ):
        # A stile, or a panel: its frame as a whole reaches further than it.
        return None
    others = [box for mine, box in boxes if not mine]
    beside = [gap_beside(copy.box, others, axis, way) for way in (-1, 1)]
    room = sum((gap for gap in beside if gap is not None), Fraction(0))
    swells = part.moving.swells(part.width)
    needs = swells + _FREE
    if None in beside or room >= needs:
        return None
    shown = model.display
    enough = -(-needs // _STEP) * _STEP
    return finding(
        "H76",
        "front-swells",
        Severity.WARNING,
        f"{part.name} is {shown.shown(part.width)} wide across the grain ({part.moving.name}) and "
        f"may swell by {shown.movement(swells)}; its opening leaves "
        f"{shown.with_unit(room, fitted=True)} in all",
        part.spans[0] if part.spans else None,
        figures={"room": room, "needs": needs},
        remedy=f"leave {shown.with_unit(enough, fitted=True)} in all"
        + (", or frame a panel, which swells in its grooves" if len(own) == 1 else ""),
    )
