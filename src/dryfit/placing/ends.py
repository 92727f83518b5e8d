"""Into and between: which hosts stand at a part's two ends, and how far it enters them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import partial

from dryfit.joinery.proportions import (
    usual_housing_depth,
    usual_tenon_length,
    usual_tenon_length_at_a_corner,
)
from dryfit.joinery.rabbets import usual_rabbet_depth
from dryfit.kinds.joints import is_mitred
from dryfit.piece.declared import Contact, DeclaredPart, JointWords
from dryfit.placing.corner_reach import is_corner, reach_of
from dryfit.placing.corner_tenons import RailEnd, length_at_corners
from dryfit.placing.directions import bounded_axis, entering_edge, spread_axis
from dryfit.placing.floating_ends import floats_by
from dryfit.placing.lines import with_sizes_added
from dryfit.placing.play import play_at, state_play
from dryfit.placing.positions import Face, Reason
from dryfit.placing.seats import Seat, beside
from dryfit.placing.site import Site, both, size_name, whole
from dryfit.placing.tenon_words import is_through, proud_of

ZERO = Fraction(0)


@dataclass(frozen=True, slots=True)
class Ends:
    """The hosts at the low and the high end of a part; None where an end stands free."""

    low: Seat | None
    high: Seat | None


def state_ends(site: Site, part: DeclaredPart, contact: Contact, seat: Seat) -> None:
    """Queue the facts that a guest's shoulders touch the facing sides of its hosts.

    Hosts that only bound a spread say nothing about single copies.
    """
    axis = bounded_axis(site, part, contact)
    if spread_axis(part) == axis:
        return
    site.unsaid_ends[seat.name, contact.span] = (contact, axis)
    site.pending.append(partial(_find_ends, site, part, contact, seat, axis))


def ends_of(site: Site, contact: Contact, seat: Seat, axis: int) -> Ends | None:
    """Return the hosts at a copy's ends along an axis, or None while that cannot be told.

    Place words tell; else the positions of the hosts do, once they are known.  A single host, or
    several on one side, stand at one end; so does the host of a named edge.
    """
    edge = entering_edge(site.part(seat.part), contact)
    if edge is None or not edge[1] or edge[0] != axis:
        return _all_ends(site, contact, seat, axis)
    hosts = site.hosts(contact, seat, axis)
    host = next((each for each in hosts if each.side(axis) == edge[1] or len(hosts) == 1), None)
    both_ends = None if host else _all_ends(site, contact, seat, axis)
    if both_ends is not None:
        host = both_ends.low if edge[1] < 0 else both_ends.high
    if host is None:
        return None
    return Ends(host, None) if edge[1] < 0 else Ends(None, host)


def _all_ends(site: Site, contact: Contact, seat: Seat, axis: int) -> Ends | None:
    hosts: Sequence[Seat] = site.hosts(contact, seat, axis)
    for other in (each for each in range(3) if each != axis):
        # Of legs at the left and in the middle, those at the left are a left rail's.
        hosts = beside(hosts, seat, other)
    low = next((host for host in hosts if host.side(axis) == -1), None)
    high = next((host for host in hosts if host.side(axis) == 1), None)
    if low and high:
        return Ends(low, high)
    if (low or high) and all(host.side(axis) for host in hosts):
        return Ends(low, high) if contact.preposition == "into" else None
    return _ends_by_position(site, contact, seat, axis, hosts)


def _ends_by_position(
    site: Site, contact: Contact, seat: Seat, axis: int, hosts: Sequence[Seat]
) -> Ends | None:
    middles: dict[Fraction, Seat] = {}
    for host in hosts:
        middle = _middle(site, host, axis)
        if middle is None:
            return None
        middles.setdefault(middle, host)
    places = sorted(middles)
    if len(places) == 1 and contact.preposition == "into":
        return _one_end(site, seat, axis, middles[places[0]], places[0])
    gap = _gap(site, seat, axis, places)
    return None if gap is None else Ends(middles[places[gap]], middles[places[gap + 1]])


def _middle(site: Site, seat: Seat, axis: int) -> Fraction | None:
    # Twice the middle, which serves as well for comparing.
    low, high = (site.positions.at(face) for face in both(seat.name, axis))
    return None if low is None or high is None else low + high


def _gap(site: Site, seat: Seat, axis: int, places: Sequence[Fraction]) -> int | None:
    # Which of the spaces between hosts in a row the copy stands in.
    if len(places) == 2:
        return 0
    known = [site.positions.at(face) for face in both(seat.name, axis)]
    own = next((2 * place for place in known if place is not None), None)
    if own is not None:
        below = [index for index, place in enumerate(places) if place <= own]
        return below[-1] if below and below[-1] + 1 < len(places) else None
    if seat.number is not None and len(site.seats(seat.part)) == len(places) - 1:
        return seat.number - 1
    return None


def _one_end(site: Site, seat: Seat, axis: int, host: Seat, place: Fraction) -> Ends | None:
    # The copy lies where it is known to lie, else on the side of the host with more room.
    known = [site.positions.at(face) for face in both(seat.name, axis)]
    own = next((2 * at for at in known if at is not None), None)
    middle = site.positions.at(whole(axis, 1))
    if own is None and middle is not None and middle != place:
        own = middle
    if own is None or own == place:
        return None
    return Ends(host, None) if place < own else Ends(None, host)


def _find_ends(site: Site, part: DeclaredPart, contact: Contact, seat: Seat, axis: int) -> bool:
    ends = ends_of(site, contact, seat, axis)
    if ends is None:
        return False
    site.unsaid_ends.pop((seat.name, contact.span), None)
    if ends.low and ends.high:
        faces = Face(ends.low.name, axis, 1), Face(ends.high.name, axis, -1)
        site.gaps.append((contact, *faces))
    for host, side in ((ends.low, -1), (ends.high, 1)):
        if host is not None:
            site.pending.append(partial(_say_end, site, part, contact, (seat, host), (axis, side)))
    return True


def _say_end(
    site: Site,
    part: DeclaredPart,
    contact: Contact,
    pair: tuple[Seat, Seat],
    end: tuple[int, int],
) -> bool:
    # Once the host's size is known: the guest's end lies its tenon beyond the host's face, or its
    # play before it.
    (seat, host), (axis, side) = pair, end
    play = play_at(part, contact, axis, side)
    if play is not None:
        state_play(site, Face(host.name, axis, -side), Face(seat.name, axis, side), play)
        return True
    deep = penetration(site, part, contact, host, axis)
    if deep is None:
        return False
    deep -= floats_by(site, part, contact, axis, side)
    joint = contact.joint
    reason = Reason("into", host.part, f"{seat.name} reaches to {host.name}", contact.span)
    if joint and deep:
        reason = Reason(
            "into",
            f"{joint.kind} into {host.part}",
            f"{seat.name} enters {host.name} by {site.shown(deep)}",
            contact.span,
            figures=joint.behind.figures
            if _written_depth(joint)
            else (size_name(site, host.part, axis),),
            guest=part.name,
            also=joint.behind.spans,
        )
    face, own = Face(host.name, axis, -side), Face(seat.name, axis, side)
    site.positions.add(face, own, side * deep, reason)
    return True


def penetration(
    site: Site, part: DeclaredPart, contact: Contact, host: Seat, axis: int
) -> Fraction | None:
    """Return how far the guest enters the host, or None while the host's size is unknown."""
    joint = contact.joint
    if joint is not None and is_mitred(joint.kind):
        # Long point to long point: each runs to the outside of the other (TRADE B25).
        return site.positions.extent(host.name, axis)
    if joint is not None and is_corner(joint):
        return reach_of(site, part, joint, host, axis)
    if joint is None or joint.kind not in {*_TENONS, "housing", "rabbet"}:
        return ZERO
    through = joint.kind in _TENONS and is_through(joint)
    written = _written_depth(joint)
    if written is not None and not through:
        return written
    deep = site.positions.extent(host.name, axis)
    if deep is None:
        return None
    if through:
        return deep + proud_of(joint)
    return _usual_penetration(site, part, contact, (host, axis), (joint, deep))


def _meets_another_tenon(site: Site, part: DeclaredPart, host: Seat) -> bool:
    # Rails that enter a leg from two sides: their mortises would meet in the middle.
    return any(
        contact.joint is not None
        and contact.joint.kind == "tenon"
        and {part.axes[0], site.part(contact.guest.part).axes[0], site.part(host.part).axes[0]}
        == {0, 1, 2}
        for contact in site.contacts_on(host.part, "into", "between")
        if contact.guest.part != part.name
    )


def _written_depth(joint: JointWords) -> Fraction | None:
    return joint.length if joint.kind in _TENONS else joint.depth


_TENONS = frozenset({"tenon", "round tenon"})


def _usual_penetration(
    site: Site,
    part: DeclaredPart,
    contact: Contact,
    into: tuple[Seat, int],
    entering: tuple[JointWords, Fraction],
) -> Fraction:
    (host, axis), (joint, deep) = into, entering
    display = site.declared.display
    if joint.kind in _TENONS:
        if _meets_another_tenon(site, part, host):
            usual = usual_tenon_length_at_a_corner(deep, display)
            ends = _rail_ends(site, part, contact, axis)
            length = length_at_corners(site, contact, joint, usual, ends)
        else:
            length = usual_tenon_length(deep, display)
        words, phrase = f"the tenons of {part.written} are", f"{site.shown(length)} long"
    else:
        rabbeted = joint.kind == "rabbet"
        usual_depth = usual_rabbet_depth if rabbeted else usual_housing_depth
        length, trench = usual_depth(deep, display), "rabbets" if rabbeted else "housings"
        words, phrase = f"the {trench} for {part.written} are", f"{site.shown(length)} deep"
    line = with_sizes_added(joint.head, phrase)
    site.assume_line(f"{words} {phrase}", joint.span, line)
    return length


def _rail_ends(site: Site, part: DeclaredPart, contact: Contact, axis: int) -> Iterator[RailEnd]:
    for seat in site.guests(contact):
        ends = ends_of(site, contact, seat, axis)
        for host, side in ((ends.low, -1), (ends.high, 1)) if ends else ():
            if host is not None and site.part(host.part).axes[0] != part.axes[0]:
                yield RailEnd(seat, host, axis, side)
