"""A text as the editor has it now, read line by line: the base of every answer."""

from __future__ import annotations

from dataclasses import dataclass

from lark import Token

from dryfit.diagnostics import Diagnostic, Source
from dryfit.notes import source_of
from dryfit.notes.parse import names_of
from dryfit.notes.reading.lexer import read_line
from dryfit.notes.reading.lines import SenseLine, sense_lines
from dryfit.notes.reading.vocabulary import Vocabulary


@dataclass(frozen=True, slots=True)
class Document:
    """A text, its lines of sense, and the names that they declare."""

    source: Source
    lines: tuple[SenseLine, ...]
    names: Vocabulary

    def line_at(self, line: int) -> SenseLine | None:
        """Return the line of sense that the source line, from 1, is a part of, or None."""
        for found in self.lines:
            if any(stretch.line == line for stretch in found.stretches):
                return found
        return None


def document_of(name: str, text: str) -> Document | Diagnostic:
    """Return the text under the name, or the finding that says why it cannot be read."""
    # A lone half of a surrogate pair, which JSON can hold, is told like any other broken byte.
    source = source_of(name, text.encode("utf-8", "surrogatepass"))
    if isinstance(source, Diagnostic):
        return source
    lines = tuple(sense_lines(source))
    return Document(source, lines, names_of(lines))


def token_at(document: Document, line: int, column: int) -> tuple[SenseLine, Token] | None:
    """Return the word or number that stands at a place, both from 1, with its line of sense.

    The place right behind a word belongs to it, as a cursor there would.
    """
    found = document.line_at(line)
    if found is None:
        return None
    stretch = next(piece for piece in found.stretches if piece.line == line)
    at = stretch.start + column - 1
    tokens = read_line(found, document.names).tokens
    touching = [token for token in tokens if _start(token) <= at <= _end(token)]
    return (found, touching[-1]) if touching else None


def _start(token: Token) -> int:
    assert token.start_pos is not None
    return token.start_pos


def _end(token: Token) -> int:
    assert token.end_pos is not None
    return token.end_pos
