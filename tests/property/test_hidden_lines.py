"""What is drawn as seen or hidden, against rays that walk through the wood point by point.

The rays know nothing of faces, outlines or intervals: between two planes of the scene they ask at
one point whether there is wood, by the sums that say what a slanting cut takes.
"""

from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from dryfit.geometry.box import Box
from dryfit.geometry.edges import Line
from dryfit.geometry.hidden_lines import Piece, Scene
from dryfit.geometry.shape import Shape, carved
from dryfit.geometry.view import View
from dryfit.joinery.form import Region, Side
from dryfit.joinery.wood_left import carving_in

VIEWS = st.sampled_from([(5, -9, 6), (1, -1, 1), (3, -2, 1), (0, -1, 0), (0, 0, 1), (0, -2, 1)])
SIDES = st.integers(min_value=0, max_value=4)
HAIR = 2e-3
LOOKED_AT = 16
Point = tuple[float, float, float]


@dataclass(frozen=True, slots=True)
class Wood:
    """A box less regions, asked by their own sums; all of it moved aside by a shear along x."""

    outside: Box
    regions: tuple[Region, ...]
    lean: float = 0.0

    def shape(self) -> Shape:
        carvings = [carving for region in self.regions if (carving := carving_in(region))]
        shape = carved(self.outside, carvings)
        return shape.mapped(lambda at: (at[0] + self.lean * at[2], at[1], at[2]))

    def at(self, point: Point) -> bool:
        point = point[0] - self.lean * point[2], point[1], point[2]
        if not _inside(self.outside, point):
            return False
        return not any(
            _inside(region.box, point)
            and (region.toward is None
                 or _share(region.box, region.face, point)
                 + _share(region.box, region.toward, point) < 1)
            for region in self.regions
        )  # fmt: skip

    def crossings(self, start: Point, way: Point) -> list[float]:
        """Where a ray passes through a plane of the wood, and some places besides."""
        x, y, z = start[0] - self.lean * start[2], start[1], start[2]
        u, v, w = way[0] - self.lean * way[2], way[1], way[2]
        found = []
        for box in (self.outside, *(region.box for region in self.regions)):
            for at, by, axis in ((x, u, 0), (y, v, 1), (z, w, 2)):
                if by:
                    found += [(float(side[axis]) - at) / by for side in (box.low, box.high)]
        for region in self.regions:
            if region.toward is not None:
                sides = (region.face, region.toward)
                here = sum(_share(region.box, side, (x, y, z)) for side in sides) - 1
                there = sum(_share(region.box, side, (x + u, y + v, z + w)) for side in sides) - 1
                found += [here / (here - there)] if here != there else []
        return found


def _inside(box: Box, point: Point) -> bool:
    return all(box.low[axis] < point[axis] < box.high[axis] for axis in range(3))


def _share(box: Box, side: Side, point: Point) -> float:
    axis, sign = side
    low, high = float(box.low[axis]), float(box.high[axis])
    return ((high - point[axis]) if sign > 0 else (point[axis] - low)) / (high - low)


@st.composite
def boxes(draw: st.DrawFn) -> Box:
    ends = [sorted(draw(st.lists(SIDES, min_size=2, max_size=2, unique=True))) for _ in range(3)]
    low, high = (tuple(Fraction(end[at]) for end in ends) for at in (0, 1))
    return Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))


@st.composite
def regions(draw: st.DrawFn) -> Region:
    axis = draw(st.integers(0, 2))
    face, toward = (axis, draw(st.sampled_from([-1, 1]))), None
    slants = draw(st.booleans())
    if slants:
        toward = ((axis + draw(st.integers(1, 2))) % 3, draw(st.sampled_from([-1, 1])))
    return Region(draw(boxes()), face, "chamfer" if slants else None, toward)


LEANS = st.sampled_from([0.0, 0.0, 0.25])
WOODS = st.builds(Wood, boxes(), st.lists(regions(), max_size=3).map(tuple), LEANS)
SCENES = st.lists(WOODS, min_size=1, max_size=3)


def hits(woods: list[Wood], start: Point, way: Point) -> bool:
    stops = sorted(at for wood in woods for at in wood.crossings(start, way) if at > 0)
    for begin, end in pairwise([0.0, *stops]):
        if end - begin < 1e-9:
            continue
        middle = (begin + end) / 2
        x, y, z = (a + middle * b for a, b in zip(start, way, strict=True))
        if any(wood.at((x, y, z)) for wood in woods):
            return True
    return False


def beside(point: Point, view: View) -> list[Point]:
    """The point moved by a hair to each corner of the picture, and out of an inner corner."""
    right, up, near = view.axes()
    return [
        (
            point[0] + HAIR * (a * right[0] + b * up[0] + 9 * near[0]),
            point[1] + HAIR * (a * right[1] + b * up[1] + 9 * near[1]),
            point[2] + HAIR * (a * right[2] + b * up[2] + 9 * near[2]),
        )
        for a, b in ((1, 0.3), (-0.3, 1), (-1, -0.3), (0.3, -1))
    ]


@settings(max_examples=120, deadline=None)
@given(SCENES, VIEWS)
def test_each_piece_is_what_rays_from_it_meet(
    woods: list[Wood], towards: tuple[int, int, int]
) -> None:
    view = View(towards)
    way = float(towards[0]), float(towards[1]), float(towards[2])
    pieces = list(Scene([wood.shape() for wood in woods], view).pieces())
    for piece in pieces[:: max(1, len(pieces) // LOOKED_AT)]:
        found = [hits(woods, point, way) for point in beside(_inner(piece), view)]
        # Along an edge of what stands before it a line may be either: some rays hit, some miss.
        assert not all(found) if piece.visible else any(found)


def _inner(piece: Piece) -> Point:
    x, y, z = (a + (b - a) * 37 / 101 for a, b in zip(piece.start, piece.end, strict=True))
    return x, y, z


@settings(max_examples=120, deadline=None)
@given(WOODS)
def test_round_an_edge_the_wood_is_neither_whole_nor_half(wood: Wood) -> None:
    """Round the middle of a line of a solid there is wood and air, and no plane parts them."""
    for line in wood.shape().lines:
        around = [wood.at(point) for point in _ring(line)]
        assert any(around)
        assert not all(around)
        # Of a flat face one half of the ring is wood: here some opposite points are alike.
        half = len(around) // 2
        assert any(around[at] == around[at + half] for at in range(half))


def _ring(line: Line) -> list[Point]:
    """Points round a line near its middle, close to one another, none on a plane of a slope."""
    from math import cos, pi, sin

    from dryfit.geometry.convex import axes_beside

    way = tuple(b - a for a, b in zip(line.start, line.end, strict=True))
    length = sum(step * step for step in way) ** 0.5
    one, two = axes_beside((way[0] / length, way[1] / length, way[2] / length))
    middle = [a + (b - a) * 0.4871 for a, b in zip(line.start, line.end, strict=True)]
    points = []
    for step in range(180):
        turn = 2 * pi * (step + 0.377) / 180
        right, up = HAIR * cos(turn), HAIR * sin(turn)
        x, y, z = (at + right * a + up * b for at, a, b in zip(middle, one, two, strict=True))
        points.append((x, y, z))
    return points


def test_a_round_edge_shows_its_tangents_and_an_outline_but_no_facets() -> None:
    ten = Fraction(10)
    box = Box((Fraction(0),) * 3, (ten, ten, ten))
    edge = Box((Fraction(0), Fraction(0), Fraction(6)), (ten, Fraction(4), ten))
    carving = carving_in(Region(edge, (2, 1), "round-over", (1, -1)))
    assert carving is not None
    shape = carved(box, [carving])
    ways = [line for line in shape.lines if abs(line.end[0] - line.start[0]) == pytest.approx(10)]
    edges = [line for line in ways if line.beside is None]
    # Of the four edges along x one gave way to two tangents, at 6 up and 4 back.
    assert sorted((round(line.start[1], 6), round(line.start[2], 6)) for line in edges) == [
        (0, 0), (0, 6), (4, 10), (10, 0), (10, 10)
    ]  # fmt: skip
    scene = Scene([shape], View((1, 0, 0)))
    seen = [piece for piece in scene.pieces() if piece.visible]
    assert len({(piece.start, piece.end) for piece in seen}) == len(seen)
    # From the right the end shows, with the facets of its round corner as its outline.
    assert all(piece.start[0] == pytest.approx(10) for piece in seen)


def test_an_arch_is_cut_to_its_rise_in_the_middle() -> None:
    box = Box((Fraction(0),) * 3, (Fraction(100), Fraction(20), Fraction(40)))
    under = Box((Fraction(10), Fraction(0), Fraction(0)), (Fraction(90), Fraction(20), Fraction(8)))
    carving = carving_in(Region(under, (2, -1), "curve", (0, 1)))
    assert carving is not None
    shape = carved(box, [carving])
    for x in (12.0, 30.0, 50.0, 71.0):
        # A part of a circle: its radius is (40 x 40 + 8 x 8) / (2 x 8) = 104.
        deep = (104 * 104 - (x - 50) ** 2) ** 0.5 - 104 + 8
        assert not shape.has_wood((x, 10.0, deep - 0.1))
        assert shape.has_wood((x, 10.0, deep + 0.1))
