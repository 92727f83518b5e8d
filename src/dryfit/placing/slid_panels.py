"""A panel that slides into grooves on three sides, and under or over a part on the fourth.

So goes in the bottom of a drawer once the drawer is glued: grooved into sides and front, under the
back, where it is screwed (TRADE B20).  Its line says `inside sides and front, groove 6, under
back`.
"""

from __future__ import annotations

from fractions import Fraction

from dryfit.joinery.panel import panel_gap
from dryfit.piece.declared import Behind, Contact, DeclaredPart
from dryfit.placing.heights import say
from dryfit.placing.lines import with_sizes_added, with_words
from dryfit.placing.positions import Face, Reason
from dryfit.placing.seats import Seat
from dryfit.placing.site import Site
from dryfit.placing.subjects import verb
from dryfit.quantities.units import INCH

UP = 2
_BESIDE = {"mm": Fraction(3, 4), "in": INCH / 32}
_BEFORE = {"mm": Fraction(1), "in": INCH / 32}
_DEEPEST = {"mm": Fraction(6), "in": INCH / 4}
_OFFSET = {"mm": Fraction(10), "in": INCH * 3 / 8}


def slid(site: Site, part: DeclaredPart) -> Contact | None:
    """Return the contact that says what a panel in grooves goes under or over, or None."""
    grooved = {host.part for each in site.contacts(part.name, "inside") for host in each.hosts}
    for contact in site.contacts(part.name, "under", "onto") if grooved else ():
        if contact.hosts and not grooved & {host.part for host in contact.hosts}:
            return contact
    return None


def usual_depth(site: Site, contact: Contact) -> Fraction:
    """Return the depth of the grooves: 6 mm or 1/4 in, half of thinner wood (TRADE B20)."""
    display = site.declared.display
    sizes = [site.part(host.part).sizes[2] for host in contact.hosts]
    known = [each.known for each in sizes if each is not None and each.known is not None]
    half = min((display.down(each / 2) for each in known), default=_DEEPEST[display.unit])
    return min(half, _DEEPEST[display.unit])


def gap_at_the_sides(
    site: Site, part: DeclaredPart, sight: Fraction, depth: Fraction, axis: int
) -> tuple[Fraction, str | None]:
    """Return the play at each of two grooves, and the sentence to print about it.

    TRADE B20: the width is the inside and both depths less 1 1/2; 1/16 in on inch pieces.  Across
    the grain of solid wood it is that of a panel that swells.
    """
    display = site.declared.display
    if part.stock == "sheet" or axis == part.axes[0]:
        return _BESIDE[display.unit], None
    return panel_gap(
        sight,
        depth,
        along_grain=False,
        wood=site.moving(part),
        display=display,
    )


def say_open_side(
    site: Site,
    part: DeclaredPart,
    contact: Contact,
    ends: tuple[Seat, Seat],
    depth: Fraction,
    axis: int,
) -> bool:
    """Tell where a panel ends along the way that it slides; False while places are unknown.

    TRADE B20: from the groove in the front, less 1, to the outer face of the back.  `ends` are the
    panel's seat and that of the host at whose groove it stops.
    """
    seat, stop = ends
    under = slid(site, part)
    passed = None if under is None else next(iter(site.mates(under, seat)), None)
    if passed is None:
        return False
    middles = [_middle(site, each, axis) for each in (stop, passed)]
    if None in middles or middles[0] == middles[1]:
        return False
    assert middles[0] is not None
    assert middles[1] is not None
    way = 1 if middles[0] < middles[1] else -1
    gap = _BEFORE[site.declared.display.unit]
    behind = contact.joint.behind if contact.joint else Behind()
    show = site.declared.display.shown
    reason = Reason(
        "into",
        f"groove in {stop.part} less its gap",
        f"{seat.name} stands {show(depth - gap, fitted=True)} in the groove of {stop.name}, with "
        f"{show(gap, fitted=True)} to spare",
        contact.span,
        figures=behind.figures,
        also=behind.spans,
        parts=((f"groove in {stop.part}", depth), ("room in the groove", -gap)),
    )
    site.positions.add(
        Face(stop.name, axis, way), Face(seat.name, axis, -way), -way * (depth - gap), reason
    )
    words = f"{seat.name} reaches to the outer face of {passed.name}, past which it slides in"
    flush = Reason("into", f"outer face of {passed.part}", words, contact.span)
    site.positions.add(Face(passed.name, axis, way), Face(seat.name, axis, way), Fraction(0), flush)
    return True


def _middle(site: Site, seat: Seat, axis: int) -> Fraction | None:
    low = site.positions.at(Face(seat.name, axis, -1))
    high = site.positions.at(Face(seat.name, axis, 1))
    return None if low is None or high is None else low + high


def lies_above_lower_edges(site: Site, part: DeclaredPart) -> bool:
    """Assume that a bottom whose line says no height lies 10 mm above its sides' lower edges.

    TRADE B20: 10 mm, 3/8 in, of wood below the groove.
    """
    under = slid(site, part)
    if under is None or under.preposition != "under" or part.axes[2] != UP:
        return False
    up, news = _OFFSET[site.declared.display.unit], False
    for contact in site.contacts(part.name, "inside"):
        for seat in site.guests(contact):
            if any(site.known(seat, UP, side) for side in (-1, 1)):
                continue
            hosts = site.mates(contact, seat)
            host = next((each for each in hosts if site.known(each, UP, -1)), None)
            if host is not None:
                facts = (Face(host.name, UP, -1), Face(seat.name, UP, -1), up)
                words = f"lies {site.shown(up)} above the lower edge of {host.name}"
                news |= say(site, seat, facts, f"above the lower edge of {host.part}", words)
    if news:
        name = site.contacts(part.name, "inside")[0].hosts[0].part
        text = f"{verb(part, 'lies', 'lie')} {site.shown(up)} above the lower edges of the sides"
        site.assume(text, part.span, f"{site.shown(up)} above the bottom of {site.written(name)}")
    return news


def list_slid(site: Site, part: DeclaredPart) -> None:
    """List how deep the grooves of a panel that slides in are, and that it is screwed behind."""
    under = slid(site, part)
    if under is None:
        return
    for contact in site.contacts(part.name, "inside"):
        if contact.joint is None or contact.joint.depth is None:
            deep = site.shown(usual_depth(site, contact))
            text = f"the grooves for {part.written} are {deep} deep"
            said = contact.span.text()
            line = (
                with_words(contact.span, f"{said}, groove {deep}")
                if contact.joint is None
                else with_sizes_added(contact.joint.head, f"{deep} deep")
            )
            site.assume_line(text, contact.span, line)
    if under.joint is not None and under.joint.span == under.span:
        host, said = site.written(under.hosts[0].part), under.span.text()
        text = f"{verb(part, 'is', 'are')} screwed to the {host}, and held by no glue"
        site.assume_line(text, under.span, with_words(under.span, f"{said}, screws"))
