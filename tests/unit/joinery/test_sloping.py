"""Compound mitres judged from the planes in space, apart from the formulae that they come from."""

from fractions import Fraction
from math import atan, cos, degrees, radians, sin, sqrt, tan

import pytest

from dryfit.geometry.lean import angle_of
from dryfit.joinery.sloping import sloping_end

Vector = tuple[float, float, float]
BOARDS = [
    (Fraction(1, 4), 120, 15),
    (Fraction(1, 8), 90, 12),
    (Fraction(577, 1000), 200, 25),
]


def standing(slope: float, down: float, deep: float) -> Vector:
    """A point at the long point's end of a board, so far down its face and into it, in space.

    The board runs along x from 0; its outer face leans out to -y at the top, where z is 0.
    """
    turn = atan(slope)
    return 0.0, down * sin(turn) + deep * cos(turn), -down * cos(turn) + deep * sin(turn)


@pytest.mark.parametrize(("slope", "width", "thickness"), BOARDS)
def test_every_corner_of_the_end_comes_into_the_plumb_plane_at_45_degrees(
    slope: Fraction, width: int, thickness: int
) -> None:
    """First principles: by symmetry two equal sides part at the plane x = y through the corner."""
    end = sloping_end(slope, Fraction(width), Fraction(thickness))
    for down, deep, back in (
        (0, 0, Fraction(0)),
        (width, 0, end.lower),
        (0, thickness, end.inner),
        (width, thickness, end.lower + end.inner),
    ):
        _, y, _ = standing(float(slope), down, deep)
        assert float(back) == pytest.approx(y, abs=0.0015)


@pytest.mark.parametrize(("slope", "width", "thickness"), BOARDS)
def test_a_saw_so_turned_and_tilted_cuts_that_plane(
    slope: Fraction, width: int, thickness: int
) -> None:
    """The blade of a saw: plumb and square to the fence, tilted about its run, then turned.

    A board lies with its outer face on the table and its upper edge at the fence.  At the height k
    above the table the blade has moved k * tan(tilt) square to its run, which is k * tan(tilt) /
    cos(turn) along the fence; d before the fence d * tan(turn).
    """
    end = sloping_end(slope, Fraction(width), Fraction(thickness))
    turn, tilt = (radians(float(each)) for each in (end.angles.mitre, end.angles.tilt))
    assert width * tan(turn) == pytest.approx(float(end.lower), abs=0.002)
    assert thickness * tan(tilt) / cos(turn) == pytest.approx(float(end.inner), abs=0.002)


def test_a_row_by_hand() -> None:
    """1 in 4, 120 x 15: root 17 is 4.1231, so 120 / 4.1231 = 29.104 and 15 * 4 / 4.1231 = 14.552.

    It stands 120 * 4 / 4.1231 + 15 / 4.1231 = 116.417 + 3.638 high.
    """
    end = sloping_end(Fraction(1, 4), Fraction(120), Fraction(15))
    assert float(end.lower) == pytest.approx(120 / sqrt(17), abs=0.0006)
    assert (round(float(end.lower), 1), round(float(end.inner), 2)) == (29.1, 14.55)
    assert float(end.high) == pytest.approx(120.055, abs=0.001)
    assert float(end.stands_off) == pytest.approx(3.638, abs=0.001)


def test_angles_come_near_upright_sides_and_near_flat_ones() -> None:
    """Limits: upright 0 and 45; 45 degrees: 35.26 and 30.00 (tests/published, derived)."""
    upright = sloping_end(Fraction(1, 100_000), Fraction(100), Fraction(10))
    assert float(upright.angles.mitre) == pytest.approx(0, abs=0.001)
    assert float(upright.angles.tilt) == pytest.approx(45, abs=0.001)
    half = sloping_end(Fraction(1), Fraction(100), Fraction(10))
    assert float(half.angles.mitre) == pytest.approx(35.2644, abs=0.0001)
    assert float(half.angles.tilt) == pytest.approx(30, abs=0.0001)
    assert float(angle_of(Fraction(1))) == pytest.approx(degrees(atan(1)))
