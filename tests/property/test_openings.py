"""Rows in openings: exact for every count and gap, and the same in whatever order it is written."""

from __future__ import annotations

import random
from fractions import Fraction
from itertools import pairwise

from hypothesis import given, settings
from hypothesis import strategies as st
from tests.pieces.reading import checked

from dryfit.geometry.box import Box
from dryfit.placing.model import Model

halves = st.integers(0, 12).map(lambda value: Fraction(value, 2))


def words(length: Fraction) -> str:
    """A length of halves of a millimetre as it is written."""
    return f"{float(length):g}"


def case(lines: list[str]) -> str:
    head = ["piece Case", "units mm", "overall 811 wide, 400 deep, 903 high", "timber oak"]
    return "\n".join([*head, *lines, ""])


CARCASE = [
    "2 sides, upright, facing side, 400 x 18, at left and right",
    "1 top, flat, across, 400 x 18, housing 6 into sides, down 0",
    "1 bottom, flat, across, 400 x 18, housing 6 into sides, up 60",
    "bay = opening between sides and top and bottom",
    "glue up case: sides, top, bottom, cure 2 h",
]


def placed(text: str) -> Model:
    found = checked(text)
    assert found.model is not None, [finding.message for finding in found.findings]
    return found.model


def boxes(model: Model) -> dict[str, Box]:
    return {copy.name: copy.box for part in model.parts for copy in part.copies}


@settings(deadline=None, max_examples=30)
@given(st.integers(2, 9), halves, halves, st.booleans())
def test_a_row_fills_its_opening_exactly(
    count: int, gap: Fraction, between: Fraction, upwards: bool
) -> None:
    way, axis = ("up and down", 2) if upwards else ("across", 0)
    line = (
        f"{count} fronts, across, on edge, 20 thick, in bay, spread {way}, "
        f"gap {words(gap)}, {words(between)} between"
    )
    copies = placed(case([*CARCASE, line])).part("front").copies
    low, high = ((18, 793), (0, 400), (78, 885))[axis]
    size = (high - low - 2 * gap - (count - 1) * between) / count
    assert [copy.box.high[axis] - copy.box.low[axis] for copy in copies] == [size] * count
    assert copies[0].box.low[axis] == low + gap
    assert copies[-1].box.high[axis] == high - gap
    for one, other in pairwise(copies):
        assert other.box.low[axis] - one.box.high[axis] == between


@settings(deadline=None, max_examples=20)
@given(st.integers(2, 12), st.sampled_from(["", ", no gap at ends", ", half a gap at ends"]))
def test_what_has_a_size_stands_at_equal_gaps(count: int, ends: str) -> None:
    line = f"{count} sticks, upright, 20 x 20, in bay, spread across{ends}"
    shares = {
        "": Fraction(1),
        ", no gap at ends": Fraction(0),
        ", half a gap at ends": Fraction(1, 2),
    }
    share = shares[ends]
    copies = placed(case([*CARCASE, line])).part("stick").copies
    gap = Fraction(775 - 20 * count) / (count - 1 + 2 * share)
    assert [copy.box.low[0] for copy in copies] == [
        18 + share * gap + index * (gap + 20) for index in range(count)
    ]


@settings(deadline=None, max_examples=30)
@given(st.randoms(use_true_random=False))
def test_the_order_of_the_lines_moves_nothing(chance: random.Random) -> None:
    lines = [
        "1 left side, upright, facing side, 400 x 18",
        "1 right side, upright, facing side, 400 x 18",
        "1 divider, upright, facing side, 400 x 18, up 0, down 18",
        "1 top, flat, across, 400 x 18, between left side and right side, down 0",
        "bay = opening between left side and divider",
        "small bay = opening between divider and right side",
        "play = 2",
        "door width = small bay.width + 101 - play",
        "1 door, facing front, door width wide, 20 thick, in bay, gap play across, up 5, down 40",
        "2 flaps, facing front, 20 thick, 300 long, in small bay, gap play across, 3 between, up 5",
    ]
    first = boxes(placed(case(lines)))
    again = boxes(placed(case(chance.sample(lines, len(lines)))))
    assert again == first
    # The bays share 811 less 3 x 18; the large one is 103 wider than the small one.
    small = Fraction(811 - 54 - 103, 2)
    widths = {name: box.high[0] - box.low[0] for name, box in first.items()}
    assert widths["door"] == small + 99
    assert widths["left flap"] == widths["right flap"] == (small - 7) / 2
