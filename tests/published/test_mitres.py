"""Mitres of polygons and compound mitres against published points and a derivation by vectors."""

import csv
from fractions import Fraction
from math import acos, atan2, cos, degrees, pi, sin, sqrt
from pathlib import Path

import pytest

from dryfit.geometry.mitre_angles import (
    compound_mitre,
    interior_angle,
    polygon_mitre,
    side_of_polygon,
)
from dryfit.joinery.mitre import ANGLE

TABLE = Path(__file__).parent / "mitres.csv"
ROWS = tuple(
    csv.DictReader(
        line for line in TABLE.read_text(encoding="utf-8").splitlines() if line[0] != "#"
    )
)
Vector = tuple[float, float, float]


@pytest.mark.parametrize("row", ROWS, ids=lambda row: f"{row['sides']} at {row['slope']}")
def test_a_point_is_met_to_the_decimals_that_are_published(row: dict[str, str]) -> None:
    found = compound_mitre(int(row["sides"]), Fraction(row["slope"]))
    for value, said in ((found.mitre, row["mitre"]), (found.tilt, row["tilt"])):
        decimals = len(said.partition(".")[2])
        assert abs(value - Fraction(said)) <= Fraction(6, 10 ** (decimals + 1)), row["source"]


@pytest.mark.parametrize(("sides", "mitre", "inside"), [(3, 60, 60), (4, 45, 90), (6, 30, 120)])
def test_flat_polygons_are_exact(sides: int, mitre: int, inside: int) -> None:
    """General formulae: 180 / n, and (n - 2) 180 / n inside."""
    assert polygon_mitre(sides) == mitre
    assert interior_angle(sides) == inside == Fraction((sides - 2) * 180, sides)
    # However many: all corners together turn once round.
    assert 2 * sides * polygon_mitre(sides) == 360


def test_the_mitre_of_a_frame_is_that_of_four_sides() -> None:
    assert polygon_mitre(4) == ANGLE


@pytest.mark.parametrize("sides", [3, 4, 5, 6, 8, 12])
@pytest.mark.parametrize("slope", [1, 15, 30, 45, 60, 80, 89])
def test_angles_agree_with_the_edge_in_which_two_boards_meet(sides: int, slope: int) -> None:
    """Derived anew: two planes that slope, their common edge, and the plane that halves them."""
    turn, rise = 2 * pi / sides, slope * pi / 180
    # Board 1 runs along x and rises away from the outside; board 2 is turned by a corner.
    along: Vector = (1.0, 0.0, 0.0)
    up: Vector = (0.0, cos(rise), sin(rise))
    one: Vector = (0.0, -sin(rise), cos(rise))
    two = (one[0] * cos(turn) - one[1] * sin(turn), one[0] * sin(turn) + one[1] * cos(turn), one[2])
    edge = _cross(one, two)
    # In the face of board 1 the edge leans from square by the mitre.
    leaning = degrees(atan2(abs(_dot(edge, along)), abs(_dot(edge, up))))
    # The blade lies in the plane that halves the boards: square to the difference of their faces.
    halving = (one[0] - two[0], one[1] - two[1], one[2] - two[2])
    tilt = 90 - degrees(acos(abs(_dot(halving, one)) / sqrt(_dot(halving, halving))))
    found = compound_mitre(sides, Fraction(slope))
    assert float(found.mitre) == pytest.approx(leaning, abs=1e-4)
    assert float(found.tilt) == pytest.approx(tilt, abs=1e-4)


def test_sides_of_polygons() -> None:
    """Side = flats * tan(180/n), read: 12 across the flats of an octagon are 12 (root 2 - 1)."""
    assert float(side_of_polygon(8, Fraction(12))) == pytest.approx(12 * (sqrt(2) - 1), abs=1e-4)
    assert side_of_polygon(4, Fraction(100)) == 100


@pytest.mark.parametrize(("sides", "slope"), [(2, 0), (4, -1), (4, 91)])
def test_what_is_no_polygon_or_no_slope_is_refused(sides: int, slope: int) -> None:
    with pytest.raises(ValueError, match=r"\d"):
        compound_mitre(sides, Fraction(slope))


def _dot(a: Vector, b: Vector) -> float:
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]


def _cross(a: Vector, b: Vector) -> Vector:
    return (
        a[1] * b[2] - a[2] * b[1],
        a[2] * b[0] - a[0] * b[2],
        a[0] * b[1] - a[1] * b[0],
    )
