"""TRADE B21.3: how much of a drawer's side stands on its runner, and what keeps it from tipping."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.checks.finding import finding
from dryfit.checks.regions import gap_beside
from dryfit.checks.runners import drawer_of
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.geometry.box import spanning
from dryfit.geometry.frame import LENGTH, THICKNESS
from dryfit.placing.model import Joint, Model
from dryfit.quantities.units import INCH

_UP = 2
_HALF = Fraction(1, 2)
"""Of the thickness of its side a drawer bears at least on its runner (common practice)."""
_KICKS = Fraction(12)
"""What lies no higher above a drawer keeps it from tipping, mm (a guess of ours)."""


def check_bearings(model: Model) -> Iterator[Diagnostic]:
    """Yield, once for a runner, a drawer that bears on too little of it, or has nothing above it.

    Findings: runner-bears-little, drawer-tips.
    """
    told: set[tuple[str, str]] = set()
    for joint in (each for each in model.joints if each.kind == "bottom runner"):
        for each in (*_bears(model, joint), *_tips(model, joint)):
            key = each.code, model.part_of(joint.guest).name
            if key not in told:
                told.add(key)
                yield each


def _bears(model: Model, joint: Joint) -> Iterator[Diagnostic]:
    runner, side = model.part_of(joint.guest), model.part_of(joint.host)
    across = model.copy(joint.host).frame.axes[THICKNESS][0]
    if model.copy(joint.guest).frame.axes[LENGTH][0] in {across, _UP} or across == _UP:
        return
    thick, on = side.thickness, joint.region.extent(across)
    if on >= thick * _HALF:
        return
    show = model.display
    own = model.copy(joint.guest)
    step = show.either(Fraction(1), INCH / 16)
    size = -(-(own.box.extent(across) + thick - on) // step) * step
    way = "thick" if own.frame.axes[THICKNESS][0] == across else "wide"
    yield finding(
        "B21",
        "runner-bears-little",
        Severity.WARNING,
        f"{joint.host}: only {show.with_unit(on, fitted=True)} of its "
        f"{show.with_unit(thick)} stand on the {joint.guest}: it slips off as the wood shrinks",
        joint.span,
        figures={"bears": on, "least": thick * _HALF},
        remedy=f"make the {runner.name} {show.with_unit(size)} {way}, so that the side "
        "stands on it whole",
    )


def _tips(model: Model, joint: Joint) -> Iterator[Diagnostic]:
    drawer = {joint.host, *drawer_of(model, joint)}
    whole = spanning(tuple(model.copy(name).box for name in sorted(drawer)))
    others = [copy.box for part in model.parts for copy in part.copies if copy.name not in drawer]
    above = gap_beside(whole, others, _UP, 1)
    if above is not None and above <= _KICKS:
        return
    yield finding(
        "B21",
        "drawer-tips",
        Severity.NOTICE,
        f"{joint.host}: nothing lies close above its drawer, so that it tips as it is pulled out",
        joint.span,
        figures={"least": _KICKS},
        remedy="put a kicker above its sides, a strip like the runner below, or a rail or top "
        f"no more than {model.display.with_unit(_KICKS)} over it",
    )
