"""The notes that the tests of the editor ask about, and how they say a place in a text."""

from __future__ import annotations

from typing import NamedTuple

STOOL = """\
piece Step stool
units mm, to nearest 1
overall 420 wide, 300 deep, 240 high
timber ash
overhang = 15
reveal = 2
4 legs, upright, 40 x 40, at corners, set in overhang
2 long rails, across, 55 x 20, tenon 20 long 6 thick into legs, set back reveal
2 short rails, front to back, 55 x 20, tenon 20 long 6 thick into legs, set back reveal
1 seat, flat, 22 thick
seat onto legs and long rails: buttons
glue up 2 side frames: 2 legs, 1 short rail, cure 1 h
glue up base: side frames, long rails, cure 2 h
finish hard wax oil, 2 coats, 8 h apart
"""


class Asked(NamedTuple):
    """A text without its mark, and the place of the mark in lines and characters from 0."""

    text: str
    line: int
    character: int


def asked(marked: str, mark: str = "|") -> Asked:
    """The text in which one mark stands where the cursor is."""
    before, after = marked.split(mark)
    return Asked(before + after, before.count("\n"), len(before) - (before.rfind("\n") + 1))
