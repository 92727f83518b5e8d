"""Between which faces a row is spread: hosts at its ends, what carries it, or the piece."""

from __future__ import annotations

from collections.abc import Sequence

from dryfit.piece.declared import Contact, DeclaredPart
from dryfit.placing.ends import ends_of
from dryfit.placing.face_seats import ON_A_FACE
from dryfit.placing.faces import face_hosts, visible_end
from dryfit.placing.positions import Face
from dryfit.placing.seats import Seat
from dryfit.placing.site import SIDE_WORDS, Site, part_words, whole

Bounds = tuple[Face, Face]


def spread_bounds(
    site: Site, part: DeclaredPart, contact: Contact | None, seat: Seat, axis: int
) -> Bounds | None:
    """Return the two faces between which a row is spread, or None while they are unknown.

    `contact` is that whose hosts stand at the ends of the row, if any; `seat` is one of the row.
    """
    if contact is None:
        return _bounds_below(site, part, seat, axis)
    ends = ends_of(site, contact, seat, axis)
    if ends is None or ends.low is None or ends.high is None:
        return None
    # Several hosts may stand at one end: clear space ends at the first face met.
    hosts = site.hosts(contact, seat, axis)
    low = _extreme(site, [host for host in hosts if _beside(host, ends.low, axis)], axis, 1, 1)
    high = _extreme(site, [host for host in hosts if _beside(host, ends.high, axis)], axis, -1, -1)
    return (low, high) if low and high else None


def over_the_piece(axis: int) -> Bounds:
    """Return the two faces of the overall box on an axis."""
    return whole(axis, -1), whole(axis, 1)


def _beside(host: Seat, end: Seat, axis: int) -> bool:
    return host == end or (host.side(axis) != 0 and host.side(axis) == end.side(axis))


def _bounds_below(site: Site, part: DeclaredPart, seat: Seat, axis: int) -> Bounds | None:
    carried = [
        host
        for contact in site.contacts(part.name, "onto", "under")
        for host in site.hosts(contact, seat, 2)
    ]
    on_faces = [
        host
        for contact in site.contacts(part.name, *ON_A_FACE)
        for host in face_hosts(site, contact, seat)
    ]
    hosts = carried or on_faces
    if not hosts:
        return _within_other_faces(site, part, seat, axis)
    bounds = _over(site, hosts, axis, seen=not carried)
    if bounds is None or part.spread is None:
        return None
    on = part_words(site, hosts)
    equal = bounds == _over(site, hosts, axis, seen=not carried, outer=True)
    reach = f"the whole of the {on}" if equal else f"what the {on} have in common"
    site.assume(
        f"the {part.written} are spread over {reach}, "
        f"{SIDE_WORDS[axis, -1]} to {SIDE_WORDS[axis, 1]}",
        part.spread.span,
        None,
    )
    return bounds


def _over(
    site: Site, hosts: Sequence[Seat], axis: int, *, seen: bool, outer: bool = False
) -> Bounds | None:
    # All of a row must lie on all that it lies on: where hosts that run along it are unequal, it
    # is spread over the stretch that they share.
    lows = [visible_end(site, h, axis, -1) if seen else Face(h.name, axis, -1) for h in hosts]
    highs = [visible_end(site, h, axis, 1) if seen else Face(h.name, axis, 1) for h in hosts]
    outermost = _pick(site, lows, 1), _pick(site, highs, -1)
    shared = _pick(site, lows, -1), _pick(site, highs, 1)
    along = all(site.part(host.part).axes[0] == axis for host in hosts)
    if along and not outer and shared[0] and shared[1]:
        room = site.positions.distance(shared[0], shared[1])
        if room is not None and room > 0:
            return shared[0], shared[1]
    low, high = outermost
    return (low, high) if low and high else None


def _within_other_faces(site: Site, part: DeclaredPart, seat: Seat, axis: int) -> Bounds | None:
    # Slats lapped over bearers that run along the spread end with the bearers; else the piece.
    hosts = [
        host
        for contact in site.contacts(part.name, "crossing")
        for host in site.hosts(contact, seat, axis)
        if site.part(host.part).axes[0] == axis
    ]
    return _over(site, hosts, axis, seen=False, outer=True) if hosts else over_the_piece(axis)


def _extreme(site: Site, hosts: Sequence[Seat], axis: int, side: int, most: int) -> Face | None:
    return _pick(site, [Face(host.name, axis, side) for host in hosts], -most)


def _pick(site: Site, faces: Sequence[Face], least: int) -> Face | None:
    """Return the lowest face (`least` 1) or the highest (-1), or None while one is unknown."""
    known = [(place, face) for face in faces if (place := site.positions.at(face)) is not None]
    if not known or len(known) < len(faces):
        return None
    return min(known)[1] if least == 1 else max(known)[1]
