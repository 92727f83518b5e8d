"""The lines that the language page prints, as the grammar reads them."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.diagnostics import Source
from dryfit.guide.sentences import CHAPTERS, WHOLE
from dryfit.notes.parse import names_of
from dryfit.notes.reading.lexer import Reading, read_line
from dryfit.notes.reading.lines import sense_lines

SENTENCES = [sentence for chapter in CHAPTERS for sentence in chapter.sentences]


def readings() -> Iterator[Reading]:
    """Every line that the page prints, as the grammar reads it."""
    names = names_of(
        tuple(sense_lines(Source("", "\n".join([WHOLE, *(said.line for said in SENTENCES)]))))
    )
    for text in [*WHOLE.splitlines(), *(said.line for said in SENTENCES)]:
        (line,) = sense_lines(Source("", text))
        reading = read_line(line, names)
        assert isinstance(reading, Reading), text
        yield reading
