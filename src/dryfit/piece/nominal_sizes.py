"""Names of boards taken for sizes (TRADE H37): a 2 x 4 is 1 1/2" x 3 1/2", 4/4 planes to 13/16".

Softwood is sold dressed under the size it was sawn to (PS 20, read in three equal tables), rough
hardwood by quarters of an inch (surfaced on both sides, read in a public table; 8/4 is 1 13/16 by
one glossary).  `tests/published/lumber_sizes.csv` holds them.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity, Span
from dryfit.notes.tree import Notes, Number, PartsLine, Sizes, SizeWord, TimberLine
from dryfit.piece.statements import first_line, lines_of
from dryfit.quantities.display import mixed

_HALF = Fraction(1, 2)
THICK = {1: Fraction(3, 4), 2: 1 + _HALF, 3: 2 + _HALF, 4: 3 + _HALF}
WIDE = {
    **{width: width - _HALF for width in range(2, 7)},
    **{width: width - Fraction(3, 4) for width in (7, 8, 10, 12)},
}
"""What softwood boards measure, by their names, in inches."""

QUARTERS = {
    4: Fraction(13, 16),
    5: Fraction(17, 16),
    6: Fraction(21, 16),
    7: Fraction(3, 2),
    8: Fraction(7, 4),
    10: Fraction(9, 4),
    12: Fraction(11, 4),
    14: Fraction(13, 4),
    16: Fraction(15, 4),
}
"""What hardwood planes to, by the quarters of its name, in inches."""

_SOFT = frozenset({"pine", "fir", "spruce", "cedar", "hemlock", "larch", "redwood", "cypress"})
"""Woods that are sold by such names (common practice)."""


@dataclass(frozen=True, slots=True)
class _Name:
    """A board's name on a line: as written, and what such boards measure, in words to write."""

    line: PartsLine
    span: Span
    written: str
    measures: str
    instead: str
    as_it_is: str


def nominal_sizes(notes: Notes, *, thickness_first: bool) -> Iterator[Diagnostic]:
    """Ask once whether sizes that are names of boards are meant as sizes, in notes in inches.

    Findings: nominal-size.
    """
    found = [
        each
        for line in lines_of(notes, PartsLine)
        for each in _names(notes, line, thickness_first=thickness_first)
    ]
    if not found:
        return
    first = found[0]
    others = f" (and {len(found) - 1} more like it)" if len(found) > 1 else ""
    yield Diagnostic(
        "nominal-size",
        Severity.QUESTION,
        f"{first.line.name}: `{first.written}` is what boards are called that measure "
        f"{first.measures}; is such a board meant?{others}",
        first.span,
        rule="H37",
        hints=(
            Hint(
                f"write `{first.instead}` for such a board, `{first.as_it_is}` for wood of that "
                "very size"
            ),
        ),
    )


def names_a_board(line: PartsLine) -> bool:
    """Return whether sizes of a line that are read otherwise are the name of a softwood board."""
    return _softwood(line, None, thickness_first=False) is not None


def _names(notes: Notes, line: PartsLine, *, thickness_first: bool) -> Iterator[_Name]:
    timber = first_line(notes, TimberLine)
    general = timber.timber if timber else None
    named = _softwood(line, general, thickness_first=thickness_first)
    if named is not None:
        yield named
    else:
        yield from _quarters(line)


def _softwood(line: PartsLine, timber: str | None, *, thickness_first: bool) -> _Name | None:
    """Return the name of a softwood board: thickness before width, both whole inches.

    Where both are equal, or the notes say that the thickness is first, they may well be sizes: only
    the timber tells then that a name may be meant.
    """
    words = _bare(line)
    if len(words) not in {2, 3} or not all(isinstance(word.amount, Number) for word in words):
        return None
    thick, wide, *rest = (_number(word) for word in words)
    if thick not in THICK or wide not in WIDE or thick > wide or any(each < wide for each in rest):
        return None
    soft = timber is not None and timber.rsplit(" ", 1)[-1] in _SOFT
    if not soft and (thick == wide or thickness_first):
        return None
    span = words[0].span
    measured = mixed(THICK[int(thick)]), mixed(WIDE[int(wide)])
    written = f"{mixed(thick)} x {mixed(wide)}"
    return _Name(
        line,
        span,
        written,
        f'{measured[0]}" x {measured[1]}"',
        f"{measured[0]} thick, {measured[1]} wide",
        f"{mixed(thick)} thick, {mixed(wide)} wide",
    )


def _quarters(line: PartsLine) -> Iterator[_Name]:
    """Yield thicknesses in whole quarters, as rough hardwood is called: 4/4, 8/4."""
    for word in _words(line):
        text, _, below = word.amount.span.text().partition("/")
        if below.strip() != "4" or not text.strip().isdigit() or int(text) not in QUARTERS:
            continue
        quarters = int(text)
        measured, true = mixed(QUARTERS[quarters]), mixed(Fraction(quarters, 4))
        yield _Name(
            line,
            word.span,
            f"{quarters}/4",
            f'{true}" rough and {measured}" planed',
            f"{measured} thick",
            f"{true} thick",
        )
        return


def _words(line: PartsLine) -> tuple[SizeWord, ...]:
    runs = (clause.sizes for clause in line.clauses if isinstance(clause, Sizes))
    return tuple(word for run in runs for word in run)


def _bare(line: PartsLine) -> tuple[SizeWord, ...]:
    return tuple(word for word in _words(line) if word.dimension is None)


def _number(word: SizeWord) -> Fraction:
    amount = word.amount
    return amount.value if isinstance(amount, Number) and amount.quantity is None else Fraction(0)
