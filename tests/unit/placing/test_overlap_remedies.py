"""The remedy for an overlap is a line that can be read and made."""

from __future__ import annotations

import re

from tests.pieces.reading import changed, checked

TABLE = """piece Low garden table
units inches to 1/16
overall 40" wide, 18" deep, 15" high
timber oak
4 posts, upright, 2 1/2" x 1 1/4", at corners, set in 4" across, 0" front to back
2 foot bars, front to back, 2 1/2" x 1 1/4", up 3"
2 top bars, front to back, 2 1/2" x 1 1/4"
posts crossing foot bars: half lap
posts crossing top bars: half lap
5 slats, across, 2 7/8" x 3/4", spread front to back
slats onto posts and top bars: screws
glue up 2 end frames: 2 posts, 1 foot bar, 1 top bar
"""
STOOL = """piece Planing stool
units mm, to nearest 0.5
overall 620 wide, 340 deep, 520 high
timber beech
4 legs, upright, 50 x 50, at corners, set in 30 across, 20 front to back
2 long aprons, across, 80 x 24, tenon 25 long 8 thick into legs, set back 4
2 short aprons, front to back, 80 x 24, tenon 25 long 8 thick into legs, set back 4
2 end stretchers, front to back, 50 x 24, tenon 25 long 8 thick into legs, up 420
1 top, flat, 35 thick, glued from 4
top onto legs and long aprons and short aprons: buttons
glue up base: legs, long aprons, short aprons, end stretchers
"""


def overlaps(text: str) -> list[str]:
    return [each.hints[0].message for each in checked(text).findings if each.code == "overlap"]


def test_what_lies_on_the_like_is_laid_on_this_as_well() -> None:
    text = changed(TABLE, ("slats onto posts and top bars: screws", "slats onto top bars: screws"))
    (hint,) = overlaps(text)
    offered = re.search(r"`(slats onto [^`]+)`", hint)
    assert offered
    mended = changed(text, ("slats onto top bars", offered[1]))
    assert overlaps(mended) == []


def test_what_the_tool_makes_is_no_host_and_neighbours_are_moved() -> None:
    hints = overlaps(STOOL)
    assert hints
    for hint in hints:
        assert "button:" not in hint
        assert ": housing" not in hint
    assert any(hint.startswith("move one of them") for hint in hints)
