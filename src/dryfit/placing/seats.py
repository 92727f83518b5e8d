"""The copies of parts before any has a position: names, places, and how they stand together."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from dryfit.diagnostics import Assumption, Diagnostic
from dryfit.notes.names import plural
from dryfit.piece.declared import PLACE_SIDE, Declared, DeclaredPart

_ORDER = ("top", "bottom", "front", "back", "left", "right")


@dataclass(frozen=True, slots=True)
class Seat:
    """One copy before it has a box: its name, place words, and number where it is counted.

    `within` names the copy of an instance of a pattern inside which it stands, if any.
    """

    part: str
    name: str
    places: tuple[str, ...]
    number: int | None
    within: str | None = None

    def side(self, axis: int) -> int:
        """Return -1 or 1 when a place word says the side on that axis, else 0."""
        for place in self.places:
            place_axis, side = PLACE_SIDE[place]
            if place_axis == axis:
                return side
        return 0


@dataclass(frozen=True, slots=True)
class Seating:
    """All copies by part, with what was assumed and found on the way."""

    seats: Mapping[str, tuple[Seat, ...]]
    assumptions: tuple[Assumption, ...]
    findings: tuple[Diagnostic, ...]

    def all(self) -> tuple[Seat, ...]:
        """Return the copies of all parts in the order of the notes."""
        return tuple(seat for seats in self.seats.values() for seat in seats)


def seats_of(part: DeclaredPart, tags: Sequence[tuple[str, ...]]) -> tuple[Seat, ...]:
    """Return the copies of a part, given the place words of each."""
    alike = Counter(frozenset(words) for words in tags)
    so_far: Counter[frozenset[str]] = Counter()
    own = part.name.split(" ")
    seats = []
    for words in tags:
        ordered = tuple(word for word in _ORDER if word in words)
        so_far[frozenset(words)] += 1
        number = so_far[frozenset(words)] if alike[frozenset(words)] > 1 else None
        name = " ".join((*(word for word in ordered if word not in own), part.name))
        seats.append(Seat(part.name, f"{name} {number}" if number else name, ordered, number))
    return tuple(seats)


def compatible(guest: Seat, host: Seat, axis: int) -> bool:
    """Return whether no place word off the given axis puts the two on different sides."""
    return all(guest.side(other) * host.side(other) != -1 for other in range(3) if other != axis)


def on_its_side_of_a_divider(hosts: tuple[Seat, ...], guest: Seat, axis: int) -> tuple[Seat, ...]:
    """Return the hosts without the one beyond what stands between: a left shelf ends there."""
    if not guest.side(axis) or all(host.side(axis) for host in hosts):
        return hosts
    return tuple(host for host in hosts if host.side(axis) != -guest.side(axis))


def beside(hosts: Sequence[Seat], guest: Seat, axis: int) -> Sequence[Seat]:
    """Return the hosts that stand on the guest's own side of an axis, or all where none does."""
    return [host for host in hosts if host.side(axis) == guest.side(axis)] or hosts


def counted(count: int, name: str) -> str:
    """Return a number of parts in words: ``1 leg``, ``2 legs``."""
    return f"{count} {name if count == 1 else plural(name)}"


def written(declared: Declared, name: str) -> str:
    """Return a part's name as the maker wrote it, plural and all."""
    part = declared.part(name)
    return part.written if part else name
