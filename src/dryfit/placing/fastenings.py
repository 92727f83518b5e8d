"""Buttons under a solid top: their number, their places and their boxes."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from dryfit.joinery.buttons import (
    ButtonSizes,
    ButtonSlot,
    button_box,
    button_cuts,
    button_sizes,
    buttons_along,
    buttons_at_most,
    half_slot,
)
from dryfit.joinery.cut import Cut, Placed
from dryfit.joinery.panel import edge_movement
from dryfit.piece.declared import Contact
from dryfit.placing.button_findings import no_rail, stands_under, too_many, too_shallow
from dryfit.placing.button_places import Row, Stood, blocked_along, shared_out, stood_in_row
from dryfit.placing.button_slots import (
    assume_pockets,
    inner_face,
    pocket,
    slot_in,
    tongue_region,
)
from dryfit.placing.found import Found
from dryfit.placing.lines import with_words
from dryfit.placing.seats import Seat
from dryfit.placing.site import SIDE_WORDS, Site

ZERO = Fraction(0)
UP = 2
LEAST_ENGAGEMENT = Fraction(3)
"""How far a tongue must stand in its slot at least (TRADE B22, common practice)."""


@dataclass(frozen=True, slots=True)
class Button:
    """One button: its copy as placed, the axis and side of the rail's inner face, its sizes."""

    placed: Placed
    axis: int
    side: int
    sizes: ButtonSizes


@dataclass(frozen=True, slots=True)
class _Standing:
    """All copies by name, all that is cut before buttons are placed, and the buttons so far."""

    placed: Mapping[str, Placed]
    cuts: Sequence[Cut]
    buttons: list[Button]
    found: list[Found]


def find_buttons(
    site: Site, placed: Mapping[str, Placed], cuts: Sequence[Cut]
) -> tuple[tuple[Button, ...], tuple[Found, ...]]:
    """Return the buttons of all tops and their joints; `cuts` is all else that is cut.

    A part that the top also lies on but that runs upright only carries it (a `rest`).
    Findings: joint-without-contact, buttons-too-many, button-slot-off-rail,
    button-slot-shallow.
    """
    standing = _Standing(placed, cuts, [], [])
    for contact in site.declared.contacts:
        if contact.joint is None or contact.joint.kind != "buttons":
            continue
        for seat in site.guests(contact):
            _for_top(site, contact, seat, standing)
    return tuple(standing.buttons), tuple(standing.found)


def _for_top(site: Site, contact: Contact, guest: Seat, standing: _Standing) -> None:
    top = standing.placed[guest.name]
    rails: list[Placed] = []
    uprights: list[Placed] = []
    for seat in site.mates(contact, guest):
        rail = standing.placed[seat.name]
        touch = rail.box.contact(top.box)
        if touch is None:
            continue
        standing.found.append(Found("rest", top.name, seat.name, touch[1], contact.span))
        (uprights if rail.axes[0] == UP else rails).append(rail)
    stands_under(site, contact, top, uprights)
    if not rails:
        no_rail(site, contact, top)
    rows = _rows(site, contact, top, rails, standing)
    others = {name: copy for name, copy in standing.placed.items() if name != top.name}
    stood = _stood(site, contact, rows, replace(standing, placed=others))
    if stood and not any(each.places for each in stood):
        no_rail(site, contact, top)
    for each in stood:
        _list_places(site, contact, each)
        for place in each.places:
            _add_button(contact, each.row, place, standing)


def _rows(
    site: Site, contact: Contact, top: Placed, rails: Sequence[Placed], standing: _Standing
) -> list[Row]:
    """Return what buttons each rail takes, without those that no button fits."""
    grooves = [cut for cut in standing.cuts if cut.role == "groove"]
    rows: list[Row] = []
    for rail in rails:
        taken = slot_in(site, contact, rail, rails, grooves)
        if taken is None:
            continue
        slot, in_groove = taken
        sizes = button_sizes(slot, side_movement(site, top))
        if sizes.engagement < LEAST_ENGAGEMENT:
            too_shallow(site, contact, top, slot, side_movement(site, top))
            return []
        low, high = shoulders_of(site, rail, standing.placed)
        rows.append(Row(rail, slot, in_groove, sizes, _slide(site, top, rail), low, high))
    return rows


def _list_places(site: Site, contact: Contact, stood: Stood) -> None:
    rail, along = stood.row.rail, stood.row.rail.axes[0]
    if not stood.places:
        why = f"{stood.kept_out} is in the way" if stood.kept_out else "it is too short"
        site.assume_line(f"no button has room on the {rail.name}: {why}", contact.span, None)
    elif not stood.row.in_groove:
        assume_pockets(site, contact, rail, stood.row.slot)
    for each in stood.moved:
        where = f"{site.shown(abs(each.by))} to the {SIDE_WORDS[along, 1 if each.by > 0 else -1]}"
        site.assume_line(
            f"a button on the {rail.name} stands {where} of its usual place, clear of {each.what}",
            contact.span,
            None,
        )


def _add_button(contact: Contact, row: Row, place: Fraction, standing: _Standing) -> None:
    button = _button(standing.buttons, row.rail, place, row.sizes)
    standing.buttons.append(button)
    half = half_slot(row.sizes, row.slide)
    own_slot = (
        None if row.in_groove else pocket(row.rail, button.placed, row.slot, half, contact.span)
    )
    standing.found.append(_joint(contact, button, row.rail, (row.sizes, row.slot), own_slot))


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
    return edge_movement(top.box.extent(top.axes[1]), site.moving(part))


def _slide(site: Site, top: Placed, rail: Placed) -> Fraction:
    """Return how far the top carries buttons along a rail: on those across its grain only."""
    return side_movement(site, top) if rail.axes[0] == top.axes[1] else ZERO


def _stood(
    site: Site, contact: Contact, rows: Sequence[Row], standing: _Standing
) -> tuple[Stood, ...]:
    """Return where the buttons of all rails stand: as many as are written, or as have room."""
    most = [buttons_at_most(row.high - row.low, row.slide) for row in rows]
    joint = contact.joint
    written = joint.count if joint else None
    if written is None:
        usual = [buttons_along(row.high - row.low) for row in rows]
        counts = [min(count, room) for count, room in zip(usual, most, strict=True)]
        stood = _in_their_places(rows, counts, standing)
        if joint is not None and rows:
            words = f"{sum(len(each.places) for each in stood)} buttons"
            line = with_words(joint.span, words)
            top = site.written(contact.guest.part)
            site.assume_line(f"{words} hold the {top}", joint.span, line)
        return stood
    while written <= sum(most):
        counts = shared_out(written, rows, most)
        stood = _in_their_places(rows, counts, standing)
        found = [len(each.places) for each in stood]
        if found == counts:
            return stood
        most = [
            len(each.places) if len(each.places) < count else room
            for each, count, room in zip(stood, counts, most, strict=True)
        ]
    if rows:
        # Where no rail takes any, that has been told.
        too_many(site, contact, sum(most))
    return ()


def _in_their_places(
    rows: Sequence[Row], counts: Sequence[int], standing: _Standing
) -> tuple[Stood, ...]:
    made = list(standing.buttons)
    stood: list[Stood] = []
    for row, count in zip(rows, counts, strict=True):
        beside = (*standing.placed.values(), *(button.placed for button in made))
        stood.append(stood_in_row(row, count, blocked_along(row, beside, standing.cuts)))
        for place in stood[-1].places:
            made.append(_button(made, row.rail, place, row.sizes))
    return tuple(stood)


def shoulders_of(
    site: Site, rail: Placed, placed: Mapping[str, Placed]
) -> tuple[Fraction, Fraction]:
    """Return between what a rail is free for fixings: clear of what it enters at its ends."""
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
