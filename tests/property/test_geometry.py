"""Solids and hidden lines against slow oracles that know nothing of intervals or grids."""

from fractions import Fraction
from math import dist

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from dryfit.geometry.box import Box, Triple
from dryfit.geometry.hidden_lines import Piece, Scene, picture_lines
from dryfit.geometry.shape import plain
from dryfit.geometry.solid import Edge, Solid
from dryfit.geometry.view import View

SIDES = st.integers(min_value=0, max_value=4)
VIEWS = st.sampled_from([(5, -9, 6), (1, -1, 1), (3, -2, 1), (0, -1, 0), (0, 0, 1), (0, -2, 1)])


def box_of(corners: tuple[int, ...]) -> Box:
    low, high = corners[:3], corners[3:]
    return Box(
        (Fraction(low[0]), Fraction(low[1]), Fraction(low[2])),
        (Fraction(high[0]), Fraction(high[1]), Fraction(high[2])),
    )


@st.composite
def boxes(draw: st.DrawFn) -> Box:
    ends = [sorted(draw(st.lists(SIDES, min_size=2, max_size=2, unique=True))) for _ in range(3)]
    return box_of((ends[0][0], ends[1][0], ends[2][0], ends[0][1], ends[1][1], ends[2][1]))


SOLIDS = st.builds(Solid, boxes(), st.lists(boxes(), max_size=2).map(tuple))
SCENES = st.lists(SOLIDS, min_size=1, max_size=3)


def centres(solid: Solid) -> list[Triple]:
    """The middles of the unit cubes inside the outside box."""
    low, high = solid.outside.low, solid.outside.high
    half = Fraction(1, 2)
    return [
        (x + half, y + half, z + half)
        for x in range(int(low[0]), int(high[0]))
        for y in range(int(low[1]), int(high[1]))
        for z in range(int(low[2]), int(high[2]))
    ]


def by_inclusion(outside: Box, cuts: tuple[Box, ...]) -> Fraction:
    """Volume of a box less the union of cuts, by inclusion and exclusion."""
    total = outside.volume()
    for chosen in range(1, 2 ** len(cuts)):
        common: Box | None = outside
        for at, cut in enumerate(cuts):
            if common and chosen >> at & 1:
                common = common.overlap(cut)
        if common:
            total += common.volume() * (-1) ** chosen.bit_count()
    return total


def middle_of(edge: Edge) -> Triple:
    x, y, z = ((edge.start[axis] + edge.end[axis]) / 2 for axis in range(3))
    return x, y, z


def length_of(edge: Edge) -> Fraction:
    return edge.end[edge.axis] - edge.start[edge.axis]


@given(SOLIDS)
def test_volume_is_that_of_the_unit_cubes_and_of_inclusion(solid: Solid) -> None:
    cubes = sum(1 for centre in centres(solid) if solid.contains(centre))
    assert solid.volume() == cubes == by_inclusion(solid.outside, solid.cuts)


@given(SOLIDS)
def test_largest_boxes_cover_every_inner_point_off_their_faces(solid: Solid) -> None:
    largest = [Solid(box) for box in solid.largest_boxes()]
    low = solid.outside.low
    for centre in centres(solid):
        for shift in (Fraction(0), Fraction(1, 2)):  # middles, and corners of the unit cubes
            point = (centre[0] - shift, centre[1] - shift, centre[2] - shift)
            inside = solid.contains(point) and all(point[axis] > low[axis] for axis in range(3))
            if inside:
                assert any(box.contains(point) for box in largest)
    for box in largest:
        assert all(solid.contains(centre) for centre in centres(box))


@given(SOLIDS)
def test_edges_of_a_mirrored_solid_are_the_mirrored_edges(solid: Solid) -> None:
    def mirrored(box: Box) -> Box:
        return Box((-box.high[0], box.low[1], box.low[2]), (-box.low[0], box.high[1], box.high[2]))

    def flipped(edge: Edge) -> Edge:
        start = (-edge.start[0], *edge.start[1:])
        end = (-edge.end[0], *edge.end[1:])
        return Edge(edge.axis, end, start) if edge.axis == 0 else Edge(edge.axis, start, end)

    other = Solid(mirrored(solid.outside), tuple(mirrored(cut) for cut in solid.cuts))
    assert {flipped(edge) for edge in solid.edges()} == set(other.edges())


@given(SOLIDS)
def test_the_middle_of_an_edge_has_wood_and_air_round_it_and_is_no_flat_face(solid: Solid) -> None:
    for edge in solid.edges():
        first, second = (axis for axis in range(3) if axis != edge.axis)
        around = []
        for a, b in ((-1, -1), (1, -1), (1, 1), (-1, 1)):
            point = list(middle_of(edge))
            # An edge ends at whole numbers: its middle may lie on a seam, a quarter aside does not.
            point[edge.axis] += Fraction(1, 8)
            point[first] += Fraction(a, 4)
            point[second] += Fraction(b, 4)
            around.append(solid.contains((point[0], point[1], point[2])))
        assert sum(around) in {1, 3} or around in ([True, False, True, False], [False, True] * 2)


@settings(max_examples=50)
@given(SCENES, VIEWS)
def test_hidden_and_visible_pieces_make_up_every_edge(
    solids: list[Solid], towards: tuple[int, int, int]
) -> None:
    pieces = list(Scene([plain(solid) for solid in solids], View(towards)).pieces())
    for index, solid in enumerate(solids):
        whole = sum(
            length_of(edge)
            for edge in solid.edges()
            if any(towards[axis] for axis in range(3) if axis != edge.axis)
        )
        drawn = sum(dist(piece.start, piece.end) for piece in pieces if piece.solid == index)
        assert drawn == pytest.approx(float(whole), abs=1e-6)


@given(boxes(), st.integers(1, 4))
def test_a_box_behind_a_bigger_one_is_wholly_hidden(box: Box, gap: int) -> None:
    towards = (0, -1, 0)
    wall = Solid(box_of((-1, -gap - 2, -1, 7, -gap, 7)))
    pieces = list(Scene([plain(Solid(box)), plain(wall)], View(towards)).pieces())
    assert [piece for piece in pieces if piece.solid == 0 and piece.visible] == []
    assert [piece for piece in pieces if piece.solid == 1 and piece.visible] != []


@settings(max_examples=50)
@given(SCENES)
def test_lines_on_top_of_one_another_are_drawn_once(solids: list[Solid]) -> None:
    def drawn(of: list[Solid]) -> tuple[object, ...]:
        scene = Scene([plain(solid) for solid in of], View((5, -9, 6)))
        return picture_lines(scene, (piece for piece in scene.pieces() if piece.visible))

    assert drawn(solids) == drawn([*solids, *solids])


def test_a_piece_says_which_solid_it_belongs_to() -> None:
    pieces = Scene([plain(Solid(box_of((0, 0, 0, 1, 1, 1))))], View((5, -9, 6))).pieces()
    assert {piece.solid for piece in pieces if isinstance(piece, Piece)} == {0}
