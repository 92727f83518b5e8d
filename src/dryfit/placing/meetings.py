"""Hard facts from how parts meet: into, between, onto, under, crossing, inside, set back."""

from __future__ import annotations

from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.piece.declared import Amount, Contact, DeclaredPart
from dryfit.placing.crossing import state_crossing
from dryfit.placing.directions import bounding_contact
from dryfit.placing.ends import state_ends
from dryfit.placing.in_openings import DEPTH, fillings, state_in_opening
from dryfit.placing.offsets import state_offsets
from dryfit.placing.on_faces import state_on_faces
from dryfit.placing.panels import state_inside
from dryfit.placing.play import report_idle_play
from dryfit.placing.positions import Face, Reason
from dryfit.placing.rabbeted_panels import state_in_rabbets
from dryfit.placing.seats import Seat, beside
from dryfit.placing.site import Site
from dryfit.placing.slid_panels import list_slid
from dryfit.placing.spreads import state_spread

ZERO = Fraction(0)


def state_meetings(site: Site, part: DeclaredPart) -> None:
    """Tell or queue the facts of every contact in which the part is the guest.

    Findings: set-back-from-nothing, gap-of-nothing, and those of crossings.
    """
    for contact in site.contacts(part.name, "into", "between"):
        for seat in site.guests(contact):
            state_ends(site, part, contact, seat)
    for contact in site.contacts(part.name, "onto", "under"):
        for seat in site.guests(contact):
            _state_onto(site, contact, seat)
    for contact in site.contacts(part.name, "crossing"):
        for seat in site.guests(contact):
            state_crossing(site, part, contact, seat)
    for contact in site.contacts(part.name, "inside"):
        state = state_in_rabbets if contact.in_rabbets else state_inside
        for seat in site.guests(contact):
            state(site, part, contact, seat)
    list_slid(site, part)
    state_on_faces(site, part)
    state_offsets(site, part)
    state_in_opening(site, part)
    report_idle_play(site, part)
    if part.set_back is not None:
        for seat in site.seats(part.name):
            _state_set_back(site, part, seat, part.set_back)
    if part.spread is not None and not _has_a_row_of_its_own(site, part):
        state_spread(site, part, bounding_contact(site, part))


def _has_a_row_of_its_own(site: Site, part: DeclaredPart) -> bool:
    # Copies in an opening stand in a row there, and boards of a back in their rabbets.
    back = any(each.in_rabbets for each in site.contacts(part.name, "inside"))
    return back or bool(site.contacts(part.name, "in"))


def _state_onto(site: Site, contact: Contact, seat: Seat) -> None:
    side = 1 if contact.preposition == "onto" else -1
    for host in site.hosts(contact, seat, 2):
        verb = "lies on" if side == 1 else "stands under"
        reason = Reason(
            "onto", f"{verb} {host.part}", f"{seat.name} {verb} {host.name}", contact.span
        )
        site.positions.add(Face(host.name, 2, side), Face(seat.name, 2, -side), ZERO, reason)


def _state_set_back(site: Site, part: DeclaredPart, seat: Seat, amount: Amount) -> None:
    # Across the run of what lies or stands on edge, through the thickness of what stands up.
    axis = 1 - part.axes[0] if part.axes[0] < 2 else part.axes[2]
    contacts = site.contacts(part.name, "into", "between", "crossing", "inside")
    side = seat.side(axis) or -1
    hosts = [
        host
        for contact in contacts
        for host in site.hosts(contact, seat, part.axes[0])
        if site.part(host.part).axes[0] != axis and host.side(axis) * side != -1
    ]
    owners = [host.name for host in beside(hosts, seat, axis)]
    spaces = [filling.opening for filling in fillings(site, part) if seat in filling.seats]
    if spaces and not owners:
        # Of what stands in an opening, from the front of that.
        axis, side = DEPTH, -1
    for owner in owners or spaces:
        reason = Reason(
            "set back",
            f"set back of {part.name}",
            f"{seat.name} is set back {site.said(amount)} from the face of {owner}",
            amount.span,
            figures=amount.behind.figures,
            also=amount.behind.spans,
        )
        faces = Face(owner, axis, side), Face(seat.name, axis, side)
        site.state(*faces, amount, reason, sign=-side)
    if not owners and not spaces:
        _report_set_back(site, part, amount)


def _report_set_back(site: Site, part: DeclaredPart, amount: Amount) -> None:
    finding = Diagnostic(
        "set-back-from-nothing",
        Severity.ERROR,
        f"{part.name}: set back from what?",
        amount.span,
        hints=(Hint("say what it goes into, or write `set in` for the overall size"),),
    )
    # A host whose own line cannot be read is not asked for.
    if finding not in site.findings and not site.declared.broken:
        site.findings.append(finding)
