"""``dryfit new``: notes to begin with, from a pattern or without one."""

from __future__ import annotations

import re

from dryfit.notes.tree import PatternBlock, Sum

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
    """Return notes to begin with; those of a pattern use it, and list what it can be told."""
    if block is None:
        return _EMPTY
    line = _line(block)
    sizes = ", ".join(f"{size} {word}" for size, word in _SIZE.findall(line))
    return "\n".join(
        (
            f"piece My {block.written}",
            "units mm",
            f"overall {sizes}",
            "timber ash",
            "",
            line,
            *_parameters(block),
            "",
        )
    )


def _line(block: PatternBlock) -> str:
    offered = _NEW_LINE.search(block.notes.source.text)
    return (
        offered[1]
        if offered
        else f"1 {block.written}, as {block.written}, 600 wide, 300 deep, 400 high"
    )


def _parameters(block: PatternBlock) -> list[str]:
    lines = []
    for parameter in block.parameters:
        if parameter.default is None:
            continue
        within = ""
        if parameter.least is not None and parameter.most is not None:
            within = f", from {_typed(parameter.least)} to {_typed(parameter.most)}"
        lines.append(f"# it can be told its {parameter.name}: {_typed(parameter.default)}{within}")
    return lines


def _typed(amount: Sum) -> str:
    return amount.span.text()
