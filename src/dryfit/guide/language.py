"""`dryfit help language`: the whole language on one to two pages."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator

from dryfit.guide.page import WIDTH, filled, section
from dryfit.guide.sentences import CHAPTERS, WHOLE, Sentence

_RULES = (
    "A line is a sentence; `#` begins a remark; a line that ends in a comma goes on in the next. "
    "Lines may stand in any order. Case, plural and most commas do not matter. A name is the "
    "whole name. Sizes are length x width x thickness, two numbers width x thickness; what is not "
    "written is worked out."
)
_COLUMN = 46


def language_text() -> str:
    """Return the page as plain text, ending in a newline."""
    whole = section("A whole piece", textwrap.indent(WHOLE.rstrip("\n"), "  "))
    chapters = [
        section(chapter.heading, *(line for said in chapter.sentences for line in _rows(said)))
        for chapter in CHAPTERS
    ]
    return "\n\n".join((filled(_RULES), whole, *chapters)) + "\n"


def _rows(sentence: Sentence) -> Iterator[str]:
    """Yield the sentence with what it says beside it, or below it where there is no room."""
    line = f"  {sentence.line}"
    said = textwrap.wrap(sentence.says, WIDTH - _COLUMN)
    if len(line) + 2 > _COLUMN and len(line) + 2 + len(sentence.says) <= WIDTH:
        yield f"{line}  {sentence.says}"
        return
    if len(line) + 2 > _COLUMN:
        yield line
    else:
        yield f"{line.ljust(_COLUMN)}{said.pop(0)}"
    yield from (f"{' ' * _COLUMN}{more}" for more in said)
