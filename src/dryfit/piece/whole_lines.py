"""The lines about the whole piece: its name, its units, its overall size and what there is."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from dryfit.diagnostics import Diagnostic, Hint, Severity, Span
from dryfit.notes.tree import (
    Notes,
    OverallLine,
    PartsLine,
    PieceLine,
    Sum,
    UnitsLine,
)
from dryfit.piece.declared import PIECE_DIMENSIONS, Amount
from dryfit.piece.statements import first_line, lines_of
from dryfit.piece.sums import Sums
from dryfit.quantities import Display

Overall = tuple[Amount | None, Amount | None, Amount | None]
"""Width, depth and height of the whole piece."""

_IN_MM = {"mm": 1, "cm": 10, "m": 1000}
# `overall 900 long` is how wide the piece is.
_PLACE_OF = {"width": 0, "length": 0, "depth": 1, "height": 2}


def display_of(units: UnitsLine | None) -> Display:
    """Return how lengths are shown: mm to 1/2 unless the ``units`` line says otherwise."""
    if units is None:
        return Display()
    display = Display.of_unit(units.unit)
    return replace(display, step=units.step * _IN_MM.get(units.unit, 1)) if units.step else display


def title_of(notes: Notes) -> str:
    """Return the name of the piece; without a line that names it, the name of the file."""
    title = first_line(notes, PieceLine)
    return title.name if title else notes.source.name.rsplit("/", 1)[-1]


def sums_of_overall(line: OverallLine | None) -> dict[str, Sum]:
    """Return the sums of the ``overall`` line by dimension; bare sizes are in that order."""
    found: dict[str, Sum] = {}
    for index, word in enumerate(line.sizes if line else ()):
        place = _PLACE_OF.get(word.dimension or "", index)
        if place < len(PIECE_DIMENSIONS):
            found.setdefault(PIECE_DIMENSIONS[place], word.amount)
    return found


def overall_size(sums: Sums) -> Overall:
    """Return the overall size, None for each side that is not written or comes to no size."""
    width, depth, height = (_overall_side(sums, dimension) for dimension in PIECE_DIMENSIONS)
    return width, depth, height


def is_wider_than_deep(overall: Overall) -> bool:
    """Return whether the piece is at least as wide as deep, as far as its overall size says."""
    width, depth, _ = overall
    return width is None or depth is None or width.value >= depth.value


def missing_lines(notes: Notes, display: Display) -> Iterator[Diagnostic]:
    """Yield what every piece has and these notes do not: no-piece, no-parts."""
    opening, title = Span(notes.source, 1, 1, 1), first_line(notes, PieceLine)
    if title is None and "piece" not in notes.unreadable:
        yield Diagnostic(
            "no-piece",
            Severity.QUESTION,
            "the piece has no name; the file's name is printed instead",
            opening,
            hints=(Hint("begin with a line such as `piece Step stool`"),),
        )
    if not lines_of(notes, PartsLine) and not notes.unreadable:
        yield Diagnostic(
            "no-parts",
            Severity.ERROR,
            "the notes name no part",
            title.span if title else opening,
            hints=(
                Hint(
                    display.examples(
                        "add a line such as `4 legs, upright, {40} x {40}, at corners`"
                    )
                ),
            ),
        )


def _overall_side(sums: Sums, dimension: str) -> Amount | None:
    written = sums.overall.get(dimension)
    value = sums.size(written) if written is not None else None
    if written is None or value is None:
        return None
    return Amount(value, written.span, sums.behind(written))
