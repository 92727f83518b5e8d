"""Joint instances: where declared contacts really meet, and what each removes."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.joinery.cut import Cut, Placed
from dryfit.kinds.joints import BESIDE, is_mitred
from dryfit.piece.declared import Contact
from dryfit.placing.apart_words import gap_words
from dryfit.placing.crossing import crossing_hosts
from dryfit.placing.face_seats import ON_A_FACE
from dryfit.placing.faces import face_hosts
from dryfit.placing.families import family_of, finder_of
from dryfit.placing.found import Found
from dryfit.placing.free_places import Around, Occupied
from dryfit.placing.glue_patches import with_glue
from dryfit.placing.groove_ends import with_groove_ends
from dryfit.placing.late_joints import cut_late
from dryfit.placing.openings import hosts_of
from dryfit.placing.row_places import note_grooves
from dryfit.placing.runner_seats import RUNS_IN, RUNS_UNDER, running_hosts
from dryfit.placing.seats import Seat
from dryfit.placing.site import Site
from dryfit.placing.tenon_words import check_details

MOST_JOINTS = 6000


def find_joints(
    site: Site, placed: Mapping[str, Placed], lone: Sequence[Cut] = ()
) -> tuple[Found, ...]:
    """Return all joint instances in the order of the declared contacts, then of the copies.

    `lone` are the cuts with no mate: tenons without a written place keep clear of them.
    Findings: joint-without-contact, no-screw-fits, too-many-joints, and those of tenons.  Buttons
    are found by `fastenings`.
    """
    found: list[Found] = []
    unhung: list[tuple[Contact, Sequence[Placed]]] = []
    around = Around(placed, Occupied())
    _occupy(site, around, lone)
    note_grooves(site, placed, around)
    for contact in site.declared.contacts:
        check_details(site, contact)
        family = family_of(contact)
        if family is None:
            continue
        find = finder_of(family)
        apart: list[Placed] = []
        met_before = len(found)
        for seat in site.guests(contact):
            if len(found) > MOST_JOINTS:
                site.findings.append(_too_many(contact))
                return ()
            guest = placed[seat.name]
            met = [
                (joint, placed[host])
                for host in _hosts(site, contact, seat)
                if (joint := find(site, contact, guest, placed[host], around))
            ]
            if contact.preposition == "in" and _is_mitred(site, guest):
                # Only the point of a mitred end comes to the wall before it.
                run = guest.axes[0]
                met = [each for each in met if each[0].region.extent(run)]
            joints, mates = [joint for joint, _ in met], [host for _, host in met]
            glued = with_glue(site, contact, joints, guest, mates)
            found += [cut_late(site, contact, joint) for joint in glued]
            if not met and contact.preposition != BESIDE:
                apart.append(guest)
        mortises = (joint.cuts for joint in found[met_before:] if joint.tenon is not None)
        around.occupied.add(cut for cuts in mortises for cut in cuts if cut.role == "mortise")
        # Of slats laid over two rails some may lie between them, carried by others.
        carried = family == "rest" and len(found) > met_before
        if family == "hinges":
            unhung += [(contact, apart)] if apart else []
        elif apart and contact.hosts and not carried:
            _no_contact(site, contact, apart, placed)
        elif contact.preposition == "inside" and not apart:
            _report_unmet(site, contact, found[met_before:], placed)
    _report_unhung(site, unhung, found, placed)
    return with_groove_ends(site, found, placed)


def _is_mitred(site: Site, guest: Placed) -> bool:
    return any(
        contact.joint is not None
        and is_mitred(contact.joint.kind)
        and guest.part in {contact.guest.part, *(host.part for host in contact.hosts)}
        for contact in site.declared.contacts
    )


def _report_unhung(
    site: Site,
    unhung: Sequence[tuple[Contact, Sequence[Placed]]],
    found: Sequence[Found],
    placed: Mapping[str, Placed],
) -> None:
    """Report, once for a line, what hangs nowhere: of a framed door one stile is enough."""
    told = {joint.span for joint in found}
    for contact, apart in unhung:
        if contact.span not in told:
            told.add(contact.span)
            _no_contact(site, contact, apart, placed)


def _report_unmet(
    site: Site, contact: Contact, found: Sequence[Found], placed: Mapping[str, Placed]
) -> None:
    """Report members of a frame that a panel does not reach, where no copy of them is reached."""
    met = {joint.host for joint in found}
    unmet = tuple(
        host
        for host in contact.hosts
        if site.opening(host.part) is None and not met & {each.name for each in site.named(host)}
    )
    if unmet:
        guests = [placed[seat.name] for seat in site.guests(contact)]
        _no_contact(site, replace(contact, hosts=unmet), guests, placed)


def _occupy(site: Site, around: Around, lone: Sequence[Cut]) -> None:
    """Note the laps, housings and cuts with no mate, which tenons keep clear of."""
    if not any(each.joint and each.joint.kind == "tenon" for each in site.declared.contacts):
        return
    placed = around.placed
    around.occupied.add(lone)
    for contact in site.declared.contacts:
        housed = contact.joint is not None and contact.joint.kind == "housing"
        if contact.after is not None or not (housed or contact.preposition == "crossing"):
            continue
        find = finder_of("housing" if housed else family_of(contact) or "half_lap")
        for seat in site.guests(contact):
            for host in _hosts(site, contact, seat):
                joint = find(site, contact, placed[seat.name], placed[host], around)
                around.occupied.add(joint.cuts if joint else ())


def _hosts(site: Site, contact: Contact, guest: Seat) -> list[str]:
    if contact.preposition == BESIDE:
        row = site.mates(contact, guest)
        return [mate.name for mate in row if mate != guest and mate.within == guest.within]
    if contact.preposition == "crossing":
        return [mate.name for mate in crossing_hosts(site, contact, guest)]
    if contact.preposition in {RUNS_IN, RUNS_UNDER}:
        return [mate.name for mate in running_hosts(site, contact, guest)]
    if contact.preposition == "in":
        # What is glued into an opening is glued to what bounds it.
        spaces = (site.opening(host.part) for host in contact.hosts)
        return [wall.name for space in spaces if space for wall in hosts_of(site, space)]
    on_face = contact.preposition in ON_A_FACE
    mates = face_hosts(site, contact, guest) if on_face else site.mates(contact, guest)
    return [mate.name for mate in mates]


def _too_many(contact: Contact) -> Diagnostic:
    return Diagnostic(
        "too-many-joints",
        Severity.ERROR,
        f"the piece has more than {MOST_JOINTS} joints, and no more are planned",
        contact.span,
        hints=(Hint("plan the piece in sections, each in its own file"),),
    )


def _no_contact(
    site: Site, contact: Contact, guests: Sequence[Placed], placed: Mapping[str, Placed]
) -> None:
    spaces = {each.part: site.opening(each.part) for each in contact.hosts}
    words = (each.written if each else site.written(name) for name, each in spaces.items())
    hosts = " and ".join(words)
    names = guests[0].name if len(guests) == 1 else f"{guests[0].name} and {len(guests) - 1} more"
    verb = "does" if len(guests) == 1 else "do"
    seats = (
        seat.name for host in contact.hosts if not spaces[host.part] for seat in site.named(host)
    )
    mates = [(name, placed[name].box) for name in seats if name in placed]
    gap = gap_words(site, [(each.name, each.box) for each in guests], mates)
    site.findings.append(
        Diagnostic(
            "joint-without-contact",
            Severity.ERROR,
            f"{names} {verb} not meet the {hosts}, so there is no joint to cut"
            f"{': ' if gap else ''}{gap}",
            contact.span,
            rule="H28",
            hints=(Hint("check sizes and places of both; they must touch or overlap"),),
        )
    )
