"""The assumption that a copy at a named side lies at that side of what it stands between.

A place word is a wish that is kept: where the hosts reach through (the ends of a bench), nothing
else would say on which side of them a `back rail`, or a rail `at back`, is meant (common
practice).
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from functools import partial

from dryfit.piece.declared import PLACE_SIDE, DeclaredPart
from dryfit.placing.directions import spread_axis
from dryfit.placing.face_seats import ON_A_FACE
from dryfit.placing.heights import say
from dryfit.placing.positions import Face
from dryfit.placing.seats import Seat
from dryfit.placing.site import SIDE_WORDS, Site, both, part_words, whole
from dryfit.placing.subjects import verb

ZERO = Fraction(0)
_SET_IN = ("across", "front to back", "up and down")

Placed = tuple[Seat, int, Seat | None]
"""A copy, the side at which it lies, and the host whose face it meets (None: the piece's)."""


def lies_at_named_side(site: Site, part: DeclaredPart) -> bool:
    """Assume that what stands between hosts that reach through is flush with them at its side.

    What lies on a host reaches to that side of the piece, where its line names the side.
    """
    told: dict[int, list[Placed]] = {}
    for seat in site.seats(part.name):
        for axis in range(3):
            placed = _say_side(site, part, seat, axis)
            if placed is not None:
                told.setdefault(axis, []).append(placed)
    for axis, placed_there in told.items():
        _list(site, part, axis, placed_there)
    return bool(told)


def _say_side(site: Site, part: DeclaredPart, seat: Seat, axis: int) -> Placed | None:
    side = seat.side(axis)
    if not side or axis in {part.axes[0], spread_axis(part)} or not _is_open(site, seat, axis):
        return None
    if site.contacts(part.name, *ON_A_FACE):
        # What lies on a face lies at that side of the face (`along_faces`).
        return None
    if not _is_written(part, axis) and axis == 2:
        # A "top shelf" is only the topmost one.
        return None
    word = SIDE_WORDS[axis, side]
    host = _host_that_reaches_through(site, part, seat, axis)
    if host is not None:
        facts = (Face(host.name, axis, side), Face(seat.name, axis, side), ZERO)
        label, words = f"flush with {host.part}", f"is flush with the {word} of {host.name}"
        return (seat, side, host) if say(site, seat, facts, label, words) else None
    if not _is_written(part, axis) or axis == 2 or not site.contacts(part.name, "onto", "under"):
        return None
    if _enters_at_its_side(site, part, seat, axis) or _waits_for_host(site, part, seat, axis):
        return None
    facts = (whole(axis, side), Face(seat.name, axis, side), ZERO)
    said = say(site, seat, facts, f"at the {word}", f"reaches to the {word} of the piece")
    return (seat, side, None) if said else None


def _enters_at_its_side(site: Site, part: DeclaredPart, seat: Seat, axis: int) -> bool:
    # A post in the left foot goes where that stands, though a beam lies on both posts.
    return any(
        host.side(axis) == seat.side(axis)
        for contact in site.contacts(part.name, "into", "between")
        for host in site.hosts(contact, seat, part.axes[0])
    )


def _waits_for_host(site: Site, part: DeclaredPart, seat: Seat, axis: int) -> bool:
    # A rail under the top goes where the sides of the case begin, once these have their place.
    size = site.positions.extent(seat.name, axis)
    for host in _crossing_hosts(site, part, seat, axis):
        wide = site.positions.extent(host.name, axis)
        through = wide is not None and size is not None and wide > size
        if through and not host.side(axis) and not site.known(host, axis, 1):
            return True
    return False


def _is_open(site: Site, seat: Seat, axis: int) -> bool:
    known = any(site.known(seat, axis, each) for each in (-1, 1))
    sized = site.positions.extent(seat.name, axis) is not None
    return sized and not known and not site.waits_for_ends(seat, axis)


def _is_written(part: DeclaredPart, axis: int) -> bool:
    return any(
        (axis < 2 if word == "corners" else PLACE_SIDE[word][0] == axis) for word in part.places
    )


def _host_that_reaches_through(
    site: Site, part: DeclaredPart, seat: Seat, axis: int
) -> Seat | None:
    hosts = _crossing_hosts(site, part, seat, axis)
    size = site.positions.extent(seat.name, axis)
    for host in hosts:
        wide = site.positions.extent(host.name, axis)
        through = wide is not None and size is not None and wide > size
        if host.side(axis) or not through or not site.known(host, axis, 1):
            return None
    return hosts[0] if hosts else None


def _crossing_hosts(site: Site, part: DeclaredPart, seat: Seat, axis: int) -> list[Seat]:
    return [
        host
        for contact in site.contacts(part.name, "into", "between")
        for host in site.hosts(contact, seat, part.axes[0])
        if site.part(host.part).axes[0] != axis
    ]


def _list(site: Site, part: DeclaredPart, axis: int, placed: Sequence[Placed]) -> None:
    sides = sorted({side for _, side, _ in placed})
    words = " and ".join(SIDE_WORDS[axis, side] for side in sides)
    hosts = part_words(site, [host for _, _, host in placed if host is not None])
    if not hosts:
        text = f"{verb(part, 'reaches', 'reach')} to the {words} of the piece"
        site.assume(text, part.span, f"set in 0 {_SET_IN[axis]}")
        return
    text = f"{verb(part, 'is', 'are')} flush with the {words} of the {hosts}"
    phrase = f"flush with {words} of {hosts}" if len(sides) == 1 else None
    site.assume(text, part.span, phrase or partial(_set_in_phrase, site, part, axis))


def _set_in_phrase(site: Site, part: DeclaredPart, axis: int) -> str | None:
    amounts = set()
    for seat in site.seats(part.name):
        side = seat.side(axis)
        own = both(seat.name, axis)[0 if side < 0 else 1]
        amounts.add(site.positions.distance(own, whole(axis, side)))
    known = {abs(amount) for amount in amounts if amount is not None}
    return f"set in {site.shown(known.pop())} {_SET_IN[axis]}" if len(known) == 1 else None
