"""Spreading copies evenly: between hosts, over what they lie on, or over the whole piece."""

from __future__ import annotations

from fractions import Fraction
from functools import partial

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.piece.declared import Contact, DeclaredPart, SpreadWords
from dryfit.placing.directions import edge_inset, spread_axis
from dryfit.placing.ends import ends_of
from dryfit.placing.lines import with_words
from dryfit.placing.positions import Face, Reason
from dryfit.placing.seats import Seat
from dryfit.placing.site import SIDE_WORDS, Site, part_words, whole

ZERO = Fraction(0)
_WAYS = ("across", "front to back", "up and down")


def state_spread(site: Site, part: DeclaredPart, contact: Contact | None) -> None:
    """Queue the rule that puts a part's copies at equal gaps, ends included."""
    axis = spread_axis(part)
    if part.spread is None or axis is None:
        return
    if part.spread.axis is None:
        way = _WAYS[axis]
        line = with_words(part.spread.span, f"spread {way}")
        site.assume_line(f"the {part.written} are spread {way}", part.spread.span, line)
    site.pending.append(partial(_say_spread, site, part, contact, axis))


def _say_spread(site: Site, part: DeclaredPart, contact: Contact | None, axis: int) -> bool:
    # Once the two bounds and the size of a copy are known: equal gaps, or the gap as written.
    spread, seats = part.spread, site.seats(part.name)
    inset = edge_inset(part, axis)
    bounds = _bounds(site, part, contact, axis) if inset is None else _piece(axis)
    size = site.positions.extent(seats[0].name, axis)
    if bounds is None or size is None or spread is None:
        return False
    clear = site.positions.distance(*bounds)
    if clear is None:
        return False
    first, gap = _first_and_gap(spread, len(seats), clear, size)
    if inset is not None:
        first = inset.value
        gap = (clear - 2 * first - len(seats) * size) / (len(seats) - 1)
    elif first > 0 and first != gap:
        left = f"{site.shown(first)} are left at either end of the {part.written}"
        site.assume(f"{left}, which stand {site.shown(gap)} apart", spread.span, None)
    if first < 0 or gap < 0:
        _too_full(site, part, spread, clear, len(seats) * size + (len(seats) - 1) * max(gap, ZERO))
    for index, seat in enumerate(seats):
        reason = Reason(
            "spread",
            f"place of {seat.name} in its spread",
            f"{len(seats)} {part.written} are spread evenly over {site.shown(clear)}, "
            f"{site.shown(gap)} apart",
            spread.span if inset is None else inset.span,
        )
        face = Face(seat.name, axis, -1)
        site.positions.add(bounds[0], face, first + index * (size + gap), reason)
    return True


def _piece(axis: int) -> tuple[Face, Face]:
    return whole(axis, -1), whole(axis, 1)


def _bounds(
    site: Site, part: DeclaredPart, contact: Contact | None, axis: int
) -> tuple[Face, Face] | None:
    seat = site.seats(part.name)[0]
    if contact is None:
        return _bounds_below(site, part, seat, axis)
    ends = ends_of(site, contact, seat, axis)
    if ends is None or ends.low is None or ends.high is None:
        return None
    # Several hosts may stand at one end: clear space ends at the first face met.
    hosts = site.hosts(contact, seat, axis)
    low = _outermost(site, [host for host in hosts if _beside(host, ends.low, axis)], axis, 1)
    high = _outermost(site, [host for host in hosts if _beside(host, ends.high, axis)], axis, -1)
    return (low, high) if low and high else None


def _beside(host: Seat, end: Seat, axis: int) -> bool:
    return host == end or (host.side(axis) != 0 and host.side(axis) == end.side(axis))


def _bounds_below(
    site: Site, part: DeclaredPart, seat: Seat, axis: int
) -> tuple[Face, Face] | None:
    contacts = site.contacts(part.name, "onto", "under")
    hosts = [host for contact in contacts for host in site.hosts(contact, seat, 2)]
    if not hosts:
        return _within_other_faces(site, part, seat, axis)
    low, high = _outermost(site, hosts, axis, -1), _outermost(site, hosts, axis, 1)
    if low is None or high is None or part.spread is None:
        return None
    site.assume(
        f"the {part.written} are spread over the whole of the {part_words(site, hosts)}, "
        f"{SIDE_WORDS[axis, -1]} to {SIDE_WORDS[axis, 1]}",
        part.spread.span,
        None,
    )
    return low, high


def _within_other_faces(
    site: Site, part: DeclaredPart, seat: Seat, axis: int
) -> tuple[Face, Face] | None:
    # Slats lapped over bearers that run along the spread end with the bearers; else the piece.
    hosts = [
        host
        for contact in site.contacts(part.name, "crossing")
        for host in site.hosts(contact, seat, axis)
        if site.part(host.part).axes[0] == axis
    ]
    if not hosts:
        return _piece(axis)
    low, high = _outermost(site, hosts, axis, -1), _outermost(site, hosts, axis, 1)
    return (low, high) if low and high else None


def _outermost(site: Site, hosts: list[Seat], axis: int, side: int) -> Face | None:
    # Clear space ends at the first face met; over hosts it begins at the outermost one.
    faces = [Face(host.name, axis, side) for host in hosts]
    known = [(place, face) for face in faces if (place := site.positions.at(face)) is not None]
    if not known or len(known) < len(faces):
        return None
    return max(known)[1] if side == 1 else min(known)[1]


def _first_and_gap(
    spread: SpreadWords, count: int, clear: Fraction, size: Fraction
) -> tuple[Fraction, Fraction]:
    if spread.gap is None:
        gap = (clear - count * size) / (count + 1)
        return gap, gap
    gap = spread.gap.value
    return (clear - count * size - (count - 1) * gap) / 2, gap


def _too_full(
    site: Site, part: DeclaredPart, spread: SpreadWords, clear: Fraction, need: Fraction
) -> None:
    site.findings.append(
        Diagnostic(
            "spread-too-full",
            Severity.ERROR,
            f"{part.count} {part.written} need {site.shown(need)}, but there is "
            f"{site.shown(clear)}",
            spread.span,
            rule="H30",
            figures={"needed": need, "there is": clear},
            hints=(Hint(_less(part, spread)),),
        )
    )


def _less(part: DeclaredPart, spread: SpreadWords) -> str:
    # Shelves that are merely "spread" were perhaps meant one above the other.
    lies_flat = part.axes[2] == 2 and spread.axis is None
    above = ", or `spread up and down`" if lies_flat else ""
    return f"write fewer or narrower ones, or a smaller gap{above}"
