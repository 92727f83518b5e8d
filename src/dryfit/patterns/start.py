"""``dryfit new``: notes to begin with, from a pattern or without one."""

from __future__ import annotations

import re

from dryfit.notes.tree import PatternBlock
from dryfit.patterns.told import settings_of, sketch_of

_NEW_LINE = re.compile(r"^# new: (.+)$", re.MULTILINE)
_SIZE = re.compile(r"([0-9]+) (wide|deep|high)")
_EMPTY = """\
piece My piece
units mm
overall 600 wide, 300 deep, 400 high
timber ash

# Parts: a count, a name, and how each goes; sizes are length x width x thickness.
# 4 legs, upright, 40 x 40, at corners
# 2 long rails, across, 60 x 20, tenon 20 into legs
"""


def start_of(block: PatternBlock | None) -> str:
    """Return notes to begin with; those of a pattern show it, use it, and list what it is told."""
    if block is None:
        return _EMPTY
    line = line_of(block)
    sizes = ", ".join(f"{size} {word}" for size, word in _SIZE.findall(line))
    return "\n".join(
        (
            f"piece My {block.written}",
            "units mm",
            f"overall {sizes}",
            "timber ash",
            "",
            *(f"# {remark}".rstrip() for remark in sketch_of(block)),
            "",
            line,
            *(f"# it can be told its {setting}" for setting in settings_of(block)),
            "",
        )
    )


def line_of(block: PatternBlock) -> str:
    """Return a line that uses a pattern."""
    offered = _NEW_LINE.search(block.notes.source.text)
    return (
        offered[1]
        if offered
        else f"1 {block.written}, as {block.written}, 600 wide, 300 deep, 400 high"
    )
