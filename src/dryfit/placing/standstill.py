"""Facts to a standstill: rules speak, equal copies share sizes, then relations are solved."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from dryfit.piece.declared import PIECE_DIMENSIONS, DeclaredPart, Opening
from dryfit.placing.positions import Face, Positions, Reason
from dryfit.placing.relations import Equal
from dryfit.placing.seats import Seat, Seating
from dryfit.placing.site import Site, both, dimension_on
from dryfit.placing.solving import Solve


def settle(site: Site) -> None:
    """Let every pending rule speak and equal copies share their sizes, to a standstill.

    There the relations are solved together, and what they tell starts the rules again.
    """
    positions, seating, openings = site.positions, site.seating, site.declared.openings
    groups = [(part, site.seats(part.name)) for part in site.parts()]
    progress = True
    while progress:
        spoken = {rule for rule in list(site.pending) if rule()}
        site.pending = [rule for rule in site.pending if rule not in spoken]
        stated = site.equations.state_what_is_known()
        shared = [_share_sizes(positions, *group) for group in groups]
        progress = (
            bool(spoken)
            or stated
            or any(shared)
            or site.equations.tell(
                _alike(site),
                lambda: _sizes(site.parts(), seating, openings),
                lambda: _places(seating, openings),
            )
        )


def solve(site: Site) -> Solve:
    """Return everything that waits to be solved over the positions as they are."""
    return site.equations.solve(_alike(site))


def _alike(site: Site) -> Iterator[Equal]:
    for part in site.parts():
        yield from _unknown_and_alike(site.positions, part, site.seats(part.name))


def _share_sizes(positions: Positions, part: DeclaredPart, seats: Sequence[Seat]) -> bool:
    """Tell the sizes of one copy that are known to its equals; return whether any was news."""
    news = False
    for axis in part.axes if len(seats) > 1 else ():
        sizes = [positions.extent(seat.name, axis) for seat in seats]
        size = next((size for size in sizes if size is not None), None)
        if size is None or None not in sizes:
            continue
        reason = _alike_reason(part, axis)
        for seat, own in zip(seats, sizes, strict=True):
            if own is None:
                news |= positions.add(*both(seat.name, axis), size, reason)
    return news


def _unknown_and_alike(
    positions: Positions, part: DeclaredPart, seats: Sequence[Seat]
) -> list[Equal]:
    """Return that unknown sizes of equal copies are equal, where something holds both faces."""
    found: list[Equal] = []
    for axis in range(3) if len(seats) > 1 else ():
        if positions.extent(seats[0].name, axis) is None:
            pairs = [both(seat.name, axis) for seat in seats]
            held = [pair for pair in pairs if all(map(positions.is_joined, pair))]
            reason = _alike_reason(part, axis)
            found += [Equal(tuple(held), reason)] if len(held) > 1 else []
    return found


def _sizes(
    parts: Sequence[DeclaredPart], seating: Seating, openings: Sequence[Opening]
) -> Iterator[tuple[str, list[tuple[Face, Face]]]]:
    """Return every size in words, with the pairs of faces of which it is the distance."""
    for part in parts:
        for axis in range(3):
            pairs = [both(seat.name, axis) for seat in seating.seats[part.name]]
            yield f"{dimension_on(part, axis)} of {part.name}", pairs
    for opening in openings:
        for axis, dimension in enumerate(PIECE_DIMENSIONS):
            yield f"{dimension} of {opening.name}", [both(opening.name, axis)]


def _places(seating: Seating, openings: Sequence[Opening]) -> Iterator[tuple[str, Face]]:
    """Return the faces of all copies and openings, with what their place is called."""
    for name in (*(seat.name for seat in seating.all()), *(each.name for each in openings)):
        for axis in range(3):
            for face in both(name, axis):
                yield f"place of {name}", face


def _alike_reason(part: DeclaredPart, axis: int) -> Reason:
    words = f"all copies of {part.name} are alike"
    return Reason("alike", f"{dimension_on(part, axis)} of {part.name}", words)
