"""Parts with what lies on their faces: as large as the piece together, or at its side."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.piece.declared import DeclaredPart
from dryfit.placing.face_seats import ON_A_FACE
from dryfit.placing.faces import Side, face_hosts, face_of
from dryfit.placing.heights import say
from dryfit.placing.positions import Face, Reason
from dryfit.placing.seats import Seat
from dryfit.placing.site import SIDE_WORDS, Site, both, whole
from dryfit.placing.subjects import verb

ZERO = Fraction(0)
_JOINING = ("into", "between", "inside", "crossing")
_ALONG = ("across", "front to back", "up and down")
_AS_LARGE = ("wide", "deep", "high")


def fills_with_what_it_lies_on(site: Site, part: DeclaredPart) -> bool:
    """State that a part and what it lies on go from end to end if they are as large as the piece.

    This follows from the sizes and is not listed: lying otherwise they would stick out.
    """
    news = False
    for seat, host, face in _touching(site, part):
        low, high = both(seat.name, face.axis)
        if site.positions.knows(low) or site.positions.knows(high):
            continue
        ends = _ends_of_all_joined(site, host, face.axis)
        total = site.positions.distance(whole(face.axis, -1), whole(face.axis, 1))
        first = Face(host.name, face.axis, -1)
        if ends is None or total is None or ends[1] - ends[0] != total:
            continue
        size = f"as {_AS_LARGE[face.axis]} as the piece"
        words = f"{seat.name} and what it lies on are together {size}"
        reason = Reason("fits", f"together {size}", words)
        news |= site.positions.add(whole(face.axis, -1), first, -ends[0], reason)
    return news


def outer_face_reaches_side(site: Site, part: DeclaredPart) -> bool:
    """Assume that what lies on the outer face of what stands at a side reaches to that side."""
    told: dict[int, set[int]] = {}
    for seat, host, face in _touching(site, part):
        own = Face(seat.name, face.axis, face.side)
        if site.contacts(host.part, *_JOINING):
            # A rail has its place in the posts that it goes into, and its boards have theirs on it.
            continue
        sized = site.positions.extent(host.name, face.axis) is not None
        inside = host.side(face.axis) != face.side and (sized or host.side(face.axis) != 0)
        if face.axis == 2 or inside or site.positions.knows(own) or _is_covered(site, seat, face):
            continue
        if site.positions.extent(seat.name, face.axis) is None:
            continue
        fact = (whole(face.axis, face.side), own, ZERO)
        if say(site, seat, fact, f"at the {face.word}", f"reaches to the {face.word} of the piece"):
            told.setdefault(face.axis, set()).add(face.side)
    for axis, there in told.items():
        words = [SIDE_WORDS[axis, side] for side in sorted(there)]
        text = f"{verb(part, 'reaches', 'reach')} to the {' and '.join(words)} of the piece"
        phrase = f"set in 0 {_ALONG[axis]}" if len(words) > 1 else f"0 from {words[0]}"
        site.assume(text, part.span, phrase)
    return bool(told)


def _touching(site: Site, part: DeclaredPart) -> Iterator[tuple[Seat, Seat, Side]]:
    for contact in site.contacts(part.name, *ON_A_FACE):
        for seat in site.guests(contact):
            for host in face_hosts(site, contact, seat):
                face = face_of(site, contact, seat, host)
                if face is not None:
                    yield seat, host, face


def _is_covered(site: Site, seat: Seat, face: Side) -> bool:
    return any(
        host == seat and other.axis == face.axis and other.side == face.side
        for part in site.parts()
        for _, host, other in _touching(site, part)
    )


def _ends_of_all_joined(site: Site, host: Seat, axis: int) -> tuple[Fraction, Fraction] | None:
    """Return how far all that is joined to a copy reaches on an axis, beyond its low face."""
    first = Face(host.name, axis, -1)
    found = [
        distance
        for seat in site.seating.all()
        for face in both(seat.name, axis)
        if (distance := site.positions.distance(first, face)) is not None
    ]
    return (min(found), max(found)) if found else None
