from fractions import Fraction

import pytest

from dryfit.geometry.box import Box
from dryfit.geometry.solid import Edge, Solid


def box(*sides: int) -> Box:
    x, x2, y, y2, z, z2 = (Fraction(side) for side in sides)
    return Box((x, y, z), (x2, y2, z2))


BLOCK = box(0, 10, 0, 20, 0, 30)


def test_a_block_has_twelve_edges() -> None:
    edges = Solid(BLOCK).edges()
    assert len(edges) == 12
    assert [sum(1 for edge in edges if edge.axis == axis) for axis in range(3)] == [4, 4, 4]


def test_a_trench_takes_its_volume_and_breaks_two_edges() -> None:
    trenched = Solid(BLOCK).cut(box(0, 10, 5, 10, 25, 30))
    assert trenched.volume() == 10 * 20 * 30 - 10 * 5 * 5
    # Along y: two lower edges whole, two upper ones in two pieces each, two at the trench's floor.
    along_y = [edge for edge in trenched.edges() if edge.axis == 1]
    assert len(along_y) == 2 + 4 + 2
    nought, edge = Fraction(0), Fraction(30)
    assert Edge(1, (nought, nought, edge), (nought, Fraction(5), edge)) in along_y


def test_cuts_that_touch_leave_no_wall_between_them() -> None:
    in_two = Solid(BLOCK, (box(0, 10, 0, 5, 20, 30), box(0, 10, 5, 12, 20, 30)))
    in_one = Solid(BLOCK, (box(0, 10, 0, 12, 20, 30),))
    assert set(in_two.edges()) == set(in_one.edges())
    assert not in_two.contains((Fraction(5), Fraction(5), Fraction(25)))


def test_the_seam_of_a_flat_face_is_no_edge() -> None:
    notched = Solid(BLOCK).cut(box(0, 5, 0, 20, 15, 30))
    on_face = [
        edge
        for edge in notched.edges()
        if edge.axis == 1 and edge.start[0] == 10 and edge.start[2] == 15
    ]
    assert on_face == []


def test_a_cut_that_sticks_out_or_misses_counts_only_inside() -> None:
    assert Solid(BLOCK, (box(-5, 5, -5, 25, 20, 99),)).volume() == 10 * 20 * 30 - 5 * 20 * 10
    assert Solid(BLOCK, (box(10, 20, 0, 20, 0, 30),)).volume() == BLOCK.volume()


def test_a_solid_cut_away_has_nothing_left() -> None:
    nothing = Solid(BLOCK).cut(BLOCK)
    assert nothing.volume() == 0
    assert nothing.edges() == ()
    assert nothing.largest_boxes() == ()


@pytest.mark.parametrize(
    ("point", "inside"),
    [((5, 10, 15), True), ((0, 10, 15), False), ((5, 10, 28), False), ((5, 10, 25), False)],
)
def test_contains_is_true_only_off_every_face(point: tuple[int, int, int], *, inside: bool) -> None:
    trenched = Solid(BLOCK).cut(box(0, 10, 5, 15, 25, 30))
    at = (Fraction(point[0]), Fraction(point[1]), Fraction(point[2]))
    assert trenched.contains(at) is inside


def test_largest_boxes_of_a_corner_lap_are_its_two_arms() -> None:
    lapped = Solid(BLOCK).cut(box(5, 10, 0, 20, 20, 30))
    assert set(lapped.largest_boxes()) == {box(0, 5, 0, 20, 0, 30), box(0, 10, 0, 20, 0, 20)}
