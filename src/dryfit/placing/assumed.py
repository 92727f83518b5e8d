"""Assumptions: what is taken for granted where no line says it, one kind at a time.

Each kind is tried on all copies of a part; after every piece of news the hard facts speak first.
The order matters and is that of a maker reading a sketch: the top is at the top, posts stand on
the floor, laps run to the far side, rails are level with the posts, the rest is centred or fills
the piece.
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

from dryfit.piece.declared import DeclaredPart
from dryfit.placing.copies import Seat
from dryfit.placing.meetings import crossing_hosts, lap_axis
from dryfit.placing.positions import Face, Reason
from dryfit.placing.site import SIDE_WORDS, Site, both, ends, part_words, whole

ZERO = Fraction(0)
Assuming = Callable[[Site, DeclaredPart], bool]


def assume_the_rest(site: Site) -> None:
    """Add assumptions until every copy has its place or nothing more can be assumed."""
    site.settle()
    kinds: tuple[Assuming, ...] = (
        _topmost_reaches_height,
        _stands_on_floor,
        _lap_runs_to_far_side,
        _level_with_hosts,
        _centred_on_hosts,
        _touches_named_side,
        _runs_over_what_it_lies_on,
        _fills_or_centred,
        _reaches_height,
    )
    while any(_first_news(site, kind) for kind in kinds):
        site.settle()


def _first_news(site: Site, kind: Assuming) -> bool:
    return any(kind(site, part) for part in site.parts())


def _say(
    site: Site, seat: Seat, facts: tuple[Face, Face, Fraction], label: str, words: str
) -> bool:
    reason = Reason("assumed", label, words, site.part(seat.part).span, assumed=True)
    return site.positions.add(*facts, reason)


def _topmost_reaches_height(site: Site, part: DeclaredPart) -> bool:
    if not site.contacts(part.name, "onto") or _carries_something(site, part):
        return False
    news = False
    for seat in site.seats(part.name):
        if not site.known(seat, 2, 1) and site.positions.extent(seat.name, 2) is not None:
            facts = (whole(2, 1), Face(seat.name, 2, 1), ZERO)
            news |= _say(
                site,
                seat,
                facts,
                "reaches the overall height",
                f"{seat.name} reaches the overall height",
            )
            site.topmost.add(part.name)
    if news:
        site.assume(
            f"the {part.written} reaches the overall height"
            if part.count == 1
            else f"the {part.written} reach the overall height",
            part.span,
            "down 10",
        )
    return news


def _carries_something(site: Site, part: DeclaredPart) -> bool:
    return any(
        host.part == part.name and contact.preposition == "onto"
        for contact in site.declared.contacts
        for host in contact.hosts
    )


def _stands_on_floor(site: Site, part: DeclaredPart) -> bool:
    if part.run != "upright" or site.contacts(part.name, "between", "inside", "onto"):
        return False
    news = False
    for seat in site.seats(part.name):
        if not site.known(seat, 2, -1):
            facts = (whole(2, -1), Face(seat.name, 2, -1), ZERO)
            news |= _say(
                site, seat, facts, "stands on the floor", f"{seat.name} stands on the floor"
            )
    if news:
        site.assume(f"the {part.written} stand on the floor", part.span, "up 20")
    return news


def _lap_runs_to_far_side(site: Site, part: DeclaredPart) -> bool:
    news, mates = False, []
    axis = part.axes[0]
    for seat, mate, side in _lapped_ends(site, part):
        if not site.known(seat, axis, side):
            facts = (Face(mate.name, axis, side), Face(seat.name, axis, side), ZERO)
            if _say(
                site,
                seat,
                facts,
                f"to the far side of {mate.part}",
                f"{seat.name} runs to the far side of {mate.name}",
            ):
                news = True
                mates.append(mate)
    if news:
        site.assume(
            f"the {part.written} run to the far side of the {part_words(site, mates)} that they "
            "are lapped with",
            part.span,
            _length_now(site, part),
        )
    return news


def _length_now(site: Site, part: DeclaredPart) -> str | None:
    length = site.positions.extent(site.seats(part.name)[0].name, part.axes[0])
    return None if length is None else f"{site.shown(length)} long"


def _lapped_ends(site: Site, part: DeclaredPart) -> list[tuple[Seat, Seat, int]]:
    found = []
    for contact in site.declared.contacts:
        if contact.preposition != "crossing":
            continue
        mates_of: list[tuple[Seat, list[Seat]]] = []
        if contact.guest.part == part.name:
            mates_of = [
                (seat, crossing_hosts(site, part, contact, seat)) for seat in site.guests(contact)
            ]
        elif any(host.part == part.name for host in contact.hosts):
            guest = site.part(contact.guest.part)
            depth = lap_axis(guest, part)
            mates_of = [
                (
                    seat,
                    [
                        mate
                        for mate in site.guests(contact)
                        if depth is not None and seat.side(depth) * mate.side(depth) != -1
                    ],
                )
                for seat in site.seats(part.name)
            ]
        for seat, mates in mates_of:
            low, high = ends(mates, part.axes[0])
            found += [(seat, mate, side) for mate, side in ((low, -1), (high, 1)) if mate]
    return found


def _level_with_hosts(site: Site, part: DeclaredPart) -> bool:
    if part.run == "upright":
        return False
    news, hosts = False, []
    for contact in site.contacts(part.name, "into", "between"):
        for seat in site.guests(contact):
            for host in site.hosts(contact, seat, part.axes[0]):
                if site.known(seat, 2, 1) or site.part(host.part).run != "upright":
                    continue
                facts = (Face(host.name, 2, 1), Face(seat.name, 2, 1), ZERO)
                if _say(
                    site,
                    seat,
                    facts,
                    f"level with {host.part}",
                    f"{seat.name} is level with the top of {host.name}",
                ):
                    news = True
                    hosts.append(host)
    if news:
        site.assume(
            f"the {part.written} stand level with the top of the {part_words(site, hosts)}",
            part.span,
            "down 20",
        )
    return news


def _centred_on_hosts(site: Site, part: DeclaredPart) -> bool:
    news, hosts = False, []
    for contact in site.contacts(part.name, "into", "between", "crossing", "inside", "under"):
        for seat in site.guests(contact):
            for host in site.hosts(contact, seat, part.axes[0]):
                if _centre(site, part, seat, host):
                    news = True
                    hosts.append(host)
    if news:
        site.assume(
            f"the {part.written} are centred on the {part_words(site, hosts)}",
            part.span,
            "set back 5",
        )
    return news


def _centre(site: Site, part: DeclaredPart, seat: Seat, host: Seat) -> bool:
    news = False
    for axis in (0, 1, 2):
        own = site.positions.extent(seat.name, axis)
        wide = site.positions.extent(host.name, axis)
        if (
            axis == part.axes[0]
            or site.known(seat, axis, -1)
            or not site.known(host, axis, -1)
            or own is None
            or wide is None
            or site.part(host.part).axes[0] == axis
        ):
            continue
        facts = (Face(host.name, axis, -1), Face(seat.name, axis, -1), (wide - own) / 2)
        news |= _say(
            site, seat, facts, f"centred on {host.part}", f"{seat.name} is centred on {host.name}"
        )
    return news


def _touches_named_side(site: Site, part: DeclaredPart) -> bool:
    news = False
    for seat in site.seats(part.name):
        for axis in range(3):
            side = seat.side(axis)
            if (
                side
                and part.places
                and not site.known(seat, axis, side)
                and not site.known(seat, axis, -side)
            ):
                facts = (whole(axis, side), Face(seat.name, axis, side), ZERO)
                word = SIDE_WORDS[axis, side]
                if _say(
                    site,
                    seat,
                    facts,
                    f"at the {word}",
                    f"{seat.name} reaches to the {word} of the piece",
                ):
                    news = True
                    site.assume(
                        f"{seat.name} reaches to the {word} of the piece", part.span, "set in 15"
                    )
    return news


def _runs_over_what_it_lies_on(site: Site, part: DeclaredPart) -> bool:
    if part.name in site.topmost:
        return False
    news = False
    names: list[Seat] = []
    for contact in site.contacts(part.name, "onto", "under"):
        for seat in site.guests(contact):
            hosts = site.hosts(contact, seat, 2)
            for axis in (0, 1):
                for side in (-1, 1):
                    face = _outermost(site, hosts, axis, side)
                    if face is None or site.known(seat, axis, side):
                        continue
                    if _say(
                        site,
                        seat,
                        (face, Face(seat.name, axis, side), ZERO),
                        f"to the outer face of {contact.hosts[0].part}",
                        f"{seat.name} runs to the outer face of {face.owner}",
                    ):
                        news = True
                        names += hosts
    if news:
        site.assume(
            f"the {part.written} run to the outer faces of the {part_words(site, names)}",
            part.span,
            _length_now(site, part),
        )
    return news


def _outermost(site: Site, hosts: tuple[Seat, ...], axis: int, side: int) -> Face | None:
    known = []
    for host in hosts:
        place = site.positions.at(Face(host.name, axis, side))
        if place is None:
            return None
        known.append((side * place, Face(host.name, axis, side)))
    return max(known)[1] if known else None


def _fills_or_centred(site: Site, part: DeclaredPart) -> bool:
    news = False
    for seat in site.seats(part.name):
        for axis in range(3):
            low, high = both(seat.name, axis)
            if site.positions.at(low) is not None or site.positions.at(high) is not None:
                continue
            size = site.positions.extent(seat.name, axis)
            span = site.positions.distance(whole(axis, -1), whole(axis, 1))
            if span is None or axis == 2 or (size is None and part.run == "upright"):
                continue
            way = ("from side to side", "from front to back")[axis]
            if size is None:
                news |= _say(
                    site,
                    seat,
                    (whole(axis, -1), low, ZERO),
                    "fills the overall size",
                    f"{seat.name} fills the piece {way}",
                )
                _say(
                    site,
                    seat,
                    (whole(axis, 1), high, ZERO),
                    "fills the overall size",
                    f"{seat.name} fills the piece {way}",
                )
                site.assume(f"{seat.name} fills the piece {way}", part.span, "set in 10")
            elif part.count == 1:
                news |= _say(
                    site,
                    seat,
                    (whole(axis, -1), low, (span - size) / 2),
                    "centred in the piece",
                    f"{seat.name} is centred {way}",
                )
                site.assume(
                    f"{seat.name} is centred in the piece {way}",
                    part.span,
                    ("120 from left", "30 from front")[axis],
                )
    return news


def _reaches_height(site: Site, part: DeclaredPart) -> bool:
    if part.run != "upright":
        return False
    news = False
    for seat in site.seats(part.name):
        if site.known(seat, 2, -1) and not site.known(seat, 2, 1):
            news |= _say(
                site,
                seat,
                (whole(2, 1), Face(seat.name, 2, 1), ZERO),
                "reaches the overall height",
                f"{seat.name} reaches the overall height",
            )
    if news:
        site.assume(
            f"the {part.written} reach the overall height",
            part.span,
            _length_now(site, part),
        )
    return news
