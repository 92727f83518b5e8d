"""The assumption that a back stands at the back: in a groove, a little before the rear edges."""

from __future__ import annotations

from fractions import Fraction
from functools import partial

from dryfit.piece.declared import Contact, DeclaredPart
from dryfit.placing.heights import say
from dryfit.placing.positions import Face
from dryfit.placing.seats import Seat
from dryfit.placing.site import Site, whole
from dryfit.placing.subjects import verb
from dryfit.quantities.units import INCH

INSET = Fraction(10), INCH * 3 / 8
"""Wood that is left behind the groove of a back, in mm and in inches (common practice)."""

_DEPTH = 1


def stands_at_the_back(site: Site, part: DeclaredPart) -> bool:
    """Assume that a `back` in a groove stands a little before the rear edges of its hosts."""
    if part.name.split()[-1] != "back" or part.axes[2] != _DEPTH:
        return False
    news = False
    inset = site.declared.display.either(*INSET)
    for contact in site.contacts(part.name, "inside"):
        if contact.joint is None or contact.joint.kind != "groove":
            continue
        for seat in site.guests(contact):
            host = _foremost(site, part, contact, seat)
            if host is not None:
                facts = (Face(host.name, _DEPTH, 1), Face(seat.name, _DEPTH, 1), -inset)
                words = f"stands {site.shown(inset)} before the rear edge of {host.name}"
                news |= say(site, seat, facts, "at the back", words)
    if news:
        stands = verb(part, "stands", "stand")
        text = f"{stands} at the back, {site.shown(inset)} before the rear edges"
        site.assume(text, part.span, partial(_phrase, site, part))
    return news


def _phrase(site: Site, part: DeclaredPart) -> str | None:
    (seat, *_) = site.seats(part.name)
    before = site.positions.distance(Face(seat.name, _DEPTH, 1), whole(_DEPTH, 1))
    return None if before is None else f"{site.shown(abs(before))} from back"


def _foremost(site: Site, part: DeclaredPart, contact: Contact, seat: Seat) -> Seat | None:
    """Return the host whose rear edge lies foremost, so that the groove fits all; or none yet."""
    if any(site.known(seat, _DEPTH, side) for side in (-1, 1)):
        return None
    known: list[tuple[Fraction, Seat]] = []
    for host in site.hosts(contact, seat, part.axes[0]):
        rear = site.positions.at(Face(host.name, _DEPTH, 1))
        if rear is not None:
            known.append((rear, host))
    return min(known, key=lambda one: one[0])[1] if known else None
