"""Assumptions about heights: what reaches the top, what stands on the floor, what is level."""

from __future__ import annotations

from fractions import Fraction
from functools import partial

from dryfit.piece.declared import DeclaredPart
from dryfit.placing.directions import bounded_axis, spread_axis
from dryfit.placing.ends import ends_of
from dryfit.placing.face_seats import ON_A_FACE
from dryfit.placing.positions import Face, Reason
from dryfit.placing.seats import Seat
from dryfit.placing.site import SIDE_WORDS, Site, part_words, whole
from dryfit.placing.subjects import verb

ZERO = Fraction(0)
UP = 2
# What is called so stands on the floor, whichever way it runs (common practice).
_ON_THE_FLOOR = frozenset({"foot"})
_HANGING = ("between", "inside", "onto", *ON_A_FACE)
# A flat part stands level with its hosts only where its name says at which end of them.
_FLAT_SIDES = {"top": 1, "bottom": -1}


def say(
    site: Site,
    seat: Seat,
    facts: tuple[Face, Face, Fraction],
    label: str,
    words: str,
    figures: tuple[str, ...] = (),
) -> bool:
    """Add an assumed fact about a copy; return whether it was news.

    `figures` names what its distance comes from.  Nothing is assumed where a written distance from
    another part still waits for the place of that.
    """
    if _waits_for_a_distance(site, seat, facts[0].axis):
        return False
    reason = Reason("assumed", label, f"{seat.name} {words}", assumed=True, figures=figures)
    return site.positions.add(*facts, reason)


def _waits_for_a_distance(site: Site, seat: Seat, axis: int) -> bool:
    offsets = (each for each in site.part(seat.part).offsets if each.axis == axis)
    return any(
        not site.known(seat, axis, -each.side if each.beyond else each.side) for each in offsets
    )


def at_the_top(site: Site, seat: Seat) -> bool:
    """Return whether a copy is known to reach the overall height."""
    return site.positions.distance(Face(seat.name, UP, 1), whole(UP, 1)) == 0


def topmost_reaches_height(site: Site, part: DeclaredPart) -> bool:
    """Assume that what lies on something and carries nothing reaches the overall height.

    What lies on the bottom of others, such as a cleat on the lower rail of a frame, does not.
    """
    contacts = site.contacts(part.name, "onto")
    if not contacts or _carries_something(site, part):
        return False
    hosts = {host.part for contact in contacts for host in contact.hosts}
    if {seat.side(UP) for host in hosts for seat in site.seats(host)} == {-1}:
        return False
    news = False
    for seat in site.seats(part.name):
        if not site.known(seat, UP, 1) and site.positions.extent(seat.name, UP) is not None:
            news |= _at_height(site, seat)
    if news:
        text = f"{verb(part, 'reaches', 'reach')} the overall height"
        site.assume(text, part.span, "down 0")
    return news


def _at_height(site: Site, seat: Seat) -> bool:
    facts = (whole(UP, 1), Face(seat.name, UP, 1), ZERO)
    return say(site, seat, facts, "reaches the overall height", "reaches the overall height")


def _carries_something(site: Site, part: DeclaredPart) -> bool:
    return bool(site.contacts_on(part.name, "onto"))


def stands_on_floor(site: Site, part: DeclaredPart) -> bool:
    """Assume that what runs upright, and neither hangs between others nor lies on any, stands."""
    if not _stands(part) and part.name.rsplit(" ", 1)[-1] not in _ON_THE_FLOOR:
        return False
    if site.contacts(part.name, *_HANGING) or _enters_upwards(site, part):
        return False
    if _waits_for_feet(site, part):
        return False
    one, many, where = ("stands", "stand", "on the floor")
    if _hangs(site):
        one, many, where = ("reaches", "reach", "down to the bottom of the piece")
    news = False
    for seat in site.seats(part.name):
        if not site.known(seat, UP, -1) and seat.side(UP) != 1:
            facts = (whole(UP, -1), Face(seat.name, UP, -1), ZERO)
            news |= say(site, seat, facts, f"{one} {where}", f"{one} {where}")
    if news:
        site.assume(f"{verb(part, one, many)} {where}", part.span, "up 0")
    return news


def _hangs(site: Site) -> bool:
    place = site.declared.place
    return place is not None and place.wall is not None and place.wall.hangs


def _waits_for_feet(site: Site, part: DeclaredPart) -> bool:
    # What stands under something stands on the floor before anything else does.
    return not site.contacts(part.name, "under") and any(
        _stands(other) and not site.known(seat, UP, -1)
        for other in site.parts()
        if other.name != part.name and site.contacts(other.name, "under")
        for seat in site.seats(other.name)
    )


def _stands(part: DeclaredPart) -> bool:
    return part.run == "upright" or part.instance is not None


def _enters_upwards(site: Site, part: DeclaredPart) -> bool:
    # A post that is tenoned into a foot stands on that, and not on the floor.
    return any(bounded_axis(site, part, each) == UP for each in site.contacts(part.name, "into"))


def level_with_hosts(site: Site, part: DeclaredPart) -> bool:
    """Assume that rails are level with the ends of the uprights that they go between.

    Where the top already lies on the rails, it is the uprights that end level with them.
    """
    if part.run == "upright" or spread_axis(part) == UP or site.contacts(part.name, *ON_A_FACE):
        return False
    news = [
        (seat, host, side)
        for contact in site.contacts(part.name, "into", "between")
        for seat in site.guests(contact)
        if (side := _level_side(part, seat))
        for host in site.hosts(contact, seat, part.axes[0])
        if _may_be_level(site, part, seat, host, side) and _say_level(site, seat, host, side)
    ]
    if not news:
        return False
    hosts = part_words(site, [host for _, host, _ in news])
    sides = sorted({side for _, _, side in news})
    words = " and ".join(SIDE_WORDS[UP, side] for side in sides)
    site.assume(
        f"{verb(part, 'is', 'are')} level with the {words} of the {hosts}",
        part.span,
        f"flush with {words} of {hosts}" if len(sides) == 1 else partial(_set_in, site, part),
    )
    return True


def _set_in(site: Site, part: DeclaredPart) -> str | None:
    amounts = set()
    for seat in site.seats(part.name):
        side = seat.side(UP)
        amounts.add(site.positions.distance(Face(seat.name, UP, side), whole(UP, side)))
    known = {abs(amount) for amount in amounts if amount is not None}
    return f"set in {site.shown(known.pop())} up and down" if len(known) == 1 else None


def _level_side(part: DeclaredPart, seat: Seat) -> int:
    if part.axes[2] == UP:
        return _FLAT_SIDES.get(part.name.rsplit(" ", 1)[-1], 0)
    return seat.side(UP) or 1


def _may_be_level(site: Site, part: DeclaredPart, seat: Seat, host: Seat, side: int) -> bool:
    if site.part(host.part).run != "upright":
        return False
    if not site.known(seat, UP, side):
        return True
    return side == 1 and not site.known(host, UP, 1) and _carries_the_top(site, part)


def _carries_the_top(site: Site, part: DeclaredPart) -> bool:
    return any(
        at_the_top(site, seat)
        for contact in site.contacts_on(part.name, "onto")
        for seat in site.guests(contact)
    )


def _say_level(site: Site, seat: Seat, host: Seat, side: int) -> bool:
    word = SIDE_WORDS[UP, side]
    facts = (Face(host.name, UP, side), Face(seat.name, UP, side), ZERO)
    words = f"is level with the {word} of {host.name}"
    return say(site, seat, facts, f"level with {host.part}", words)


def reaches_height(site: Site, part: DeclaredPart) -> bool:
    """Assume, last, that uprights whose foot is placed reach the overall height.

    What goes into or under another at its upper end ends there, once that has its place.
    """
    if not _stands(part):
        return False
    news = False
    for seat in site.seats(part.name):
        if not site.known(seat, UP, -1) or site.known(seat, UP, 1):
            continue
        if not _enters_at_its_top(site, part, seat):
            news |= _at_height(site, seat)
    if news:
        text = f"{verb(part, 'reaches', 'reach')} the overall height"
        site.assume(text, part.span, "down 0")
    return news


def _enters_at_its_top(site: Site, part: DeclaredPart, seat: Seat) -> bool:
    for contact in site.contacts(part.name, "into", "between"):
        if bounded_axis(site, part, contact) == UP:
            ends = ends_of(site, contact, seat, UP)
            if ends is not None and ends.high is not None:
                return True
    return False
