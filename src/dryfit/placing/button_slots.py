"""The slots that buttons engage: a groove along the rail, or a pocket for each button."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity, Span
from dryfit.geometry.box import Box
from dryfit.joinery.buttons import ButtonSizes, ButtonSlot, usual_slot
from dryfit.joinery.cut import Cut, Placed, bounded, from_side
from dryfit.piece.declared import Contact
from dryfit.placing.site import Site

_LEAST_OFFSET = Fraction(1)
_NARROWEST = Fraction(3)
"""A tongue thinner than this breaks off (common practice)."""


def inner_face(rail: Placed) -> tuple[int, int]:
    """Return axis and side of the face that a rail turns to the inside of the piece."""
    axis = rail.axes[2]
    return axis, -rail.outward[axis]


def slot_in(
    site: Site, contact: Contact, rail: Placed, rails: Sequence[Placed], grooves: Sequence[Cut]
) -> tuple[ButtonSlot, bool] | None:
    """Return the slot in a rail and whether a declared groove is it, or None where none fits.

    Where others of the `rails` under the top have a groove, slots of their own stand as that does,
    unless no chisel is as wide: all buttons are then of one kind.  Findings: button-slot-off-rail.
    """
    groove = _groove_of(rail, grooves)
    slot = _slot_of(groove, rail) if groove else _as_the_others(site, rail, rails, grooves)
    if not _fits(slot, rail):
        _off_rail(site, contact, rail, groove, slot)
        return None
    return slot, groove is not None


def _groove_of(rail: Placed, grooves: Sequence[Cut]) -> Cut | None:
    inner = inner_face(rail)
    return next((c for c in grooves if c.copy == rail.name and (c.axis, c.side) == inner), None)


def _as_the_others(
    site: Site, rail: Placed, rails: Sequence[Placed], grooves: Sequence[Cut]
) -> ButtonSlot:
    chisels = {cutter.narrowest for cutter in site.shop.cutters_at("mortiser")}
    for other in rails:
        groove = _groove_of(other, grooves)
        slot = _slot_of(groove, other) if groove else None
        if slot is not None and _fits(slot, rail) and (not chisels or slot.width in chisels):
            return slot
    return usual_slot(site.declared.display, chisels)


def _slot_of(groove: Cut, rail: Placed) -> ButtonSlot:
    return ButtonSlot(
        offset=rail.box.high[2] - groove.box.high[2],
        width=groove.box.extent(2),
        depth=groove.box.extent(groove.axis),
    )


def _fits(slot: ButtonSlot, rail: Placed) -> bool:
    return (
        slot.offset + slot.width < rail.box.extent(2)
        and slot.depth < rail.box.extent(rail.axes[2])
        and rail.axes[2] != 2
        and slot.offset > _LEAST_OFFSET
        and slot.width >= _NARROWEST
    )


def _off_rail(
    site: Site, contact: Contact, rail: Placed, groove: Cut | None, slot: ButtonSlot
) -> None:
    span: Span = groove.span if groove and groove.span else contact.span
    finding = Diagnostic(
        "button-slot-off-rail",
        Severity.ERROR,
        f"no button fits the inner face of {rail.part} with a slot {site.shown(slot.width)} wide, "
        f"{site.shown(slot.depth)} deep, {site.shown(slot.offset)} from top",
        span,
        rule="H28",
        figures={"width": slot.width, "depth": slot.depth, "from top": slot.offset},
        hints=(Hint("set the rail on edge, change the slot, or use screws"),),
    )
    site.tell_once(finding)


def assume_pockets(site: Site, contact: Contact, rail: Placed, slot: ButtonSlot) -> None:
    """List that each button of a rail has a slot of its own."""
    sizes = (
        f"{site.shown(slot.width)} wide, {site.shown(slot.depth)} deep, "
        f"{site.shown(slot.offset)} from top"
    )
    written = site.written(rail.part)
    site.assume_line(
        f"each button has a slot of its own in the {written}: {sizes}",
        contact.span,
        f"groove in {written}: inside, {sizes}, through",
    )


def tongue_region(rail: Placed, button: Box, sizes: ButtonSizes) -> Box:
    """Return the part of a button's tongue that lies inside the rail."""
    high = button.high[2] - sizes.set_down
    inside = bounded(button, 2, high - sizes.tongue_thickness, high).overlap(rail.box)
    if inside is None:
        raise AssertionError(button)
    return inside


def pocket(rail: Placed, button: Placed, slot: ButtonSlot, half: Fraction, span: Span) -> Cut:
    """Return the slot of one button, which reaches `half` mm to either side of its middle."""
    axis, side = inner_face(rail)
    along = rail.axes[0]
    box = from_side(rail.box, axis, side, slot.depth)
    top = rail.box.high[2] - slot.offset
    box = bounded(box, 2, top - slot.width, top)
    middle = (button.box.low[along] + button.box.high[along]) / 2
    box = bounded(box, along, middle - half, middle + half)
    return Cut(rail.name, box, "mortise", "button slot", axis, side, "free", button.part, span)
