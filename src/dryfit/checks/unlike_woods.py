"""TRADE H72, G8: woods that move unlike one another, glued together over a wide way."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.checks.finding import finding
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.geometry.frame import LENGTH, WIDTH
from dryfit.placing.model import Copy, Joint, Model, Part

_UNLIKE = Fraction(1, 1000)
"""Difference of two coefficients of movement from which on glue is at risk (TRADE G8)."""

_WIDE = Fraction(75)
"""Over so many mm across the grain: as of wood that does not move at all (G8)."""

_LIPPING = Fraction(12)
"""Solid wood thicker than this in mm moves visibly off the end of a sheet that it covers (G8)."""

Piece = tuple[Part, Copy]


def check_unlike_woods(model: Model) -> Iterator[Diagnostic]:
    """Yield, once for two parts, layers that pull at one another and thick lippings of sheet ends.

    Findings: woods-unlike, lipping-thick.
    """
    pieces = {copy.name: (part, copy) for part in model.parts for copy in part.copies}
    told: set[tuple[str, str]] = set()
    for joint in model.joints:
        guest, host = pieces[joint.guest], pieces[joint.host]
        names = (guest[0].name, host[0].name)
        if not joint.patches or names in told:
            continue
        found = _unlike(model, joint, guest, host) or _lipping(model, joint, guest, host)
        if found is not None:
            told.add(names)
            yield found


def _unlike(model: Model, joint: Joint, guest: Piece, host: Piece) -> Diagnostic | None:
    """Return the finding of two solid parts of one grain that move unlike one another."""
    if "sheet" in {guest[0].stock, host[0].stock}:
        return None
    grain, other = (each[1].frame.axes[LENGTH][0] for each in (guest, host))
    if grain != other or joint.region.extent(grain) == 0:
        return None
    for axis in (each for each in range(3) if each != grain):
        low = min(box.low[axis] for box in joint.patches)
        wide = max(box.high[axis] for box in joint.patches) - low
        rates = [_rate(each, axis) for each in (guest, host)]
        apart = abs(rates[0] - rates[1])
        if wide > _WIDE and apart > _UNLIKE:
            return _told(model, joint, (guest[0], host[0]), wide, apart)
    return None


def _told(
    model: Model, joint: Joint, parts: tuple[Part, Part], wide: Fraction, apart: Fraction
) -> Diagnostic:
    one, other = parts
    air, shown = one.moisture, model.display
    differs = wide * apart * (air.dampest - air.driest)
    return finding(
        "G8",
        "woods-unlike",
        Severity.WARNING,
        f"{one.name} ({one.moving.name}) and {other.name} ({other.moving.name}) are glued together "
        f"{shown.shown(wide)} wide; as they lie, one moves {shown.movement(differs)} more there "
        f"{one.moving.year_words()}, and glue allows nothing: the whole bows, or the joint shears",
        joint.span,
        figures={"wide": wide, "differs": differs},
        remedy=shown.examples("make both of one wood, sawn alike, or write `glue the middle {60}`"),
    )


def _rate(piece: Piece, axis: int) -> Fraction:
    part, copy = piece
    return part.moving.across if copy.frame.axes[WIDTH][0] == axis else part.moving.through


def _lipping(model: Model, joint: Joint, guest: Piece, host: Piece) -> Diagnostic | None:
    """Return the finding of a thick solid lipping across the end of a sheet."""
    if guest[0].stock != "solid" or host[0].stock != "sheet":
        return None
    (part, copy), (sheet, board) = guest, host
    grain = board.frame.axes[LENGTH][0]
    if joint.region.extent(grain) > 0 or copy.frame.axes[LENGTH][0] == grain:
        return None
    thick = copy.box.extent(grain)
    level = all(
        copy.box.extent(axis) <= board.box.extent(axis) for axis in range(3) if axis != grain
    )
    if thick <= _LIPPING or not level:
        return None
    shown = model.display.with_unit
    return finding(
        "G8",
        "lipping-thick",
        Severity.WARNING,
        f"{part.name}: {shown(thick)} of solid wood across the end of the {sheet.name}, which does "
        "not move with it: it stands proud of the sheet in one season and shy of it in the other",
        joint.span,
        figures={"thick": thick, "most": _LIPPING},
        remedy=f"make it {model.display.shown(_LIPPING)} thick or less",
    )
