"""The lines of sense: remarks taken off, signs folded, continued lines joined.

Folding is one to one, so that a column of the folded line is a column of the line as typed.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from itertools import accumulate

from dryfit.diagnostics import Source, Span
from dryfit.notes.reading.runs import Word, words_of

LONGEST_LINE = 1000

# Telephones and word processors put these in by themselves.
_FOLDED = {
    **dict.fromkeys("\u2033\u201d\u201c\u201e\u201f", '"'),  # double primes and quotation marks
    **dict.fromkeys("\u2032\u2019\u2018\u201b", "'"),  # primes and apostrophes
    **dict.fromkeys("\u2212\u2013\u2014\u2010\u2011\u2012", "-"),  # minus, dashes, hyphens
    **dict.fromkeys("\u2044\u2215", "/"),  # fraction and division slash
    **dict.fromkeys("\u2715\u2716", "×"),
    **dict.fromkeys("\t\u00a0\u2002\u2003\u2007\u2009\u200a\u200b\u202f\u2028\u2029\ufeff", " "),
}
_FOLD = str.maketrans(_FOLDED)
_FREE_TEXT = re.compile(r"\s*(?:piece|note)\b", re.IGNORECASE)
# The first and the last line of a pattern are never a continuation.
_OF_A_BLOCK = re.compile(r"\s*(?:pattern\b(?!\s*=)|end\s*$)", re.IGNORECASE)
_GOES_ON = re.compile(r"[,+*×(]$|(?<=[\s\d])[xX]$")


@dataclass(frozen=True, slots=True)
class Stretch:
    """A part of a line of sense: where it begins in the joined text, and on which line it was."""

    start: int
    line: int


@dataclass(frozen=True, slots=True)
class SenseLine:
    """One statement's text: folded, without its remark, continuation lines joined by a blank."""

    source: Source
    text: str
    stretches: tuple[Stretch, ...]
    words: tuple[Word, ...] = field(repr=False, compare=False)

    @property
    def line(self) -> int:
        """The line of the source on which it begins, from 1."""
        return self.stretches[0].line

    def span(self, start: int, end: int) -> Span:
        """Return the place of the characters from start to end, cut off at the end of its line."""
        for index in range(len(self.stretches) - 1, -1, -1):
            stretch = self.stretches[index]
            if start >= stretch.start or index == 0:
                break
        if index + 1 < len(self.stretches):
            end = min(end, self.stretches[index + 1].start - 1)
        return Span(
            self.source,
            stretch.line,
            start - stretch.start + 1,
            max(end, start) - stretch.start + 1,
        )

    def offsets(self, span: Span) -> tuple[int, int]:
        """Return where in the text the place of one of its lines is."""
        stretch = next(piece for piece in self.stretches if piece.line == span.line)
        return stretch.start + span.column - 1, stretch.start + span.end_column - 1

    def whole(self) -> Span:
        """Return the place of the statement, without the blanks round it."""
        start = len(self.text) - len(self.text.lstrip())
        return self.span(start, len(self.text))


def sense_lines(source: Source) -> Iterator[SenseLine]:
    """Yield the lines that say something, in order."""
    typed = source.lines()
    folded = [fold(line) for line in typed]
    index = 0
    while index < len(folded):
        if not folded[index]:
            index += 1
            continue
        taken = [index]
        while _continues(folded, taken) and (following := _next(typed, folded, taken[-1])):
            taken.append(following)
        index = taken[-1] + 1
        yield _joined(source, [(folded[at], at + 1) for at in taken])


def respelled(line: SenseLine, typed: str, at: int) -> SenseLine:
    """Return the line of sense as it would be if its source line `at` (from 1) were `typed`."""
    texts = {stretch.line: text for stretch, text in zip(line.stretches, _texts(line), strict=True)}
    texts[at] = fold(typed)
    return _joined(line.source, [(text, number) for number, text in texts.items()])


def parted(line: SenseLine) -> tuple[SenseLine, ...]:
    """Return the source lines of a continued line, each read by itself."""
    return tuple(
        _joined(line.source, [(text, stretch.line)])
        for stretch, text in zip(line.stretches, _texts(line), strict=True)
    )


def split(line: SenseLine, before: int) -> tuple[SenseLine, SenseLine]:
    """Return the first so many source lines of a continued line, and the others, as two lines."""
    texts = [
        (text, stretch.line) for stretch, text in zip(line.stretches, _texts(line), strict=True)
    ]
    return _joined(line.source, texts[:before]), _joined(line.source, texts[before:])


def loose(source: Source, folded: str, at: int) -> SenseLine:
    """Return a folded text as a line of sense that is only looked at, not told about."""
    return _joined(source, [(folded, at)])


def fold(line: str) -> str:
    """Return the line with its signs folded and its remark and trailing blanks taken off."""
    return line.partition("#")[0].translate(_FOLD).rstrip()


def goes_on(folded: str) -> bool:
    """Return whether a folded line ends in a sign that makes the next its continuation."""
    return _GOES_ON.search(folded) is not None


def _texts(line: SenseLine) -> list[str]:
    ends = [stretch.start - 1 for stretch in line.stretches[1:]] + [len(line.text)]
    return [line.text[piece.start : end] for piece, end in zip(line.stretches, ends, strict=True)]


def _continues(folded: list[str], taken: list[int]) -> bool:
    return goes_on(folded[taken[-1]]) and not _FREE_TEXT.match(folded[taken[0]])


def _next(typed: tuple[str, ...], folded: list[str], index: int) -> int | None:
    # Lines with nothing but a remark may stand between; an empty line ends the statement.
    index += 1
    while index < len(folded) and not folded[index] and typed[index].strip():
        index += 1
    more = index < len(folded) and folded[index] and not _OF_A_BLOCK.match(folded[index])
    return index if more else None


def _joined(source: Source, texts: list[tuple[str, int]]) -> SenseLine:
    starts = accumulate((len(text) + 1 for text, _ in texts), initial=0)
    stretches = tuple(Stretch(start, line) for start, (_, line) in zip(starts, texts, strict=False))
    whole = " ".join(text for text, _ in texts)
    # A comma before nothing is harmless: what it might have led to is not there.
    if whole.endswith(","):
        whole = whole.rstrip(", ")
    return SenseLine(source, whole, stretches, words_of(whole))
