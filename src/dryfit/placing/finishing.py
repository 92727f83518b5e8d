"""What is fitted after the finish, and what is bought for it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from dryfit.joinery.screws import passes_guest, screw_for
from dryfit.piece.declared import Contact
from dryfit.placing.model import Fitting, Hardware, Joint, Part
from dryfit.placing.site import Site

_BUTTON_SCREW = "4 x 30"


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
    *,
    outdoors: bool = False,
) -> tuple[Hardware, ...]:
    """Return the screws to buy, sized from the joints; `screws` counts them by joint.

    Outdoors they are of stainless steel.
    """
    item = "stainless wood screw" if outdoors else "wood screw"
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
        Hardware(item, size, count, purpose) for (size, purpose), count in sorted(bought.items())
    )
