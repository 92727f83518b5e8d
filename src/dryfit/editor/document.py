"""A text as the editor has it now, read line by line: the base of every answer."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from lark import Token

from dryfit.diagnostics import Diagnostic, Source, Span
from dryfit.notes import names_by_line, names_of, source_of
from dryfit.notes.blocks import in_blocks
from dryfit.notes.reading.lexer import read_line
from dryfit.notes.reading.lines import SenseLine, sense_lines
from dryfit.notes.reading.vocabulary import Vocabulary
from dryfit.notes.tree import PatternBlock
from dryfit.patterns import library, may_use_patterns, shipped


@dataclass(frozen=True, slots=True)
class Document:
    """A text, its lines of sense, the names by which each is read, and the patterns it can use.

    `own` holds the numbers of the lines of sense that are in no pattern.
    """

    source: Source
    lines: tuple[SenseLine, ...]
    names: tuple[Vocabulary, ...]
    own: frozenset[int]
    own_names: Vocabulary
    patterns: tuple[PatternBlock, ...]

    def line_at(self, line: int) -> tuple[SenseLine, Vocabulary] | None:
        """Return the line of sense that the source line, from 1, is a part of, and its names."""
        for found, names in zip(self.lines, self.names, strict=True):
            if any(stretch.line == line for stretch in found.stretches):
                return found, names
        return None

    def names_at(self, line: int) -> Vocabulary:
        """Return the names that can be used on a source line, from 1, which may be empty."""
        names = self.own_names
        for found, others in zip(self.lines, self.names, strict=True):
            if found.line > line:
                break
            names = others
        return names


def document_of(name: str, text: str, environment: Mapping[str, str]) -> Document | Diagnostic:
    """Return the text under the name, or the finding that says why it cannot be read."""
    # A lone half of a surrogate pair, which JSON can hold, is told like any other broken byte.
    source = source_of(name, text.encode("utf-8", "surrogatepass"))
    if isinstance(source, Diagnostic):
        return source
    lines = tuple(sense_lines(source))
    patterns = _patterns(source, environment)
    names = names_by_line(lines, patterns)
    own = frozenset(line.line for line in in_blocks(lines).own)
    return Document(source, lines, names, own, names_of(lines, patterns), patterns)


def _patterns(source: Source, environment: Mapping[str, str]) -> tuple[PatternBlock, ...]:
    if not may_use_patterns(source):
        return ()
    try:
        return library(environment)[0]
    except OSError:
        return shipped()  # what cannot be read is told where the text is examined


@dataclass(frozen=True, slots=True)
class Found:
    """A word or number of a line of sense, its place, and the tokens of the line before it."""

    line: SenseLine
    token: Token
    before: tuple[Token, ...]

    @property
    def span(self) -> Span:
        """The place of the token."""
        return self.line.span(_start(self.token), _end(self.token))

    def value_before(self, terminal: str) -> str | None:
        """Return the value of the nearest token of the terminal before this one, or None."""
        values = (str(token.value) for token in reversed(self.before) if token.type == terminal)
        return next(values, None)


def token_at(document: Document, line: int, column: int) -> Found | None:
    """Return the word or number that stands at a place, both from 1.

    The place right behind a word belongs to it, as a cursor there would.
    """
    found = document.line_at(line)
    if found is None:
        return None
    sense, names = found
    stretch = next(piece for piece in sense.stretches if piece.line == line)
    at = stretch.start + column - 1
    tokens = read_line(sense, names).tokens
    for number in range(len(tokens) - 1, -1, -1):
        if _start(tokens[number]) <= at <= _end(tokens[number]):
            return Found(sense, tokens[number], tokens[:number])
    return None


def _start(token: Token) -> int:
    assert token.start_pos is not None
    return token.start_pos


def _end(token: Token) -> int:
    assert token.end_pos is not None
    return token.end_pos
