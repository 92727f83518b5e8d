"""Spreading copies evenly: between hosts, over what they lie on, or over the whole piece."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import partial

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.joinery.tongue_groove import board_width, row_of
from dryfit.piece.declared import Amount, Contact, DeclaredPart, SpreadWords
from dryfit.placing.board_rows import BoardRow, board_row, does_not_fill
from dryfit.placing.directions import edge_insets, spread_axis
from dryfit.placing.lines import with_words
from dryfit.placing.positions import Face, Reason
from dryfit.placing.ripped_boards import is_ripped, place_ripped
from dryfit.placing.seats import Seat
from dryfit.placing.site import Site, both
from dryfit.placing.spread_bounds import over_the_piece, spread_bounds

ZERO = Fraction(0)
_WAYS = ("across", "front to back", "up and down")
_GAPS_AT_ENDS = {"no": Fraction(0), "half": Fraction(1, 2), "same": Fraction(1)}


def state_spread(site: Site, part: DeclaredPart, contact: Contact | None) -> None:
    """Queue the rule that puts a part's copies at equal gaps, those at the ends as its line says.

    Findings: spread-too-full, spread-not-filled.
    """
    axis = spread_axis(part)
    if part.spread is None or axis is None:
        return
    if part.spread.axis is None:
        way = _WAYS[axis]
        word, comma, ends = part.spread.span.text().partition(",")
        line = with_words(part.spread.span, f"{word.rstrip()} {way}{comma}{ends}")
        site.assume_line(f"the {part.written} are spread {way}", part.spread.span, line)
    for seats in _rows(site.seats(part.name)):
        site.pending.append(partial(_say_row, site, part, contact, axis, seats))


def _rows(seats: Sequence[Seat]) -> Iterable[list[Seat]]:
    # Copies at different sides are a row for each.
    rows: dict[tuple[tuple[str, ...], str | None], list[Seat]] = {}
    for seat in seats:
        rows.setdefault((seat.places, seat.within), []).append(seat)
    return rows.values()


def _say_row(
    site: Site, part: DeclaredPart, contact: Contact | None, axis: int, seats: Sequence[Seat]
) -> bool:
    # Once the two bounds and the size of a copy are known: equal gaps, or the gap as written.
    spread, insets = part.spread, edge_insets(part, axis)
    bounds = (
        spread_bounds(site, part, contact, seats[0], axis)
        if insets is None
        else over_the_piece(axis)
    )
    clear = None if bounds is None else site.positions.distance(*bounds)
    if bounds is None or clear is None or spread is None:
        return False
    boards = board_row(site, part, spread, (axis, clear), len(seats)) if insets is None else None
    if boards is not None and is_ripped(site, part, axis) and part.sizes[1] is not None:
        return place_ripped(site, part, boards, seats, (*bounds, clear))
    row = (
        _row(site, spread, insets, seats, axis, clear)
        if boards is None
        else _of_boards(site, spread, boards, seats, axis, bounds)
    )
    if row is None:
        return False
    if boards is not None:
        if row.left:
            does_not_fill(site, part, boards, row.size, clear)
        row = replace(row, left=ZERO)
    elif insets is None and spread.ends is None:
        _assume_ends(site, part, spread, row, between=contact is not None)
    if boards is None and (row.first < 0 or row.gap < 0 or row.left):
        _does_not_fit(site, part, spread, clear, row)
    for index, seat in enumerate(seats):
        reason = Reason(
            "spread",
            f"place of {seat.name} in its spread",
            f"{len(seats)} {part.written} are spread evenly over {site.shown(clear)}, "
            f"{site.shown(row.gap)} apart",
            spread.span if insets is None else insets[0].span,
        )
        face = Face(seat.name, axis, -1)
        site.positions.add(bounds[0], face, row.first + index * (row.size + row.gap), reason)
    return True


def _assume_ends(
    site: Site, part: DeclaredPart, spread: SpreadWords, row: _Row, *, between: bool
) -> None:
    if row.first > 0 and row.first != row.gap:
        left = f"{site.shown(row.first)} are left at either end of the {part.written}"
        site.assume(f"{left}, which stand {site.shown(row.gap)} apart", spread.span, None)
    if spread.gap is None and not between:
        # Between two parts the ends are gaps like the others; over parts they may reach to the end.
        line = with_words(spread.span, f"{spread.span.text()}, same gap at ends")
        text = f"the {part.written} have the same gap at the ends as between them"
        site.assume_line(text, spread.span, line)


@dataclass(frozen=True, slots=True)
class _Row:
    """A row: how many, of which size, the first gap and those between, and what is left over."""

    count: int
    size: Fraction
    first: Fraction
    gap: Fraction
    left: Fraction = ZERO

    def needs(self) -> Fraction:
        """Return how long the row is without the ends, gaps below nothing not counted."""
        return self.count * self.size + (self.count - 1) * max(self.gap, ZERO)


def _row(
    site: Site,
    spread: SpreadWords,
    insets: tuple[Amount, Amount] | None,
    seats: Sequence[Seat],
    axis: int,
    clear: Fraction,
) -> _Row | None:
    """Return the row that fits, or None while a size or a gap is unknown."""
    count, size = len(seats), site.positions.extent(seats[0].name, axis)
    written = None if spread.gap is None else site.amount(spread.gap)
    low, high = (None if insets is None else site.amount(insets[end]) for end in (0, 1))
    at_ends = None if spread.ends is None else _GAPS_AT_ENDS[spread.ends]
    if spread.gap is not None and written is None:
        return None
    if size is None and written is not None and at_ends is not None:
        size = (clear - (count - 1 + 2 * at_ends) * written) / count
        _state_size(site, spread, seats, axis, size)
    if size is None or (insets is not None and (low is None or high is None)):
        return None
    room = clear - count * size
    if low is not None and high is not None and count > 1:
        return _Row(count, size, low, (room - low - high) / (count - 1))
    if written is None:
        gaps = count - 1 + 2 * (1 if at_ends is None else at_ends)
        gap = room / gaps if gaps else ZERO
        return _Row(count, size, (room - (count - 1) * gap) / 2, gap)
    first = (room - (count - 1) * written) / 2
    left = ZERO if at_ends is None else 2 * (first - at_ends * written)
    return _Row(count, size, first, written, left)


def _of_boards(
    site: Site,
    spread: SpreadWords,
    boards: BoardRow,
    seats: Sequence[Seat],
    axis: int,
    bounds: tuple[Face, Face],
) -> _Row:
    """Return the row of boards that go into one another, all of one width unless that is said."""
    count, size = len(seats), site.positions.extent(seats[0].name, axis)
    clear = site.positions.distance(*bounds) or ZERO
    if size is None:
        size = board_width(clear, count, boards.overlap)
        behind = [fact.reason for fact in site.positions.chain(*bounds)]
        _state_size(site, spread, seats, axis, size, behind)
    left = clear - row_of(size, count, boards.overlap)
    return _Row(count, size, ZERO, -boards.overlap, left)


def _state_size(
    site: Site,
    spread: SpreadWords,
    seats: Sequence[Seat],
    axis: int,
    size: Fraction,
    behind: Sequence[Reason] = (),
) -> None:
    for seat in seats:
        reason = Reason(
            "spread",
            f"share of {seat.part} in its spread",
            f"{len(seats)} of {seat.part} and the gaps between them fill the row",
            spread.span,
            figures=tuple(dict.fromkeys(name for each in behind for name in each.figures)),
            also=tuple(
                dict.fromkeys(
                    span for each in behind for span in (each.span, *each.also) if span is not None
                )
            ),
        )
        site.positions.add(*both(seat.name, axis), size, reason)


def _does_not_fit(
    site: Site, part: DeclaredPart, spread: SpreadWords, clear: Fraction, row: _Row
) -> None:
    if row.left > 0:
        _not_filled(site, part, spread, clear, clear - row.left)
    else:
        _too_full(site, part, spread, clear, max(row.needs(), clear - row.left))


def _not_filled(
    site: Site, part: DeclaredPart, spread: SpreadWords, clear: Fraction, comes_to: Fraction
) -> None:
    site.findings.append(
        Diagnostic(
            "spread-not-filled",
            Severity.ERROR,
            f"{part.count} {part.written} and the gaps as written come to "
            f"{site.shown(comes_to)}, but there is {site.shown(clear)}",
            spread.span,
            rule="H30",
            figures={"come to": comes_to, "there is": clear},
            hints=(Hint("leave out the gap, the gap at ends or the size: it is worked out"),),
        )
    )


def _too_full(
    site: Site, part: DeclaredPart, spread: SpreadWords, clear: Fraction, need: Fraction
) -> None:
    site.findings.append(
        Diagnostic(
            "spread-too-full",
            Severity.ERROR,
            f"{part.count} {part.written} need {site.shown(need)}, but there is "
            f"{site.shown(clear)}",
            spread.span,
            rule="H30",
            figures={"needed": need, "there is": clear},
            hints=(Hint(_less(part, spread)),),
        )
    )


def _less(part: DeclaredPart, spread: SpreadWords) -> str:
    # Shelves that are merely "spread" were perhaps meant one above the other.
    lies_flat = part.axes[2] == 2 and spread.axis is None
    above = ", or `spread up and down`" if lies_flat else ""
    return f"write fewer or narrower ones, or a smaller gap{above}"
