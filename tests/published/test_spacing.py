"""Equal spacing against published examples: gap = (run - n x width) / (n + 1), gaps at both ends.

The formula, and the least number for a largest gap, ceil((run - g) / (width + g)), were read on two
public pages with their examples.
"""

from fractions import Fraction
from math import ceil

import pytest
from tests.pieces.reading import model_of

FENCE = """piece Rack
units inches
overall {} wide, 1 deep, 30 high
timber oak
2 posts, upright, facing front, 2 x 1, at left and right
2 rails, across, on edge, 2 x 1, tenon 1 into posts, at top and bottom
{} slats, upright, facing front, {} x 1/2, spread across, between posts, into rails, tenon 9/16 long
glue up rack: posts, rails, slats
"""


@pytest.mark.parametrize(
    ("run", "width", "count", "gap"),
    [
        # Read: run 120, width 1.5, gap at most 4 gives 22 pieces and a gap of 3.7826.
        ("120", "1 1/2", 22, Fraction("3.7826")),
        # Read: run 52, width 1.5, 10 pieces: 3.3636.
        ("52", "1 1/2", 10, Fraction("3.3636")),
        # A how-to page prints 3 for run 75, width 2, 15 pieces, and calls it from centre to centre;
        # 15 pieces leave 75 - 30 = 45 for 16 gaps, which is 2.8125 by the formula of the others.
        ("75", "2", 15, Fraction("2.8125")),
    ],
)
def test_a_row_is_spread_as_published(run: str, width: str, count: int, gap: Fraction) -> None:
    model = model_of(FENCE.format(int(run) + 4, count, width))
    boxes = sorted((copy.box for copy in model.part("slat").copies), key=lambda box: box.low[0])
    left, right = (model.copy(f"{side} post").box for side in ("left", "right"))
    edges = [left.high[0], *(each for box in boxes for each in (box.low[0], box.high[0]))]
    edges.append(right.low[0])
    gaps = {edges[at + 1] - edges[at] for at in range(0, len(edges), 2)}
    assert len(gaps) == 1
    found = gaps.pop() / Fraction(254, 10)
    assert abs(found - gap) < Fraction(1, 10_000)
    assert found == (int(run) - count * sum(map(Fraction, width.split()))) / (count + 1)


def test_22_is_the_least_number_for_a_gap_of_4() -> None:
    assert ceil((Fraction(120) - 4) / (Fraction(3, 2) + 4)) == 22
