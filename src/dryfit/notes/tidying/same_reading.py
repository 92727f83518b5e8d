"""Whether a line says the same with other blanks: it is read again, and both are compared."""

from __future__ import annotations

from dataclasses import replace

from lark import Token

from dryfit.diagnostics import Source
from dryfit.notes.limits import beyond_limits
from dryfit.notes.parse import names_of
from dryfit.notes.reading.lexer import Reading, read_line
from dryfit.notes.reading.lines import SenseLine, fold, goes_on, sense_lines
from dryfit.notes.reading.numbers import Spelled
from dryfit.notes.reading.vocabulary import Vocabulary


def says_the_same(
    reading: Reading, written: tuple[str, ...], typed: tuple[str, ...], vocabulary: Vocabulary
) -> bool:
    """Return whether the source lines of the reading can be replaced by those written.

    They must be one line of sense again with as many source lines, be read to the same tokens,
    declare the same names and leave the following line alone as before.
    """
    line = reading.line
    lines = tuple(sense_lines(Source(line.source.name, "\n".join(written))))
    if len(lines) != 1 or len(lines[0].stretches) != len(line.stretches):
        return False
    if goes_on(fold(written[-1])) != goes_on(fold(typed[line.stretches[-1].line - 1])):
        return False
    if beyond_limits(lines[0]) is not None or _declares(lines[0]) != _declares(line):
        return False
    again = read_line(lines[0], vocabulary)
    return isinstance(again, Reading) and _tokens(again) == _tokens(reading)


def _tokens(reading: Reading) -> list[tuple[str, object]]:
    return [(token.type, _value(token)) for token in reading.tokens]


def _value(token: Token) -> object:
    value: object = token.value
    if isinstance(value, Spelled):
        return replace(value, end=0)
    if token.type == "BY":
        # Between sizes `x`, `by` and a sign of multiplication are one and the same.
        return None
    # The value of free text in a clause holds the blanks as they were typed.
    return value.split() if isinstance(value, str) else value


def _declares(line: SenseLine) -> Vocabulary:
    # A name is shown as it is written: that may change.
    return replace(names_of((line,)), written={})
