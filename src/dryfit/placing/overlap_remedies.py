"""What to write where two copies take up the same space: a line that can be made, or a move."""

from __future__ import annotations

from dryfit.geometry.frame import LENGTH, THICKNESS
from dryfit.placing.model import Copy, Part
from dryfit.placing.site import Site

Placed = tuple[Part, Copy]

DEPTH = 1


def overlap_remedy(site: Site, one: Placed, two: Placed) -> str:
    """Return the remedy for two copies that overlap.

    What the tool makes itself is no host; what lies on the like of one part lies on that too; a
    part that ends in another is housed in it, and two that pass each other are lapped.  A panel in
    grooves is never lapped: it lies at the back, or in the middle of its frame, until it is said to
    lie elsewhere.
    """
    for (first, _), (second, _) in ((one, two), (two, one)):
        if first.made:
            return f"move the {second.name}: the {first.name} needs its place"
    for (guest, _), (host, _) in ((one, two), (two, one)):
        laid = _laid_on_as_well(site, guest, host)
        if laid:
            return f"write `{laid}`, or move one of them"
    for (guest, own), (host, mate) in ((one, two), (two, one)):
        if own.frame.axes[THICKNESS][0] == DEPTH and _is_panel(site, guest, host):
            if own.box.low[DEPTH] - mate.box.low[DEPTH] > mate.box.extent(DEPTH) * 3 / 4:
                by = site.shown(mate.box.high[DEPTH] - own.box.low[DEPTH])
                return (
                    f"let the {host.written} end {by} further to the front, before the "
                    f"{guest.written}, or write where the {guest.written} lies"
                )
            words = f"write where the {guest.written} lies, such as `{{10}} from back` in its line"
            return site.declared.display.examples(f"{words}, or move the {host.written}")
    (part, copy), (other_part, other) = one, two
    axis, other_axis = (each.frame.axes[LENGTH][0] for each in (copy, other))
    if axis == other_axis:
        return "move one of them, or make one narrower or thinner: they run side by side"
    for (guest, own), (host, mate) in ((one, two), (two, one)):
        if _ends_in(own, mate):
            line = f"{guest.written} into {host.written}: housing"
            return f"name the joint, such as `{line}`, or move one of them"
    line = f"{part.written} crossing {other_part.written}: half lap"
    return f"name the joint, such as `{line}`, or move one of them"


def _is_panel(site: Site, guest: Part, host: Part) -> bool:
    """Return whether one lies in grooves or rabbets round it, and the other is not of its frame."""
    return any(
        contact.guest.part == guest.name
        and contact.preposition == "inside"
        and host.name not in {each.part for each in contact.hosts}
        for contact in site.declared.contacts
    )


def _laid_on_as_well(site: Site, guest: Part, host: Part) -> str | None:
    for contact in site.declared.contacts:
        hosts = [each.part for each in contact.hosts]
        if contact.guest.part != guest.name or contact.preposition not in ("onto", "under"):
            continue
        if hosts and host.name not in hosts:
            listed = " and ".join(site.written(each) for each in (host.name, *hosts))
            return f"{guest.written} {contact.preposition} {listed}"
    return None


def _ends_in(guest: Copy, host: Copy) -> bool:
    axis = guest.frame.axes[LENGTH][0]
    low, high = guest.box.low[axis], guest.box.high[axis]
    inside = [host.box.low[axis] < end < host.box.high[axis] for end in (low, high)]
    return any(inside)
