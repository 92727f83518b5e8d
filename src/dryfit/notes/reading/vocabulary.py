"""The names of one file and the words of the language, and where a new name ends.

A first pass over the text collects every declared name with cheap patterns.  It also works on
lines that cannot be read, so that one broken line does not make others unreadable.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field

from dryfit.notes.names import canonical, singular
from dryfit.notes.reading.lines import SenseLine
from dryfit.notes.reading.numbers import COUNT_WORDS
from dryfit.notes.reading.words import LOOSE_STOPS, NAME_STOPS, PHRASES, RESERVED

_WORD = re.compile(r"[^\W\d_][^\W_]*")
_JOINED_BY = re.compile(r" +|[-_]")
_COUNT = re.compile(r"\s*([0-9]+|[a-z]+\b)\s*(?:(?<=[0-9 ])x(?= |(?<=[0-9]x))|×|off\b)?\s*", re.I)
_GLUE_UP = re.compile(r"\s*glue[ -]up\b\s*(?:([0-9]+|[a-z]+\b)(?:\s*[x×])?\s+)?", re.I)
_VALUE = re.compile(
    r"\s*(?:let\s+)?([^\W\d][^=,:;#()+*/×]*?)\s*(?:=|\b(?:is|be)\b(?=\s*[\d(.½¼¾]))", re.I
)
_IN_ORDER = re.compile(r"\b(?:before|after)\b", re.I)


@dataclass(frozen=True, slots=True)
class Word:
    """A word of a line: its place, its singular, and whether it follows the one before it
    directly enough to be of one name with it.
    """

    start: int
    end: int
    text: str
    follows: bool


@dataclass(frozen=True, slots=True)
class Vocabulary:
    """The names that a file declares, and the longest run of words that begins with each word."""

    parts: frozenset[str]
    values: frozenset[str]
    unit: str = "mm"
    decimal_comma: bool = False
    longest: Mapping[str, int] = field(default_factory=dict)

    def longest_from(self, word: str) -> int:
        """Return how many words the longest name or phrase has that begins with the word."""
        return max(self.longest.get(word, 0), _LONGEST_PHRASE.get(word, 0))


def words_of(text: str) -> tuple[Word, ...]:
    """Return the words of a folded line in order."""
    found: list[Word] = []
    for match in _WORD.finditer(text):
        between = text[found[-1].end : match.start()] if found else ","
        found.append(
            Word(
                match.start(),
                match.end(),
                singular(match.group()),
                follows=bool(_JOINED_BY.fullmatch(between)),
            )
        )
    return tuple(found)


def run_at(words: Sequence[Word], first: int, length: int) -> str | None:
    """Return the canonical run of so many words from the first, or None if it is broken before."""
    run = words[first : first + length]
    if len(run) < length or not all(word.follows for word in run[1:]):
        return None
    return " ".join(word.text for word in run)


def phrase_at(words: Sequence[Word], first: int) -> tuple[str, int] | None:
    """Return the longest phrase of the language that begins with the word, and its length."""
    for length in range(_LONGEST_PHRASE.get(words[first].text, 0), 0, -1):
        run = run_at(words, first, length)
        if run in PHRASES:
            return run, length
    return None


def name_length(words: Sequence[Word], first: int, *, free: bool = False) -> int:
    """Return how many words a new name has that begins with the word.

    It ends before a comma or digit and before a word of the language that goes on from a name;
    `free` keeps everything up to the next sign or wish, as in the name of a finish.
    """
    length = 1
    while first + length < len(words) and words[first + length].follows:
        phrase = phrase_at(words, first + length)
        if phrase and _ends_name(words, first + length, phrase, free=free):
            break
        length += 1
    return length


def _ends_name(words: Sequence[Word], at: int, phrase: tuple[str, int], *, free: bool) -> bool:
    kinds = {kind for kind, _ in PHRASES[phrase[0]]}
    if free:
        return "ORDER" in kinds
    if kinds & NAME_STOPS:
        return True
    if not kinds & LOOSE_STOPS:
        return False
    after = at + phrase[1]
    plain = after < len(words) and words[after].follows and phrase_at(words, after) is None
    return not plain or phrase[1] > 1


def declared_in(line: SenseLine) -> tuple[str, str] | None:
    """Return what the line declares, as far as its first words tell: (part or value, name)."""
    text = line.text
    value = _VALUE.match(text)
    if value and not _COUNT_FIRST.match(text):
        name = canonical(value.group(1))
        return ("value", name) if name and name not in RESERVED and name != "x" else None
    glue = _GLUE_UP.match(text)
    if glue and _IN_ORDER.search(text):
        return None
    count = glue or (_COUNT.match(text) if _COUNT_FIRST.match(text) else None)
    if count is None:
        return None
    words = words_of(text)
    start = count.end()
    if glue and glue.group(1) and not _is_count(glue.group(1)):
        start = glue.start(1)
    first = next((index for index, word in enumerate(words) if word.start == start), None)
    if first is None:
        return None
    name = " ".join(word.text for word in words[first : first + name_length(words, first)])
    return None if name in RESERVED else ("part", name)


def vocabulary(lines: Iterable[SenseLine], unit: str, *, decimal_comma: bool) -> Vocabulary:
    """Return the vocabulary of a file from its lines."""
    found = [declared for line in lines if (declared := declared_in(line))]
    parts = frozenset(name for kind, name in found if kind == "part")
    values = frozenset(name for kind, name in found if kind == "value")
    return Vocabulary(parts, values, unit, decimal_comma, _longest(sorted(parts | values)))


def _longest(runs: Iterable[str]) -> dict[str, int]:
    longest: dict[str, int] = {}
    for run in runs:
        words = run.split(" ")
        longest[words[0]] = max(longest.get(words[0], 0), len(words))
    return longest


def _is_count(word: str) -> bool:
    return word.isdigit() or word.lower() in COUNT_WORDS


_LONGEST_PHRASE = _longest(PHRASES)
_COUNT_FIRST = re.compile(rf"\s*(?:[0-9]|(?:{'|'.join(COUNT_WORDS)})\b)", re.I)
