"""Half laps: which copies cross, along which axis the lap is deep, and how the faces lie."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from functools import partial

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.piece.declared import Contact, DeclaredPart
from dryfit.placing.positions import Face, Reason
from dryfit.placing.seats import Seat
from dryfit.placing.site import SIDE_WORDS, Site
from dryfit.placing.subjects import verb

ZERO = Fraction(0)


def lap_axis(guest: DeclaredPart, host: DeclaredPart) -> int | None:
    """Return the axis along which a lap is deep: the one that neither part runs along."""
    if guest.axes[0] == host.axes[0]:
        return None
    return 3 - guest.axes[0] - host.axes[0]


def crossing_hosts(site: Site, contact: Contact, seat: Seat) -> list[Seat]:
    """Return the host copies that a lapped guest crosses: those of its own plane."""
    guest = site.part(contact.guest.part)
    return [
        mate
        for mate in site.mates(contact, seat)
        if _in_one_plane(seat, mate, lap_axis(guest, site.part(mate.part)))
    ]


def crossing_mates(site: Site, part: DeclaredPart) -> list[tuple[Seat, tuple[Seat, ...]]]:
    """Return, for each copy of a part and each crossing of it, what it is lapped with."""
    found: list[tuple[Seat, tuple[Seat, ...]]] = []
    crossings = (
        *site.contacts(part.name, "crossing"),
        *site.contacts_on(part.name, "crossing"),
    )
    for contact in dict.fromkeys(crossings):
        if contact.guest.part == part.name:
            found += [
                (seat, tuple(crossing_hosts(site, contact, seat))) for seat in site.guests(contact)
            ]
        hosts = [host for host in contact.hosts if host.part == part.name]
        depth = lap_axis(site.part(contact.guest.part), part) if hosts else None
        for seat in (seat for host in hosts for seat in site.named(host)):
            guests = [mate for mate in site.guests(contact) if _in_one_plane(seat, mate, depth)]
            found.append((seat, tuple(guests)))
    return found


def _in_one_plane(seat: Seat, mate: Seat, depth: int | None) -> bool:
    return depth is not None and seat.side(depth) * mate.side(depth) != -1


def shown_part(contact: Contact) -> str | None:
    """Return the part that ``stiles show`` names on the line of a contact, or None."""
    details = contact.joint.details if contact.joint else ()
    shown = (detail.part.part for detail in details if detail.kind == "shows" and detail.part)
    return next(shown, None)


def state_crossing(site: Site, part: DeclaredPart, contact: Contact, seat: Seat) -> None:
    """Queue the fact that lapped copies lie in one plane.

    Findings: lap-of-parallel-parts, shows-neither.
    """
    shown = shown_part(contact)
    if shown is not None and shown not in {part.name, *(host.part for host in contact.hosts)}:
        _report_shows_neither(site, part, contact, shown)
    for host in contact.hosts:
        if lap_axis(part, site.part(host.part)) is None:
            _report_parallel(site, part, contact, host.part)
    for mate in crossing_hosts(site, contact, seat):
        axis = lap_axis(part, site.part(mate.part))
        if axis is not None:
            site.pending.append(partial(_say_lap, site, contact, seat, mate, axis))


def _say_lap(site: Site, contact: Contact, seat: Seat, mate: Seat, axis: int) -> bool:
    # Once both thicknesses are known: outer faces flush, upper ones where the parts lie, unless
    # the lines put them otherwise.
    if site.positions.distance(Face(mate.name, axis, -1), Face(seat.name, axis, -1)) is not None:
        return True
    sizes = [site.positions.extent(each.name, axis) for each in (seat, mate)]
    if None in sizes:
        return False
    side = seat.side(axis) or mate.side(axis) or (1 if axis == 2 else -1)
    if _thicker_shows(contact, (seat, mate), sizes):
        # The face of the thicker stays whole only where the other lies flush with its back.
        side = -side
    word = SIDE_WORDS[axis, side]
    if sizes[0] != sizes[1]:
        part, other = site.part(seat.part), site.written(mate.part)
        lapped = "it is" if part.count == 1 else "they are"
        site.assume(
            f"{verb(part, 'is', 'are')} flush with the {word} of the {other} that {lapped} lapped "
            "with",
            part.span,
            f"flush with {word} of {other}",
        )
    reason = Reason(
        "lap",
        f"lap with {mate.part}",
        f"{seat.name} and {mate.name} are lapped in one plane",
        contact.span,
    )
    site.positions.add(Face(mate.name, axis, side), Face(seat.name, axis, side), ZERO, reason)
    return True


def _thicker_shows(
    contact: Contact, pair: tuple[Seat, Seat], sizes: Sequence[Fraction | None]
) -> bool:
    first, second = sizes
    if first is None or second is None or first == second:
        return False
    return shown_part(contact) == pair[0 if first > second else 1].part


def _report_shows_neither(site: Site, part: DeclaredPart, contact: Contact, shown: str) -> None:
    host = contact.hosts[0].part if contact.hosts else part.name
    finding = Diagnostic(
        "shows-neither",
        Severity.ERROR,
        f"{site.written(shown)} do not meet in this lap, so they cannot show in it",
        contact.span,
        rule="H28",
        hints=(Hint(f"write `{part.written} show` or `{site.written(host)} show`"),),
    )
    site.tell_once(finding)


def _report_parallel(site: Site, part: DeclaredPart, contact: Contact, host: str) -> None:
    finding = Diagnostic(
        "lap-of-parallel-parts",
        Severity.ERROR,
        f"{part.name} and {host} run the same way; a {_kind(contact)} needs two that cross",
        contact.span,
        rule="H28",
        hints=(Hint("say which way each runs: `across`, `front to back` or `upright`"),),
    )
    site.tell_once(finding)


def _kind(contact: Contact) -> str:
    return contact.joint.kind if contact.joint else "half lap"
