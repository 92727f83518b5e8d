"""The names by which each line of a text is read: the piece's own, and those of each pattern."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from dryfit.notes.blocks import Blocks, in_blocks
from dryfit.notes.limits import beyond_limits
from dryfit.notes.names import canonical
from dryfit.notes.reading.lines import SenseLine
from dryfit.notes.reading.pattern_names import Heading, Offered, heading_of
from dryfit.notes.reading.presumed import presumed
from dryfit.notes.reading.runs import run_at
from dryfit.notes.reading.vocabulary import Declared, Vocabulary, collected, vocabulary
from dryfit.notes.reading.word_kinds import FILLERS
from dryfit.notes.tree import GlueLine, OpeningLine, PartsLine, PatternBlock

_UNITS = canonical("units")
_INCHES = ("in", "inch")
_DECIMAL_COMMA = "decimal comma"


@dataclass(frozen=True, slots=True)
class NamesInText:
    """The names of the lines outside of patterns, and of each pattern in order."""

    own: Vocabulary
    patterns: tuple[Vocabulary, ...]


def names_of(lines: Iterable[SenseLine], patterns: Sequence[PatternBlock] = ()) -> Vocabulary:
    """Return the names that the lines outside of patterns declare, and the unit of the text.

    `patterns` are those that can be used from elsewhere.
    """
    return names_in(in_blocks(lines), patterns).own


def names_by_line(
    lines: Sequence[SenseLine], patterns: Sequence[PatternBlock] = ()
) -> tuple[Vocabulary, ...]:
    """Return the names by which each of the lines of a text is read, in their order."""
    blocks = in_blocks(lines)
    names = names_in(blocks, patterns)
    at: dict[int, Vocabulary] = {}
    for block, words in zip(blocks.patterns, names.patterns, strict=True):
        at.update((line.line, words) for line in (block.header, *block.lines))
    return tuple(at.get(line.line, names.own) for line in lines)


def names_in(blocks: Blocks, patterns: Sequence[PatternBlock]) -> NamesInText:
    """Return the names of a text that was taken apart into its patterns and the rest."""
    own = _within_limits(blocks.own)
    inside = [_within_limits(block.lines) for block in blocks.patterns]
    known = [*own, *(line for lines in inside for line in lines)]
    unit_lines = [line for line in known if _is_of_units(line)]
    unit = "in" if any(_first_unit(line) in _INCHES for line in unit_lines) else "mm"
    comma = any(_has_decimal_comma(line) for line in unit_lines)
    headings = [heading_of(block.header) for block in blocks.patterns]
    found_inside = [collected(lines, presumed) for lines in inside]
    offered = _offered(headings, found_inside, patterns)
    return NamesInText(
        vocabulary(collected(own, presumed), unit, decimal_comma=comma, offered=offered),
        tuple(
            vocabulary((*found, *_as_values(heading)), unit, decimal_comma=comma, offered=offered)
            for found, heading in zip(found_inside, headings, strict=True)
        ),
    )


def _is_of_units(line: SenseLine) -> bool:
    words = line.words
    return bool(words) and words[0].text == _UNITS and not line.text[: words[0].start].strip()


def _first_unit(line: SenseLine) -> str | None:
    return next((word.text for word in line.words[1:] if word.text not in FILLERS), None)


def _has_decimal_comma(line: SenseLine) -> bool:
    return any(run_at(line.words, first, 2) == _DECIMAL_COMMA for first in range(len(line.words)))


def _within_limits(lines: Iterable[SenseLine]) -> list[SenseLine]:
    return [line for line in lines if beyond_limits(line) is None]


def _as_values(heading: Heading | None) -> tuple[Declared, ...]:
    named = heading.parameters if heading else ()
    return tuple(Declared("value", name, written) for name, written in named)


def _offered(
    headings: Sequence[Heading | None],
    inside: Sequence[tuple[Declared, ...]],
    patterns: Sequence[PatternBlock],
) -> Offered:
    offers = {
        block.name: tuple(parameter.name for parameter in block.parameters) for block in patterns
    }
    inner = {
        line.name
        for block in patterns
        for line in block.notes.statements
        if isinstance(line, PartsLine | GlueLine | OpeningLine)
    }
    for heading in headings:
        if heading:
            offers[heading.name] = tuple(name for name, _ in heading.parameters)
    inner |= {each.name for found in inside for each in found if each.kind != "value"}
    return Offered(offers, frozenset(inner))
