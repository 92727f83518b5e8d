"""Hard facts of what lies on a face of others: it touches them there, and laps over their edges."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial

from dryfit.diagnostics import Diagnostic, Hint, Severity, Span
from dryfit.piece.declared import Amount, Contact, DeclaredPart, JointWords
from dryfit.placing.ends import penetration
from dryfit.placing.face_seats import ON_A_FACE
from dryfit.placing.faces import Side, face_hosts, face_of, sides_in_question
from dryfit.placing.panels import bounding_hosts
from dryfit.placing.positions import Face, Reason
from dryfit.placing.seats import Seat
from dryfit.placing.site import Site

_WITHIN = {
    "groove": "inside",
    "half lap": "crossing",
    "bridle": "crossing",
    "mitre": "crossing",
}
"""Joints in which a part stands within the outline of its host, with the word that says so."""
LAPPING = (*ON_A_FACE, "onto", "under")


def state_on_faces(site: Site, part: DeclaredPart) -> None:
    """Queue the facts that a part touches the faces it is put on, and reaches over their edges.

    Findings: joint-not-on-face.
    """
    for contact in site.contacts(part.name, *ON_A_FACE):
        if contact.joint is not None and contact.joint.kind in _WITHIN:
            site.findings.append(_not_on_face(part, contact.joint))
        for seat in site.guests(contact):
            for host in face_hosts(site, contact, seat):
                site.pending.append(partial(_say_touch, site, part, contact, seat, host))
    for contact in site.contacts(part.name, *LAPPING) if part.lapping else ():
        for seat in site.guests(contact):
            for axis in range(3):
                site.pending.append(partial(_say_lapping, site, part, contact, seat, axis))


def _not_on_face(part: DeclaredPart, joint: JointWords) -> Diagnostic:
    return Diagnostic(
        "joint-not-on-face",
        Severity.ERROR,
        f"{part.name}: a {joint.kind} does not hold what only lies on a face",
        joint.span,
        rule="H28",
        hints=(
            Hint(f"write `glue`, `screws` or `housing`, or `{_WITHIN[joint.kind]}` for the place"),
        ),
    )


def _say_touch(site: Site, part: DeclaredPart, contact: Contact, seat: Seat, host: Seat) -> bool:
    face = face_of(site, contact, seat, host)
    if face is None or _other_way(site, contact, seat, face) is not None:
        return False
    deep = penetration(site, part, contact, host, face.axis)
    if deep is None:
        return False
    words = f"{seat.name} lies on the {face.word} of {host.name}"
    if deep:
        words = f"{seat.name} enters the {face.word} of {host.name} by {site.shown(deep)}"
    reason = Reason("on face", f"on the {face.word} of {host.part}", words, contact.span)
    start, end = Face(host.name, face.axis, face.side), Face(seat.name, face.axis, -face.side)
    site.positions.add(start, end, -face.side * deep, reason)
    return True


def _other_way(site: Site, contact: Contact, seat: Seat, face: Side) -> Seat | None:
    """Return a host of a copy whose face looks another way: it cannot lie on both."""
    for host in face_hosts(site, contact, seat):
        other = face_of(site, contact, seat, host)
        if other is not None and other != face:
            return host
    return None


def _say_lapping(site: Site, part: DeclaredPart, contact: Contact, seat: Seat, axis: int) -> bool:
    # Over the near edge of each host between which it would otherwise lie.
    edges, lap = _near_edges(site, contact, seat, axis), part.lapping
    if lap is None:
        return True
    for face in edges:
        side = -face.side
        reason = Reason(
            "lapping",
            f"lap over {face.owner}",
            f"{seat.name} reaches {site.said(lap)} over {face.owner}",
            lap.span,
            figures=lap.behind.figures,
            also=lap.behind.spans,
        )
        site.state(face, Face(seat.name, axis, side), lap, reason, sign=side)
    return bool(edges)


def _near_edges(site: Site, contact: Contact, seat: Seat, axis: int) -> tuple[Face, ...]:
    """Return the two faces between which the hosts of a contact leave a space, or nothing."""
    if axis == _normal(site, contact, seat):
        return ()
    bounds = bounding_hosts(site, contact, seat, axis)
    if bounds is None:
        return ()
    low, high = Face(bounds[0].name, axis, 1), Face(bounds[1].name, axis, -1)
    room = site.positions.distance(low, high)
    return (low, high) if room is not None and room > 0 else ()


def _normal(site: Site, contact: Contact, seat: Seat) -> int | None:
    if contact.preposition not in ON_A_FACE:
        return 2
    faces = (face_of(site, contact, seat, host) for host in face_hosts(site, contact, seat))
    return next((face.axis for face in faces if face is not None), None)


def report_unclear_faces(site: Site) -> frozenset[str]:
    """Report the parts of which nothing tells on which face of their host they lie.

    Returns the parts that were spoken of.  Findings: face-unclear.
    """
    found = {
        part.name: finding
        for part in site.parts()
        for contact in site.contacts(part.name, *ON_A_FACE)
        for seat in site.guests(contact)
        if (finding := _unclear(site, part, contact, seat)) is not None
    }
    site.findings += found.values()
    return frozenset(found)


def _unclear(site: Site, part: DeclaredPart, contact: Contact, seat: Seat) -> Diagnostic | None:
    hosts = face_hosts(site, contact, seat)
    for host in hosts:
        face = face_of(site, contact, seat, host)
        if face is None and _is_placed(site, host):
            return _face_unclear(site, part, contact, host)
        other = None if face is None else _other_way(site, contact, seat, face)
        if other is not None:
            return _faces_apart(part, contact, host, other)
    return None


def _faces_apart(part: DeclaredPart, contact: Contact, host: Seat, other: Seat) -> Diagnostic:
    face = f"the {contact.face} of " if contact.face else ""
    return Diagnostic(
        "face-unclear",
        Severity.ERROR,
        f"{part.name}: {face}{host.name} and {face}{other.name} look different ways",
        contact.span,
        rule="H28",
        hints=(Hint("put it on one of them, or on faces that lie in one plane"),),
    )


def report_lapping(site: Site) -> None:
    """Report what is said to lap over edges where its hosts leave none, or right across a host.

    Findings: lapping-over-nothing, lapping-too-far.
    """
    for part in site.parts():
        contacts = site.contacts(part.name, *LAPPING)
        lies = [
            (contact, seat, host)
            for contact in contacts
            for seat in site.guests(contact)
            for host in site.mates(contact, seat)
        ]
        if part.lapping is None or not all(_is_placed(site, host) for _, _, host in lies):
            continue
        pairs = dict.fromkeys((contact, seat) for contact, seat, _ in lies)
        edges = [face for p in pairs for axis in range(3) for face in _near_edges(site, *p, axis)]
        if not edges:
            site.findings.append(_lapping_over_nothing(part, part.lapping.span))
        site.findings += _laps_too_far(site, part, part.lapping, edges)


def _laps_too_far(
    site: Site, part: DeclaredPart, lapping: Amount, edges: Sequence[Face]
) -> list[Diagnostic]:
    laps = site.amount(lapping)
    wide = [(site.positions.extent(face.owner, face.axis), face.owner) for face in edges]
    known = [(size, owner) for size, owner in wide if size is not None]
    if laps is None or not known or laps <= min(known)[0]:
        return []
    most, host = min(known)
    return [
        Diagnostic(
            "lapping-too-far",
            Severity.ERROR,
            f"{part.name}: it laps {site.shown(laps)} over {host}, which is {site.shown(most)} "
            "wide that way: it would stick out beyond",
            lapping.span,
            rule="H28",
            figures={"laps": laps, "most": most},
            hints=(Hint(f"write `lapping {site.shown(most)}` at most"),),
        )
    ]


def _is_placed(site: Site, seat: Seat) -> bool:
    return all(site.known(seat, axis, side) for axis in range(3) for side in (-1, 1))


def _face_unclear(site: Site, part: DeclaredPart, contact: Contact, host: Seat) -> Diagnostic:
    low, high = (
        f"`on the {side.word} of {site.written(host.part)}`"
        for side in sides_in_question(site, part, host)
    )
    said = f"the {contact.face} of {host.name}" if contact.face else f"against {host.name}"
    return Diagnostic(
        "face-unclear",
        Severity.ERROR,
        f"{part.name}: {said} could be either side of it",
        contact.span,
        rule="H28",
        hints=(Hint(f"write {low} or {high}"),),
    )


def _lapping_over_nothing(part: DeclaredPart, span: Span) -> Diagnostic:
    return Diagnostic(
        "lapping-over-nothing",
        Severity.ERROR,
        f"{part.name}: lapping over which edges?",
        span,
        rule="H28",
        hints=(Hint("say on what it lies at both ends, such as `on the back of stiles`"),),
    )
