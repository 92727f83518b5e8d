"""Buttons under a solid top: their number, places and boxes, and the slots they engage."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.geometry.box import Box
from dryfit.joinery.buttons import (
    ButtonSizes,
    ButtonSlot,
    button_box,
    button_cuts,
    button_places,
    button_sizes,
    buttons_along,
    usual_slot,
)
from dryfit.joinery.cut import Cut, Placed, bounded, from_side
from dryfit.joinery.panel import edge_movement
from dryfit.piece.declared import Contact
from dryfit.placing.found import Found
from dryfit.placing.lines import with_words
from dryfit.placing.site import Site

ZERO = Fraction(0)


@dataclass(frozen=True, slots=True)
class Button:
    """One button: its copy as placed, and the axis and side of the rail's inner face."""

    placed: Placed
    axis: int
    side: int


def find_buttons(
    site: Site, placed: Mapping[str, Placed], grooves: tuple[Cut, ...]
) -> tuple[tuple[Button, ...], tuple[Found, ...]]:
    """Return the buttons of all tops and their joints; `grooves` are the declared ones.

    A part that the top also lies on but that runs upright only carries it (a `rest`).
    Findings: joint-without-contact.
    """
    buttons: list[Button] = []
    found: list[Found] = []
    for contact in site.declared.contacts:
        if contact.joint is None or contact.joint.kind != "buttons":
            continue
        for seat in site.guests(contact):
            if seat.name in placed:
                _for_top(site, contact, placed[seat.name], placed, grooves, (buttons, found))
    return tuple(buttons), tuple(found)


def _for_top(
    site: Site,
    contact: Contact,
    top: Placed,
    placed: Mapping[str, Placed],
    grooves: tuple[Cut, ...],
    into: tuple[list[Button], list[Found]],
) -> None:
    buttons, found = into
    rails: list[Placed] = []
    for seat in (mate for host in contact.hosts for mate in site.named(host)):
        touch = placed[seat.name].box.contact(top.box) if seat.name in placed else None
        if touch is None:
            continue
        found.append(Found("rest", top.name, seat.name, touch[1], contact.span))
        if placed[seat.name].axes[0] != 2:
            rails.append(placed[seat.name])
    if not rails:
        _no_rail(site, contact, top)
        return
    for rail, count in zip(rails, _counts(site, contact, rails, placed), strict=True):
        groove = _groove_of(rail, grooves)
        slot = _slot_of(groove, rail) if groove else _usual_slot(site, contact, rail)
        sizes = button_sizes(slot, side_movement(site, top))
        low, high = _shoulders(site, rail, placed)
        for place in button_places(low, high, count):
            button = _button(len(buttons) + 1, rail, place, sizes)
            buttons.append(button)
            found.append(_joint(contact, button, rail, sizes, slot, has_groove=groove is not None))


def _usual_slot(site: Site, contact: Contact, rail: Placed) -> ButtonSlot:
    slot = usual_slot(site.declared.display)
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
    return slot


def _groove_of(rail: Placed, grooves: tuple[Cut, ...]) -> Cut | None:
    inner = (rail.axes[2], -rail.outward[rail.axes[2]])
    return next((c for c in grooves if c.copy == rail.name and (c.axis, c.side) == inner), None)


def _button(number: int, rail: Placed, place: Fraction, sizes: ButtonSizes) -> Button:
    axis, along = rail.axes[2], rail.axes[0]
    side = -rail.outward[axis]
    box = button_box(rail, side, axis, place, sizes)
    outward = [1, 1, 1]
    outward[axis] = side
    axes = (axis, along, 2)
    placed = Placed(f"button {number}", "button", box, axes, (outward[0], outward[1], outward[2]))
    return Button(placed, axis, side)


def _joint(
    contact: Contact,
    button: Button,
    rail: Placed,
    sizes: ButtonSizes,
    slot: ButtonSlot,
    *,
    has_groove: bool,
) -> Found:
    box, axis, side = button.placed.box, button.axis, button.side
    tongue = _tongue(rail, box, sizes)
    cuts = button_cuts(button.placed.name, box, side, axis, sizes)
    if not has_groove:
        cuts += (_pocket(rail, box, (axis, side), slot),)
    return Found(
        "buttons",
        button.placed.name,
        rail.name,
        tongue,
        contact.span,
        shares=tongue,
        clearance=slot.depth - sizes.engagement,
        end=(axis, -side),
        cuts=cuts,
    )


def side_movement(site: Site, top: Placed) -> Fraction:
    """Return how far each edge of a top may move, mm; nothing for sheet goods."""
    part = site.part(top.part)
    if part.stock == "sheet":
        return ZERO
    return edge_movement(top.box.extent(top.axes[1]), part.timber or site.declared.timber)


def _counts(
    site: Site,
    contact: Contact,
    rails: list[Placed],
    placed: Mapping[str, Placed],
) -> list[int]:
    written = contact.joint.count if contact.joint else None
    if written is not None:
        each, extra = divmod(written, len(rails))
        return [each + (1 if index < extra else 0) for index in range(len(rails))]
    clear = [_shoulders(site, rail, placed) for rail in rails]
    counts = [buttons_along(high - low) for low, high in clear]
    joint = contact.joint
    if joint is not None:
        words = f"{sum(counts)} buttons"
        line = with_words(joint.span, words)
        site.assume_line(f"{words} hold the {site.written(contact.guest.part)}", joint.span, line)
    return counts


def _shoulders(site: Site, rail: Placed, placed: Mapping[str, Placed]) -> tuple[Fraction, Fraction]:
    # Buttons keep clear of what the rail enters at its ends.
    axis = rail.axes[0]
    low, high = rail.box.low[axis], rail.box.high[axis]
    for contact in site.contacts(rail.part, "into", "crossing"):
        for host in (mate for each in contact.hosts for mate in site.named(each)):
            other = placed.get(host.name)
            shared = rail.box.overlap(other.box) if other else None
            if shared is None:
                continue
            if shared.low[axis] == rail.box.low[axis]:
                low = max(low, shared.high[axis])
            if shared.high[axis] == rail.box.high[axis]:
                high = min(high, shared.low[axis])
    return low, high


def _slot_of(groove: Cut, rail: Placed) -> ButtonSlot:
    return ButtonSlot(
        offset=rail.box.high[2] - groove.box.high[2],
        width=groove.box.extent(2),
        depth=groove.box.extent(groove.axis),
    )


def _tongue(rail: Placed, box: Box, sizes: ButtonSizes) -> Box:
    high = box.high[2] - sizes.set_down
    inside = bounded(box, 2, high - sizes.tongue_thickness, high)
    shared = inside.overlap(rail.box)
    if shared is None:
        raise AssertionError(box)
    return shared


def _pocket(rail: Placed, box: Box, surface: tuple[int, int], slot: ButtonSlot) -> Cut:
    axis, side = surface
    along = rail.axes[0]
    pocket = from_side(rail.box, axis, side, slot.depth)
    top = rail.box.high[2] - slot.offset
    pocket = bounded(pocket, 2, top - slot.width, top)
    pocket = bounded(pocket, along, box.low[along] - 1, box.high[along] + 1)
    return Cut(rail.name, pocket, "mortise", "button slot", axis, side, "free", "button", None)


def _no_rail(site: Site, contact: Contact, top: Placed) -> None:
    site.findings.append(
        Diagnostic(
            "joint-without-contact",
            Severity.ERROR,
            f"{top.name} lies on no rail that could take a button's tongue",
            contact.span,
            rule="H28",
            hints=(Hint("name a rail or an apron that stands under it"),),
        )
    )
