"""The patterns of a text: each read with its own names, then told which patterns it uses itself."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from dryfit.diagnostics import Diagnostic, Findings, Hint, Note, Severity, Source, Span
from dryfit.notes.blocks import Block
from dryfit.notes.building import Draft, PatternHeader, build
from dryfit.notes.limits import DEEPEST_PATTERN, beyond_limits
from dryfit.notes.line_reading import lines_read
from dryfit.notes.mistakes import explained, offered
from dryfit.notes.reading.lexer import Failure, read_line
from dryfit.notes.reading.vocabulary import Vocabulary
from dryfit.notes.tree import (
    AsPattern,
    DoneLine,
    HaveLine,
    InventoryLine,
    MeasuredLine,
    MoistLine,
    Notes,
    OverallLine,
    PartsLine,
    PatternBlock,
    PieceLine,
    PlaceLine,
    RoomLine,
    ScribeLine,
    ShopAirLine,
    SpoiledLine,
    StandsAtLine,
    Statement,
    UnitsLine,
    WallLine,
    WayInLine,
)

_OF_THE_PIECE = (
    PieceLine,
    OverallLine,
    PlaceLine,
    RoomLine,
    ScribeLine,
    WayInLine,
    WallLine,
    HaveLine,
    InventoryLine,
    MeasuredLine,
    DoneLine,
    SpoiledLine,
    MoistLine,
    ShopAirLine,
    StandsAtLine,
)


def pattern_blocks(
    source: Source,
    blocks: Sequence[tuple[Block, Vocabulary]],
    units: UnitsLine | None,
    others: Sequence[PatternBlock],
) -> tuple[tuple[PatternBlock, ...], Findings]:
    """Return the patterns of a text with their findings; a pattern with an error is left out.

    `units` is the line of the text outside, which holds for its patterns too; `others` are the
    patterns from elsewhere that these may use.
    Findings: those of lines, not-in-pattern, pattern-twice, pattern-in-itself, patterns-too-deep.
    """
    read: dict[str, PatternBlock] = {}
    findings: list[Diagnostic] = []
    for block, words in blocks:
        made, found = _read_block(source, block, words, units)
        findings.extend(found)
        if made and made.name in read:
            findings.append(_twice(made, read[made.name]))
        elif made:
            read[made.name] = made
    linking = _Linking(read, tuple(others), findings)
    return tuple(linking.linked(name, ()) for name in read), tuple(findings)


def _read_block(
    source: Source, block: Block, words: Vocabulary, units: UnitsLine | None
) -> tuple[PatternBlock | None, Findings]:
    header, findings = _header(block, words)
    if header is None:
        return None, findings
    inside = lines_read(block.lines, words)
    kept = tuple(each for each in inside.statements if not isinstance(each, _OF_THE_PIECE))
    findings += inside.findings + tuple(_misplaced(inside.statements))
    if units and not any(isinstance(each, UnitsLine) for each in kept):
        kept = (units, *kept)
    notes = Notes(source, kept, inside.unreadable)
    return (
        PatternBlock(
            header.name,
            header.written,
            header.name_span,
            header.parameters,
            notes,
            block.header.whole(),
        ),
        findings,
    )


def _header(block: Block, words: Vocabulary) -> tuple[PatternHeader | None, Findings]:
    line = block.header
    beyond = beyond_limits(line)
    if beyond:
        return None, (beyond,)
    reading = read_line(line, words)
    if isinstance(reading, Failure):
        return None, (explained(reading, words),)
    draft = Draft(line, words)
    header = build(reading, draft)
    findings = tuple(offered(mistake, line, words) for mistake in draft.mistakes)
    failed = any(finding.severity is Severity.ERROR for finding in findings)
    return header if isinstance(header, PatternHeader) and not failed else None, findings


def _misplaced(statements: Sequence[Statement]) -> Iterator[Diagnostic]:
    for statement in statements:
        if isinstance(statement, _OF_THE_PIECE):
            yield Diagnostic(
                "not-in-pattern",
                Severity.ERROR,
                "this line is about one piece, and a pattern is for many",
                statement.span,
                hints=(Hint("write it outside, behind the pattern's `end`"),),
            )


def _twice(second: PatternBlock, first: PatternBlock) -> Diagnostic:
    return Diagnostic(
        "pattern-twice",
        Severity.ERROR,
        f"a pattern `{second.written}` is already on line {first.span.line}",
        second.name_span,
        notes=(Note("first written here", first.name_span),),
        hints=(Hint("give one of them another name"),),
    )


@dataclass(slots=True)
class _Linking:
    """The patterns of a text by name, and those that have been told which patterns they use."""

    read: Mapping[str, PatternBlock]
    others: tuple[PatternBlock, ...]
    findings: list[Diagnostic]
    done: dict[str, PatternBlock] = field(default_factory=dict)
    depths: dict[str, int] = field(default_factory=dict)

    def linked(self, name: str, trail: tuple[str, ...]) -> PatternBlock:
        """Return the pattern with those that it uses; `trail` are the patterns that led here."""
        if name in self.done:
            return self.done[name]
        block = self.read[name]
        used: dict[str, PatternBlock] = {}
        within = (*trail, name)
        for pattern, span in _used_in(block.notes):
            if pattern in within:
                self.findings.append(_in_itself(pattern, within, span))
            elif pattern in self.read and pattern not in used:
                if self._is_too_deep(pattern, within):
                    self.findings.append(_too_deep(span))
                else:
                    used[pattern] = self.linked(pattern, within)
        self.depths[name] = 1 + max((self.depths[each] for each in used), default=0)
        notes = replace(block.notes, patterns=(*used.values(), *self.others))
        self.done[name] = replace(block, notes=notes)
        return self.done[name]

    def _is_too_deep(self, pattern: str, within: tuple[str, ...]) -> bool:
        if pattern not in self.done and len(within) < DEEPEST_PATTERN:
            self.linked(pattern, within)
        return self.depths.get(pattern, DEEPEST_PATTERN) >= DEEPEST_PATTERN


def _used_in(notes: Notes) -> Iterator[tuple[str, Span]]:
    for statement in notes.statements:
        if isinstance(statement, PartsLine):
            for clause in statement.clauses:
                if isinstance(clause, AsPattern):
                    yield clause.pattern, clause.span


def _too_deep(span: Span) -> Diagnostic:
    return Diagnostic(
        "patterns-too-deep",
        Severity.ERROR,
        f"patterns can stand {DEEPEST_PATTERN} deep inside one another",
        span,
        hints=(Hint("write the innermost parts out in the pattern round them"),),
    )


def _in_itself(name: str, trail: tuple[str, ...], span: Span) -> Diagnostic:
    way = " uses ".join(f"`{each}`" for each in (*trail[trail.index(name) :], name))
    return Diagnostic(
        "pattern-in-itself",
        Severity.ERROR,
        f"a pattern cannot hold itself: {way}",
        span,
        hints=(Hint("take this line out, or use another pattern"),),
    )
