"""Boxes less boxes: what is left has the right volume, lies inside, and meets nothing that went."""

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from dryfit.geometry.box import Box
from dryfit.geometry.solid import Solid
from dryfit.rehearsal.blank import Blank, left_of

ends = st.tuples(st.integers(0, 12), st.integers(0, 12)).filter(lambda pair: pair[0] < pair[1])
boxes = st.tuples(ends, ends, ends).map(
    lambda rows: Box(
        (Fraction(rows[0][0]), Fraction(rows[1][0]), Fraction(rows[2][0])),
        (Fraction(rows[0][1]), Fraction(rows[1][1]), Fraction(rows[2][1])),
    )
)


@given(boxes, st.lists(boxes, max_size=6))
def test_what_is_left_is_the_box_less_what_was_taken(box: Box, taken: list[Box]) -> None:
    """Against the grid of `geometry.solid`, which cuts along every face instead."""
    rest = left_of(box, taken)
    assert sum((piece.volume() for piece in rest), Fraction(0)) == Solid(box, tuple(taken)).volume()
    assert all(box.contains(piece) for piece in rest)
    assert not any(piece.overlap(hole) for piece in rest for hole in taken)


def test_distances_from_the_far_end_count_backwards() -> None:
    blank = Blank("rail", (Fraction(400), Fraction(50), Fraction(20)))
    assert blank.measured_from("R2", (Fraction(25), Fraction(45))) == (
        Fraction(355),
        Fraction(375),
    )
    assert blank.measured_from("R", (Fraction(25), Fraction(45))) == (
        Fraction(25),
        Fraction(45),
    )


def test_a_cut_beside_the_blank_takes_nothing() -> None:
    blank = Blank("rail", (Fraction(400), Fraction(50), Fraction(20)))
    whole = (Fraction(0), Fraction(50))
    assert (
        blank.clipped(((Fraction(400), Fraction(420)), whole, (Fraction(0), Fraction(5)))) is None
    )
