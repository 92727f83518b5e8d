"""`dryfit help language`: the whole language on one to two pages."""

from __future__ import annotations

from dryfit.guide.page import WIDTH, filled, section
from dryfit.guide.sentences import CHAPTERS, Sentence

_RULES = (
    "A line is a sentence; `#` begins a remark; a line that ends in a comma goes on in the next. "
    "Lines may stand in any order. Case, plural and most commas do not matter. A name is the "
    "whole name. Sizes are length x width x thickness, two numbers width x thickness; what is not "
    "written is worked out."
)
_INDENT = "  "
_COLUMN = 42


def language_text() -> str:
    """Return the page as plain text, ending in a newline."""
    chapters = [
        section(chapter.heading, *(_row(said) for said in chapter.sentences))
        for chapter in CHAPTERS
    ]
    return "\n\n".join((filled(_RULES), *chapters)) + "\n"


def _row(sentence: Sentence) -> str:
    """Return the sentence with what it says as a remark: beside it, or above where it is long."""
    line, said = f"{_INDENT}{sentence.line}", f"# {sentence.says}"
    if not sentence.says:
        return line
    beside = f"{line.ljust(_COLUMN)}  {said}"
    return beside if len(beside) <= WIDTH else f"{_INDENT}{said}\n{line}"
