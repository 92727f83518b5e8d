"""What is coated together and when, what is fitted afterwards, and what is bought for it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction

from dryfit.joinery.screws import passes_guest, screw_for
from dryfit.piece.declared import Contact
from dryfit.placing.model import Assembly, Coating, Fitting, Hardware, Joint, Part
from dryfit.placing.site import Site

_BUTTON_SCREW = "4 x 30"


def build_coatings(
    site: Site,
    parts: Sequence[Part],
    joints: Sequence[Joint],
    assemblies: Sequence[Assembly],
) -> tuple[Coating, ...]:
    """Return what is finished as one: wished-for parts first, then whole assemblies and the rest.

    Empty when the notes name no finish.
    """
    if not site.declared.finishes:
        return ()
    early = {
        wish.first.subject: wish.then.subject
        for wish in site.declared.wishes
        if wish.first.verb == "finish" and wish.first.subject and wish.then.verb == "glue up"
    }
    inside = _members(assemblies)
    outer = [each for each in assemblies if not _contained(each, assemblies)]
    by_name = {part.name: part for part in parts}
    coatings: list[Coating] = []
    done: set[str] = set()
    for part_name, stage in early.items():
        part = by_name.get(part_name)
        if part is None:
            continue
        copies = tuple(copy.name for copy in part.copies)
        masks = tuple(j.id for j in joints if j.glued and {j.guest, j.host} & set(copies))
        coatings.append(_coating(site, part.name, copies, parts, masks, stage))
        done.update(copies)
    for assembly in outer:
        copies = tuple(name for name in sorted(inside[assembly.name]) if name not in done)
        if copies:
            coatings.append(_coating(site, assembly.name, copies, parts, (), None))
            done.update(copies)
    for part in parts:
        copies = tuple(copy.name for copy in part.copies if copy.name not in done)
        if copies and not part.made:
            coatings.append(_coating(site, part.name, copies, parts, (), None))
    return tuple(coatings)


def _coating(
    site: Site,
    subject: str,
    copies: tuple[str, ...],
    parts: Sequence[Part],
    masks: tuple[str, ...],
    before: str | None,
) -> Coating:
    finish = next(iter(site.declared.finishes), None)
    area = sum(
        (_surface(part) for part in parts for copy in part.copies if copy.name in copies),
        Fraction(0),
    )
    return Coating(subject, copies, area, masks, before, finish.span if finish else None)


def _surface(part: Part) -> Fraction:
    length, width, thickness = part.length, part.width, part.thickness
    return 2 * (length * width + length * thickness + width * thickness)


def _members(assemblies: Sequence[Assembly]) -> Mapping[str, frozenset[str]]:
    inside: dict[str, frozenset[str]] = {}
    for assembly in assemblies:
        inside[assembly.name] = frozenset(
            copy for each in assembly.of for copy in inside.get(each, frozenset({each}))
        )
    return inside


def _contained(assembly: Assembly, assemblies: Sequence[Assembly]) -> bool:
    return any(assembly.name in other.of for other in assemblies)


def build_fittings(site: Site, joints: Sequence[Joint]) -> tuple[Fitting, ...]:
    """Return what goes on dry: each contact with screws, buttons or nothing at all."""
    fittings = []
    # What is glued or screwed elsewhere is not laid on once more.
    held = {
        contact.guest.part
        for contact in site.declared.contacts
        if contact.joint is not None or contact.preposition in {"crossing", "inside"}
    }
    for contact in site.declared.contacts:
        kind = _dry_kind(contact)
        own = [joint for joint in joints if joint.span == contact.span and not joint.glued]
        if kind is None or not own or (kind == "rest" and contact.guest.part in held):
            continue
        guests = {seat.name for seat in site.guests(contact)}
        fittings.append(
            Fitting(
                name=contact.guest.part,
                part=contact.guest.part,
                onto=tuple(dict.fromkeys(host.part for host in contact.hosts)),
                kind=kind,
                joints=tuple(
                    joint.id for joint in own if guests & {joint.guest} or joint.kind == "buttons"
                ),
                span=contact.span,
            )
        )
    return tuple(fittings)


def _dry_kind(contact: Contact) -> str | None:
    if contact.joint is not None:
        return contact.joint.kind if contact.joint.kind in {"screws", "buttons"} else None
    return "rest" if contact.preposition in {"onto", "under"} else None


def build_hardware(
    parts: Sequence[Part],
    joints: Sequence[Joint],
    fittings: Sequence[Fitting],
    screws: Mapping[str, int],
) -> tuple[Hardware, ...]:
    """Return the screws to buy, sized from the joints; `screws` counts them by joint."""
    part_of = {copy.name: part for part in parts for copy in part.copies}
    box_of = {copy.name: copy.box for part in parts for copy in part.copies}
    by_id = {joint.id: joint for joint in joints}
    bought: dict[tuple[str, str], int] = {}
    for fitting in fittings:
        for joint in (by_id[each] for each in fitting.joints):
            if joint.kind == "screws":
                axis = next(a for a in range(3) if joint.region.extent(a) == 0)
                first, second = joint.guest, joint.host
                if not passes_guest(box_of[first].extent(axis), box_of[second].extent(axis)):
                    first, second = second, first
                screw = screw_for(box_of[first].extent(axis), box_of[second].extent(axis))
                if screw is not None:
                    purpose = f"{part_of[first].written} into {part_of[second].written}"
                    key = (screw.size(), purpose)
                    bought[key] = bought.get(key, 0) + screws[joint.id]
            elif joint.kind == "buttons":
                key = (_BUTTON_SCREW, f"buttons into {fitting.part}")
                bought[key] = bought.get(key, 0) + 1
    return tuple(
        Hardware("wood screw", size, count, purpose)
        for (size, purpose), count in sorted(bought.items())
    )
