"""Copies in an opening: which of them stand in a row, and along which axis."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from dryfit.diagnostics import Assumption
from dryfit.piece.declared import Declared, DeclaredPart
from dryfit.placing.lines import with_phrase
from dryfit.placing.seats import Seat

_ROW_BY_RUN = {0: 2, 1: 0, 2: 0}
_ROW_WORDS = {
    0: ("side by side", "spread across"),
    1: ("one behind the other", "spread front to back"),
    2: ("one above the other", "spread up and down"),
}


def openings_named(part: DeclaredPart, declared: Declared) -> tuple[str, ...]:
    """Return the openings in which a part stands, as its line names them."""
    names = {opening.name for opening in declared.openings}
    return tuple(
        host.part
        for contact in declared.contacts
        if contact.preposition == "in" and contact.guest.part == part.name
        for host in contact.hosts
        if host.part in names
    )


def row_axis(part: DeclaredPart, seats: Sequence[Seat]) -> int | None:
    """Return the axis along which copies in one opening stand in a row, or None without a row.

    Without a word, what runs across stands one above the other, all else side by side (common
    practice: drawers, doors).
    """
    if len(seats) == 1 or _is_listed(part):
        return None
    apart = [axis for axis in range(3) if len({seat.side(axis) for seat in seats}) == len(seats)]
    if apart:
        return apart[0]
    written = part.spread.axis if part.spread else None
    return written if written is not None else _ROW_BY_RUN[part.axes[0]]


def row_assumed(part: DeclaredPart, openings: int) -> Iterator[Assumption]:
    """Yield which way the copies of a part stand in a row, where no word says so."""
    if part.count == openings or _is_listed(part):
        return
    words, phrase = _ROW_WORDS[_ROW_BY_RUN[part.axes[0]]]
    text = f"the {part.count} {part.written} stand {words}"
    yield Assumption(text, part.name_span, with_phrase(part.span, phrase))


def _is_listed(part: DeclaredPart) -> bool:
    return bool(part.lists) or any(len(each.amounts) > 1 for each in part.offsets)
