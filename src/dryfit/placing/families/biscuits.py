"""Butt joints with biscuits (TRADE B6)."""

from __future__ import annotations

from dryfit.diagnostics import Severity
from dryfit.geometry.box import Box
from dryfit.joinery.biscuits import (
    BESIDE,
    LEAST_WOOD,
    SOLD,
    Biscuit,
    Room,
    biscuit_boxes,
    crowded,
    fits,
    mouths_of,
    of_length,
    room_for,
    slot_of,
    usual_count,
    usual_size,
)
from dryfit.joinery.cut import Placed
from dryfit.joinery.loose_pieces import pockets
from dryfit.piece.declared import Contact, JointWords
from dryfit.placing.families.finding import face_area, faced
from dryfit.placing.found import Found
from dryfit.placing.free_places import Around
from dryfit.placing.lines import with_words
from dryfit.placing.not_fitting import Wrong, not_fitting
from dryfit.placing.row_places import assume_clear, row_clear_of_grooves
from dryfit.placing.site import Site

_RULE = "H17"


def find(site: Site, contact: Contact, guest: Placed, host: Placed, around: Around) -> Found | None:
    """Return the biscuits between two faces that touch."""
    touch, joint = faced(guest, host), contact.joint
    if touch is None or joint is None:
        return None
    region, (axis, side) = touch
    row, (room, size, count) = region, _sizes(joint, (guest, host), region, axis)
    if size is not None:
        usual = mouths_of(region, axis, count, size), size.depth
        row = row_clear_of_grooves(around, (guest, host), region, axis, usual)
        room, size, count = _sizes(joint, (guest, host), row, axis)
    wrong = _wrong(site, (guest, host), size, count, room)
    if wrong is not None:
        not_fitting(site, contact, "biscuits-do-not-fit", wrong)
    if size is None or (wrong is not None and wrong.severity is Severity.ERROR):
        return Found("biscuits", guest.name, host.name, region, contact.span, glued=True)
    _assume(site, joint, (guest, host), size, count)
    if row != region:
        assume_clear(site, joint, (guest, host))
    mouths = mouths_of(row, axis, count, size)
    return Found(
        "biscuits",
        guest.name,
        host.name,
        region,
        contact.span,
        glued=True,
        area=face_area(region, axis),
        cuts=pockets(guest, host, mouths, (axis, side), slot_of(size), contact.span),
        loose_pieces=biscuit_boxes(mouths, axis, side, size),
    )


def _sizes(
    joint: JointWords, pair: tuple[Placed, Placed], row: Box, axis: int
) -> tuple[Room, Biscuit | None, int]:
    """Return the room of a row, and what is written of the biscuits or usual there."""
    room = room_for(pair, row, axis)
    size = usual_size(room) if joint.length is None else of_length(joint.length)
    return room, size, joint.count or usual_count(room.row, size or SOLD[-1])


def _assume(
    site: Site, joint: JointWords, pair: tuple[Placed, Placed], size: Biscuit, count: int
) -> None:
    if joint.length is not None and joint.count is not None:
        return
    guest, host = pair
    # Biscuits are sold by the millimetre wherever notes are in inches too.
    words = f"{count} {'biscuit' if count == 1 else 'biscuits'} {size.length} mm long"
    text = f"{guest.part} into {host.part}: {words}, which is #{size.number}"
    site.assume_line(text, joint.span, with_words(joint.head, words))


def _wrong(
    site: Site, pair: tuple[Placed, Placed], size: Biscuit | None, count: int, room: Room
) -> Wrong | None:
    """Return what keeps the biscuits from being put in, or lets them show."""
    between = f"between {pair[0].part} and {pair[1].part}"
    if size is None:
        sold = ", ".join(f"{each.length} mm (#{each.number})" for each in SOLD)
        return Wrong(
            f"no biscuit of the length written is sold for the joint {between}",
            f"write the length of one that is sold: {sold}; or none, for the one that fits",
            {},
            _RULE,
        )
    if not fits(size, room):
        least = site.shown(size.length + 2 * BESIDE)
        return Wrong(
            f"a #{size.number} biscuit finds no room {between}: "
            f"{site.shown(room.row)} x {site.shown(room.thick)}, {site.shown(room.deep)} deep",
            f"it needs {least} x {site.shown(size.least)}: write a smaller one, or `dowels`",
            {"row": room.row, "thickness": room.thick, "depth": room.deep},
            _RULE,
        )
    if crowded(room.row, count, size):
        return Wrong(
            f"{count} #{size.number} biscuits find no room in a row of {site.shown(room.row)} "
            f"{between}",
            "write fewer or shorter biscuits, or `dowels`, which stand closer",
            {"row": room.row},
            _RULE,
        )
    if room.thick < LEAST_WOOD:
        return Wrong(
            f"a biscuit swells, and may show in wood of {site.shown(room.thick)} {between}",
            f"use wood of {site.shown(LEAST_WOOD)} or more, or `dowels`",
            {"thickness": room.thick},
            _RULE,
            Severity.WARNING,
        )
    return None
