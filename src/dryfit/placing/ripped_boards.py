"""Rows of boards of a written width of which the last, or both outer ones, are ripped (TRADE B10).

Then the boards differ in width: the row tells the width of each, and those that are ripped become a
part of their own.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.joinery.cut import Placed
from dryfit.joinery.tongue_groove import row_of
from dryfit.kinds.joints import BESIDE
from dryfit.piece.declared import DeclaredPart
from dryfit.placing.board_rows import BoardRow, does_not_fill
from dryfit.placing.positions import Face, Reason
from dryfit.placing.seats import Seat
from dryfit.placing.site import SIDE_WORDS, Site, both

LAST, OUTER = "last", "outer"
_RULE = "B10"
_SLIVER = 3
"""A board narrower than this part of the others is warned of (TRADE B10)."""


def is_ripped(site: Site, part: DeclaredPart, axis: int) -> bool:
    """Return whether the row of a part tells its sizes along an axis, and not the line alone."""
    return (
        part.spread is not None
        and part.spread.ripped is not None
        and axis == part.axes[1]
        and any(site.contacts(part.name, BESIDE))
        and not _in_rabbets(site, part)
    )


def ripped_of_what(site: Site, part: DeclaredPart) -> None:
    """Tell that nothing says of what boards would be ripped: ripped-of-what."""
    if part.spread is None or part.spread.ripped is None:
        return
    if part.sizes[1] is not None and is_ripped(site, part, part.axes[1]):
        return
    why = (
        "boards in rabbets share the width of their back between them"
        if _in_rabbets(site, part)
        else f"the {part.written} have no width, so that all are equally wide and fill the row"
    )
    site.findings.append(
        Diagnostic(
            "ripped-of-what",
            Severity.ERROR,
            f"nothing is left to be ripped: {why}",
            part.spread.span,
            rule=_RULE,
            hints=(Hint("write the width of the boards, or take these words out"),),
        )
    )


def _in_rabbets(site: Site, part: DeclaredPart) -> bool:
    return any(each.in_rabbets for each in site.contacts(part.name, "inside"))


def place_ripped(
    site: Site,
    part: DeclaredPart,
    row: BoardRow,
    seats: Sequence[Seat],
    run: tuple[Face, Face, Fraction],
) -> bool:
    """State the width and the place of each board of a row; false while the width is unknown.

    `run` are the bounds of the row and its clear width.  Findings: boards-do-not-fill,
    narrow-ripped-board.
    """
    amount, (start, _, clear), spread = part.sizes[1], run, part.spread
    width = site.amount(amount) if amount is not None else None
    if width is None or spread is None:
        return amount is None
    axis, count = part.axes[1], len(seats)
    behind = [fact.reason for fact in site.positions.chain(start, run[1])]
    # Number, width, tongue and gap all stand on the line; the room comes from elsewhere.
    lines = (part.span, *(each.span for each in behind if each.span is not None))
    figures = tuple(dict.fromkeys(name for each in behind for name in each.figures))
    widths = _widths(width, count, row_of(width, count, row.overlap) - clear, spread.ripped)
    narrowest = min(widths)
    if narrowest < 2 * row.tongue or max(widths) > width:
        does_not_fill(site, part, row, width, clear)
    elif narrowest * _SLIVER < width:
        _warn(site, part, narrowest, width)
    if spread.ripped == LAST and narrowest < width:
        where, ripped = SIDE_WORDS[axis, 1], site.shown(narrowest)
        site.assume(
            f"the last of the {part.written}, ripped to {ripped}, is at the {where}",
            spread.span,
            None,
        )
    at = Fraction(0)
    for seat, own in zip(seats, widths, strict=True):
        reason = Reason(
            "spread",
            f"width of {seat.name} in its row",
            f"{count} {part.written} of {site.shown(width)} fill {site.shown(clear)}, "
            + ("the last ripped" if spread.ripped == LAST else "both outer ones ripped alike"),
            spread.span,
            figures=figures,
            also=tuple(dict.fromkeys(lines)),
        )
        site.positions.add(*both(seat.name, axis), own, reason)
        site.positions.add(start, Face(seat.name, axis, -1), at, reason)
        at += own - row.overlap
    return True


def _widths(width: Fraction, count: int, over: Fraction, which: str | None) -> list[Fraction]:
    widths = [width] * count
    if which == OUTER:
        widths[0] -= over / 2
        widths[-1] -= over / 2
    else:
        widths[-1] -= over
    return widths


def _warn(site: Site, part: DeclaredPart, narrow: Fraction, width: Fraction) -> None:
    assert part.spread is not None
    shown = site.shown
    other = "write another number of boards, or another width"
    if part.spread.ripped == LAST:
        other = f"`both outer boards ripped alike`, or {other}"
    site.findings.append(
        Diagnostic(
            "narrow-ripped-board",
            Severity.WARNING,
            f"what is ripped of the {part.written} is left {shown(narrow)} wide, less than a third "
            f"of {shown(width)}",
            part.spread.span,
            rule=_RULE,
            figures={"left": narrow, "width": width},
            hints=(Hint(other),),
        )
    )


def by_width(
    site: Site, part: DeclaredPart, copies: Sequence[Placed]
) -> Iterator[tuple[DeclaredPart, list[Placed]]]:
    """Yield the copies of a part that are equally wide, the ripped ones under another name."""
    axis = part.axes[1]
    widths = [copy.box.extent(axis) for copy in copies]
    whole = max(widths)
    if not is_ripped(site, part, axis) or min(widths) == whole:
        yield part, list(copies)
        return
    assert part.spread is not None
    yield part, [copy for copy in copies if copy.box.extent(axis) == whole]
    own, word = [copy for copy in copies if copy.box.extent(axis) < whole], part.spread.ripped
    several = part.written.lower() if len(own) > 1 else part.name
    names = f"{word} {part.name}", f"{word} {several}"
    yield site.named_also(part, names, [copy.name for copy in own]), own
