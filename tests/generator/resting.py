"""Thin parts that are resawn out of thicker boards, and wood that rests as its line says."""

import re

from tests.generator.draw import Draw

SEVERAL = re.compile(r"^[2-9] [a-z ]+,(?!.* of )(?!.*glued from)")
"""A line of several parts of the piece's own wood, none glued from boards."""


def resting(text: str, draw: Draw) -> str:
    """Return the notes, now and then with such words behind one of their parts."""
    lines = text.splitlines()
    rows = [at for at, line in enumerate(lines) if SEVERAL.match(line)]
    if "pattern " in text or not rows or not draw.chance(25):
        return text
    words = draw.one_of(("resawn", "resawn, 2 days on stickers", "36 h on stickers"))
    lines[draw.one_of(tuple(rows))] += f", {words}"
    return "\n".join(lines) + "\n"
