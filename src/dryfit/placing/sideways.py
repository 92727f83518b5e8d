"""Assumptions about places: centred, at a named side, over what carries it, filling the piece."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from functools import partial

from dryfit.piece.declared import Contact, DeclaredPart
from dryfit.placing.directions import spread_axis
from dryfit.placing.face_seats import ON_A_FACE
from dryfit.placing.heights import say
from dryfit.placing.panels import bounding_hosts, frame_across
from dryfit.placing.positions import Face, Reason
from dryfit.placing.seats import Seat, beside
from dryfit.placing.site import SIDE_WORDS, Site, both, part_words, size_name, size_phrase, whole
from dryfit.placing.slid_panels import slid
from dryfit.placing.subjects import verb

ZERO = Fraction(0)
_JOINING = ("into", "between", "crossing", "inside", "under", "onto")
WAYS = ("from side to side", "from front to back", "in height")
_SET_IN = ("across", "front to back", "up and down")
_OVERALL = ("overall.width", "overall.depth", "overall.height")
_AS_LARGE = ("wide", "deep", "high")


def as_large_as_the_piece(site: Site, part: DeclaredPart) -> bool:
    """State that what is as large as the piece in one direction lies from end to end of it.

    This follows from the sizes and is not listed: lying otherwise it would stick out.
    """
    news = False
    for axis in range(3):
        open_ones = [seat for seat in site.seats(part.name) if not site.known(seat, axis, -1)]
        total = site.positions.distance(*both_of_whole(axis)) if open_ones else None
        for seat in open_ones:
            if total is not None and site.positions.extent(seat.name, axis) == total:
                words = f"{seat.name} is as {_AS_LARGE[axis]} as the piece"
                reason = Reason("fits", f"as {_AS_LARGE[axis]} as the piece", words)
                news |= site.positions.add(whole(axis, -1), both(seat.name, axis)[0], ZERO, reason)
    return news


def both_of_whole(axis: int) -> tuple[Face, Face]:
    """Return the two faces of the overall box on an axis."""
    return whole(axis, -1), whole(axis, 1)


def centred_on_hosts(site: Site, part: DeclaredPart) -> bool:
    """Assume that a part is centred on what it joins, in the directions that nothing settles."""
    news: dict[int, list[tuple[Seat, Seat]]] = {}
    for contact in site.contacts(
        part.name, "into", "between", "crossing", "inside", "under", "onto"
    ):
        for seat in site.guests(contact):
            for axis in range(3):
                host = _host_to_centre_on(site, part, contact, seat, axis)
                if host is not None and _say_centred(site, seat, host, axis):
                    news.setdefault(axis, []).append((seat, host))
    for axis, pairs in news.items():
        hosts = part_words(site, [host for _, host in pairs])
        where = f"{verb(part, 'is', 'are')} centred on the {hosts} {WAYS[axis]}"
        site.assume(where, part.span, _phrase_for(site, part, pairs, axis))
    return bool(news)


def _host_to_centre_on(
    site: Site, part: DeclaredPart, contact: Contact, seat: Seat, axis: int
) -> Seat | None:
    if axis in {part.axes[0], spread_axis(part)} or site.known(seat, axis, -1):
        return None
    if axis == 2 and contact.preposition in {"onto", "under"}:
        return None
    if site.positions.extent(seat.name, axis) is None:
        return None
    across = [
        host
        for host in site.hosts(contact, seat, part.axes[0])
        if site.part(host.part).axes[0] != axis
    ]
    hosts = beside(across, seat, axis)
    middles = {_middle(site, host, axis) for host in hosts}
    # Hosts in several places do not say on which of them it is centred.
    return hosts[0] if len(middles) == 1 and None not in middles else None


def _middle(site: Site, seat: Seat, axis: int) -> Fraction | None:
    low, high = (site.positions.at(face) for face in both(seat.name, axis))
    return None if low is None or high is None else low + high


def _say_centred(site: Site, seat: Seat, host: Seat, axis: int) -> bool:
    own = site.positions.extent(seat.name, axis)
    wide = site.positions.extent(host.name, axis)
    if own is None or wide is None:
        return False
    facts = (Face(host.name, axis, -1), Face(seat.name, axis, -1), (wide - own) / 2)
    figures = (size_name(site, host.part, axis), size_name(site, seat.part, axis))
    words = f"is centred on {host.name}"
    return say(site, seat, facts, f"centred on {host.part}", words, figures)


def _phrase_for(
    site: Site, part: DeclaredPart, pairs: Sequence[tuple[Seat, Seat]], axis: int
) -> str | None:
    lows = {site.positions.at(Face(seat.name, axis, -1)) for seat, _ in pairs}
    if len(pairs) == part.count and len(lows) == 1:
        (low,) = lows
        return None if low is None else low_phrase(site, axis, low)
    return _set_back_phrase(site, pairs, axis)


def low_phrase(site: Site, axis: int, low: Fraction) -> str:
    """Return the phrase that says where the low face lies on an axis of the piece.

    It is shown finer than to the usual step where that would put the part beside its place.
    """
    display = site.declared.display
    place = display.shown(low, fitted=display.moved(low))
    return f"up {place}" if axis == 2 else f"{place} from {SIDE_WORDS[axis, -1]}"


def _set_back_phrase(site: Site, pairs: Sequence[tuple[Seat, Seat]], axis: int) -> str | None:
    back = set()
    for seat, host in pairs:
        side = seat.side(axis) or -1
        back.add(site.positions.distance(Face(seat.name, axis, side), Face(host.name, axis, side)))
    amounts = {abs(amount) for amount in back if amount is not None}
    return f"set back {site.shown(amounts.pop())}" if len(amounts) == 1 else None


def touches_named_side(site: Site, part: DeclaredPart) -> bool:
    """Assume that a copy at a named side reaches to that side of the piece."""
    sides: dict[int, list[str]] = {}
    for seat in site.seats(part.name):
        for axis in range(3):
            side = seat.side(axis)
            if not side or any(site.known(seat, axis, each) for each in (-1, 1)):
                continue
            if site.waits_for_ends(seat, axis) or _hosts_unplaced(site, part, seat, axis):
                continue
            word = SIDE_WORDS[axis, side]
            facts = (whole(axis, side), Face(seat.name, axis, side), ZERO)
            if say(site, seat, facts, f"at the {word}", f"reaches to the {word} of the piece"):
                sides.setdefault(axis, []).append(word)
    for axis, words in sides.items():
        spoken = " and ".join(dict.fromkeys(words))
        text = f"{verb(part, 'reaches', 'reach')} to the {spoken} of the piece"
        site.assume(text, part.span, f"set in 0 {_SET_IN[axis]}")
    return bool(sides)


def _hosts_unplaced(site: Site, part: DeclaredPart, seat: Seat, axis: int) -> bool:
    # A rail that stands back from its legs must not be taken to the side before they are.
    return any(
        not site.known(host, axis, side)
        for contact in site.contacts(part.name, "into", "between", "inside", *ON_A_FACE)
        for host in site.hosts(contact, seat, part.axes[0])
        for side in (-1, 1)
    )


def fills_or_centred(site: Site, part: DeclaredPart) -> bool:
    """Assume that a part without a size fills the piece, and that one with a size is centred.

    What lies on a face of others has its place there (`along_faces`).
    """
    news = False
    if site.contacts(part.name, *ON_A_FACE):
        return False
    for axis in range(2):
        if spread_axis(part) == axis:
            continue
        told = [_say_fills_or_centred(site, part, seat, axis) for seat in site.seats(part.name)]
        if "fills" in told:
            text = f"{verb(part, 'fills', 'fill')} the piece {WAYS[axis]}"
            site.assume(text, part.span, partial(size_phrase, site, part, axis))
        if "centred" in told:
            low = site.positions.at(Face(site.seats(part.name)[0].name, axis, -1))
            text = f"{verb(part, 'is', 'are')} centred in the piece {WAYS[axis]}"
            phrase = None if low is None else low_phrase(site, axis, low)
            site.assume(text, part.span, phrase)
        news |= any(told)
    return news


def _say_fills_or_centred(site: Site, part: DeclaredPart, seat: Seat, axis: int) -> str | None:
    low, high = both(seat.name, axis)
    known = site.positions.knows(low) or site.positions.knows(high)
    if known or site.waits_for_ends(seat, axis):
        return None
    total = site.positions.distance(*both_of_whole(axis))
    size = site.positions.extent(seat.name, axis)
    if total is None or (size is None and part.run == "upright"):
        return None
    if size is None:
        if _waits_for_its_frame(site, part, seat, axis):
            return None
        label, words = "fills the overall size", f"fills the piece {WAYS[axis]}"
        said = say(site, seat, (whole(axis, -1), low, ZERO), label, words)
        said |= say(site, seat, (whole(axis, 1), high, ZERO), label, words)
        return "fills" if said else None
    if seat.side(axis):
        # What stands at a named side waits for its hosts, and goes there once they have places.
        return None
    facts = (whole(axis, -1), low, (total - size) / 2)
    words = f"is centred {WAYS[axis]}"
    figures = (_OVERALL[axis], size_name(site, part.name, axis))
    return "centred" if say(site, seat, facts, "centred in the piece", words, figures) else None


def _waits_for_its_frame(site: Site, part: DeclaredPart, seat: Seat, axis: int) -> bool:
    # What stands in the grooves of others is as large as they leave it, once they are placed.
    slides = slid(site, part) is not None and axis in part.axes[:2]
    return slides or any(
        bounding_hosts(site, contact, seat, axis) is None
        for contact in site.contacts(part.name, "inside")
        if len(frame_across(site, contact, seat, axis)) > 1
    )
