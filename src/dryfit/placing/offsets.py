"""Hard facts of distances: from a side of other parts, of one side alone, and in lists."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from dryfit.piece.declared import Amount, DeclaredPart, HeightList, Host, OnHost
from dryfit.placing.directions import edge_insets, spread_axis
from dryfit.placing.face_seats import ON_A_FACE
from dryfit.placing.faces import face_hosts, visible_end
from dryfit.placing.from_words import from_clause, from_label
from dryfit.placing.levels import entry_for
from dryfit.placing.over_hosts import furthest
from dryfit.placing.positions import Face, Reason
from dryfit.placing.seats import Seat, compatible
from dryfit.placing.site import SIDE_WORDS, Site, whole

_JOINED = (*ON_A_FACE, "onto", "under", "in", "into", "between", "inside", "crossing")
_BEYOND = {
    (0, -1): "left of",
    (0, 1): "right of",
    (1, -1): "in front of",
    (1, 1): "behind",
    (2, -1): "below",
    (2, 1): "above",
}


def state_offsets(site: Site, part: DeclaredPart) -> None:
    """Tell or queue the distances on a part's line that are not simply from the overall box."""
    for seat in site.seats(part.name):
        for entries in part.lists:
            _state_entry(site, part, seat, entries)
        # What is set in along a row speaks of the row (`spreads`).
        insets = (each for each in part.insets if edge_insets(part, each[0]) is None)
        for axis, side, amount in insets:
            _state_inset(site, part, seat, (axis, side), amount)
        for offset in part.offsets:
            site.pending.append(partial(_say_offset, site, part, seat, offset))


def _state_entry(site: Site, part: DeclaredPart, seat: Seat, entries: HeightList) -> None:
    axis, side = entries.axis, entries.side
    amount = entry_for(entries.amounts, site.seats(part.name), seat)
    words = f"{seat.name}: {from_clause(site.said(amount), axis, side)}"
    reason = _reason("from", from_label(seat.part, axis, side), words, amount)
    site.state(whole(axis, side), Face(seat.name, axis, side), amount, reason, sign=-side)


def _state_inset(
    site: Site, part: DeclaredPart, seat: Seat, surface: tuple[int, int], amount: Amount
) -> None:
    axis, side = surface
    own = seat.side(axis)
    if side and own not in {0, side}:
        return
    on_face = not side and bool(site.contacts(part.name, *ON_A_FACE))
    for each in (side or own,) if side or own else (-1, 1):
        if on_face:
            rule = partial(_say_set_in_on_hosts, site, part, seat, (axis, each), amount)
            site.pending.append(rule)
        else:
            _set_in_from(site, seat, whole(axis, each), amount)


def _say_set_in_on_hosts(
    site: Site, part: DeclaredPart, seat: Seat, surface: tuple[int, int], amount: Amount
) -> bool:
    # The ends of what lies on others are set in from the ends of those.
    axis, side = surface
    hosts = [
        host
        for contact in site.contacts(part.name, *ON_A_FACE)
        for host in face_hosts(site, contact, seat)
    ]
    face = furthest(site, [visible_end(site, host, axis, side) for host in hosts], side)
    if face is not None:
        _set_in_from(site, seat, face, amount, side)
    return face is not None


def _set_in_from(
    site: Site, seat: Seat, outer: Face, amount: Amount, side: int | None = None
) -> None:
    side, of = (outer.side, "") if side is None else (side, f" of {outer.owner}")
    word = SIDE_WORDS[outer.axis, outer.side]
    words = f"{seat.name} is set in {site.said(amount)} from the {word}{of}"
    reason = _reason("set in", f"set in of {seat.part}", words, amount)
    site.state(outer, Face(seat.name, outer.axis, side), amount, reason, sign=-side)


def _say_offset(site: Site, part: DeclaredPart, seat: Seat, offset: OnHost) -> bool:
    axis, side = offset.axis, offset.side
    face = _host_face(site, part, seat, offset)
    if face is None:
        return False
    amount = entry_for(offset.amounts, site.seats(part.name), seat)
    word, said = SIDE_WORDS[axis, side], site.said(amount)
    if offset.beyond:
        words = f"{seat.name} lies {said} {_BEYOND[axis, side]} {face.owner}"
        own, sign = Face(seat.name, axis, -side), side
    else:
        words = f"{seat.name} lies {said} from the {word} of {face.owner}"
        own, sign = Face(seat.name, axis, side), -side
    reason = _reason("from", f"{seat.part} from {word} of {face.owner}", words, amount)
    site.state(face, own, amount, reason, sign=sign)
    return True


def _host_face(site: Site, part: DeclaredPart, seat: Seat, offset: OnHost) -> Face | None:
    axis, side = offset.axis, offset.side
    named = offset.hosts or _joined(site, part)
    opening = next((host.part for host in named if site.opening(host.part)), None)
    if opening is not None:
        return Face(opening, axis, side)
    hosts = list(_compatible(site, part, seat, offset))
    hosts = [host for host in hosts if host.side(axis) == side] or hosts
    faces = [Face(host.name, axis, side) for host in hosts]
    rows = {host.part for host in hosts if spread_axis(site.part(host.part)) == axis}
    if len(hosts) == 1 or (len({host.part for host in hosts}) == 1 and not rows):
        # Equal copies at one height end at one height.
        return faces[0]
    return furthest(site, faces, side)


def _joined(site: Site, part: DeclaredPart) -> tuple[Host, ...]:
    # Without a name a side is that of what the part lies on, or else joins.
    for preposition in _JOINED:
        contacts = site.contacts(part.name, preposition)
        if contacts:
            return contacts[0].hosts
    return ()


def _compatible(site: Site, part: DeclaredPart, seat: Seat, offset: OnHost) -> Iterator[Seat]:
    named = {host.part for host in offset.hosts}
    for contact in site.contacts(part.name, *ON_A_FACE):
        if named <= {host.part for host in contact.hosts}:
            hosts = face_hosts(site, contact, seat)
            yield from (host for host in hosts if not named or host.part in named)
            return
    for host in offset.hosts or _joined(site, part):
        yield from (each for each in site.named(host) if compatible(seat, each, offset.axis))


def _reason(rule: str, label: str, words: str, amount: Amount) -> Reason:
    return Reason(
        rule,
        label,
        words,
        amount.span,
        figures=amount.behind.figures,
        also=amount.behind.spans,
    )
