"""Joint instances: where declared contacts really meet, and what each removes."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from fractions import Fraction
from functools import partial

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.geometry.box import Box
from dryfit.joinery.cut import Cut, Placed
from dryfit.joinery.half_lap import half_lap
from dryfit.joinery.housing import housing, panel_groove
from dryfit.joinery.mortise_tenon import mortise_and_tenon, tenon_box
from dryfit.joinery.pegs import peg_holes
from dryfit.joinery.screws import driving, screw_holes, screw_places
from dryfit.piece.declared import Contact
from dryfit.placing.crossing import crossing_hosts, lap_axis, shown_part
from dryfit.placing.face_seats import ON_A_FACE
from dryfit.placing.faces import face_hosts
from dryfit.placing.found import Found
from dryfit.placing.free_places import Occupied
from dryfit.placing.glue_patches import says_glue, says_held, with_glue
from dryfit.placing.groove_ends import with_groove_ends
from dryfit.placing.late_joints import cut_late
from dryfit.placing.panels import groove_depth
from dryfit.placing.seats import Seat
from dryfit.placing.site import Site
from dryfit.placing.tenon_words import check_details, proud_of
from dryfit.placing.tenons import Around, report_no_end, tenon_sizes

MOST_JOINTS = 6000
_FACING = frozenset({"onto", "under", "on face", "against"})
Finder = Callable[[Site, Contact, Placed, Placed], "Found | None"]


def find_joints(
    site: Site, placed: Mapping[str, Placed], lone: Sequence[Cut] = ()
) -> tuple[Found, ...]:
    """Return all joint instances in the order of the declared contacts, then of the copies.

    `lone` are the cuts with no mate: tenons without a written place keep clear of them.
    Findings: joint-without-contact, no-screw-fits, too-many-joints, and those of tenons.  Buttons
    are found by `fastenings`.
    """
    found: list[Found] = []
    around = Around(placed, _occupied(site, placed, lone))
    for contact in site.declared.contacts:
        check_details(site, contact)
        finder = _finder(contact, around)
        if finder is None:
            continue
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
                if (joint := finder(site, contact, guest, placed[host]))
            ]
            joints, mates = [joint for joint, _ in met], [host for _, host in met]
            glued = with_glue(site, contact, joints, guest, mates)
            found += [cut_late(site, contact, joint) for joint in glued]
            if not met:
                apart.append(guest)
        mortises = (joint.cuts for joint in found[met_before:] if joint.tenon is not None)
        around.occupied.add(cut for cuts in mortises for cut in cuts if cut.role == "mortise")
        # Of slats laid over two rails some may lie between them, carried by others.
        carried = finder is _rest and len(found) > met_before
        if apart and contact.hosts and not carried:
            _no_contact(site, contact, apart)
    return with_groove_ends(found, placed)


def _occupied(site: Site, placed: Mapping[str, Placed], lone: Sequence[Cut]) -> Occupied:
    """Return the laps, housings and cuts with no mate, which tenons keep clear of."""
    occupied = Occupied()
    if not any(each.joint and each.joint.kind == "tenon" for each in site.declared.contacts):
        return occupied
    occupied.add(lone)
    for contact in site.declared.contacts:
        housed = contact.joint is not None and contact.joint.kind == "housing"
        if contact.after is not None or not (housed or contact.preposition == "crossing"):
            continue
        finder = _housing if housed else _half_lap
        for seat in site.guests(contact):
            for host in _hosts(site, contact, seat):
                joint = finder(site, contact, placed[seat.name], placed[host])
                occupied.add(joint.cuts if joint else ())
    return occupied


def _finder(contact: Contact, around: Around) -> Finder | None:
    kind = contact.joint.kind if contact.joint else None
    if kind == "buttons":
        return None
    if kind == "screws":
        return _screws
    if kind == "glue":
        return _butt
    if kind is None and contact.preposition in _FACING:
        if says_glue(contact):
            return _butt
        if says_held(contact):
            return _rest
    by_preposition: dict[str, Finder] = {
        "crossing": _half_lap,
        "inside": _groove,
        "onto": _rest,
        "under": _rest,
    }
    if kind == "tenon":
        return partial(_tenon, around)
    if kind == "housing":
        return _housing
    return by_preposition.get(contact.preposition)


def _hosts(site: Site, contact: Contact, guest: Seat) -> list[str]:
    if contact.preposition == "crossing":
        return [mate.name for mate in crossing_hosts(site, contact, guest)]
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


def _no_contact(site: Site, contact: Contact, guests: Sequence[Placed]) -> None:
    hosts = " and ".join(site.written(host.part) for host in contact.hosts)
    names = guests[0].name if len(guests) == 1 else f"{guests[0].name} and {len(guests) - 1} more"
    verb = "does" if len(guests) == 1 else "do"
    site.findings.append(
        Diagnostic(
            "joint-without-contact",
            Severity.ERROR,
            f"{names} {verb} not meet the {hosts}, so there is no joint to cut",
            contact.span,
            rule="H28",
            hints=(Hint("check sizes and places of both; they must touch or overlap"),),
        )
    )


def _half_lap(site: Site, contact: Contact, guest: Placed, host: Placed) -> Found | None:
    region = guest.box.overlap(host.box)
    axis = lap_axis(site.part(guest.part), site.part(host.part))
    if region is None or axis is None:
        return None
    depth, shows = contact.joint.depth if contact.joint else None, shown_part(contact)
    return Found(
        "half lap",
        guest.name,
        host.name,
        region,
        contact.span,
        shares=region,
        glued=True,
        area=_face_area(region, axis),
        cuts=half_lap(guest, host, region, axis, contact.span, depth, shows=shows),
    )


def _tenon(
    around: Around, site: Site, contact: Contact, guest: Placed, host: Placed
) -> Found | None:
    region = guest.box.overlap(host.box)
    if region is None:
        return None
    axis = guest.axes[0]
    at_low = region.low[axis] == guest.box.low[axis]
    at_high = region.high[axis] == guest.box.high[axis]
    if at_low == at_high:
        proud_at = _proud_end(contact, guest, host)
        if proud_at is None:
            report_no_end(site, contact, guest, host, around.placed)
        at_low = proud_at == -1
    end = -1 if at_low else 1
    sizes = tenon_sizes(site, contact, guest, host, region, around)
    return Found(
        "mortise and tenon",
        guest.name,
        host.name,
        tenon_box(guest, region, sizes),
        contact.span,
        shares=region,
        clearance=sizes.gap,
        glued=True,
        end=(axis, end),
        area=2 * region.extent(axis) * sizes.width * sizes.count,
        cuts=(
            *mortise_and_tenon(guest, host, region, end, sizes, contact.span),
            *peg_holes(guest, host, region, end, sizes, contact.span),
        ),
        tenon=sizes,
    )


def _proud_end(contact: Contact, guest: Placed, host: Placed) -> int | None:
    """Return the end of a through tenon that stands out on the far side of its host, by as much."""
    axis, proud = guest.axes[0], proud_of(contact.joint)
    if not proud:
        return None
    low, high = host.box.low[axis] - guest.box.low[axis], guest.box.high[axis] - host.box.high[axis]
    return next((side for side, beyond in ((-1, low), (1, high)) if beyond == proud), None)


def _housing(_: Site, contact: Contact, guest: Placed, host: Placed) -> Found | None:
    region = guest.box.overlap(host.box)
    if region is None:
        return None
    axis = _entering_axis(guest, host, region)
    side = 1 if region.high[axis] == host.box.high[axis] else -1
    return Found(
        "housing",
        guest.name,
        host.name,
        region,
        contact.span,
        shares=region,
        glued=True,
        end=(axis, -side),
        area=_housed_area(region, axis),
        cuts=(housing(guest, host, region, (axis, side), contact.span),),
    )


def _entering_axis(guest: Placed, host: Placed, region: Box) -> int:
    # The guest enters along its length unless the host lies along a long edge of it.
    for axis in guest.axes:
        whole_guest = region.extent(axis) == guest.box.extent(axis)
        if not whole_guest and region.extent(axis) < host.box.extent(axis):
            return axis
    return guest.axes[0]


def _groove(site: Site, contact: Contact, guest: Placed, host: Placed) -> Found | None:
    region = guest.box.overlap(host.box)
    if region is None:
        return None
    axis = next(
        (
            each
            for each in guest.axes[:2]
            if each != host.axes[0] and region.extent(each) < host.box.extent(each)
        ),
        guest.axes[0],
    )
    side = 1 if region.high[axis] == host.box.high[axis] else -1
    gap = groove_depth(site, contact) - region.extent(axis)
    return Found(
        "groove",
        guest.name,
        host.name,
        region,
        contact.span,
        shares=region,
        clearance=gap,
        end=(axis, -side),
        cuts=(panel_groove(guest, host, region, (axis, side), gap, contact.span),),
    )


def _screws(site: Site, contact: Contact, guest: Placed, host: Placed) -> Found | None:
    touch = guest.box.contact(host.box)
    if touch is None:
        return None
    axis, region = touch
    side = 1 if region.low[axis] == host.box.high[axis] else -1
    driven = driving(guest, host, (axis, side))
    if driven is None:
        _no_screw(site, contact, guest, host, axis)
        return Found("screws", guest.name, host.name, region, contact.span)
    # Where other joints leave the screws no wood, `screw_room` moves them.
    cuts = screw_holes(driven, screw_places(region, axis), contact.span)
    return Found("screws", guest.name, host.name, region, contact.span, cuts=cuts)


def _no_screw(site: Site, contact: Contact, guest: Placed, host: Placed, axis: int) -> None:
    thin = min(guest.box.extent(axis), host.box.extent(axis))
    finding = Diagnostic(
        "no-screw-fits",
        Severity.ERROR,
        f"no screw holds {guest.part} to {host.part}: it would have to pass {site.shown(thin)}",
        contact.span,
        rule="H18",
        figures={"passes": thin},
        hints=(Hint("name another joint, such as `tenon` or `housing`, or use thinner wood"),),
    )
    if finding not in site.findings:
        site.findings.append(finding)


def _butt(_: Site, contact: Contact, guest: Placed, host: Placed) -> Found | None:
    touch = guest.box.contact(host.box)
    if touch is None:
        return None
    axis, region = touch
    area = _face_area(region, axis)
    return Found("glued butt", guest.name, host.name, region, contact.span, glued=True, area=area)


def _rest(_: Site, contact: Contact, guest: Placed, host: Placed) -> Found | None:
    touch = guest.box.contact(host.box)
    if touch is None:
        return None
    return Found("rest", guest.name, host.name, touch[1], contact.span)


def _housed_area(region: Box, axis: int) -> Fraction:
    """Return the area at the bottom of a housing and along both of its walls, in mm2."""
    along = max(region.extent(other) for other in range(3) if other != axis)
    return _face_area(region, axis) + 2 * region.extent(axis) * along


def _face_area(region: Box, axis: int) -> Fraction:
    first, second = (other for other in range(3) if other != axis)
    return region.extent(first) * region.extent(second)
