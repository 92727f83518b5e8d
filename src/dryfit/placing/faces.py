"""Which face of its host a part touches: named, inner or outer, or the one that looks at it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from dryfit.piece.declared import PLACE_SIDE, Contact, DeclaredPart
from dryfit.placing.directions import bounded_axis, spread_axis
from dryfit.placing.ends import ends_of
from dryfit.placing.positions import Face
from dryfit.placing.seats import Seat, compatible
from dryfit.placing.site import SIDE_WORDS, Site, both, whole


@dataclass(frozen=True, slots=True)
class Side:
    """A side of a copy as axis and side, with the words that name it."""

    axis: int
    side: int

    @property
    def word(self) -> str:
        """The place word: ``left``."""
        return SIDE_WORDS[self.axis, self.side]


def face_hosts(site: Site, contact: Contact, seat: Seat) -> tuple[Seat, ...]:
    """Return the host copies on which a copy lies: those of its places, or of its own number."""
    key = contact.span, seat.name
    if key not in site.carriers:
        site.carriers[key] = _face_hosts(site, contact, seat)
    return site.carriers[key]


def _face_hosts(site: Site, contact: Contact, seat: Seat) -> tuple[Seat, ...]:
    near = [host for host in site.mates(contact, seat) if compatible(seat, host, -1)]
    if contact.face in PLACE_SIDE:
        axis, side = PLACE_SIDE[contact.face]
        near = [host for host in near if host.side(axis) == side] or near
    part = site.part(seat.part)
    row = [each for each in site.seats(seat.part) if each.places == seat.places]
    if _paired_by_number(part, near, len(row), site):
        return (near[row.index(seat) * len(near) // len(row)],)
    return tuple(near)


def _paired_by_number(part: DeclaredPart, hosts: Sequence[Seat], copies: int, site: Site) -> bool:
    # Copies go to numbered hosts in turn, unless they lie over all of them.
    if len(hosts) < 2 or copies % len(hosts):
        return False
    if any(host.number is None and host.within is None for host in hosts):
        return False
    of_hosts = {host.part for host in hosts}
    along = {spread_axis(site.part(name)) for name in of_hosts}
    return part.spread is None and len(of_hosts) == 1 and part.axes[0] not in along


def face_of(site: Site, contact: Contact, seat: Seat, host: Seat) -> Side | None:
    """Return the face of a host that a guest touches, or None while that cannot be told.

    What is inside looks towards the middle of the piece; what lies against something has its
    place on the side where it stands, or where the piece goes on.
    """
    if contact.face in PLACE_SIDE:
        return Side(*PLACE_SIDE[contact.face])
    part = site.part(seat.part)
    likeliest = tuple(_square_to(site, part, host))
    if not likeliest:
        return None
    axis = likeliest[0]
    inner = _inner_side(site, host, axis)
    if inner == 0 and contact.face is not None:
        # A member of a frame is as deep as the frame: then the edges look inwards, or outwards.
        edge = next((each for each in likeliest[1:] if host.side(each)), axis)
        axis, inner = edge, _inner_side(site, host, edge)
    if contact.face == "outside" and inner is not None:
        inner = -inner
    elif contact.face is None:
        inner = _side_of_guest(site, seat, host, axis) or inner
    return Side(axis, inner) if inner else None


def visible_end(site: Site, host: Seat, axis: int, side: int) -> Face:
    """Return where a copy ends on a side as one sees it: at what it enters there, if anything."""
    part = site.part(host.part)
    for contact in site.contacts(host.part, "into", "between") if part.axes[0] == axis else ():
        ends = ends_of(site, contact, host, axis)
        mate = None if ends is None else ends.low if side < 0 else ends.high
        if mate is not None and bounded_axis(site, part, contact) == axis:
            return Face(mate.name, axis, -side)
    return Face(host.name, axis, side)


def sides_in_question(site: Site, part: DeclaredPart, host: Seat) -> tuple[Side, Side]:
    """Return the two faces between which nothing decides."""
    axis = next(_square_to(site, part, host), site.part(host.part).axes[2])
    return Side(axis, -1), Side(axis, 1)


def _square_to(site: Site, part: DeclaredPart, host: Seat) -> Iterator[int]:
    # The axes square to the face, likeliest first: through the host's thickness; of what lies
    # flat at a side, through its width; of square stock the one along which the guest lies thin.
    of_host = site.part(host.part)
    _, wide, thin = of_host.axes
    measured = {each.axis for each in part.lists} | {each.axis for each in part.offsets}
    at_a_side = thin == 2 and host.side(wide) != 0
    turned = at_a_side or (part.axes[2] == wide and _is_square(site, host, of_host))
    likeliest = (wide, thin) if turned else (thin, wide)
    yield from (axis for axis in likeliest if axis not in measured | {spread_axis(part)})


def _is_square(site: Site, host: Seat, of_host: DeclaredPart) -> bool:
    wide, thin = (site.positions.extent(host.name, axis) for axis in of_host.axes[1:])
    return wide is not None and wide == thin


def _inner_side(site: Site, host: Seat, axis: int) -> int | None:
    # None while the host's place is unknown, 0 where it stands in the middle.
    if host.side(axis):
        return -host.side(axis)
    low, high = (site.positions.at(face) for face in both(host.name, axis))
    ends = (
        site.positions.at(
            whole(axis, side) if host.within is None else Face(host.within, axis, side)
        )
        for side in (-1, 1)
    )
    start, end = ends
    if low is None or high is None or start is None or end is None:
        return None
    middle = low + high - start - end
    return 0 if middle == 0 else 1 if middle < 0 else -1


def _side_of_guest(site: Site, seat: Seat, host: Seat, axis: int) -> int:
    if seat.side(axis) and not host.side(axis):
        return seat.side(axis)
    for low, high, side in ((host, seat, 1), (seat, host, -1)):
        before = site.positions.at(Face(low.name, axis, 1))
        after = [site.positions.at(face) for face in both(high.name, axis)]
        if before is not None and any(each is not None and each >= before for each in after):
            return side
    return 0
