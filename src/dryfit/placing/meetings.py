"""Hard facts from how parts meet: into, between, onto, under, crossing, inside, set back."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from functools import partial

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.joinery.proportions import usual_housing_depth, usual_tenon_length
from dryfit.piece.declared import Amount, Contact, DeclaredPart, JointWords
from dryfit.placing.copies import Seat
from dryfit.placing.lines import with_words
from dryfit.placing.panels import state_inside
from dryfit.placing.positions import Face, Reason
from dryfit.placing.site import Site, ends
from dryfit.placing.spreads import state_spread

ZERO = Fraction(0)


def state_meetings(site: Site, part: DeclaredPart) -> None:
    """Tell or queue the facts of every contact in which the part is the guest."""
    for contact in site.contacts(part.name, "into", "between"):
        axis = bounded_axis(site, part, contact)
        for seat in site.guests(contact):
            state_between(site, part, contact, seat, axis)
    for contact in site.contacts(part.name, "onto", "under"):
        for seat in site.guests(contact):
            _state_onto(site, contact, seat)
    for contact in site.contacts(part.name, "crossing"):
        for seat in site.guests(contact):
            _state_crossing(site, part, contact, seat)
    for contact in site.contacts(part.name, "inside"):
        for seat in site.guests(contact):
            state_inside(site, part, contact, seat)
    if part.set_back is not None:
        for seat in site.seats(part.name):
            _state_set_back(site, part, seat, part.set_back)
    if part.spread is not None:
        state_spread(site, part, bounding_contact(site, part))


def bounded_axis(site: Site, part: DeclaredPart, contact: Contact) -> int:
    """Return the axis on which the hosts stand to either side of the guest.

    Hosts at four corners stand to either side on two axes: then the direction of a spread wins,
    otherwise the way that the guest runs.
    """
    separated = [axis for axis in range(3) if _separates(site, contact, axis)]
    if part.spread is not None and part.spread.axis in separated:
        return part.spread.axis if part.spread.axis is not None else part.axes[0]
    if part.axes[0] in separated or not separated:
        return part.axes[0]
    return separated[0]


def bounding_contact(site: Site, part: DeclaredPart) -> Contact | None:
    """Return the contact whose hosts bound the part's spread, or None."""
    axis = part.spread.axis if part.spread else None
    for contact in site.contacts(part.name, "between", "into"):
        if axis is None or bounded_axis(site, part, contact) == axis:
            return contact
    return None


def penetration(site: Site, part: DeclaredPart, contact: Contact, host: Seat) -> Fraction | None:
    """Return how far the guest enters the host, or None while the host's size is unknown."""
    joint = contact.joint
    if joint is None or joint.kind not in {"tenon", "housing"}:
        return ZERO
    written = joint.length if joint.kind == "tenon" else joint.depth
    if written is not None:
        return written
    deep = site.positions.extent(host.name, part.axes[0])
    if deep is None:
        return None
    return _usual_penetration(site, part, joint, deep)


def _usual_penetration(
    site: Site, part: DeclaredPart, joint: JointWords, deep: Fraction
) -> Fraction:
    display = site.declared.display
    if joint.kind == "tenon":
        length = usual_tenon_length(deep, display)
        words, phrase = f"the tenons of {part.written} are", f"{site.shown(length)} long"
    else:
        length = usual_housing_depth(deep, display)
        words, phrase = f"the housings for {part.written} are", f"{site.shown(length)} deep"
    line = with_words(joint.span, f"{joint.span.text()} {phrase}")
    site.assume_line(f"{words} {phrase}", joint.span, line)
    return length


def _separates(site: Site, contact: Contact, axis: int) -> bool:
    sides = {seat.side(axis) for host in contact.hosts for seat in site.named(host)}
    return {-1, 1} <= sides


def state_between(site: Site, part: DeclaredPart, contact: Contact, seat: Seat, axis: int) -> None:
    """Queue the facts that a guest's shoulders touch the facing sides of its hosts."""
    hosts = site.hosts(contact, seat, axis)
    low, high = ends(hosts, axis)
    if part.spread is not None and part.spread.axis == axis:
        return
    if low is None or high is None:
        _cannot_tell_ends(site, contact, seat)
        return
    for host, side in ((low, -1), (high, 1)):
        site.pending.append(partial(_say_end, site, part, contact, (seat, host), (axis, side)))


def _say_end(
    site: Site,
    part: DeclaredPart,
    contact: Contact,
    pair: tuple[Seat, Seat],
    end: tuple[int, int],
) -> bool:
    # Once the host's size is known: the guest's end lies its tenon beyond the host's face.
    (seat, host), (axis, side) = pair, end
    deep = penetration(site, part, contact, host)
    if deep is None:
        return False
    joint = contact.joint
    label, words = host.part, f"{seat.name} reaches to {host.name}"
    if joint and deep:
        label = f"{joint.kind} into {host.part}"
        words = f"{seat.name} enters {host.name} by {site.shown(deep)}"
    site.positions.add(
        Face(host.name, axis, -side),
        Face(seat.name, axis, side),
        side * deep,
        Reason("into", label, words, contact.span),
    )
    return True


def _cannot_tell_ends(site: Site, contact: Contact, seat: Seat) -> None:
    hosts = " and ".join(site.written(host.part) for host in contact.hosts)
    site.findings.append(
        Diagnostic(
            "ends-unclear",
            Severity.ERROR,
            f"{seat.name}: which {hosts} stand at its two ends?",
            contact.span,
            rule="H27",
            hints=(Hint(f"give {hosts} places, such as `at left and right`"),),
        )
    )


def _state_onto(site: Site, contact: Contact, seat: Seat) -> None:
    side = 1 if contact.preposition == "onto" else -1
    for host in site.hosts(contact, seat, 2):
        verb = "lies on" if side == 1 else "stands under"
        reason = Reason(
            "onto", f"{verb} {host.part}", f"{seat.name} {verb} {host.name}", contact.span
        )
        site.positions.add(Face(host.name, 2, side), Face(seat.name, 2, -side), ZERO, reason)


def crossing_hosts(site: Site, part: DeclaredPart, contact: Contact, seat: Seat) -> list[Seat]:
    """Return the host copies that a lapped guest crosses: those of its own plane."""
    found = []
    for host in contact.hosts:
        depth = lap_axis(part, site.part(host.part))
        found += [
            mate
            for mate in site.named(host)
            if depth is not None and seat.side(depth) * mate.side(depth) != -1
        ]
    return found


def lap_axis(guest: DeclaredPart, host: DeclaredPart) -> int | None:
    """Return the axis along which a lap is deep: the one that neither part runs along."""
    if guest.axes[0] == host.axes[0]:
        return None
    return 3 - guest.axes[0] - host.axes[0]


def _state_crossing(site: Site, part: DeclaredPart, contact: Contact, seat: Seat) -> None:
    for mate in crossing_hosts(site, part, contact, seat):
        axis = lap_axis(part, site.part(mate.part))
        if axis is not None:
            site.pending.append(partial(_say_lap, site, contact, seat, mate, axis))


def _say_lap(site: Site, contact: Contact, seat: Seat, mate: Seat, axis: int) -> bool:
    # Once both thicknesses are known: lapped parts lie in one plane, outer faces flush.
    sizes = [site.positions.extent(each.name, axis) for each in (seat, mate)]
    if None in sizes:
        return False
    side = seat.side(axis) or mate.side(axis) or -1
    if sizes[0] != sizes[1]:
        site.assume(
            f"{seat.part} and {mate.part} differ in thickness; their outer faces are flush",
            contact.span,
            None,
        )
    reason = Reason(
        "lap",
        f"lap with {mate.part}",
        f"{seat.name} and {mate.name} are lapped in one plane",
        contact.span,
    )
    site.positions.add(Face(mate.name, axis, side), Face(seat.name, axis, side), ZERO, reason)
    return True


def _state_set_back(site: Site, part: DeclaredPart, seat: Seat, amount: Amount) -> None:
    axis = 1 - part.axes[0] if part.axes[0] < 2 else part.axes[2]
    contacts = site.contacts(part.name, "into", "between", "crossing", "inside")
    hosts: Sequence[Seat] = [
        host for contact in contacts for host in site.hosts(contact, seat, part.axes[0])
    ]
    side = seat.side(axis) or -1
    for host in hosts:
        reason = Reason(
            "set back",
            f"set back of {part.name}",
            f"{seat.name} is set back {site.shown(amount.value)} from the face of {host.name}",
            amount.span,
        )
        site.positions.add(
            Face(host.name, axis, side), Face(seat.name, axis, side), -side * amount.value, reason
        )
    if not hosts:
        site.findings.append(
            Diagnostic(
                "set-back-from-nothing",
                Severity.ERROR,
                f"{part.name}: set back from what?",
                amount.span,
                hints=(Hint("say what it goes into, or write `set in` for the overall size"),),
            )
        )
