"""Where a runner lies and how large it is, from what runs on it (TRADE B21.1).

Its groove is at mid height of the drawer's side, half as deep as that is thick, and stops behind
the front; whatever the runner's own line says instead is kept, and the groove follows the runner.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from functools import partial

from dryfit.joinery.runners import (
    UP,
    end_play,
    runner_play,
    usual_centre_runner,
    usual_groove_depth,
    usual_groove_top,
    usual_groove_width,
    usual_stop,
)
from dryfit.piece.declared import DeclaredPart
from dryfit.placing.heights import ZERO, say
from dryfit.placing.positions import Face
from dryfit.placing.runner_seats import RUNS_IN, running_hosts
from dryfit.placing.seats import Seat
from dryfit.placing.site import Phrase, Site
from dryfit.placing.subjects import verb


@dataclass(frozen=True, slots=True)
class Fact:
    """A distance between a face of the host and one of the runner, with the words for it."""

    start: Face
    end: Face
    distance: Fraction
    words: str
    phrase: Phrase


def runs_in_groove(site: Site, part: DeclaredPart) -> bool:
    """Assume the sizes and the place of a runner, once what runs on it has its place."""
    return say_runner(site, part, RUNS_IN, _facts)


def say_runner(
    site: Site,
    part: DeclaredPart,
    runs: str,
    facts: Callable[[Site, DeclaredPart, Seat, Seat], Iterable[Fact]],
) -> bool:
    """Assume what is usual of a runner that `runs` (in, under) others, but what its line says."""
    told: dict[str, Phrase] = {}
    for contact in site.contacts(part.name, runs):
        for seat in site.guests(contact):
            for host in running_hosts(site, contact, seat):
                for fact in facts(site, part, seat, host):
                    if site.known(seat, fact.end.axis, fact.end.side):
                        continue
                    distances = (fact.start, fact.end, fact.distance)
                    if say(site, seat, distances, f"{runs} {host.part}", fact.words):
                        told.setdefault(fact.words, fact.phrase)
    for words, phrase in told.items():
        site.assume(f"{verb(part, 'runs', 'run')}: each {words}", part.span, phrase)
    return bool(told)


def _facts(site: Site, part: DeclaredPart, seat: Seat, host: Seat) -> Iterator[Fact]:
    axis, run = site.part(host.part).axes[2], part.axes[0]
    thick = site.positions.extent(host.name, axis)
    if run in {axis, UP} or thick is None:
        return
    side = -1 if axis == UP else host.side(axis)
    if not side:
        return
    if not site.known(seat, axis, side):
        # What the runner is screwed to comes first: it stands where it stands.
        return
    display, written = site.declared.display, site.written(host.part)
    deep = usual_groove_depth(thick, display)
    yield Fact(
        Face(host.name, axis, side),
        Face(seat.name, axis, -side),
        -side * (deep - runner_play(display)),
        f"stands in a groove {site.shown(deep)} deep of the {written}",
        partial(_size, site, part, axis),
    )
    yield from (_in_guide if axis == UP else _in_side)(site, part, seat, host)


def _in_side(site: Site, part: DeclaredPart, seat: Seat, host: Seat) -> Iterator[Fact]:
    """Yield where the runner of a drawer's side lies in height and along it."""
    display, run, written = site.declared.display, part.axes[0], site.written(host.part)
    high = site.positions.extent(host.name, UP)
    if high is None:
        return
    top, wide = usual_groove_top(high, display), usual_groove_width(display)
    yield Fact(
        Face(host.name, UP, -1),
        Face(seat.name, UP, 1),
        top,
        f"has its top {site.shown(top)} above the lower edge of the {written}",
        None,
    )
    yield Fact(
        Face(seat.name, UP, 1),
        Face(seat.name, UP, -1),
        runner_play(display) - wide,
        f"is as much narrower than its groove of {site.shown(wide)} as lets it run",
        partial(_size, site, part, UP),
    )
    stop = usual_stop(display)
    start = stop + end_play(display)
    yield Fact(
        Face(host.name, run, -1),
        Face(seat.name, run, -1),
        start,
        f"begins {site.shown(start)} behind the front of the {written}, whose groove stops "
        f"{site.shown(stop)} behind it",
        None,
    )
    yield _to_the_rear(site, part, seat, host)


def _in_guide(site: Site, part: DeclaredPart, seat: Seat, host: Seat) -> Iterator[Fact]:
    """Yield where the runner below a drawer lies: along the middle of its guide (B21.2)."""
    display, run, written = site.declared.display, part.axes[0], site.written(host.part)
    across = 3 - run - UP
    room, wide = (site.positions.extent(each.name, across) for each in (host, seat))
    own = wide if wide is not None else usual_centre_runner(display)
    if room is None:
        return
    yield Fact(
        Face(host.name, across, -1),
        Face(seat.name, across, -1),
        (room - own) / 2,
        f"lies along the middle of the {written}",
        None,
    )
    yield Fact(
        Face(seat.name, across, -1),
        Face(seat.name, across, 1),
        own,
        f"is {site.shown(own)} wide",
        partial(_size, site, part, across),
    )
    start = end_play(display)
    yield Fact(
        Face(host.name, run, -1),
        Face(seat.name, run, -1),
        start,
        f"begins {site.shown(start)} behind the front of the {written}",
        None,
    )
    yield _to_the_rear(site, part, seat, host)


def _to_the_rear(site: Site, part: DeclaredPart, seat: Seat, host: Seat) -> Fact:
    run, written = part.axes[0], site.written(host.part)
    return Fact(
        Face(host.name, run, 1),
        Face(seat.name, run, 1),
        ZERO,
        f"ends level with the {written}",
        partial(_size, site, part, run),
    )


def _size(site: Site, part: DeclaredPart, axis: int) -> str | None:
    """Return the size that is assumed, to the tenth of a millimetre: it has to run."""
    at = part.axes.index(axis)
    size = site.positions.extent(site.seats(part.name)[0].name, axis)
    if part.sizes[at] is not None or size is None:
        return None
    shown = site.declared.display.shown(size, fitted=True)
    return f"{shown} {('long', 'wide', 'thick')[at]}"
