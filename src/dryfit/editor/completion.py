"""What can be written at a place: declared names, and words that the parser can take there."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from lark import Token

from dryfit.diagnostics import Diagnostic, Source
from dryfit.editor.document import document_of
from dryfit.editor.places import Encoding, Place, character_of, column_of
from dryfit.guide.kinds import kind_of
from dryfit.guide.vocabulary import words_of
from dryfit.notes.reading.grammar import LineParse
from dryfit.notes.reading.lexer import read_line
from dryfit.notes.reading.lines import SenseLine, fold, goes_on, sense_lines
from dryfit.notes.reading.vocabulary import Vocabulary, declared_in
from dryfit.notes.reading.words import SPELLINGS
from dryfit.wood import wood_names

_LAST_WORD = re.compile(r"[^\W\d_]+$")
_WORDS = re.compile(r"[^\W\d_]+")
_MOST_WORDS = 4
_SHORTEST = 2


@dataclass(frozen=True, slots=True)
class Completion:
    """A word or name to write in place of what stands at `place`; `kind` says what it is."""

    text: str
    kind: str
    place: Place
    declared: bool


def completions(
    name: str,
    text: str,
    line: int,
    character: int,
    encoding: Encoding,
    environment: Mapping[str, str],
) -> tuple[Completion, ...]:
    """Return what can be written at a place in the protocol's count, names before words.

    Where one or more words are begun, only what begins with them is returned; a name may have
    several words, so all beginnings of up to four words are tried.
    """
    document = document_of(name, text, environment)
    if isinstance(document, Diagnostic):
        return ()
    typed = document.source.lines()
    if line >= len(typed):
        return ()
    written = typed[line][: column_of(typed[line], character, encoding) - 1]
    if "#" in written:
        return ()
    names = document.names_at(line + 1)
    found: dict[str, Completion] = {}
    for start in _beginnings(written):
        begun = written[start:]
        place = Place(
            line,
            character_of(written, start + 1, encoding),
            character_of(written, len(written) + 1, encoding),
        )
        before = (*typed[:line], written[:start])
        for each in _candidates(before, names, synonyms=bool(begun)):
            if len(each.text) >= _SHORTEST and _begins(each.text, begun):
                found.setdefault(each.text, Completion(each.text, each.kind, place, each.declared))
    return tuple(found.values())


def _beginnings(written: str) -> Iterator[int]:
    """Yield where the words begin that the cursor may stand at the end of, the most words first."""
    starts = (
        [match.start() for match in _WORDS.finditer(written)] if _LAST_WORD.search(written) else []
    )
    if not starts:
        yield len(written)
        return
    yield from starts[-_MOST_WORDS:]


def _begins(candidate: str, begun: str) -> bool:
    return " ".join(candidate.lower().split()).startswith(" ".join(begun.lower().split()))


@dataclass(frozen=True, slots=True)
class _Candidate:
    text: str
    kind: str
    declared: bool


def _candidates(
    before: tuple[str, ...], names: Vocabulary, *, synonyms: bool
) -> Iterator[_Candidate]:
    """Yield what can follow the lines; without `synonyms` each meaning by its usual word only."""
    open_line = _open_line(before)
    takes, last = _takes(open_line, names)
    if last == "BOUGHT":
        takes |= {"STOCK"}  # "buy boards of ash" is read as wood once the boards are there
    own = declared_in(open_line) if open_line else None
    yield from _names(takes, names, own.name if own else None)
    if "PHRASE" in takes and last in ("TIMBER", "_OF"):
        yield from (_Candidate(name, "timber", declared=True) for name in sorted(wood_names()))
    for terminal in SPELLINGS:
        if terminal in takes:
            for word in words_of((terminal,)):
                spelled = (word.word, *word.synonyms) if synonyms else (word.word,)
                kind = kind_of(terminal).heading
                yield from (_Candidate(phrase, kind, declared=False) for phrase in spelled)


def _names(takes: frozenset[str], names: Vocabulary, own: str | None) -> Iterator[_Candidate]:
    for terminal, kind, declared in (
        ("NAME", "part, opening or glue-up", names.parts),
        ("VALUE", "value", names.values),
        ("PATTERNNAME", "pattern", frozenset(names.patterns)),
        ("PARAMETER", "set in a pattern", names.settings),
        ("INNER", "part of a pattern", names.inner),
    ):
        if terminal in takes:
            for name in sorted(declared - {own}):
                yield _Candidate(names.written.get(name, name), kind, declared=True)


def _open_line(before: tuple[str, ...]) -> SenseLine | None:
    """Return the statement that the next word would belong to, or None at the start of one."""
    first = len(before) - 1
    while first > 0 and _leads_on(before[first - 1]):
        first -= 1
    *above, last = before[first:]
    texts = [*above, last] if last.strip() else above
    lines = tuple(sense_lines(Source("", "\n".join(texts))))
    if not lines:
        return None
    typed = texts[lines[-1].stretches[-1].line - 1]
    return lines[-1] if last.strip() or goes_on(fold(typed)) else None


def _leads_on(typed: str) -> bool:
    """Return whether a line may go on in the next, or stands as a remark in one that does."""
    folded = fold(typed)
    return goes_on(folded) or (not folded and bool(typed.strip()))


def _takes(line: SenseLine | None, names: Vocabulary) -> tuple[frozenset[str], str]:
    """Return the terminals that the parser can take behind the line, and the one before them.

    There are none where the line cannot be read so far.
    """
    parse = LineParse()
    if line is None:
        return parse.takes(), ""
    tokens = read_line(line, names).tokens
    for token in tokens:
        parse.feed(token)
    read_to = tokens[-1].end_pos if tokens else 0
    if line.text[read_to:].strip():
        return frozenset(), ""
    takes, last = parse.takes(), tokens[-1].type if tokens else ""
    # A comma at the end of a line of sense is dropped: what might follow it is not there yet.
    typed = line.source.lines()[line.stretches[-1].line - 1]
    if fold(typed).endswith(",") and "_COMMA" in takes:
        parse.feed(Token("_COMMA", ","))
        return parse.takes(), "_COMMA"
    return takes, last
