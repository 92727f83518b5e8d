"""The assumption that a lapped part ends at the far side of its last mate (TRADE B1.1, B1.2)."""

from __future__ import annotations

from fractions import Fraction
from functools import partial

from dryfit.kinds.joints import is_mitred
from dryfit.piece.declared import DeclaredPart
from dryfit.placing.crossing import crossing_mates
from dryfit.placing.heights import UP, at_the_top, say
from dryfit.placing.positions import Face
from dryfit.placing.seats import Seat
from dryfit.placing.site import Site, part_words, size_phrase

ZERO = Fraction(0)


def lap_runs_to_far_side(site: Site, part: DeclaredPart) -> bool:
    """Assume that lapped parts run to the far side of the mates at their two ends.

    Uprights of a piece with nothing lying on top reach its height instead.
    """
    axis, mates, ends = part.axes[0], [], _lapped_ends(site, part)
    free_at_top = axis == UP and bool(ends) and not _something_lies_on_top(site)
    for seat, mate, side in ends:
        if site.known(seat, axis, side) or (free_at_top and side == 1):
            continue
        facts = (Face(mate.name, axis, side), Face(seat.name, axis, side), ZERO)
        words = f"runs to the far side of {mate.name}"
        if say(site, seat, facts, f"to the far side of {mate.part}", words):
            mates.append(mate)
    if not mates:
        return False
    they, does = ("it is", "runs") if part.count == 1 else ("they are", "run")
    if part.sizes[0] is not None:
        does = "begins" if part.count == 1 else "begin"
    where = "to the far side" if part.sizes[0] is None else "at the far side"
    site.assume(
        f"the {part.written} {does} {where} of the {part_words(site, mates)} that {they} "
        f"{_joined(site, part)} with",
        part.span,
        partial(size_phrase, site, part, axis),
    )
    return True


def _joined(site: Site, part: DeclaredPart) -> str:
    """Return how a part that crosses others is joined to them, in a word."""
    contacts = (*site.contacts(part.name, "crossing"), *site.contacts_on(part.name, "crossing"))
    kinds = {each.joint.kind for each in contacts if each.joint is not None}
    return "mitred" if kinds and all(map(is_mitred, kinds)) else "lapped"


def _something_lies_on_top(site: Site) -> bool:
    return any(
        at_the_top(site, seat)
        for contact in site.declared.contacts
        if contact.preposition == "onto"
        for seat in site.guests(contact)
    )


def _lapped_ends(site: Site, part: DeclaredPart) -> list[tuple[Seat, Seat, int]]:
    found = []
    for seat, mates in crossing_mates(site, part):
        for side in (-1, 1):
            mate = next((mate for mate in mates if mate.side(part.axes[0]) == side), None)
            if mate:
                found.append((seat, mate, side))
    return found
