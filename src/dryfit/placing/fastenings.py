"""Buttons under a solid top: their number, their places and their boxes."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.joinery.buttons import (
    ButtonSizes,
    ButtonSlot,
    button_box,
    button_cuts,
    button_places,
    button_sizes,
    buttons_along,
    buttons_at_most,
)
from dryfit.joinery.cut import Cut, Placed
from dryfit.joinery.panel import edge_movement
from dryfit.piece.declared import Contact
from dryfit.placing.button_slots import inner_face, pocket, slot_in, tongue_region
from dryfit.placing.found import Found
from dryfit.placing.lines import with_words
from dryfit.placing.seats import Seat
from dryfit.placing.site import Site

ZERO = Fraction(0)
LEAST_ENGAGEMENT = Fraction(3)
"""How far a tongue must stand in its slot at least (TRADE B22, common practice)."""


@dataclass(frozen=True, slots=True)
class Button:
    """One button: its copy as placed, the axis and side of the rail's inner face, its sizes."""

    placed: Placed
    axis: int
    side: int
    sizes: ButtonSizes


def find_buttons(
    site: Site, placed: Mapping[str, Placed], grooves: tuple[Cut, ...]
) -> tuple[tuple[Button, ...], tuple[Found, ...]]:
    """Return the buttons of all tops and their joints; `grooves` are the declared ones.

    A part that the top also lies on but that runs upright only carries it (a `rest`).
    Findings: joint-without-contact, buttons-too-many, button-slot-off-rail,
    button-slot-shallow.
    """
    buttons: list[Button] = []
    found: list[Found] = []
    for contact in site.declared.contacts:
        if contact.joint is None or contact.joint.kind != "buttons":
            continue
        for seat in site.guests(contact):
            _for_top(site, contact, seat, placed, grooves, (buttons, found))
    return tuple(buttons), tuple(found)


def _for_top(
    site: Site,
    contact: Contact,
    guest: Seat,
    placed: Mapping[str, Placed],
    grooves: tuple[Cut, ...],
    into: tuple[list[Button], list[Found]],
) -> None:
    buttons, found = into
    top = placed[guest.name]
    rails: list[Placed] = []
    for seat in site.mates(contact, guest):
        touch = placed[seat.name].box.contact(top.box)
        if touch is None:
            continue
        found.append(Found("rest", top.name, seat.name, touch[1], contact.span))
        if placed[seat.name].axes[0] != 2:
            rails.append(placed[seat.name])
    if not rails:
        _no_rail(site, contact, top)
    slides = [_slide(site, top, rail) for rail in rails]
    counts = _counts(site, contact, rails, slides, placed)
    for rail, count, slide in zip(rails, counts, slides, strict=True):
        taken = slot_in(site, contact, rail, rails, grooves)
        if taken is None:
            continue
        slot, in_groove = taken
        sizes = button_sizes(slot, side_movement(site, top))
        if sizes.engagement < LEAST_ENGAGEMENT:
            _too_shallow(site, contact, top, slot)
            return
        for place in button_places(*_shoulders(site, rail, placed), count):
            button = _button(buttons, rail, place, sizes)
            buttons.append(button)
            own_slot = None if in_groove else pocket(rail, button.placed, slot, slide)
            found.append(_joint(contact, button, rail, (sizes, slot), own_slot))


def _kind(buttons: Sequence[Button], sizes: ButtonSizes) -> str:
    # Grooves at two heights, or two tops that move unequally, take buttons of two kinds.
    kinds = list(dict.fromkeys(button.sizes for button in buttons))
    number = kinds.index(sizes) + 1 if sizes in kinds else len(kinds) + 1
    return "button" if number == 1 else f"button of kind {number}"


def _button(before: Sequence[Button], rail: Placed, place: Fraction, sizes: ButtonSizes) -> Button:
    (axis, side), along = inner_face(rail), rail.axes[0]
    box = button_box(rail, side, axis, place, sizes)
    outward = [1, 1, 1]
    outward[axis] = side
    axes = (axis, along, 2)
    name, kind = f"button {len(before) + 1}", _kind(before, sizes)
    placed = Placed(name, kind, box, axes, (outward[0], outward[1], outward[2]))
    return Button(placed, axis, side, sizes)


def _joint(
    contact: Contact,
    button: Button,
    rail: Placed,
    fit: tuple[ButtonSizes, ButtonSlot],
    own_slot: Cut | None,
) -> Found:
    sizes, slot = fit
    box, axis, side = button.placed.box, button.axis, button.side
    tongue = tongue_region(rail, box, sizes)
    cuts = button_cuts(button.placed.name, box, side, axis, sizes)
    if own_slot is not None:
        cuts += (own_slot,)
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


def _slide(site: Site, top: Placed, rail: Placed) -> Fraction:
    """Return how far the top carries buttons along a rail: on those across its grain only."""
    return side_movement(site, top) if rail.axes[0] == top.axes[1] else ZERO


def _counts(
    site: Site,
    contact: Contact,
    rails: Sequence[Placed],
    slides: Sequence[Fraction],
    placed: Mapping[str, Placed],
) -> list[int]:
    clear = [high - low for low, high in (_shoulders(site, rail, placed) for rail in rails)]
    most = [buttons_at_most(length, slide) for length, slide in zip(clear, slides, strict=True)]
    joint = contact.joint
    written = joint.count if joint else None
    if written is None:
        counts = [buttons_along(length) for length in clear]
        if joint is not None and rails:
            words = f"{sum(counts)} buttons"
            line = with_words(joint.span, words)
            top = site.written(contact.guest.part)
            site.assume_line(f"{words} hold the {top}", joint.span, line)
        return counts
    counts = _shared_out(written, len(rails))
    if any(count > room for count, room in zip(counts, most, strict=True)):
        _too_many(site, contact, sum(most))
        return most
    return counts


def _shared_out(count: int, rails: int) -> list[int]:
    each, extra = divmod(count, rails) if rails else (0, 0)
    return [each + (1 if index < extra else 0) for index in range(rails)]


def _shoulders(site: Site, rail: Placed, placed: Mapping[str, Placed]) -> tuple[Fraction, Fraction]:
    # Buttons keep clear of what the rail enters at its ends.
    axis = rail.axes[0]
    low, high = rail.box.low[axis], rail.box.high[axis]
    for contact in site.contacts(rail.part, "into", "crossing"):
        for host in (mate for each in contact.hosts for mate in site.named(each)):
            shared = rail.box.overlap(placed[host.name].box)
            if shared is None:
                continue
            if shared.low[axis] == rail.box.low[axis]:
                low = max(low, shared.high[axis])
            if shared.high[axis] == rail.box.high[axis]:
                high = min(high, shared.low[axis])
    return low, high


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


def _too_shallow(site: Site, contact: Contact, top: Placed, slot: ButtonSlot) -> None:
    moves = side_movement(site, top)
    site.findings.append(
        Diagnostic(
            "button-slot-shallow",
            Severity.ERROR,
            f"each edge of the {top.part} moves by {site.shown(moves)}: slots "
            f"{site.shown(slot.depth)} deep leave the buttons too little hold",
            contact.span,
            rule="H28",
            figures={"movement": moves, "depth": slot.depth},
            hints=(Hint("make the groove deeper, or the top of two narrower ones"),),
        )
    )


def _too_many(site: Site, contact: Contact, most: int) -> None:
    site.findings.append(
        Diagnostic(
            "buttons-too-many",
            Severity.ERROR,
            f"the rails under the {site.written(contact.guest.part)} take {most} buttons at most",
            contact.joint.span if contact.joint else contact.span,
            rule="H30",
            hints=(Hint("write fewer, or leave the number out"),),
        )
    )
