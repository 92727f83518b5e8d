"""How long the tenons of rails may be that meet those of others round the corner of a leg.

Only a length that nobody wrote gives way here; written ones that run into each other are told by
the check of mortises (H05).
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from dryfit.joinery.proportions import glue_gap, usual_tenon_thickness
from dryfit.piece.declared import Contact, JointWords
from dryfit.placing.mortise_cutters import mortise_cutters
from dryfit.placing.positions import Face
from dryfit.placing.seats import Seat
from dryfit.placing.site import Site, both
from dryfit.placing.tenon_lengths import LEAST_BETWEEN, rounded_down


@dataclass(frozen=True, slots=True)
class RailEnd:
    """The end of a copy of a rail in its host, at one side of an axis."""

    seat: Seat
    host: Seat
    axis: int
    side: int


def length_at_corners(
    site: Site, contact: Contact, joint: JointWords, usual: Fraction, ends: Iterable[RailEnd]
) -> Fraction:
    """Return the usual length of a part's tenons, or what their neighbours leave of it (B3.5).

    `ends` are all ends of the part that have such a tenon: all are made alike, as long as the
    first that asks.  Where less than one and a half thicknesses are left (B3.1), the usual length
    stays and the mortises are told; what is short for another reason is told by H04.
    """
    if contact.span not in site.corners:
        rooms = [room for end in ends for room in _rooms(site, contact, end)]
        site.corners[contact.span] = _within(site, contact, joint, usual, rooms)
    return min(usual, site.corners[contact.span])


def _within(
    site: Site, contact: Contact, joint: JointWords, usual: Fraction, rooms: Sequence[Fraction]
) -> Fraction:
    display, thick = site.declared.display, site.part(contact.guest.part).sizes[2]
    own = joint.thickness or (usual if thick is None else _thickness(site, thick.value))
    longest = rounded_down(min(rooms, default=usual) - LEAST_BETWEEN - glue_gap(display), display)
    return longest if rooms and own * Fraction(3, 2) <= longest else usual


def _rooms(site: Site, own: Contact, end: RailEnd) -> Iterator[Fraction]:
    """Yield how far from the face that it enters each mortise in its way begins, where known."""
    for contact in site.contacts_on(end.host.part, "into", "between"):
        other = site.part(contact.guest.part)
        joint = contact.joint
        if joint is None or joint.kind != "tenon" or other.name == own.guest.part:
            continue
        if other.axes[2] != end.axis:
            continue
        for seat in site.guests(contact):
            if end.host not in site.hosts(contact, seat, other.axes[0]):
                continue
            entered, near = (
                Face(owner, end.axis, -end.side) for owner in (end.host.name, seat.name)
            )
            before, thick = (
                site.positions.distance(entered, near),
                site.positions.extent(seat.name, end.axis),
            )
            if thick is None or _is_apart(site, end, seat):
                continue
            if before is None:
                before = _as_centred(site, end, thick)
            if before is None:
                continue
            tenon = joint.thickness or _thickness(site, thick)
            yield end.side * before + (thick - tenon) / 2


def _as_centred(site: Site, end: RailEnd, thick: Fraction) -> Fraction | None:
    # What nothing places by now is centred on its host in the end.
    deep = site.positions.extent(end.host.name, end.axis)
    return None if deep is None else end.side * (deep - thick) / 2


def _is_apart(site: Site, end: RailEnd, other: Seat) -> bool:
    # Rails at unequal heights pass each other.
    run = site.part(end.host.part).axes[0]
    (low, high), (start, stop) = both(end.seat.name, run), both(other.name, run)
    gaps = site.positions.distance(high, start), site.positions.distance(stop, low)
    return any(gap is not None and gap >= LEAST_BETWEEN for gap in gaps)


def _thickness(site: Site, thick: Fraction) -> Fraction:
    return usual_tenon_thickness(thick, mortise_cutters(site), site.declared.display)
