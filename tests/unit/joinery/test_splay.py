"""Splayed legs as they are cut: the sheared design against the bar itself, tipped in floats."""

from fractions import Fraction
from math import atan, cos, degrees, hypot, pi, sin, sqrt, tan

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dryfit.geometry.lean import Lean, angle_of, steepest
from dryfit.joinery.splay import Sloped, shoulder_corners, sloped

OUTWARD = frozenset({"E", "F"})
EDGES = {"E": (0, 1), "E2": (0, -1)}
FACES = {"F": (1, 1), "B": (1, -1)}


def leg(
    slopes: tuple[Fraction, Fraction],
    section: tuple[Fraction, Fraction] = (Fraction(38), Fraction(38)),
    heights: tuple[Fraction, Fraction] = (Fraction(410), Fraction(40)),
    tenon: Fraction = Fraction(25),
) -> Sloped:
    """A leg that leans to E and to F."""
    lean = Lean(slopes, heights[0])
    across = ((section[0], slopes[0]), (section[1], slopes[1]))
    return sloped(lean, across, heights, tenon, Fraction(1))


def test_a_leg_worked_by_hand() -> None:
    # 1 in 8 and 1 in 12 of 38: the corners of a square foot differ by 4.75 + 3.1667 = 7.917, and
    # 3 more, in whole mm, is 11 of height.  Along the slope 11 is 11 x 1.011222 = 11.123: the
    # middle of the foot lies 11.123 - 3.958 = 7.165 from the end.  410 is 414.601 along the
    # slope: the shoulder is at 421.766.  The tenon: 40.449 in the seat, 12.5 x 0.15023 = 1.878
    # for its slanting end and 3 more: 467.09, which is 468 in whole mm.
    found = leg((Fraction(1, 8), Fraction(1, 12)))
    factor = sqrt(1 + 1 / 64 + 1 / 144)
    assert factor == pytest.approx(1.011222, abs=1e-6)
    assert found.over == 11
    assert float(found.shoulder) == pytest.approx(421.766, abs=0.002)
    assert float(found.tenon) == pytest.approx(40.449, abs=0.001)
    assert found.length == 468
    assert float(found.stands_out) == pytest.approx(468 - 421.766 - 40.449, abs=0.003)


def test_the_shoulder_is_nearer_to_the_foot_on_the_outside() -> None:
    # Half of 38 / 8 + 38 / 12 on either side of the middle, 421.766.
    corners = shoulder_corners(
        OUTWARD, leg((Fraction(1, 8), Fraction(1, 12))), (Fraction(38), Fraction(38))
    )
    told = {"".join(sorted(sides)): round(float(at), 1) for sides, at in corners.items()}
    assert told == {"EF": 417.8, "BE": 421.0, "E2F": 422.6, "BE2": 425.7}


def test_the_resultant_is_the_tangent_of_both() -> None:
    # Common practice: tan r = root of tan a squared + tan b squared.
    a, b = 7 * pi / 180, 11 * pi / 180
    slopes = [Fraction(round(tan(each) * 10**6), 10**6) for each in (a, b)]
    resultant = degrees(atan(hypot(tan(a), tan(b))))
    assert float(angle_of(steepest(slopes))) == pytest.approx(resultant, abs=0.0002)


def test_the_corner_of_a_hopper_at_45_degrees_is_a_published_point() -> None:
    """Four sides at 45 degrees: mitre 35.2644 (tests/published/mitres.csv).

    The corner in which two such sides meet leans as a leg splayed 1 in 1 both ways, and the mitre
    is what its angle leaves to 90.
    """
    assert float(90 - angle_of(steepest((Fraction(1), Fraction(1))))) == pytest.approx(
        35.2644, abs=0.0001
    )


ratios = st.fractions(min_value=0, max_value=Fraction(9, 16), max_denominator=48)
sizes = st.fractions(min_value=20, max_value=90, max_denominator=8)


@given(ratios, ratios, sizes, sizes, st.integers(150, 900), st.integers(18, 60))
def test_the_bar_tipped_over_stands_as_it_is_told(
    wide: Fraction, deep: Fraction, width: Fraction, thickness: Fraction, high: int, seat: int
) -> None:
    if not (wide or deep):
        return
    heights = (Fraction(high), Fraction(seat))
    tenon = min(width, thickness) * Fraction(5, 8)
    found = leg((wide, deep), (width, thickness), heights, tenon)
    slope = hypot(wide, deep)
    turn = atan(slope)

    def up(x: float, y: float, along: float) -> float:
        """How high a point of the bar is over the shoulder's middle when the bar is tipped."""
        outwards = (x * float(wide) + y * float(deep)) / slope
        return along * cos(turn) + outwards * sin(turn)

    half = float(width) / 2, float(thickness) / 2
    corners = [(x * half[0], y * half[1]) for x in (-1, 1) for y in (-1, 1)]
    ends = [up(x, y, -float(found.shoulder)) for x, y in corners]
    assert min(ends) == pytest.approx(-float(high + found.over), abs=0.003)
    assert max(ends) < -high
    shoulder = shoulder_corners(OUTWARD, found, (width, thickness))
    for edge, (_, sign) in EDGES.items():
        for face, (_, other) in FACES.items():
            at = float(shoulder[frozenset((edge, face))] - found.shoulder)
            assert up(sign * half[0], other * half[1], at) == pytest.approx(0, abs=0.002)
    rim = float(found.length - found.shoulder) * cos(turn) - float(tenon) / 2 * sin(turn)
    assert rim >= seat
    # No longer than it has to be: what is sawn off is a few mm.
    assert float(found.stands_out) <= float(tenon) / 2 * slope + 4.1
