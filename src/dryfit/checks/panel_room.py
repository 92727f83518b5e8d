"""TRADE H74: solid panels that come out of their grooves when they are driest."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.checks.finding import finding
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.geometry.frame import WIDTH
from dryfit.placing.model import Copy, Joint, Model, Part
from dryfit.wood import percent_words

_FLOATS = frozenset({"groove", "back rabbet"})
_MOST = Fraction(5)
_ROUNDED = Fraction(1, 2)
"""Half of the groove, or 5 mm in a deep one, should hold a panel that is driest (after TRADE H74,
which asks for 5 mm in every groove); half a millimetre of it the rounding of gaps may take."""


def check_panel_room(model: Model) -> Iterator[Diagnostic]:
    """Yield, once for a part, a panel of which too little stands in a groove at its driest.

    That it has room to swell (H73) is so by construction: its gaps are worked out from it.
    Findings: panel-comes-out.
    """
    for part in model.parts:
        found = (_comes_out(model, part, copy) for copy in part.copies)
        if part.stock == "solid":
            yield from [each for each in found if each is not None][:1]


def _comes_out(model: Model, part: Part, copy: Copy) -> Diagnostic | None:
    axis = copy.frame.axes[WIDTH][0]
    sides = [joint for joint in model.joints if _holds_a_side(joint, copy, axis)]
    ends = {joint.region.low[axis] == copy.box.low[axis] for joint in sides}
    if len(ends) < 2:
        return None
    now = min(joint.region.extent(axis) for joint in sides)
    deep = now + max(joint.clearance for joint in sides)
    dry = now - part.moving.shrinks(part.width) / 2
    if dry >= _least(deep):
        return None
    shown = model.display
    stays = f"{shown.with_unit(dry, fitted=True)} are left" if dry > 0 else "nothing is left"
    return finding(
        "H74",
        "panel-comes-out",
        Severity.WARNING if dry > 0 else Severity.ERROR,
        f"{part.name} is {shown.shown(part.width)} wide across the grain ({part.moving.name}): of "
        f"{shown.with_unit(now, fitted=True)} in each groove {stays} once it has dried to "
        f"{percent_words(part.moisture.driest)} of moisture",
        sides[0].span,
        figures={"now": now, "dry": dry, "deep": deep},
        remedy=f"cut the grooves {shown.shown(_deeper(deep, dry), fitted=True)} deep or more, or "
        "take a quartersawn panel, which moves less",
    )


def _holds_a_side(joint: Joint, copy: Copy, axis: int) -> bool:
    """Return whether a joint holds a copy at an edge across its grain, where it floats."""
    if joint.guest != copy.name or joint.kind not in _FLOATS or joint.patches:
        return False
    region = joint.region
    return region.extent(axis) > 0 and (region.low[axis] == copy.box.low[axis]) != (
        region.high[axis] == copy.box.high[axis]
    )


def _least(deep: Fraction) -> Fraction:
    return min(_MOST, deep / 2) - _ROUNDED


def _deeper(deep: Fraction, dry: Fraction) -> Fraction:
    """Return the depth at which enough of the groove still holds the panel."""
    wanted = deep
    while dry + wanted - deep < _least(wanted):
        wanted += 1
    return wanted
