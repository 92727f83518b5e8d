"""A panel or a row of boards in a rabbet round its frame: the back of a case (TRADE B8, B24).

Its line says `inside sides and top and bottom, rabbet 6`: it lies that far in each of them, less a
little play, flush with their outer faces unless it says how far from there.
"""

from __future__ import annotations

from fractions import Fraction
from functools import partial
from itertools import pairwise

from dryfit.diagnostics import Span
from dryfit.joinery.panel import panel_gap
from dryfit.joinery.proportions import usual_housing_depth
from dryfit.joinery.rabbets import usual_back_rabbet_depth
from dryfit.piece.declared import Behind, Contact, DeclaredPart
from dryfit.placing.board_rows import board_row
from dryfit.placing.heights import say
from dryfit.placing.lines import with_sizes_added
from dryfit.placing.out_of_groove import tell_if_out
from dryfit.placing.panels import bounding_hosts
from dryfit.placing.positions import Face, Reason
from dryfit.placing.relations import Equal
from dryfit.placing.seats import Seat
from dryfit.placing.site import SIDE_WORDS, Site, both
from dryfit.placing.subjects import verb
from dryfit.quantities.units import INCH

_PLAY = {"mm": Fraction(1, 2), "in": INCH / 32}
_APART = {"mm": Fraction(1), "in": INCH / 32}
_OUTER = {0: -1, 1: 1, 2: -1}
"""The side of the piece at which a panel lies in its rabbets where its name tells none: behind,
below."""


def state_in_rabbets(site: Site, part: DeclaredPart, contact: Contact, seat: Seat) -> None:
    """Queue, for both ways of its face, that a panel reaches into the rabbets around it."""
    for axis in part.axes[:2]:
        site.pending.append(partial(_say_edges, site, part, contact, seat, axis))


def rabbet_depth(site: Site, contact: Contact) -> Fraction | None:
    """Return how far the rabbets reach into the frame, mm; None while its thickness is unknown.

    As deep as the housings of the case, so that one height of the cutter serves both, else half of
    the thinnest member (TRADE B8: a third to a half).  Listed where it is not written.
    """
    joint = contact.joint
    if joint is not None and joint.depth is not None:
        return joint.depth
    housed, thin = _housed_depth(site, contact), _thinnest(site, contact)
    if thin is None:
        return None
    deep = housed or usual_back_rabbet_depth(thin, site.declared.display)
    name = site.written(contact.guest.part)
    why = ", as the housings are" if housed else ""
    if joint is not None:
        line = with_sizes_added(joint.head, f"{site.shown(deep)} deep")
        text = f"the rabbets for the {name} are {site.shown(deep)} deep{why}"
        site.assume_line(text, joint.span, line)
    return deep


def _thinnest(site: Site, contact: Contact) -> Fraction | None:
    sizes = [site.part(host.part).sizes[2] for host in contact.hosts]
    known = [None if each is None else each.known for each in sizes]
    return None if None in known else min(each for each in known if each is not None)


def play_at_an_edge(site: Site) -> Fraction:
    """Return the play of what does not swell at one edge, mm: 1 mm over both (TRADE B8)."""
    return _PLAY[site.declared.display.unit]


def depth_rests_on(site: Site, contact: Contact) -> Behind:
    """Return the lines and figures that the depth of the rabbets comes from."""
    joint = contact.joint
    if joint is not None and joint.depth is not None:
        return joint.behind
    thick = tuple(f"{host.part}.thickness" for host in contact.hosts)
    housed = _housing_between(site, contact)
    if housed is None or housed.joint is None:
        return Behind(figures=thick)
    behind = housed.joint.behind
    return Behind((*behind.figures, *thick), (housed.span, *behind.spans))


def _housing_between(site: Site, contact: Contact) -> Contact | None:
    """Return the first housing that joins two members of the frame, or None."""
    members = {host.part for host in contact.hosts}
    for other in site.declared.contacts:
        inside = other.guest.part in members and members & {host.part for host in other.hosts}
        if other.joint is not None and other.joint.kind == "housing" and inside:
            return other
    return None


def _housed_depth(site: Site, contact: Contact) -> Fraction | None:
    housed = _housing_between(site, contact)
    if housed is None or housed.joint is None:
        return None
    if housed.joint.depth is not None:
        return housed.joint.depth
    thin = _thinnest(site, housed)
    return None if thin is None else usual_housing_depth(thin, site.declared.display)


def _say_edges(site: Site, part: DeclaredPart, contact: Contact, seat: Seat, axis: int) -> bool:
    row = _row(site, part, contact, seat) if axis == part.axes[1] else (seat,)
    if row[0] != seat:
        return True
    bounds = bounding_hosts(site, contact, seat, axis)
    depth = rabbet_depth(site, contact)
    if bounds is None or depth is None:
        return False
    low, high = bounds
    sight = site.positions.distance(Face(low.name, axis, 1), Face(high.name, axis, -1))
    if sight is None:
        return False
    play = _play(site, part, contact, (sight, depth), axis, boards=len(row) > 1)
    behind = depth_rests_on(site, contact)
    show = site.declared.display.shown
    for host, own, side in ((low, row[0], -1), (high, row[-1], 1)):
        reason = Reason(
            "into",
            f"rabbet in {host.part} less its play",
            f"{own.name} lies {show(depth - play, fitted=True)} in the rabbet of {host.name}, with "
            f"{show(play, fitted=True)} to spare",
            contact.span,
            figures=behind.figures,
            also=behind.spans,
            parts=((f"rabbet in {host.part}", depth), ("play in the rabbet", -play)),
        )
        faces = Face(host.name, axis, -side), Face(own.name, axis, side)
        site.positions.add(*faces, side * (depth - play), reason)
    if len(row) > 1:
        _say_row(site, part, row, sight + 2 * (depth - play), axis)
    return True


def _play(
    site: Site,
    part: DeclaredPart,
    contact: Contact,
    room: tuple[Fraction, Fraction],
    axis: int,
    *,
    boards: bool,
) -> Fraction:
    """Return the play at one edge: 1/2 mm, 1 mm over both (TRADE B8), more where wood swells."""
    display = site.declared.display
    if part.stock == "sheet" or boards or axis == part.axes[0]:
        return play_at_an_edge(site)
    gap, words = panel_gap(
        *room,
        along_grain=False,
        wood=site.moving(part),
        display=display,
    )
    if words:
        told = words.replace("groove", "rabbet")
        site.assume(f"{part.name}: {told}", contact.span, None)
        tell_if_out(site, part, contact, gap, room[1])
    return gap


def _row(site: Site, part: DeclaredPart, contact: Contact, seat: Seat) -> tuple[Seat, ...]:
    """Return the copies that lie side by side in the rabbets that a copy lies in."""
    own = [each for each in site.guests(contact) if each.within == seat.within]
    return tuple(own) if part.count > 1 else (seat,)


def _say_row(
    site: Site, part: DeclaredPart, row: tuple[Seat, ...], total: Fraction, axis: int
) -> None:
    """Tell that boards side by side share the width, each a gap from the next (TRADE B24)."""
    gap, span = _apart(site, part, (axis, total))
    shown = site.declared.display.shown
    how = "apart" if gap >= 0 else "in one another"
    words = f"the {part.written} stand {shown(abs(gap), fitted=True)} {how}"
    beside = Reason("gap", f"gap between {part.written}", words, span)
    words = f"the {part.written} are of one width"
    shared = Reason("spread", f"share of {part.name}", words, part.span)
    for first, second in pairwise(row):
        faces = Face(first.name, axis, 1), Face(second.name, axis, -1)
        site.positions.add(*faces, gap, beside)
    site.relate(Equal(tuple(both(seat.name, axis) for seat in row), shared))


def _apart(site: Site, part: DeclaredPart, run: tuple[int, Fraction]) -> tuple[Fraction, Span]:
    """Return how far boards stand apart: as written, else 1 mm (TRADE B24: 1/2 to 1 1/2).

    Less than nothing where tongues reach into the next board.
    """
    tongued = None if part.spread is None else board_row(site, part, part.spread, run, part.count)
    if tongued is not None:
        return -tongued.overlap, part.span
    amount = part.apart or (part.spread.gap if part.spread else None)
    if amount is not None and amount.known is not None:
        return amount.known, amount.span
    gap = _APART[site.declared.display.unit]
    site.assume(
        f"the {part.written} stand {site.shown(gap)} apart",
        part.span,
        f"{site.shown(gap)} between",
    )
    return gap, part.span


def lies_flush_in_rabbets(site: Site, part: DeclaredPart) -> bool:
    """Assume that what lies in rabbets is flush with the outer faces of its frame."""
    axis, news, told = part.axes[2], False, ""
    for contact in (each for each in site.contacts(part.name, "inside") if each.in_rabbets):
        for seat in site.guests(contact):
            side = seat.side(axis) or _OUTER[axis]
            host = _innermost(site, contact, seat, axis, side)
            if host is None or any(site.known(seat, axis, each) for each in (-1, 1)):
                continue
            word = SIDE_WORDS[axis, side]
            facts = (Face(host.name, axis, side), Face(seat.name, axis, side), Fraction(0))
            words = f"is flush with the {word} of {host.name}"
            news |= say(site, seat, facts, f"flush with {host.part}", words)
            told = f"{word} of {site.written(host.part)}"
    if news:
        text = f"{verb(part, 'is', 'are')} flush with the {told}"
        site.assume(text, part.span, f"flush with {told}")
    return news


def _innermost(site: Site, contact: Contact, seat: Seat, axis: int, side: int) -> Seat | None:
    """Return the member of the frame whose outer face lies furthest in; None while one waits."""
    found: list[tuple[Fraction, Seat]] = []
    for host in site.mates(contact, seat):
        place = site.positions.at(Face(host.name, axis, side))
        if place is None:
            return None
        found.append((side * place, host))
    return min(found, key=lambda entry: entry[0])[1] if found else None
