"""Joints as pure functions: what they remove makes the shared region, no more and no less.

Depths of laps: TRADE B1.1 and B1.3 (common practice): d1 + d2 = T, and of unequal parts that are
flush on one face the thinner's thickness; the example there, 30 and 22 flush on top, is 11 and 11.
"""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.pieces.reading import mm

from dryfit.geometry.box import Box
from dryfit.joinery.cut import Cut, Placed
from dryfit.joinery.half_lap import half_lap
from dryfit.joinery.housing import housing
from dryfit.joinery.mortise_tenon import TenonSizes, mortise_and_tenon, tenon_box


def box(*bounds: tuple[int | Fraction, int | Fraction]) -> Box:
    low = tuple(Fraction(bound[0]) for bound in bounds)
    high = tuple(Fraction(bound[1]) for bound in bounds)
    return Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))


def placed(name: str, outer: Box, axes: tuple[int, int, int], outward: int = 1) -> Placed:
    return Placed(name, name, outer, axes, (outward, outward, outward))


def crossing(one: int, two: int, *, flush_high: bool) -> tuple[Placed, Placed, Box]:
    """Two flat parts, so thick, crossing at right angles, flush on top or underneath."""
    most = max(one, two)
    low = (most - one, most - two) if flush_high else (0, 0)
    first = placed("first", box((0, 300), (100, 150), (low[0], low[0] + one)), (0, 1, 2))
    second = placed("second", box((100, 160), (0, 400), (low[1], low[1] + two)), (1, 0, 2))
    region = first.box.overlap(second.box)
    assert region is not None
    return first, second, region


THICK = st.integers(10, 60)


@given(THICK, THICK, st.booleans())
def test_lap_depths_add_up_to_the_thinner_part(one: int, two: int, flush_high: bool) -> None:
    first, second, region = crossing(one, two, flush_high=flush_high)
    depths = [cut.box.extent(2) for cut in half_lap(first, second, region, 2, None)]
    assert sum(depths) == min(one, two)


@given(THICK, THICK, st.booleans())
def test_two_laps_share_out_their_region(one: int, two: int, flush_high: bool) -> None:
    first, second, region = crossing(one, two, flush_high=flush_high)
    cuts = half_lap(first, second, region, 2, None)
    inside = [cut.box.overlap(region) for cut in cuts]
    assert sum(part.volume() for part in inside if part) == region.volume()
    assert cuts[0].box.overlap(cuts[1].box) is None


def test_the_example_of_thirty_and_twenty_two() -> None:
    first, second, region = crossing(30, 22, flush_high=True)
    one, two = half_lap(first, second, region, 2, None)
    assert (one.box.extent(2), two.box.extent(2)) == mm(11, 11)
    assert one.side == 1  # the thicker is cut from the flush face
    assert two.side == -1  # the thinner from its back
    assert first.box.extent(2) - one.box.extent(2) == 19


def test_a_written_depth_is_the_first_parts_and_the_second_makes_up_for_it() -> None:
    first, second, region = crossing(20, 20, flush_high=True)
    one, two = half_lap(first, second, region, 2, None, Fraction(8))
    assert (one.box.extent(2), two.box.extent(2)) == mm(8, 12)


@pytest.mark.parametrize("outward", [1, -1])
def test_of_two_alike_the_first_keeps_its_outer_face(outward: int) -> None:
    first, second, region = crossing(20, 20, flush_high=True)
    first = placed("first", first.box, first.axes, outward)
    one, two = half_lap(first, second, region, 2, None)
    assert (one.side, two.side) == (-outward, outward)


@pytest.mark.parametrize(
    ("along", "kind"), [((0, 300), "cross slot"), ((100, 300), "end lap"), ((0, 160), "end lap")]
)
def test_a_lap_at_an_end_is_an_end_lap(along: tuple[int, int], kind: str) -> None:
    first = placed("first", box(along, (100, 150), (0, 20)), (0, 1, 2))
    second = placed("second", box((100, 160), (0, 400), (0, 20)), (1, 0, 2))
    region = first.box.overlap(second.box)
    assert region is not None
    one, two = half_lap(first, second, region, 2, None)
    assert (one.kind, two.kind) == (kind, "cross slot")


def tenoned(sizes: TenonSizes, end: int) -> tuple[Placed, Placed, Box, tuple[Cut, ...]]:
    at = (0, 45) if end < 0 else (400, 445)
    host = placed("leg", box(at, (0, 45), (0, 400)), (2, 0, 1))
    start, stop = 45 - int(sizes.length), 400 + int(sizes.length)
    rail = placed("rail", box((start, stop), (10, 32), (300, 390)), (0, 2, 1))
    region = rail.box.overlap(host.box)
    assert region is not None
    return rail, host, region, mortise_and_tenon(rail, host, region, end, sizes, None)


SIZES = st.builds(
    lambda length, thick, wide, low_shoulder, low_cheek: TenonSizes(
        Fraction(length),
        Fraction(thick),
        Fraction(wide),
        Fraction(1),
        Fraction(min(low_shoulder, 90 - wide)),
        Fraction(min(low_cheek, 22 - thick)),
    ),
    st.integers(10, 38),
    st.integers(4, 20),
    st.integers(20, 80),
    st.integers(0, 60),
    st.integers(0, 18),
)


@given(SIZES, st.sampled_from([-1, 1]))
def test_cheeks_and_shoulders_leave_just_the_tenon(sizes: TenonSizes, end: int) -> None:
    rail, _, region, cuts = tenoned(sizes, end)
    tenon = tenon_box(rail, region, sizes)
    for cut in cuts[1:]:
        assert cut.box.overlap(tenon) is None
    grid = [Fraction(n, 2) for n in range(1, 180)]
    middle = (region.low[0] + region.high[0]) / 2
    for y in grid[20:64:3]:
        for z in (300 + half for half in grid[::7]):
            wood = all(
                not (cut.box.low[1] < y < cut.box.high[1] and cut.box.low[2] < z < cut.box.high[2])
                for cut in cuts[1:]
                if cut.box.low[0] < middle < cut.box.high[0]
            )
            edges = {tenon.low[1], tenon.high[1], tenon.low[2], tenon.high[2]}
            if y not in edges and z not in edges:
                inside = tenon.low[1] < y < tenon.high[1] and tenon.low[2] < z < tenon.high[2]
                assert wood == inside


@given(SIZES, st.sampled_from([-1, 1]))
def test_the_mortise_is_the_tenon_and_room_for_glue(sizes: TenonSizes, end: int) -> None:
    rail, host, region, (mortise, *_) = tenoned(sizes, end)
    tenon = tenon_box(rail, region, sizes)
    assert mortise.box.overlap(tenon) == tenon
    assert mortise.box.extent(0) == sizes.length + sizes.gap
    assert (mortise.box.extent(1), mortise.box.extent(2)) == (sizes.thickness, sizes.width)
    opening = host.box.high[0] if end < 0 else host.box.low[0]
    assert opening in {mortise.box.low[0], mortise.box.high[0]}


def test_a_housing_is_as_wide_as_its_shelf_and_as_deep_as_it_enters() -> None:
    side = placed("side", box((0, 18), (0, 220), (0, 800)), (2, 1, 0), -1)
    shelf = placed("shelf", box((12, 588), (0, 220), (300, 318)), (0, 1, 2))
    region = shelf.box.overlap(side.box)
    assert region is not None
    cut = housing(shelf, side, region, (0, 1), None)
    assert (cut.kind, cut.mate) == ("cross slot", "shelf")
    assert (cut.box.extent(2), cut.box.extent(0)) == mm(18, 6)
