"""Names that a broken line was probably meant to declare, so that other lines still find them.

A part's line without its count, a value without its sign, a glue-up with its opener mistyped or
without its colon: the line itself is refused, but what it names is not unknown elsewhere.
"""

from __future__ import annotations

import re

from dryfit.notes.names import canonical
from dryfit.notes.reading.lines import SenseLine, loose
from dryfit.notes.reading.near import nearest
from dryfit.notes.reading.runs import Word, name_length, phrase_at
from dryfit.notes.reading.vocabulary import Declared, declared_in
from dryfit.notes.reading.word_kinds import BEGINNERS, CLAUSE_KINDS, RESERVED
from dryfit.notes.reading.words import OPENERS, PHRASES, SPELLINGS

_MEASURE_ONLY = re.compile(r" *(?::| ) *[0-9½¼¾][0-9 ./½¼¾]*(?:mm|cm|m|in|\")?")
_SIZE_AHEAD = re.compile(r" *,? *(?:[0-9½¼¾]|\.[0-9])")
_LIST_MARK = re.compile(r" *(?:[-*•+]|[0-9]+[.)])[ ]+(?=\S)")
_BROKEN_COUNT = re.compile(r" *[0-9]+(?: ?[½¼¾]|\.[0-9]+) +(?=[^\W\d])")
_GLUE_UP = "glue up"
_LIMITS = (*SPELLINGS["_ATMOST"], *SPELLINGS["_ATLEAST"])


def presumed(line: SenseLine, parts: frozenset[str]) -> Declared | None:
    """Return what a line that declares nothing as it stands was meant to declare, or None."""
    count = _BROKEN_COUNT.match(line.text)
    if count:
        return _counted(loose(line.source, line.text[count.end() :], line.line))
    mark = list_mark(line.text)
    if mark:
        line = loose(line.source, line.text[mark:], line.line)
        declared = declared_in(line)
        if declared:
            return declared
    words = line.words
    if not words or line.text[: words[0].start].strip():
        return None
    opener = _mistyped_opener(words, line.text)
    if opener == _GLUE_UP or _begins_glue_up(words):
        return _glue_up(line.text, words, parts)
    return None if opener or _is_opener(words) else _named_first(line)


def _named_first(line: SenseLine) -> Declared | None:
    """Return the value or the part whose name begins the line."""
    words = line.words
    length = name_length(words, 0)
    end = words[length - 1].end
    written = line.text[words[0].start : end]
    name = canonical(written)
    if name in RESERVED:
        return None
    if _MEASURE_ONLY.fullmatch(line.text, end):
        return Declared("value", name, written)
    follows_clause = length < len(words) and _is_clause(words, length)
    comma = line.text[end:].lstrip().startswith(",")
    if _SIZE_AHEAD.match(line.text, end) or (comma and follows_clause):
        return Declared("part", name, written)
    return None


def _counted(line: SenseLine) -> Declared | None:
    """Return the part behind a count that is no whole number ("2.5 slats"), or None."""
    if not line.words:
        return None
    length = name_length(line.words, 0)
    written = line.text[line.words[0].start : line.words[length - 1].end]
    name = canonical(written)
    return None if name in RESERVED else Declared("part", name, written)


def list_mark(text: str) -> int:
    """Return where the text begins behind the mark of a list ("- 4 legs", "1) 4 legs"), or 0."""
    mark = _LIST_MARK.match(text)
    return mark.end() if mark else 0


def glue_name_length(words: tuple[Word, ...], first: int, parts: frozenset[str]) -> int:
    """Return how many words of "base side frames" are the glue-up's name and not a part's.

    Nothing when no part's name stands at the end.
    """
    length = name_length(words, first)
    for tail in range(1, length):
        if " ".join(word.text for word in words[first + tail : first + length]) in parts:
            return tail
    return 0


def _glue_up(text: str, words: tuple[Word, ...], parts: frozenset[str]) -> Declared | None:
    if len(words) <= 2:
        return None
    length = name_length(words, 2)
    if ":" not in text:
        length = glue_name_length(words, 2, parts) or length
    name = words[2 : 2 + length]
    written = text[name[0].start : name[-1].end]
    return Declared("stage", canonical(written), written)


def _mistyped_opener(words: tuple[Word, ...], text: str) -> str | None:
    for length in (2, 1):
        if length <= len(words):
            written = text[words[0].start : words[length - 1].end]
            near = nearest(written, (*OPENERS.values(), *_LIMITS))
            if near:
                return near[0]
    return None


def _begins_glue_up(words: tuple[Word, ...]) -> bool:
    phrase = phrase_at(words, 0)
    return phrase is not None and phrase[0] == _GLUE_UP


def _is_opener(words: tuple[Word, ...]) -> bool:
    phrase = phrase_at(words, 0)
    return phrase is not None and any(kind in BEGINNERS for kind, _ in PHRASES[phrase[0]])


def _is_clause(words: tuple[Word, ...], index: int) -> bool:
    phrase = phrase_at(words, index)
    return phrase is not None and any(kind in CLAUSE_KINDS for kind, _ in PHRASES[phrase[0]])
