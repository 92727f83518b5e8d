"""What goes between others without a joint: a gap is its play at each end, or is refused."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.pieces.reading import changed, checked, errors, model_of

CASE = """piece Case
units mm
overall 600 wide, 280 deep, 400 high
timber oak
2 sides, upright, facing side, 20 thick, 280 wide, at left and right
1 top, flat, 20 thick, between sides, housing 6, down 0
2 cleats, front to back, 20 x 20, on the inside of sides: screws, up 180
1 shelf, flat, 18 thick, onto cleats: screws, between sides, gap 2
glue up case: sides, top
"""


@pytest.mark.parametrize(
    ("words", "length"),
    [
        ("gap 2", 556),
        ("gap 2 across", 556),
        ("gap 2 at ends", 556),
        ("gap 2 at left, 1 at right", 557),
    ],
)
def test_a_gap_between_two_is_play_at_each_end(words: str, length: int) -> None:
    # 600 less two sides of 20 leave 560, and from that the play goes off.
    model = model_of(changed(CASE, ("gap 2", words)))
    assert model.part("shelf").length == length
    assert model.part("shelf").copies[0].box.low[0] == 22


def test_the_play_stands_in_the_sum_of_the_length() -> None:
    terms = model_of(CASE).figures["shelf.length"].terms
    assert [term.label for term in terms if term.amount == -2] == [
        "gap at left side",
        "gap at right side",
    ]
    assert sum((term.amount for term in terms), Fraction(0)) == 556


@pytest.mark.parametrize(
    "words", ["gap 2 up and down", "gap 2 at front", "3 between", "housing 6, gap 2"]
)
def test_a_gap_that_means_nothing_is_refused(words: str) -> None:
    (found,) = errors(checked(changed(CASE, ("gap 2", words))))
    assert found.code == "gap-of-nothing"
    assert found.span is not None
    assert found.span.line == 8


def test_beside_a_gap_between_the_lone_gap_of_a_row_is_play() -> None:
    row = "3 shelves, across, flat, 18 thick, between sides, spread up and down"
    shelf = "1 shelf, flat, 18 thick, onto cleats: screws, between sides, gap 2"
    cleats = "2 cleats, front to back, 20 x 20, on the inside of sides: screws, up 180\n"
    found = checked(changed(CASE, (shelf, f"{row}, gap 2, 60 between"), (cleats, "")))
    assert found.model is not None
    assert found.model.part("shelf").length == 556
    heights = [copy.box.low[2] for copy in found.model.part("shelf").copies]
    assert heights[1] - heights[0] == 60 + 18


def test_a_joint_is_told_to_leave_no_gap() -> None:
    (found,) = errors(checked(changed(CASE, ("gap 2", "housing 6, gap 2"))))
    assert found.hints[0].message == "leave it out: a housing leaves no gap at the ends"
