"""The lines that the language page prints, as the grammar reads them."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.diagnostics import Source
from dryfit.guide.sentences import CHAPTERS, PATTERNS, WHOLE
from dryfit.notes import names_by_line
from dryfit.notes.reading.lexer import Reading, read_line
from dryfit.notes.reading.lines import sense_lines

STOOL = [sentence.line for sentence in WHOLE.sentences]
PRINTED = [sentence.line for chapter in CHAPTERS for sentence in chapter.sentences]
OF_THE_STOOL = [
    sentence.line
    for chapter in CHAPTERS
    for sentence in chapter.sentences
    if chapter is not PATTERNS
]


def readings() -> Iterator[Reading]:
    """Every line that the page prints, as the grammar reads it."""
    lines = tuple(sense_lines(Source("page", "\n".join(PRINTED))))
    assert len(lines) == len(PRINTED)
    for line, names in zip(lines, names_by_line(lines), strict=True):
        reading = read_line(line, names)
        assert isinstance(reading, Reading), line.text
        yield reading
