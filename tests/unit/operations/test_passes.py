"""TRADE 0.6 and 0.7: number and place of passes."""

from fractions import Fraction

import pytest

from dryfit.operations.passes import (
    between_limits,
    cleared_from_stop,
    fence_positions,
    number_of_passes,
)
from dryfit.plan.setting import Pass


@pytest.mark.parametrize(
    ("width", "cutter", "overlap", "passes"),
    [
        (Fraction(20), Fraction(20), Fraction("0.5"), 1),
        (Fraction(45), Fraction(20), Fraction("0.5"), 3),  # the laps of TRADE I1, row 26
        (
            Fraction(45),
            Fraction("3.2"),
            Fraction("0.2"),
            15,
        ),  # TRADE I1, dado decision: 16 laps x 15 passes
        (Fraction(6), Fraction("3.2"), Fraction("0.2"), 2),  # TRADE I1, rows 18 and 19
        (Fraction("6.4"), Fraction("3.2"), Fraction("0.2"), 2),  # exactly two kerfs: TRADE 0.6
        # The two limits of 1/4 in overlap by 0.05: a third pass between them would cut air.
        (Fraction("6.35"), Fraction("3.2"), Fraction("0.2"), 2),
        (Fraction("6.5"), Fraction("3.2"), Fraction("0.2"), 3),
    ],
)
def test_number_of_passes(
    width: Fraction, cutter: Fraction, overlap: Fraction, passes: int
) -> None:
    assert number_of_passes(width, cutter, overlap) == passes


def test_a_cutter_wider_than_the_cut_is_our_own_mistake() -> None:
    with pytest.raises(ValueError, match="cannot cut"):
        number_of_passes(Fraction(6), Fraction(8), Fraction("0.2"))


def test_an_end_lap_has_one_limit_and_a_slot_two() -> None:
    assert cleared_from_stop(3) == (Pass(), Pass(between=True), Pass(between=True))
    assert between_limits(Fraction(45), Fraction(20), 3) == (
        Pass(),
        Pass(spacer=Fraction(25)),
        Pass(between=True),
    )
    assert between_limits(Fraction(20), Fraction(20), 1) == (Pass(),)


def test_the_fence_stands_at_both_limits_of_a_groove() -> None:
    assert fence_positions(Fraction(12), Fraction(6), Fraction("3.2"), 2) == [
        Fraction(12),
        Fraction("14.8"),
    ]  # TRADE I1, row 19
    assert fence_positions(Fraction(10), Fraction(8), Fraction("3.2"), 3) == [
        Fraction(10),
        Fraction("12.4"),
        Fraction("14.8"),
    ]
