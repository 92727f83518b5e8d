"""Where the drawings of a booklet are called for: the one place that knows the drawing room."""

from __future__ import annotations

from dryfit.booklet.bench import Bench
from dryfit.booklet.drawing import Svg, piece_drawing


def cover_drawing(bench: Bench) -> Svg:
    """Return the piece as it will stand, each part lettered once."""
    return piece_drawing(bench.model, bench.labels.parts)


def step_drawings(bench: Bench) -> dict[int, Svg | None]:
    """Return a drawing for each step that has one, by step number."""
    del bench
    return {}


def time_line(bench: Bench) -> Svg | None:
    """Return the days of work on a line."""
    del bench
    return None
