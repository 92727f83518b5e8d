"""`dryfit help patterns`: the shipped patterns, each with its sketch and what it can be told."""

from __future__ import annotations

from dryfit.guide.page import INDENT, filled, section
from dryfit.notes.tree import PatternBlock
from dryfit.patterns import line_of, settings_of, shipped, sketch_of

_INTRODUCTION = (
    "A pattern is a piece of furniture that the notes use in one line, with its own sizes. Below "
    "each stand such a line, and what else it can be told, with its usual figure and its range. "
    "`dryfit new NAME` prints notes to begin with."
)


def patterns_text() -> str:
    """Return the page as plain text, ending in a newline."""
    rows = (_row(block) for block in shipped())
    return "\n\n\n".join((f"The patterns of the program\n\n{filled(_INTRODUCTION)}", *rows)) + "\n"


def _row(block: PatternBlock) -> str:
    return section(
        block.written.upper(),
        *sketch_of(block),
        "",
        f"{INDENT}{line_of(block)}",
        *(f"{INDENT}{setting}" for setting in settings_of(block)),
    )
