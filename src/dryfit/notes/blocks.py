"""The text in its parts: the piece's own lines, and the lines of each pattern."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, field

from dryfit.diagnostics import Diagnostic, Hint, Note, Severity
from dryfit.notes.reading.lines import SenseLine

_BEGINS = re.compile(r"\s*pattern\b(?!\s*=)", re.IGNORECASE)
_ENDS = re.compile(r"\s*end(?:\s+(?:of\s+)?(?:the\s+)?pattern)?\s*$", re.IGNORECASE)


MOST_PATTERNS = 100


@dataclass(slots=True)
class Block:
    """A pattern's lines: the first, which names it, and those up to its end."""

    header: SenseLine
    lines: list[SenseLine] = field(default_factory=list)


@dataclass(slots=True)
class Blocks:
    """The lines outside of patterns, the patterns, the lines ``end``, and what is wrong."""

    own: list[SenseLine] = field(default_factory=list)
    patterns: list[Block] = field(default_factory=list)
    ends: list[SenseLine] = field(default_factory=list)
    findings: list[Diagnostic] = field(default_factory=list)


def in_blocks(lines: Iterable[SenseLine]) -> Blocks:
    """Return the lines by the pattern in which they stand.

    A pattern that begins inside another closes it, so that only one is told.
    Of more patterns than notes can have none is kept.
    Findings: pattern-open, pattern-nested, end-without-pattern, too-many-patterns.
    """
    found = Blocks()
    block: Block | None = None
    nested = 0
    for line in lines:
        if _BEGINS.match(line.text):
            if block is not None:
                nested += 1
                found.findings.append(_nested(line, block))
            block = Block(line)
            found.patterns.append(block)
            if len(found.patterns) == MOST_PATTERNS + 1:
                found.findings.append(_too_many(line))
        elif _ENDS.match(line.text):
            found.ends.append(line)
            if block is None and not nested:
                found.findings.append(_stray_end(line))
            nested -= 1 if block is None and nested else 0
            block = None
        elif block is not None:
            block.lines.append(line)
        else:
            found.own.append(line)
    if block is not None:
        found.findings.append(_open(block))
    if len(found.patterns) > MOST_PATTERNS:
        found.patterns.clear()
    return found


def _too_many(line: SenseLine) -> Diagnostic:
    return Diagnostic(
        "too-many-patterns",
        Severity.ERROR,
        f"notes can have {MOST_PATTERNS} patterns at most: none of these was read",
        line.whole(),
        hints=(Hint("put patterns into files of their own, in the folder of your patterns"),),
    )


def _nested(line: SenseLine, outer: Block) -> Diagnostic:
    return Diagnostic(
        "pattern-nested",
        Severity.ERROR,
        "a pattern cannot begin inside another",
        line.whole(),
        notes=(Note("this one is not ended before", outer.header.whole()),),
        hints=(Hint("put a line `end` before it"),),
    )


def _open(block: Block) -> Diagnostic:
    return Diagnostic(
        "pattern-open",
        Severity.ERROR,
        "this pattern is never ended, so all lines after it are taken for its own",
        block.header.whole(),
        hints=(Hint("put a line `end` behind its last line"),),
    )


def _stray_end(line: SenseLine) -> Diagnostic:
    return Diagnostic(
        "end-without-pattern",
        Severity.ERROR,
        "this `end` ends nothing: no pattern began before it",
        line.whole(),
        hints=(Hint("take the line out, or begin the pattern with `pattern NAME with width ...`"),),
    )
