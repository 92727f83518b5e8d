"""Along which axis hosts stand to either side of a part, and along which copies are spread."""

from __future__ import annotations

from dryfit.piece.declared import PLACE_SIDE, Amount, Contact, DeclaredPart
from dryfit.placing.site import Site


def bounded_axis(site: Site, part: DeclaredPart, contact: Contact) -> int:
    """Return the axis along which the hosts stand to either side of the guest.

    Hosts at four corners stand to either side on two axes: then the direction of a spread wins,
    otherwise the way that the guest runs.  Hosts whose places do not tell (``between bottom and
    top``) bound a spread, where one is asked for and something else holds the guest's ends.
    A named edge (``back edge into``) decides; and what runs beside its host enters it by an edge.
    """
    edge = entering_edge(part, contact)
    if edge is not None:
        return edge[0]
    guests = site.guests(contact)
    apart = [
        axis
        for axis in range(3)
        if _stand_apart(site, contact, axis) and not any(seat.side(axis) for seat in guests)
    ]
    run, spread = part.axes[0], spread_axis(part)
    if spread is not None and (
        spread in apart or (not apart and _only_bounds(site, part, contact))
    ):
        return spread
    if not apart and _run_beside(site, part, contact):
        return part.axes[1]
    return run if run in apart or not apart else apart[0]


def entering_edge(part: DeclaredPart, contact: Contact) -> tuple[int, int] | None:
    """Return the edge that a line says to enter the hosts, as axis and side; side 0 is both."""
    words = contact.edge.split(" ") if contact.edge else []
    sides = [PLACE_SIDE[word] for word in words if word in PLACE_SIDE]
    if sides:
        axis, side = sides[0]
        return axis, side if len(sides) == 1 else 0
    if not words:
        return None
    return part.axes[1 if words[-1].startswith("edge") else 0], 0


def _run_beside(site: Site, part: DeclaredPart, contact: Contact) -> bool:
    # An end cannot enter what runs the same way: its long edge does.
    hosts = {host.part for host in contact.hosts if site.opening(host.part) is None}
    runs = {site.part(name).axes[0] for name in hosts}
    return contact.preposition == "into" and runs == {part.axes[0]}


def spread_axis(part: DeclaredPart) -> int | None:
    """Return the axis along which copies are spread: as written, else across their run.

    What lies on faces is spread along what it lies on (`lying_on`).
    """
    if part.spread is None:
        return None
    told = (part.spread.axis, part.spread.along, {0: 1, 1: 0, 2: 0}[part.axes[0]])
    return next(axis for axis in told if axis is not None)


def bounding_contact(site: Site, part: DeclaredPart) -> Contact | None:
    """Return the contact whose hosts bound the part's spread, or None."""
    axis = spread_axis(part)
    for contact in site.contacts(part.name, "between", "into"):
        if bounded_axis(site, part, contact) == axis:
            return contact
    return None


def _stand_apart(site: Site, contact: Contact, axis: int) -> bool:
    sides = {seat.side(axis) for host in contact.hosts for seat in site.named(host)}
    return {-1, 1} <= sides


def _only_bounds(site: Site, part: DeclaredPart, contact: Contact) -> bool:
    others = [other for other in site.contacts(part.name, "into", "between") if other != contact]
    return contact.joint is None and (bool(others) or part.sizes[0] is not None)


def edge_insets(part: DeclaredPart, axis: int) -> tuple[Amount, Amount] | None:
    """Return how far the first and the last copy of a spread along an axis are set in, or None.

    ``spread front to back, set in 0 front to back`` speaks of the whole row, and not of each copy:
    so slats reach over what carries them.  A written gap says the same in another way.
    """
    if part.count < 2 or part.spread is None or part.spread.gap or spread_axis(part) != axis:
        return None
    amounts = dict(part.set_in) | {at: each for at, side, each in part.insets if side == 0}
    both = amounts.get(axis, amounts.get(None) if axis < 2 else None)
    own = {side: each for at, side, each in part.insets if at == axis and side}
    low, high = own.get(-1, both), own.get(1, both)
    return None if low is None or high is None else (low, high)
