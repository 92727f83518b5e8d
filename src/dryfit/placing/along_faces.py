"""Assumptions of what lies on a face of others: midway along it, or as large as it is there."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial

from dryfit.piece.declared import PLACE_SIDE, Contact, DeclaredPart
from dryfit.placing.directions import bounded_axis, spread_axis
from dryfit.placing.face_seats import ON_A_FACE
from dryfit.placing.faces import face_hosts, face_of, visible_end
from dryfit.placing.heights import ZERO, say
from dryfit.placing.over_hosts import furthest, outermost, say_within
from dryfit.placing.positions import Face
from dryfit.placing.seats import Seat
from dryfit.placing.sideways import WAYS
from dryfit.placing.site import SIDE_WORDS, Phrase, Site, part_words, size_phrase
from dryfit.placing.subjects import verb

_FROM = ("{} from the left of {}", "{} from the front of {}", "{} above the bottom of {}")


def lies_along_face(site: Site, part: DeclaredPart) -> bool:
    """Assume where a part lies along the face that it is put on, once its hosts are placed.

    At the side that its line names, else midway; without a size it is as large as what carries it.
    """
    told: dict[tuple[int, str], list[Seat]] = {}
    for contact in site.contacts(part.name, *ON_A_FACE):
        for seat in site.guests(contact):
            for axis, how, hosts in _said(site, part, contact, seat):
                told.setdefault((axis, how), []).extend(hosts)
    for (axis, how), hosts in told.items():
        _list(site, part, axis, how, hosts)
    return bool(told)


def _said(
    site: Site, part: DeclaredPart, contact: Contact, seat: Seat
) -> list[tuple[int, str, Sequence[Seat]]]:
    hosts = face_hosts(site, contact, seat)
    faces = [face_of(site, contact, seat, host) for host in hosts]
    said: list[tuple[int, str, Sequence[Seat]]] = []
    if not faces or faces[0] is None:
        return said
    for axis in (each for each in range(3) if each not in {faces[0].axis, spread_axis(part)}):
        if site.waits_for_ends(seat, axis) or _is_carried(site, part, axis):
            continue
        if _is_between(site, part, axis):
            continue
        if _say_named_side(site, part, seat, hosts, axis):
            said.append((axis, "side", hosts))
        elif _say_over_visible(site, seat, hosts, axis):
            sized = part.sizes[part.axes.index(axis)] is not None
            said.append((axis, "midway" if sized else "over", hosts))
    return said


def _say_over_visible(site: Site, seat: Seat, hosts: Sequence[Seat], axis: int) -> bool:
    # Along a rail between posts it runs from post to post, and not as far as the tenons.
    low, high = (
        furthest(site, [visible_end(site, host, axis, side) for host in hosts], side)
        for side in (-1, 1)
    )
    return low is not None and high is not None and say_within(site, seat, low, high)


def _is_carried(site: Site, part: DeclaredPart, axis: int) -> bool:
    # What also lies on something, or hangs under it, has its height from there.
    return axis == 2 and bool(site.contacts(part.name, "onto", "under"))


def _is_between(site: Site, part: DeclaredPart, axis: int) -> bool:
    # What also goes between others ends at those, once they have their places.
    between = site.contacts(part.name, "between", "into")
    return any(bounded_axis(site, part, each) == axis for each in between)


def _say_named_side(
    site: Site, part: DeclaredPart, seat: Seat, hosts: Sequence[Seat], axis: int
) -> bool:
    side = seat.side(axis)
    written = any(
        axis < 2 if word == "corners" else PLACE_SIDE[word][0] == axis for word in part.places
    )
    if not side or not written or any(host.side(axis) for host in hosts):
        return False
    if any(site.known(seat, axis, each) for each in (-1, 1)):
        return False
    outer = furthest(site, [visible_end(site, host, axis, side) for host in hosts], side)
    if outer is None:
        return False
    word = SIDE_WORDS[axis, side]
    facts = (outer, Face(seat.name, axis, side), ZERO)
    return say(site, seat, facts, f"at the {word} of {hosts[0].part}", f"lies at the {word} there")


def _list(site: Site, part: DeclaredPart, axis: int, how: str, hosts: Sequence[Seat]) -> None:
    on = part_words(site, hosts)
    phrase: Phrase = partial(size_phrase, site, part, axis)
    if how == "midway":
        text = f"{verb(part, 'lies', 'lie')} midway on the {on} {WAYS[axis]}"
        phrase = partial(_from_phrase, site, part, hosts, axis)
    elif how == "side":
        text = f"{verb(part, 'lies', 'lie')} at the {_sides(site, part, axis)} of the {on}"
        # Of what lies along its host the ends are set in; for the rest there is no one phrase.
        phrase = "set in 0 at ends" if axis == part.axes[0] else None
    elif site.part(hosts[0].part).axes[0] == axis == part.axes[0]:
        entering = visible_end(site, hosts[0], axis, -1).owner != hosts[0].name
        ends = "shoulder to shoulder" if entering else "end to end"
        text = f"{verb(part, 'runs', 'run')} along the {on} from {ends}"
    else:
        text = f"{verb(part, 'covers', 'cover')} the {on} {WAYS[axis]}"
    site.assume(text, part.span, phrase)


def _sides(site: Site, part: DeclaredPart, axis: int) -> str:
    sides = sorted({seat.side(axis) for seat in site.seats(part.name)} - {0})
    return " and ".join(SIDE_WORDS[axis, side] for side in sides)


def _from_phrase(site: Site, part: DeclaredPart, hosts: Sequence[Seat], axis: int) -> str | None:
    low = outermost(site, hosts[:1], axis, -1)
    own = Face(site.seats(part.name)[0].name, axis, -1)
    distance = None if low is None else site.positions.distance(low, own)
    if distance is None or distance < 0:
        return None
    if any(host.within for host in hosts):
        # Which of several instances is meant has no words.
        return None
    return _FROM[axis].format(site.shown(distance), part_words(site, hosts))
