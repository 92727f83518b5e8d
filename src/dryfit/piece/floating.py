"""Which end of a part floats: its line glues the tenon at the opposite end alone (TRADE B21.3)."""

from __future__ import annotations

from dryfit.piece.declared import PLACE_SIDE, Contact, DeclaredPart


def floating_end(part: DeclaredPart, contact: Contact) -> tuple[int, int] | None:
    """Return the axis and the side of the end that no glue holds, or None where none floats."""
    joint = contact.joint
    if joint is None or joint.kind != "tenon" or contact.guest.part != part.name:
        return None
    places = {patch.place if patch.kind == "place" else None for patch in contact.glue}
    place = next(iter(places)) if len(places) == 1 else None
    if place is None:
        return None
    axis, side = PLACE_SIDE[place]
    return (axis, -side) if part.axes[0] == axis else None
