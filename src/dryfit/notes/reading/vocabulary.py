"""The names of one file.

A first pass over the text collects every declared name with cheap patterns.  It also works on
lines that cannot be read, so that one broken line does not make others unreadable.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from dryfit.notes.names import canonical
from dryfit.notes.reading.lines import SenseLine, parted
from dryfit.notes.reading.numbers import COUNT_WORDS
from dryfit.notes.reading.pattern_names import NOTHING_OFFERED, Offered
from dryfit.notes.reading.runs import (
    LONGEST_PHRASE,
    Word,
    begins_feature,
    begins_stock,
    longest_by_first,
    name_length,
)
from dryfit.notes.reading.word_kinds import RESERVED

_COUNT = re.compile(
    r"\s*([0-9]+|[a-z]+\b)\s*(?:(?<=[0-9 ])x(?= |(?<=[0-9]x))|×|off\b)?\s*", re.IGNORECASE
)
_GLUE_UP = re.compile(
    r"\s*glue(?: +|[-_])up\b\s*(?:([0-9]+|[a-z]+\b)(?:\s*[x×])?\s+)?", re.IGNORECASE
)
_DECLARES_NOTHING = re.compile(
    r"\s*(?:measured|done|spoil(?:ed|t)|pattern)\b(?!\s*=)", re.IGNORECASE
)
_AS = re.compile(r"\bas\s+(?!they\b)", re.IGNORECASE)
_SPACES = ("opening", "instance")
_BOUGHT = re.compile(r"\s*(?:bought(?:(?: +|[-_])in)?|buy)\b:?\s*", re.IGNORECASE)
# No blanks stand between the name's signs and what follows: that would cost a line of blanks the
# square of its length.
_VALUE = re.compile(
    r"\s*(?:let\s+)?([^\W\d][^=,:;#()+*/×]*?)(?:=|\b(?:is|be)\b(?=\s*[\d(.½¼¾]))", re.IGNORECASE
)
_OPENING = re.compile(
    r"\s*(?:let\s+)?([^\W\d][^=,:;#()+*/×]*?)(?:=|:|\b(?:is|be)\b) *"
    r"(?:the |an? )?(?:opening|space)\b(?= +(?!width\b|depth\b|height\b)[^\W\d])",
    re.IGNORECASE,
)
_IN_ORDER = re.compile(r"\b(?:before|after)\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Vocabulary:
    """The names that a file declares.

    `parts` are all names of things, among them the `spaces` (openings and instances of patterns,
    which have a width, a depth and a height) and the `stages` (what glue-ups make).  `longest`
    holds the longest name by its first word, `written` each name as it was declared.  `patterns`
    are those that can be used, each with what can be set of it (`settings`: of all of them);
    `inner` are the names inside of them.
    """

    parts: frozenset[str]
    values: frozenset[str]
    unit: str = "mm"
    decimal_comma: bool = False
    longest: Mapping[str, int] = field(default_factory=dict)
    written: Mapping[str, str] = field(default_factory=dict)
    spaces: frozenset[str] = frozenset()
    stages: frozenset[str] = frozenset()
    patterns: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    settings: frozenset[str] = frozenset()
    inner: frozenset[str] = frozenset()

    def longest_from(self, word: str) -> int:
        """Return how many words the longest name or phrase has that begins with the word."""
        return max(self.longest.get(word, 0), LONGEST_PHRASE.get(word, 0))


@dataclass(frozen=True, slots=True)
class Declared:
    """A declared name of a ``part`` or of an ``instance`` of a pattern, of a ``stage`` of gluing,
    of an ``opening`` or of a ``value``.

    The name is canonical, and beside it as written.
    """

    kind: str
    name: str
    written: str


def declared_in(line: SenseLine) -> Declared | None:
    """Return what the line declares, as far as its first words tell."""
    text = line.text
    if _DECLARES_NOTHING.match(text):
        return None
    counted = _COUNT_FIRST.match(text)
    opening = None if counted else _OPENING.match(text)
    if opening:
        written = opening.group(1).strip()
        return _declared("opening", canonical(written), written)
    value = None if counted else _VALUE.match(text)
    if value:
        written = value.group(1).strip()
        return _declared("value", canonical(written), written)
    glue = _GLUE_UP.match(text)
    if glue and _IN_ORDER.search(text):
        return None
    bought = _BOUGHT.match(text)
    counted = _COUNT_FIRST.match(text, bought.end()) if bought else counted
    count = glue or (_COUNT.match(text, bought.end() if bought else 0) if counted else bought)
    if count is None:
        return None
    start = count.end()
    if bought and begins_stock(line.words, _first_from(line.words, bought.end())):
        return None
    if glue and glue.group(1) and not _is_count(glue.group(1)):
        start = glue.start(1)
    words = line.words
    first = next((index for index, word in enumerate(words) if word.start == start), None)
    if first is None or (counted and begins_feature(words, first)):
        return None
    name = words[first : first + name_length(words, first)]
    kind = "instance" if _AS.search(text, start) else "part"
    return _declared(
        "stage" if glue else kind,
        " ".join(word.text for word in name),
        text[name[0].start : name[-1].end],
    )


def collected(
    lines: Iterable[SenseLine], presume: Callable[[SenseLine, frozenset[str]], Declared | None]
) -> tuple[Declared, ...]:
    """Return all names that the lines declare, then those that `presume` says were meant."""
    known = tuple(lines)
    found = [declared for line in known for declared in _all_declared(line)]
    parts = frozenset(declared.name for declared in found if declared.kind != "value")
    names = {declared.name for declared in found}
    for line in known:
        meant = None if _is_sound(line) else presume(line, parts)
        if meant and meant.name not in names:
            found.append(meant)
            parts |= {meant.name}
    return tuple(found)


def vocabulary(
    found: Sequence[Declared], unit: str, *, decimal_comma: bool, offered: Offered = NOTHING_OFFERED
) -> Vocabulary:
    """Return the vocabulary of a text in which these names are declared and patterns offered."""
    written = {declared.name: declared.written for declared in reversed(found)}
    values = frozenset(declared.name for declared in found if declared.kind == "value")
    parts = frozenset(declared.name for declared in found if declared.kind != "value")
    spaces = frozenset(declared.name for declared in found if declared.kind in _SPACES)
    stages = frozenset(declared.name for declared in found if declared.kind == "stage")
    settings = frozenset(name for names in offered.patterns.values() for name in names)
    everything = parts | values | settings | offered.inner | frozenset(offered.patterns)
    return Vocabulary(
        parts,
        values,
        unit,
        decimal_comma,
        longest_by_first(sorted(everything)),
        written,
        spaces,
        stages,
        offered.patterns,
        settings,
        offered.inner,
    )


def is_glue_up(line: SenseLine) -> bool:
    """Return whether the line begins with glue up."""
    return _GLUE_UP.match(line.text) is not None


def _first_from(words: Sequence[Word], at: int) -> int:
    return next((index for index, word in enumerate(words) if word.start >= at), len(words))


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
        parts=vocabulary.parts if declared.kind == "value" else vocabulary.parts | name,
        values=vocabulary.values | name if declared.kind == "value" else vocabulary.values,
        spaces=vocabulary.spaces | name if declared.kind in _SPACES else vocabulary.spaces,
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
    if not name or name in RESERVED or name.startswith("overall "):
        return None
    return Declared(kind, name, written)


def _is_count(word: str) -> bool:
    return word.isdigit() or word.lower() in COUNT_WORDS


_COUNT_FIRST = re.compile(rf"\s*(?:[0-9]|(?:{'|'.join(COUNT_WORDS)})\b)", re.IGNORECASE)
