"""Tokens of a line: a word, number or sign with its place, or a number that is none."""

from __future__ import annotations

from dataclasses import dataclass

from lark import Token


@dataclass(frozen=True, slots=True)
class Fault:
    """What looks like a number and is none, up to `end` (see `numbers.Spelled`)."""

    end: int
    fault: str


def token(terminal: str, value: object, start: int, end: int) -> Token:
    """Return a token that stands from `start` to `end` in its line."""
    return Token(terminal, value, start, 1, start, 1, end, end)


def start_of(made: Token) -> int:
    """Return where in its line a token begins."""
    assert made.start_pos is not None
    return made.start_pos


def end_of(made: Token) -> int:
    """Return where in its line a token ends."""
    assert made.end_pos is not None
    return made.end_pos
