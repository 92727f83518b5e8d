"""What a line asks of the wood: the way of the grain, and what the choice of boards must heed."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.notes.tree import GluedFrom, PartsLine, Rests, Run, WoodWords
from dryfit.piece.declared import PLACE_SIDE, DeclaredPart, WoodWish
from dryfit.piece.sums import Sums


def run_of_grain(line: PartsLine, sums: Sums) -> str | None:
    """Return the way that a part runs by the words for its grain, or None.

    The length of a part is along its grain.  Findings: grain-and-run.
    """
    grain = next((w for w in _words(line) if w.kind == "grain" and w.words), None)
    run = next((each for each in line.clauses if isinstance(each, Run)), None)
    if grain is None:
        return None
    if run is not None and run.direction != grain.words[0]:
        sums.findings.append(
            Diagnostic(
                "grain-and-run",
                Severity.ERROR,
                f"{line.name} runs {run.direction}, but its grain is said to run {grain.words[0]}",
                grain.span,
                hints=(Hint("a part's length is along its grain: keep one of the two"),),
            )
        )
    return grain.words[0]


def wood_wishes(line: PartsLine) -> tuple[WoodWish, ...]:
    """Return what is asked of the wood, besides the way of the grain."""
    return tuple(
        WoodWish(words.kind, words.words, words.span)
        for words in _words(line)
        if words.kind != "grain"
    )


def glued_from_boards(line: PartsLine) -> bool:
    """Return whether a part is glued from boards of which the line need not say how many."""
    return any(words.kind in {"boards", "free widths"} for words in _words(line))


def sawn_words(line: PartsLine) -> str | None:
    """Return how the boards of a part are to be sawn, where its line says so, else None."""
    return next((words.words[0] for words in _words(line) if words.kind == "sawn"), None)


def rested(words: Rests, sums: Sums) -> int | None:
    """Return how many minutes the wood of a part is to lie on stickers, 0 for ``in one go``.

    Findings: time-not-positive, rests-too-long.
    """
    if words.time is None:
        return 0
    minutes = sums.minutes(words.time)
    if minutes is not None and minutes > LONGEST_REST:
        sums.findings.append(
            Diagnostic(
                "rests-too-long",
                Severity.ERROR,
                f"{words.span.text()} is more than 60 days",
                words.span,
                hints=(Hint("wood that is milled lies for days, and dries before in months"),),
            )
        )
        return None
    return minutes


LONGEST_REST = 60 * 24 * 60
"""Minutes: longer than that nothing lies between two passes of a planer (TRADE A8.3: a week)."""


def ask_of_wood(line: PartsLine, part: DeclaredPart) -> Iterator[Diagnostic]:
    """Yield wishes that the part cannot have.

    Findings: waney-at-an-end, bookmatched-alone, resawn-alone, sheet-without-waney, sheet-sawn,
    lip-of-what.
    """
    yield from _covered(part)
    yield from _sheet_at_rest(line, part)
    for wish in part.wood:
        if wish.kind in {"sawn", "resawn"} and part.stock == "sheet":
            made = "no cut of a log makes" if wish.kind == "sawn" else "are never"
            yield _error(
                "sheet-sawn",
                f"{part.name} is of sheet goods, which {made} {wish.span.text()}",
                wish,
                "name a solid timber, or leave the word out",
            )
        if wish.kind == "waney" and part.stock == "sheet":
            yield _error(
                "sheet-without-waney",
                f"{part.name} is of sheet goods, which have no {wish.span.text()}",
                wish,
                "name a solid timber, or leave the words out",
            )
        elif wish.kind == "waney":
            yield from _off_the_edges(part, wish)
        elif wish.kind == "bookmatched" and part.count == 1 and _staves(line) == 1:
            yield _error(
                "bookmatched-alone",
                f"{part.name} is one board: there is nothing to match it with",
                wish,
                "say `from 2 staves`, or make it two parts side by side",
            )
        elif wish.kind == "resawn" and part.count == 1 and _staves(line) == 1:
            yield _error(
                "resawn-alone",
                f"{part.name} is one board, and resawn are two or more out of one",
                wish,
                "leave the word out, or give the parts that are alike one line",
            )


def _off_the_edges(part: DeclaredPart, wish: WoodWish) -> Iterator[Diagnostic]:
    remedy = "name the sides along its length"
    for axis, what, hint in (
        (part.axes[0], "an end", f"{remedy}, or say which way its grain runs"),
        (part.axes[2], "a face", remedy),
    ):
        named = [word for word in wish.words if PLACE_SIDE[word][0] == axis]
        if named:
            yield _error(
                "waney-at-an-end",
                f"{part.name}: the {' and '.join(named)} is {what} of it, and bark runs along "
                "the edges",
                wish,
                hint,
            )
            return


def _covered(part: DeclaredPart) -> Iterator[Diagnostic]:
    sheet = part.stock == "sheet" and part.bought is None
    for lip in part.lips[: 0 if sheet else 1]:
        yield Diagnostic(
            "lip-of-what",
            Severity.ERROR,
            f"{part.name} is no sheet, and only the edges of a sheet are lipped or banded",
            lip.span,
            hints=(
                Hint("name the sheet, such as `of birch ply`, or leave the words out"),
                Hint("a solid edge on a solid board is a part of its own, glued to it"),
            ),
        )


def _sheet_at_rest(line: PartsLine, part: DeclaredPart) -> Iterator[Diagnostic]:
    rests = next((each for each in line.clauses if isinstance(each, Rests)), None)
    if rests is not None and part.stock == "sheet":
        yield Diagnostic(
            "sheet-sawn",
            Severity.ERROR,
            f"{part.name} is of sheet goods, which no planer makes thinner",
            rests.span,
            hints=(Hint("leave the words out, or name a solid timber"),),
        )


def _words(line: PartsLine) -> Iterator[WoodWords]:
    return (each for each in line.clauses if isinstance(each, WoodWords))


def _staves(line: PartsLine) -> int:
    if glued_from_boards(line):
        return 0
    return next((each.count for each in line.clauses if isinstance(each, GluedFrom)), 1)


def _error(code: str, message: str, wish: WoodWish, hint: str) -> Diagnostic:
    return Diagnostic(code, Severity.ERROR, message, wish.span, hints=(Hint(hint),))
