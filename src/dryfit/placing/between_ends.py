"""The assumption that what goes between parts that run past it lies midway between their ends."""

from __future__ import annotations

from fractions import Fraction

from dryfit.piece.declared import DeclaredPart
from dryfit.placing.directions import spread_axis
from dryfit.placing.face_seats import ON_A_FACE
from dryfit.placing.heights import say
from dryfit.placing.positions import Face
from dryfit.placing.seats import Seat
from dryfit.placing.sideways import WAYS, both_of_whole, low_phrase
from dryfit.placing.site import Site, both, size_name
from dryfit.placing.subjects import verb


def centred_between_ends(site: Site, part: DeclaredPart) -> bool:
    """Assume that a part lies midway along its hosts, where that is not the middle of the piece.

    The back of a drawer belongs somewhere along the drawer's sides, wherever the drawer is.
    """
    if site.contacts(part.name, *ON_A_FACE):
        return False
    news = False
    for axis in (each for each in (0, 1) if each not in {part.axes[0], spread_axis(part)}):
        hosts = [_say_midway(site, part, seat, axis) for seat in site.seats(part.name)]
        host = next((each for each in hosts if each is not None), None)
        if host is not None:
            text = f"{verb(part, 'is', 'are')} centred between the ends of the {host} {WAYS[axis]}"
            low = site.positions.at(both(site.seats(part.name)[0].name, axis)[0])
            site.assume(text, part.span, None if low is None else low_phrase(site, axis, low))
            news = True
    return news


def _say_midway(site: Site, part: DeclaredPart, seat: Seat, axis: int) -> str | None:
    # Returns the host as written where that was news.
    own, size = both(seat.name, axis), site.positions.extent(seat.name, axis)
    if size is None or seat.side(axis) or site.known(seat, axis, -1):
        return None
    if site.waits_for_ends(seat, axis):
        return None
    for contact in site.contacts(part.name, "between", "into"):
        hosts = site.hosts(contact, seat, part.axes[0])
        stretch = _shared_stretch(site, hosts, axis)
        if stretch is None or _is_midway_in_the_piece(site, stretch):
            continue
        (low, room), host = stretch, hosts[0].part
        facts = (low, own[0], (room - size) / 2)
        figures = (size_name(site, host, axis), size_name(site, part.name, axis))
        label, words = f"centred along {host}", f"is centred between the ends of {host}"
        if say(site, seat, facts, label, words, figures):
            return site.written(host)
    return None


def _shared_stretch(site: Site, hosts: tuple[Seat, ...], axis: int) -> tuple[Face, Fraction] | None:
    """Return where hosts that run along an axis all have wood: its low end, and how long it is."""
    ends = [both(host.name, axis) for host in hosts]
    lows = [(at, low) for low, _ in ends if (at := site.positions.at(low)) is not None]
    highs = [at for _, high in ends if (at := site.positions.at(high)) is not None]
    along = all(site.part(host.part).axes[0] == axis for host in hosts)
    if not hosts or not along or len(lows) < len(hosts) or len(highs) < len(hosts):
        return None
    start, low = max(lows)
    return (low, min(highs) - start) if min(highs) > start else None


def _is_midway_in_the_piece(site: Site, stretch: tuple[Face, Fraction]) -> bool:
    low, room = stretch
    first, last = both_of_whole(low.axis)
    before, total = site.positions.distance(first, low), site.positions.distance(first, last)
    return before is None or total is None or 2 * before + room == total
