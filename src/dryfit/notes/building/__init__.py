"""From the parse tree of a line to its statement; lark's trees end here."""

from dryfit.notes.building.draft import Draft
from dryfit.notes.building.pattern_lines import PatternHeader
from dryfit.notes.building.statements import build

__all__ = ["Draft", "PatternHeader", "build"]
