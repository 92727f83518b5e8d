"""The figure of changes: two bars a row as long as its two counts, which stand beside them."""

from __future__ import annotations

import re

from tests.unit.booklet.drawn_lines import outside, struck_out
from tests.unit.booklet.svg_reading import SVG, collisions, lettering, root_of

from dryfit.booklet.drawing import Svg
from dryfit.booklet.drawing.changes import changes_drawing
from dryfit.booklet.drawing.lettering import SMALLEST
from dryfit.plan.changes import Changes

ROWS = (
    Changes("mitre saw", "angle", 1, 1),
    Changes("table saw", "cutter", 3, 8),
    Changes("table saw", "height", 6, 4),
    Changes("sander", "grit", 12, 30),
)


def drawn(rows: tuple[Changes, ...] = ROWS) -> Svg:
    figure = changes_drawing(rows)
    assert figure is not None
    return figure


def widths(figure: Svg, *, black: bool) -> list[float]:
    """Widths of the black bars, or of the outlines of the hatched ones, from the top down."""
    found = []
    for path in root_of(figure).iter(f"{SVG}path"):
        d = path.get("d", "")
        if not d.endswith("Z") or (path.get("fill") == "#000") != black:
            continue
        if not black and path.get("stroke") is None:
            continue
        across = [float(x) for x in re.findall(r"[ML](-?[\d.]+) ", d)]
        found.append(max(across) - min(across))
    return found


def test_the_bars_are_as_long_as_the_counts() -> None:
    here, other = widths(drawn(), black=True), widths(drawn(), black=False)
    assert [round(width / here[0], 2) for width in here] == [1, 2, 4]
    assert [round(width / here[0], 1) for width in other] == [2.7, 1.3, 10]


def test_the_counts_stand_beside_the_bars_and_single_ones_in_words() -> None:
    words = [line.words for line in lettering(drawn())]
    assert words[:11] == [
        "table saw", "cutter", "3", "8", "height", "6", "4", "sander", "grit", "12", "30",
    ]  # fmt: skip
    assert words[-1] == "Set once either way: mitre saw (angle)."


def test_it_reads_at_arms_length_on_paper() -> None:
    long = tuple(Changes(f"station {n}", "a long axis", 40, 90) for n in range(24))
    for figure in (drawn(), drawn(long)):
        assert figure.width_mm <= 175
        assert figure.height_mm <= 215
        assert min(line.size for line in lettering(figure)) >= SMALLEST
        assert collisions(figure) == []
        assert outside(figure) == []
        assert struck_out(figure) == []


def test_nothing_is_drawn_where_nothing_is_set_twice() -> None:
    assert changes_drawing(()) is None
    assert changes_drawing(ROWS[:1]) is None
