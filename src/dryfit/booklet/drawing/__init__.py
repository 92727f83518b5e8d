"""Drawings as plain SVG: every style an attribute, black on white, meaning by shape.

All measures on paper are millimetres.  Text is never below `SMALLEST` so that it reads at the
bench and on a phone; every printed quantity carries its exact value as data.
"""

from dryfit.booklet.drawing.canvas import Svg
from dryfit.booklet.drawing.glue_up import glue_up_drawing
from dryfit.booklet.drawing.panel import panel_drawing
from dryfit.booklet.drawing.part_sheet import part_sheets
from dryfit.booklet.drawing.piece import piece_drawing
from dryfit.booklet.drawing.setup import setup_drawing
from dryfit.booklet.drawing.timeline import timeline

__all__ = [
    "Svg",
    "glue_up_drawing",
    "panel_drawing",
    "part_sheets",
    "piece_drawing",
    "setup_drawing",
    "timeline",
]
