"""Lists of distances: which copy takes which entry, and whether the entries fit the copies."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.piece.declared import Amount, DeclaredPart
from dryfit.placing.seats import Seat, counted

Tags = tuple[str, ...]


def lists_of(part: DeclaredPart) -> Iterator[tuple[Amount, ...]]:
    """Yield the lists of distances on a part's line; one distance for all copies is no list."""
    yield from (each.amounts for each in part.lists)
    yield from (each.amounts for each in part.offsets if len(each.amounts) > 1)


def level_count(part: DeclaredPart) -> int:
    """Return how many entries the lists of a part have, 1 where it has none."""
    return max((len(amounts) for amounts in lists_of(part)), default=1)


def entry_for(amounts: Sequence[Amount], seats: Sequence[Seat], seat: Seat) -> Amount:
    """Return the entry of a list that is a copy's, the copies and the list fitting.

    As many entries as copies are one for each in turn; else each place has all of them, the
    copies there in turn.
    """
    if len(amounts) == 1:
        return amounts[0]
    row = seats
    if len(amounts) != len(seats):
        row = [each for each in seats if each.places == seat.places and each.within == seat.within]
    return amounts[row.index(seat)]


def lists_that_do_not_fit(part: DeclaredPart, tags: Sequence[Tags]) -> Iterator[Diagnostic]:
    """Yield the lists of a part that have neither an entry for each copy nor for each at a place.

    Findings: list-length.
    """
    there = set(Counter(tags).values())
    for amounts in lists_of(part):
        if len(amounts) == len(tags) or there == {len(amounts)}:
            continue
        places = len(set(tags))
        needed = len(amounts) * places
        sides = f", at {places} places" if places > 1 else ""
        yield Diagnostic(
            "list-length",
            Severity.ERROR,
            f"{part.count} {part.written}{sides}, but the list has {len(amounts)} entries",
            amounts[0].span,
            rule="H27",
            hints=(
                Hint(
                    f"write {counted(needed, part.name)}, or a list of "
                    f"{max(1, part.count // places)}"
                ),
            ),
        )
