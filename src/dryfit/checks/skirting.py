"""The skirting (M18): what the piece has to leave free for it, or stand off the wall."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.checks.finding import finding
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.geometry.box import Box
from dryfit.geometry.solid import Solid
from dryfit.joinery.cut import bounded
from dryfit.piece.declared.site import PlaceWords, Room
from dryfit.placing.model import Copy, Model, Part
from dryfit.placing.scribing import strip_along
from dryfit.placing.tenon_lengths import rounded_down

_ZERO = Fraction(0)


def check_skirting(
    model: Model, place: PlaceWords, room: Room, skirting: tuple[Fraction, Fraction]
) -> Iterator[Diagnostic]:
    """Yield what meets the skirting at the back or at the side walls, not being cut away there.

    `skirting` is its height and thickness.  Findings: skirting-in-the-way.
    """
    thick = skirting[1]
    cut = {each.side for each in place.scribes if each.amount >= thick}
    at_back = _names(model, ("back",), skirting) if "back" not in cut else ""
    if at_back:
        stands_off = f"the piece stands {model.display.with_unit(thick)} off the wall"
        above = "let what lies above run on to the wall"
        yield _finding(model, room, skirting, at_back, "back", stands_off, above)
    if room.width is None:
        return
    free = tuple(side for side in ("left", "right") if side not in cut)
    clear = room.width[0] - 2 * thick
    scribed = {each.side: min(each.amount, thick) for each in place.scribes}
    over = model.overall[0] - clear - sum(scribed.get(side, _ZERO) for side in ("left", "right"))
    at_sides = _names(model, free, skirting) if over > 0 else ""
    if at_sides:
        between = f"between the skirtings are {model.display.with_unit(clear)}"
        # What is cut away altogether, shared out between the sides that are not cut clear of it.
        each = (over + sum(scribed.get(side, _ZERO) for side in free)) / len(free)
        shown = model.display.with_unit(-rounded_down(-each, model.display))
        strips = f"scribe it: `scribe {shown} at {' and '.join(free)}`"
        yield _finding(model, room, skirting, at_sides, " and ".join(free), between, strips)


def _names(model: Model, sides: tuple[str, ...], skirting: tuple[Fraction, Fraction]) -> str:
    high, thick = skirting
    # What the skirting takes of the piece's box when that touches the wall.
    foot = min(high, model.overall[2])
    strips = [bounded(strip_along(model, side, thick), 2, Fraction(0), foot) for side in sides]
    hit = (
        part
        for part in model.parts
        if any(_meets(part, copy, strip) for copy in part.copies for strip in strips)
    )
    return " and ".join(part.written.lower() for part in hit)


def _finding(
    model: Model,
    room: Room,
    skirting: tuple[Fraction, Fraction],
    names: str,
    sides: str,
    what: str,
    otherwise: str,
) -> Diagnostic:
    shown, (high, thick) = model.display.with_unit, skirting
    wide, deep = shown(high + 2), shown(thick + 1)
    example = f"`notch in sides: back edge, {wide} wide, {deep} deep, at bottom`"
    notch = f", as {example} does" if sides == "back" else ""
    return finding(
        "M18",
        "skirting-in-the-way",
        Severity.WARNING,
        f"the skirting, {shown(high)} high and {shown(thick)} thick, meets {names} at the {sides}: "
        f"{what}",
        room.span,
        figures={"height": high, "thickness": thick},
        remedy=f"keep {names} clear of it, {shown(high)} high and {shown(thick)} deep{notch}, or "
        f"{otherwise}",
    )


def _meets(part: Part, copy: Copy, strip: Box) -> bool:
    common = copy.box.overlap(strip)
    if common is None:
        return False
    cuts = tuple(
        box
        for feature in part.features
        if copy.hand in feature.hands and feature.form is None
        for box in feature.boxes(copy.box, copy.frame)
    )
    return bool(Solid(common, cuts).cells())
