"""The names of one file and the words of the language, and where a new name ends.

A first pass over the text collects every declared name with cheap patterns.  It also works on
lines that cannot be read, so that one broken line does not make others unreadable.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from dryfit.notes.names import canonical, singular
from dryfit.notes.reading.lines import SenseLine, parted
from dryfit.notes.reading.numbers import COUNT_WORDS, GLYPHS
from dryfit.notes.reading.word_kinds import LOOSE_STOPS, NAME_STOPS, RESERVED
from dryfit.notes.reading.words import PHRASES

_G = "".join(GLYPHS)
# An x right behind a number is a size sign, not the beginning of a word: "60x22", "4xlegs".
_WORD = re.compile(rf"(?:(?<=[0-9{_G}])[xX])?([^\W\d_{_G}][^\W_{_G}]*)")
_JOINED_BY = re.compile(r" +|[-_]")
_COUNT = re.compile(
    r"\s*([0-9]+|[a-z]+\b)\s*(?:(?<=[0-9 ])x(?= |(?<=[0-9]x))|×|off\b)?\s*", re.IGNORECASE
)
_GLUE_UP = re.compile(r"\s*glue[ -]up\b\s*(?:([0-9]+|[a-z]+\b)(?:\s*[x×])?\s+)?", re.IGNORECASE)
_VALUE = re.compile(
    r"\s*(?:let\s+)?([^\W\d][^=,:;#()+*/×]*?)\s*(?:=|\b(?:is|be)\b(?=\s*[\d(.½¼¾]))", re.IGNORECASE
)
_IN_ORDER = re.compile(r"\b(?:before|after)\b", re.IGNORECASE)


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
    """The names that a file declares.

    `longest` holds the longest name by its first word, `written` each name as it was declared.
    """

    parts: frozenset[str]
    values: frozenset[str]
    unit: str = "mm"
    decimal_comma: bool = False
    longest: Mapping[str, int] = field(default_factory=dict)
    written: Mapping[str, str] = field(default_factory=dict)

    def longest_from(self, word: str) -> int:
        """Return how many words the longest name or phrase has that begins with the word."""
        return max(self.longest.get(word, 0), _LONGEST_PHRASE.get(word, 0))


@dataclass(frozen=True, slots=True)
class Declared:
    """A declared name: of a ``part`` (or an assembly) or a ``value``, canonical and as written."""

    kind: str
    name: str
    written: str


def words_of(text: str) -> tuple[Word, ...]:
    """Return the words of a folded line in order."""
    found: list[Word] = []
    for match in _WORD.finditer(text):
        start, end = match.span(1)
        between = text[found[-1].end : start] if found else ","
        follows = bool(_JOINED_BY.fullmatch(between))
        found.append(Word(start, end, singular(match.group(1)), follows))
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
        return bool(kinds & {"ORDER", "ACTION"})
    if kinds & NAME_STOPS:
        return True
    if not kinds & LOOSE_STOPS:
        return False
    after = at + phrase[1]
    plain = after < len(words) and words[after].follows and phrase_at(words, after) is None
    return not plain or phrase[1] > 1


def declared_in(line: SenseLine) -> Declared | None:
    """Return what the line declares, as far as its first words tell."""
    text = line.text
    value = None if _COUNT_FIRST.match(text) else _VALUE.match(text)
    if value:
        written = value.group(1).strip()
        return _declared("value", canonical(written), written)
    glue = _GLUE_UP.match(text)
    if glue and _IN_ORDER.search(text):
        return None
    count = glue or (_COUNT.match(text) if _COUNT_FIRST.match(text) else None)
    if count is None:
        return None
    start = count.end()
    if glue and glue.group(1) and not _is_count(glue.group(1)):
        start = glue.start(1)
    words = words_of(text)
    first = next((index for index, word in enumerate(words) if word.start == start), None)
    if first is None:
        return None
    name = words[first : first + name_length(words, first)]
    return _declared(
        "part", " ".join(word.text for word in name), text[name[0].start : name[-1].end]
    )


def collected(
    lines: Iterable[SenseLine], presume: Callable[[SenseLine, frozenset[str]], Declared | None]
) -> tuple[Declared, ...]:
    """Return all names that the lines declare, then those that `presume` says were meant."""
    known = tuple(lines)
    found = [declared for line in known for declared in _all_declared(line)]
    parts = frozenset(declared.name for declared in found if declared.kind == "part")
    names = {declared.name for declared in found}
    for line in known:
        meant = None if _is_sound(line) else presume(line, parts)
        if meant and meant.name not in names:
            found.append(meant)
            parts |= {meant.name}
    return tuple(found)


def vocabulary(found: Sequence[Declared], unit: str, *, decimal_comma: bool) -> Vocabulary:
    """Return the vocabulary of a file in which these names are declared."""
    written = {declared.name: declared.written for declared in reversed(found)}
    parts = frozenset(declared.name for declared in found if declared.kind == "part")
    values = frozenset(declared.name for declared in found if declared.kind == "value")
    longest = _longest(sorted(parts | values))
    return Vocabulary(parts, values, unit, decimal_comma, longest, written)


def is_glue_up(line: SenseLine) -> bool:
    """Return whether the line begins with glue up."""
    return _GLUE_UP.match(line.text) is not None


def _is_sound(line: SenseLine) -> bool:
    return declared_in(line) is not None and not (is_glue_up(line) and ":" not in line.text)


def with_declared(vocabulary: Vocabulary, line: SenseLine) -> Vocabulary:
    """Return the vocabulary with what the line declares, for a line that is only tried."""
    declared = declared_in(line)
    if declared is None or declared.name in vocabulary.written:
        return vocabulary
    name = frozenset({declared.name})
    first, *others = declared.name.split(" ")
    length = max(vocabulary.longest.get(first, 0), len(others) + 1)
    return replace(
        vocabulary,
        parts=vocabulary.parts | name if declared.kind == "part" else vocabulary.parts,
        values=vocabulary.values | name if declared.kind == "value" else vocabulary.values,
        longest={**vocabulary.longest, first: length},
        written={**vocabulary.written, declared.name: declared.written},
    )


def _all_declared(line: SenseLine) -> Iterator[Declared]:
    """Yield what the line declares, and what a line does that a comma made its continuation."""
    first = declared_in(line)
    if first:
        yield first
    if len(line.stretches) > 1 and not is_glue_up(line):
        for stretch in parted(line)[1:]:
            declared = declared_in(stretch)
            if declared:
                yield declared


def _declared(kind: str, name: str, written: str) -> Declared | None:
    if not name or name in RESERVED:
        return None
    return Declared(kind, name, written)


def _longest(runs: Iterable[str]) -> dict[str, int]:
    longest: dict[str, int] = {}
    for run in runs:
        words = run.split(" ")
        longest[words[0]] = max(longest.get(words[0], 0), len(words))
    return longest


def _is_count(word: str) -> bool:
    return word.isdigit() or word.lower() in COUNT_WORDS


_LONGEST_PHRASE = _longest(PHRASES)
_COUNT_FIRST = re.compile(rf"\s*(?:[0-9]|(?:{'|'.join(COUNT_WORDS)})\b)", re.IGNORECASE)
