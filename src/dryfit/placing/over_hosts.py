"""Assumptions of what is carried: it runs to the outer faces of what carries it, or lies midway."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from fractions import Fraction
from functools import partial

from dryfit.piece.declared import DeclaredPart
from dryfit.placing.cleat_lengths import short_at_each_end
from dryfit.placing.directions import spread_axis
from dryfit.placing.heights import at_the_top, say
from dryfit.placing.positions import Face
from dryfit.placing.seats import Seat
from dryfit.placing.sideways import WAYS, low_phrase
from dryfit.placing.site import Site, both, part_words, size_name, size_phrase
from dryfit.placing.subjects import verb

ZERO = Fraction(0)


def runs_over_what_it_lies_on(site: Site, part: DeclaredPart) -> bool:
    """Assume that a shelf of slats runs to the outer faces of what carries it, or lies midway."""
    news: dict[int, list[Seat]] = {}
    short = ZERO
    for contact in site.contacts(part.name, "onto", "under"):
        for seat in site.guests(contact):
            if at_the_top(site, seat):
                continue
            hosts = site.hosts(contact, seat, 2)
            for axis in (each for each in (0, 1) if each != spread_axis(part)):
                ends = short_at_each_end(site, part, hosts, axis)
                if say_over(site, seat, hosts, axis, ends or ZERO):
                    short = ends or short
                    news.setdefault(axis, []).extend(hosts)
    for axis, hosts_there in news.items():
        hosts_words = part_words(site, hosts_there)
        sized = part.sizes[part.axes.index(axis)] is not None
        how = verb(part, "lies midway", "lie midway") if sized else verb(part, "runs", "run")
        text = f"{how} over the {hosts_words} {WAYS[axis]}"
        if axis == part.axes[0] and short:
            text += (
                f", {site.shown(short)} short of its edges, so that no end sticks out when it "
                "shrinks"
            )
        site.assume(text, part.span, partial(_over_phrase, site, part, axis))
    return bool(news)


def _over_phrase(site: Site, part: DeclaredPart, axis: int) -> str | None:
    lows = {site.positions.at(both(seat.name, axis)[0]) for seat in site.seats(part.name)}
    low = lows.pop() if len(lows) == 1 else None
    if part.sizes[part.axes.index(axis)] is None:
        return size_phrase(site, part, axis)
    return None if low is None else low_phrase(site, axis, low)


def say_over(
    site: Site, seat: Seat, hosts: Sequence[Seat], axis: int, short: Fraction = ZERO
) -> bool:
    """Assume that a copy lies midway over its hosts, or runs to their outer faces; say if news.

    `short` is how far it ends within them at each end, mm.
    """
    low = outermost(site, hosts, axis, -1)
    high = outermost(site, hosts, axis, 1)
    return low is not None and high is not None and say_within(site, seat, low, high, short)


def say_within(site: Site, seat: Seat, low: Face, high: Face, short: Fraction = ZERO) -> bool:
    """Assume that a copy lies midway between two faces, or runs from one to the other."""
    axis = low.axis
    size, span = site.positions.extent(seat.name, axis), site.positions.distance(low, high)
    own_low, own_high = both(seat.name, axis)
    if size is not None and span is not None:
        if site.known(seat, axis, -1):
            return False
        facts = (low, own_low, (span - size) / 2)
        figures = (size_name(site, seat.part, axis),)
        words = "lies midway over what carries it"
        return say(site, seat, facts, "midway over what carries it", words, figures)
    news = False
    for face, own in ((low, own_low), (high, own_high)):
        if not site.known(seat, axis, own.side):
            words = f"runs to the outer face of {face.owner}"
            news |= say(
                site,
                seat,
                (face, own, -own.side * short),
                f"to the outer face of {face.owner}",
                words,
            )
    return news


def outermost(site: Site, hosts: Iterable[Seat], axis: int, side: int) -> Face | None:
    """Return the face that lies furthest out on a side, or None while one is unknown."""
    return furthest(site, [Face(host.name, axis, side) for host in hosts], side)


def furthest(site: Site, faces: Sequence[Face], side: int) -> Face | None:
    """Return the face that lies furthest towards a side, or None while one is unknown."""
    known = [(side * at, face) for face in faces if (at := site.positions.at(face)) is not None]
    return max(known)[1] if known and len(known) == len(faces) else None
