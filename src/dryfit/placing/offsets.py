"""Hard facts of distances: from a side of other parts, of one side alone, and in lists."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial

from dryfit.piece.declared import Amount, DeclaredPart, HeightList, Host, OnHost
from dryfit.placing.directions import edge_insets, spread_axis
from dryfit.placing.face_seats import ON_A_FACE
from dryfit.placing.faces import face_hosts, visible_end
from dryfit.placing.from_words import from_clause, from_label
from dryfit.placing.levels import entry_for
from dryfit.placing.lines import with_words
from dryfit.placing.over_hosts import furthest
from dryfit.placing.positions import Face, Reason
from dryfit.placing.seats import Seat, compatible
from dryfit.placing.site import SIDE_WORDS, Site, whole
from dryfit.placing.subjects import verb

_JOINED = ("onto", "under", "in", "into", "between", "inside", "crossing", *ON_A_FACE)
_ENDS = ("into", "between")
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
    hosts = offset.hosts or _joined(site, part)
    board = None if offset.hosts else _board_called_so(site, part, axis, side)
    face = Face(board, axis, -side) if board else _host_face(site, part, seat, offset, hosts)
    if face is None:
        return False
    amount = entry_for(offset.amounts, site.seats(part.name), seat)
    word, said = SIDE_WORDS[axis, face.side], site.said(amount)
    if offset.beyond:
        words = f"{seat.name} lies {said} {_BEYOND[axis, side]} {face.owner}"
        own, sign = Face(seat.name, axis, -side), side
    else:
        words = f"{seat.name} lies {said} from the {word} of {face.owner}"
        own, sign = Face(seat.name, axis, side), -side
    reason = _reason("from", f"{seat.part} from {word} of {face.owner}", words, amount)
    site.state(face, own, amount, reason, sign=sign)
    if not offset.hosts and site.contacts(part.name, *_ENDS):
        _list_reference(site, part, offset, f"{word} of {board or _names(site, hosts)}")
    return True


def _board_called_so(site: Site, part: DeclaredPart, axis: int, side: int) -> str | None:
    """Return the lone flat board that is called top or bottom, if such a distance means it.

    Between the sides of a case "the top" is the board of that name, as far as it can be seen.
    """
    hosts = _joined(site, part)
    if all(hosts != each.hosts for each in site.contacts(part.name, *_ENDS)):
        return None
    seats = site.seats(SIDE_WORDS[axis, side])
    flat = [seat for seat in seats if seat.part != part.name and site.part(seat.part).axes[2] == 2]
    return flat[0].name if axis == 2 and len(flat) == 1 else None


def _list_reference(site: Site, part: DeclaredPart, offset: OnHost, surface: str) -> None:
    # "The top" is that of one thing or of another, which makes all sizes beside it others.
    way = {1: "below", -1: "above"}[offset.side] if offset.axis == 2 else "from"
    amounts = [site.said(amount) for amount in offset.amounts]
    told = " and ".join(each for each in (", ".join(amounts[:-1]), amounts[-1]) if each)
    text = f"{verb(part, 'is', 'are')} measured from the {surface}"
    site.assume_line(text, part.span, with_words(offset.span, f"{told} {way} the {surface}"))


def _names(site: Site, hosts: Sequence[Host]) -> str:
    names = (" ".join((*h.places, h.part)) if h.places else site.written(h.part) for h in hosts)
    return " and ".join(names)


def _host_face(
    site: Site, part: DeclaredPart, seat: Seat, offset: OnHost, named: Sequence[Host]
) -> Face | None:
    axis, side = offset.axis, offset.side
    opening = next((host.part for host in named if site.opening(host.part)), None)
    if opening is not None:
        return Face(opening, axis, side)
    hosts = list(_compatible(site, part, seat, axis, named))
    hosts = [host for host in hosts if host.side(axis) == side] or hosts
    faces = [Face(host.name, axis, side) for host in hosts]
    rows = {host.part for host in hosts if spread_axis(site.part(host.part)) == axis}
    if len(hosts) == 1 or (len({host.part for host in hosts}) == 1 and not rows):
        # Equal copies at one height end at one height.
        return faces[0]
    return furthest(site, faces, side)


def _joined(site: Site, part: DeclaredPart) -> tuple[Host, ...]:
    # Without a name a side is that of what the part lies on, or else joins; what it merely stands
    # before or behind may end out of sight.
    fastened = [each for each in site.contacts(part.name, *ON_A_FACE) if each.joint is not None]
    others = (each for word in _JOINED for each in site.contacts(part.name, word))
    return next((each.hosts for each in (*fastened, *others)), ())


def _compatible(
    site: Site, part: DeclaredPart, seat: Seat, axis: int, named: Sequence[Host]
) -> Iterator[Seat]:
    names = {host.part for host in named}
    for contact in site.contacts(part.name, *ON_A_FACE):
        if names <= {host.part for host in contact.hosts}:
            hosts = face_hosts(site, contact, seat)
            yield from (host for host in hosts if host.part in names)
            return
    for host in named:
        yield from (each for each in site.named(host) if compatible(seat, each, axis))


def _reason(rule: str, label: str, words: str, amount: Amount) -> Reason:
    return Reason(
        rule,
        label,
        words,
        amount.span,
        figures=amount.behind.figures,
        also=amount.behind.spans,
    )
