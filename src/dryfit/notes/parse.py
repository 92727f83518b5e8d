"""The whole text of the notes, line by line, to statements and findings."""

from __future__ import annotations

from collections.abc import Sequence

from dryfit.diagnostics import Findings, Source
from dryfit.notes.blocks import in_blocks
from dryfit.notes.line_reading import lines_read
from dryfit.notes.names_in_text import names_by_line, names_in, names_of
from dryfit.notes.pattern_blocks import pattern_blocks
from dryfit.notes.reading.lines import sense_lines
from dryfit.notes.reading.pattern_names import heading_of
from dryfit.notes.text import too_long
from dryfit.notes.tree import Notes, PatternBlock, UnitsLine
from dryfit.notes.whole import overall_missing

__all__ = ["names_by_line", "names_of", "parse"]


def parse(source: Source, patterns: Sequence[PatternBlock] = ()) -> tuple[Notes, Findings]:
    """Return the notes as far as they can be read, and what is wrong with the rest.

    `patterns` are those that the notes can use besides their own.  Never raises, whatever the text.
    A line that cannot be read gives one finding and no statement; names that it declares, also
    those of patterns, are in `Notes.unreadable`.  After `line_reading.MOST_MISTAKES` findings the
    rest is not read.
    """
    beyond = too_long(source)
    if beyond:
        return Notes(source, ()), (beyond,)
    blocks = in_blocks(sense_lines(source))
    names = names_in(blocks, patterns)
    own = lines_read(blocks.own, names.own)
    units = next((each for each in own.statements if isinstance(each, UnitsLine)), None)
    made, in_patterns = pattern_blocks(
        source, tuple(zip(blocks.patterns, names.patterns, strict=True)), units, patterns
    )
    findings = own.findings + tuple(blocks.findings) + in_patterns
    if not own.overall_unread and not blocks.findings:
        findings += tuple(overall_missing(own.statements))
    named = {heading.name for each in blocks.patterns if (heading := heading_of(each.header))}
    unreadable = own.unreadable | (named - {each.name for each in made})
    return Notes(source, own.statements, unreadable, (*made, *patterns)), findings
