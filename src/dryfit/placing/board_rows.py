"""Rows of boards tongued into one another: the next begins before the last one ends (TRADE B10)."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.joinery.tongue_groove import (
    board_width,
    row_of,
    usual_board_gap,
    usual_tongue_length,
)
from dryfit.kinds.joints import BESIDE
from dryfit.piece.declared import DeclaredPart, JointWords, SpreadWords
from dryfit.placing.lines import with_words
from dryfit.placing.not_fitting import Wrong, not_fitting
from dryfit.placing.site import Site
from dryfit.wood.moving import percent_words

_RULE = "B10"
_RIPPED = (
    "or write so many that they reach beyond it, and `the last ripped to fit` or "
    "`both outer boards ripped alike`"
)


@dataclass(frozen=True, slots=True)
class BoardRow:
    """How far each board of a row goes into the next: its tongue less the gap between shoulders."""

    tongue: Fraction
    gap: Fraction

    @property
    def overlap(self) -> Fraction:
        """Return how far a tongue stands in the board beside it, mm."""
        return self.tongue - self.gap


def tongue_length(site: Site, joint: JointWords) -> Fraction:
    """Return the length of the tongues as written, else the usual one, mm."""
    written = joint.length or of_tongue(joint, "length")
    return written or usual_tongue_length(site.declared.display)


def of_tongue(joint: JointWords, dimension: str) -> Fraction | None:
    """Return what `tongue 6 thick 8 long` behind a joint says of a dimension, or None."""
    sizes = (size for detail in joint.details if detail.kind == "tongue" for size in detail.sizes)
    return next((value for name, value in sizes if name == dimension), None)


def board_row(
    site: Site, part: DeclaredPart, spread: SpreadWords, run: tuple[int, Fraction], count: int
) -> BoardRow | None:
    """Return how the copies of a part go into one another over a clear width, or None.

    `run` is the axis of the row and its clear width.  The gap is as written (`gap 1`), or what a
    board swells.  Findings: tongue-does-not-fit.
    """
    contact = next(iter(site.contacts(part.name, BESIDE)), None)
    joint, (axis, clear) = contact.joint if contact is not None else None, run
    if contact is None or joint is None:
        return None
    if count < 2 or axis != part.axes[1]:
        not_fitting(site, contact, "tongue-does-not-fit", _no_row(part, axis, count))
        return None
    length = tongue_length(site, joint)
    written = None if spread.gap is None else site.amount(spread.gap)
    if written is not None:
        return BoardRow(length, written)
    gap = Fraction(0)
    if part.stock != "sheet":
        usual = usual_board_gap(clear / count, site.moving(part), site.declared.display)
        gap = min(usual, length / 2)
    why = "so that they can swell"
    if part.stock != "sheet" and not site.moving(part).swells(clear):
        now = percent_words(site.moving(part).moisture.now)
        why = f"though from {now} on they can only shrink, and the gaps grow"
    shown = site.declared.display.shown(gap, fitted=True)  # half millimetres, whatever the step
    site.assume_line(
        f"the {part.written} are laid {shown} apart, {why}",
        joint.span,
        with_words(joint.head, f"{joint.head.text()}, gap {shown}"),
    )
    return BoardRow(length, gap)


def _no_row(part: DeclaredPart, axis: int, count: int) -> Wrong:
    """Return why copies have no edges to be tongued at."""
    if count < 2:
        return Wrong(
            f"one {part.name} alone has no other to be tongued into",
            "write two or more, or leave `tongue and groove` out",
            {},
            _RULE,
        )
    ways = "across", "front to back", "up and down"
    return Wrong(
        f"the {part.written} are spread {ways[axis]}, end to end: they are tongued edge to edge",
        f"write `spread {ways[part.axes[1]]}`, or leave the spread out",
        {},
        _RULE,
    )


def does_not_fill(
    site: Site, part: DeclaredPart, row: BoardRow, size: Fraction, clear: Fraction
) -> None:
    """Tell that boards of a width do not fill their row exactly: boards-do-not-fill."""
    count, shown = part.count, site.shown
    comes_to = row_of(size, count, row.overlap)
    cover = size - row.overlap
    whole = (clear - row.overlap) / cover
    more = max(2, -(-whole.numerator // whole.denominator))
    equal = [
        f"{number} {part.written} {shown(board_width(clear, number, row.overlap))} wide"
        for number in dict.fromkeys((count, more))
    ]
    last = clear - row_of(size, more - 1, row.overlap) + row.overlap
    sliver = (
        f"; of {more} boards {shown(size)} wide the last would be ripped to {shown(last)}"
        if more != count
        else ""
    )
    site.findings.append(
        Diagnostic(
            "boards-do-not-fill",
            Severity.ERROR,
            f"{count} {part.written} {shown(size)} wide, with tongues of {shown(row.tongue)} and "
            f"gaps of {shown(row.gap)}, reach over {shown(comes_to)}, but there is "
            f"{shown(clear)}{sliver}",
            part.span,
            rule="B10",
            figures={"reach": comes_to, "there is": clear},
            hints=(
                Hint(f"rip all to one width: {' or '.join(equal)}, or leave the width out"),
                Hint(_RIPPED),
            ),
        )
    )
