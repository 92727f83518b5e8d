"""Widths of text in the booklet's font, so that figures are placed and never collide.

``advance_widths.json`` holds the advance of every character of the two shipped weights in units
of 1/2816 em, read from the `hmtx` tables of ``templates/fonts/Inter-*.woff2``.
``tests/unit/booklet/test_drawing_lettering.py`` compares the two and writes the file anew when run.
Kerning is left out: it only makes text narrower by a hair.
"""

from __future__ import annotations

import json
from functools import cache
from importlib.resources import files

UNITS_PER_EM = 2816
CAP_HEIGHT = 2048 / UNITS_PER_EM
"""Height of capitals and figures as a share of the font size."""

SMALLEST = 4.6
"""Font size in mm below which text does not read at arm's length or on a phone."""


def text_width(text: str, size: float, *, bold: bool = False) -> float:
    """Return the width in mm of a line of text at a font size in mm."""
    advances = _advances()["bold" if bold else "regular"]
    widest = max(advances.values())
    return sum(advances.get(character, widest) for character in text) * size / UNITS_PER_EM


@cache
def _advances() -> dict[str, dict[str, int]]:
    table = files("dryfit.booklet.drawing").joinpath("advance_widths.json")
    weights: dict[str, dict[str, int]] = json.loads(table.read_text(encoding="utf-8"))
    return weights
