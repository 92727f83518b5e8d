"""Joints that are cut after a glue-up: in a lap that is one piece of wood by then (M6)."""

from __future__ import annotations

from dataclasses import replace

from dryfit.piece.declared import Contact
from dryfit.placing.found import Found
from dryfit.placing.site import Site


def cut_late(site: Site, contact: Contact, joint: Found) -> Found:
    """Return the joint with its cuts in what is glued by then waiting for that glue-up.

    Its cuts in parts that stand outside are made with those parts; where both stand outside all
    cuts wait, and the checks say that they wait in vain.
    """
    if contact.after is None:
        return joint
    inside = _parts_in(site, contact.after, frozenset())
    part_of = {joint.guest: contact.guest.part}
    part_of |= {seat.name: host.part for host in contact.hosts for seat in site.named(host)}
    own = {cut.copy for cut in joint.cuts if part_of.get(cut.copy) in inside}
    late = own or {cut.copy for cut in joint.cuts}
    cuts = tuple(
        replace(cut, after=contact.after) if cut.copy in late else cut for cut in joint.cuts
    )
    return replace(joint, cuts=cuts)


def first_stage_of(site: Site, part: str, copy: str | None = None) -> str | None:
    """Return the first glue-up that a part, or that copy of it, goes into; None if never glued.

    Of `back top rail long` it is that of the back one, whatever the front one goes into.
    """
    places = {place for seat in site.seats(part) if seat.name == copy for place in seat.places}
    for each in site.declared.stages:
        for item in each.items:
            if item.name == part and (copy is None or set(item.places) <= places):
                return each.name
    return None


def _parts_in(site: Site, stage: str, seen: frozenset[str]) -> frozenset[str]:
    """Return the parts that go into a glue-up, by way of earlier ones too."""
    names: set[str] = set()
    for each in site.declared.stages:
        if each.name != stage or stage in seen:
            continue
        for item in each.items:
            inner = _parts_in(site, item.name, seen | {stage})
            names |= inner or {item.name}
    return frozenset(names)
