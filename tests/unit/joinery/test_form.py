"""What a cut that is no box surely takes, and what it may reach, against points one by one."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dryfit.geometry.box import Box, Triple
from dryfit.joinery.form import Region
from dryfit.joinery.slopes import DIAGONAL, rise

OUTER = Box((Fraction(0), Fraction(0), Fraction(0)), (Fraction(12), Fraction(8), Fraction(30)))


def box(*pairs: tuple[int, int]) -> Box:
    low = tuple(Fraction(pair[0]) for pair in pairs)
    high = tuple(Fraction(pair[1]) for pair in pairs)
    return Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))


def goes(region: Region, point: Triple) -> bool:
    """Whether the cut removes a point, from the definition of its form: our own second way."""
    assert region.toward is not None
    (axis, side), (other, other_side) = region.face, region.toward

    def share(at: int, facing: int) -> Fraction:
        low, high = region.box.low[at], region.box.high[at]
        return (point[at] - low if facing < 0 else high - point[at]) / (high - low)

    deep, beside = share(axis, side), share(other, other_side)
    if region.form == "curve":
        half, rise = region.box.extent(other) / 2, region.box.extent(axis)
        if rise > half:
            return deep <= 1 - (2 * beside - 1) ** 2
        # Inside the circle through the ends of the span and the top of the rise.
        radius = half**2 / (2 * rise) + rise / 2
        return (half * (2 * beside - 1)) ** 2 + (radius - rise * (1 - deep)) ** 2 <= radius**2
    if region.form == "round-over":
        return (deep - 1) ** 2 + (beside - 1) ** 2 >= 1
    return deep + beside <= 1


def points(inside: Box) -> Iterator[Triple]:
    steps = [Fraction(step, 6) for step in range(7)]
    for shares in product(steps, repeat=3):
        at = [inside.low[i] + share * inside.extent(i) for i, share in enumerate(shares)]
        yield at[0], at[1], at[2]


FORMS = st.sampled_from(["taper", "chamfer", "bevel", "key slot", "round-over", "curve"])
FACES = st.sampled_from(
    [
        ((axis, side), (other, far))
        for axis in range(3)
        for other in range(3)
        if axis != other
        for side in (-1, 1)
        for far in (-1, 1)
    ]
)


@st.composite
def inner_boxes(draw: st.DrawFn) -> Box:
    pairs = []
    for high in OUTER.high:
        ends = draw(st.lists(st.integers(0, int(high)), min_size=2, max_size=2, unique=True))
        pairs.append((min(ends), max(ends)))
    return box(*pairs)


@given(form=FORMS, faces=FACES, inside=inner_boxes())
def test_what_is_surely_taken_is_gone_at_every_point_and_only_then(
    form: str, faces: tuple[tuple[int, int], tuple[int, int]], inside: Box
) -> None:
    region = Region(OUTER, faces[0], form, faces[1])
    corners = product(*zip(inside.low, inside.high, strict=True))
    assert region.takes(inside) == all(goes(region, (x, y, z)) for x, y, z in corners)
    if region.takes(inside):
        assert all(goes(region, point) for point in points(inside))


@given(form=FORMS, faces=FACES, inside=inner_boxes())
def test_what_is_not_met_keeps_every_point(
    form: str, faces: tuple[tuple[int, int], tuple[int, int]], inside: Box
) -> None:
    region = Region(OUTER, faces[0], form, faces[1])
    inner = [p for p in points(inside) if all(a < b < c for a, b, c in zip(
        inside.low, p, inside.high, strict=True))]  # fmt: skip
    if not region.meets(inside):
        assert not any(goes(region, point) for point in inner)


def test_a_box_takes_all_and_a_moulding_surely_nothing() -> None:
    inside = box((1, 2), (1, 2), (1, 2))
    assert Region(OUTER, (0, -1)).takes(inside)
    assert not Region(OUTER, (0, -1), "profile", (1, -1)).takes(inside)
    assert Region(OUTER, (0, -1), "profile", (1, -1)).meets(inside)
    assert not Region(OUTER, (0, -1), "chamfer").takes(inside)
    assert Region(OUTER, (0, -1), "chamfer").meets(inside)


def test_nothing_outside_is_met() -> None:
    beyond = box((12, 13), (0, 8), (0, 30))
    assert not Region(OUTER, (0, -1)).meets(beyond)
    assert not Region(OUTER, (0, -1)).takes(beyond)


@pytest.mark.parametrize(
    ("degrees", "tangent"),
    [
        # Of any table of tangents.
        (45, "1"),
        (10, "0.17632698"),
        (30, "0.57735027"),
        (60, "1.73205081"),
        (1, "0.01745506"),
    ],
)
def test_a_slope_is_never_taken_less_steep_than_it_is(degrees: int, tangent: str) -> None:
    over = rise(Fraction(degrees)) - Fraction(tangent)
    assert 0 <= over <= Fraction(1, 10_000)


def test_the_diagonal_of_a_square_is_a_hair_too_long() -> None:
    assert 0 < DIAGONAL**2 - 2 < Fraction(1, 4000)
