"""Remarks behind the text of their lines, one below the other where lines follow each other."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import groupby

GAP = 2
MOST_BLANKS = 40


def with_remarks(typed: tuple[str, ...], written: Mapping[int, str]) -> Iterator[str]:
    """Yield all lines of a source: those written, by their number from 1, the others as typed.

    Remarks of lines that follow each other stand in one column, `GAP` blanks behind the longest
    text; where that would leave more than `MOST_BLANKS` before one of them, each stands close.
    """
    numbered = enumerate(typed, start=1)
    for remarked, lines in groupby(numbered, lambda each: each[0] in written and "#" in each[1]):
        if remarked:
            yield from _aligned([(written[number], _remark(line)) for number, line in lines])
        else:
            yield from (written.get(number, line) for number, line in lines)


def _aligned(lines: list[tuple[str, str]]) -> Iterator[str]:
    widths = [len(text) for text, _ in lines]
    column = max(widths) + GAP
    if column - min(widths) > MOST_BLANKS:
        column = 0
    for text, remark in lines:
        yield f"{text:<{max(column, len(text) + GAP)}}{remark}"


def _remark(line: str) -> str:
    return line[line.index("#") :].rstrip()
