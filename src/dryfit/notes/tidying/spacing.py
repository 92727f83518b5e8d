"""A line that was read, written again with one blank between its words.

It is written from the tokens, not from the tree: the tree has lost commas, articles and the
spelling of numbers, and new phrases of the language need nothing here.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from lark import Token

from dryfit.notes.reading.lexer import Reading
from dryfit.notes.reading.lines import SenseLine, Stretch, fold
from dryfit.notes.reading.numbers import Spelled
from dryfit.notes.reading.words_of_stock import CURRENCY_SIGNS
from dryfit.notes.tidying.numbers import spaced_number

HANGING_INDENT = 4

_BLANKS = re.compile(r" +")
_WORD = re.compile(r"[^ ]+")
_CLOSE_BEFORE = frozenset([",", ";", ":", ")", ".", "'", "'s"])
_CLOSE_AFTER = frozenset(["(", "."])
_SIGNS = frozenset([",", ";", ":", "(", "=", "+", "-", "*", "/", "x"])


@dataclass(frozen=True, slots=True)
class _Word:
    """A word, number or sign as it will be written, and where it stands in the line of sense."""

    text: str
    start: int
    end: int


def spaced(reading: Reading, typed: tuple[str, ...]) -> tuple[str, ...] | None:
    """Return what to write for each source line of a line that was read, without its remark.

    `typed` are all lines of the source.  A continued line stays continued where it was, with a
    hanging indent.  None when a word lies across the end of a source line.
    """
    line = reading.line
    words = tuple(_words(reading))
    free = next((token for token in reading.tokens if token.type == "TEXT"), None)
    if free is not None:
        return (_with_text(line, words, free, typed),) if len(line.stretches) == 1 else None
    ends = [stretch.start - 1 for stretch in line.stretches[1:]] + [len(line.text)]
    written: list[str] = []
    for stretch, end in zip(line.stretches, ends, strict=True):
        here = [word for word in words if stretch.start <= word.start <= end]
        if any(word.end > end for word in here):
            return None
        indent = " " * HANGING_INDENT if written else ""
        written.append(indent + _joined(here) + _idle_commas(line, stretch, typed))
    return tuple(written)


def _with_text(
    line: SenseLine, words: tuple[_Word, ...], free: Token, typed: tuple[str, ...]
) -> str:
    """Return a line that ends in free text, which is the maker's to the last sign."""
    start = free.start_pos
    assert start is not None
    opener = _joined([word for word in words if word.start < start])
    gap = " " if line.text[:start].endswith(" ") else ""
    whole = typed[line.line - 1]
    return opener + gap + whole[start : len(fold(whole))]


def _words(reading: Reading) -> Iterator[_Word]:
    """Yield the tokens and the articles between them, which are no tokens."""
    text = reading.line.text
    at = 0
    for token in reading.tokens:
        assert token.start_pos is not None
        assert token.end_pos is not None
        yield from _articles(text, at, token.start_pos)
        yield _Word(_spelling(token, text), token.start_pos, token.end_pos)
        at = token.end_pos
    yield from _articles(text, at, len(text))


def _articles(text: str, start: int, end: int) -> Iterator[_Word]:
    for match in _WORD.finditer(text, start, end):
        yield _Word(match.group(), match.start(), match.end())


def _spelling(token: Token, text: str) -> str:
    written = text[token.start_pos : token.end_pos]
    if isinstance(token.value, Spelled):
        return spaced_number(written)
    if token.type == "BY" and len(written) == 1:
        return "x"
    return _BLANKS.sub(" ", written.strip())


def _joined(words: list[_Word]) -> str:
    """Return the words with a blank between any two that do not belong close together.

    All signs of a sum have blanks round them, since names have blanks in them: `rail width*2`
    looks as if the 2 went with the width alone.
    """
    written = "".join(word.text for word in words[:1])
    before = ""
    for left, right in pairwise(words):
        negative = left.text == "-" and (not before or before in _SIGNS)
        close = negative or left.text in _CLOSE_AFTER or right.text in _CLOSE_BEFORE
        close = close or _is_price(left, right)
        written += right.text if close else f" {right.text}"
        before = left.text
    return written


def _is_price(left: _Word, right: _Word) -> bool:
    """Return whether a sign and its figure stand there, ``£48``, or a price and its unit, ``14/m``.

    The slash of a sum stands alone.
    """
    money = left.text in CURRENCY_SIGNS and right.text[:1].isdigit()
    return money or (len(right.text) > 1 and right.text.startswith("/"))


def _idle_commas(line: SenseLine, stretch: Stretch, typed: tuple[str, ...]) -> str:
    """Return the commas at the end of a source line that the line of sense leaves out."""
    whole = fold(typed[stretch.line - 1])
    return whole[max(len(line.text) - stretch.start, 0) :].replace(" ", "")
