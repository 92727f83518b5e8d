from fractions import Fraction

import pytest

from dryfit.geometry.box import Box
from dryfit.geometry.hidden_lines import Scene, joined, picture_lines
from dryfit.geometry.shape import Shape, carved
from dryfit.geometry.view import View


def block(*sides: str | int) -> Shape:
    x, x2, y, y2, z, z2 = (Fraction(side) for side in sides)
    return carved(Box((x, y, z), (x2, y2, z2)), ())


FRONT_RIGHT = View((5, -9, 6))


def test_a_block_shows_nine_edges_and_hides_three() -> None:
    pieces = list(Scene([block(0, 10, 0, 10, 0, 10)], FRONT_RIGHT).pieces())
    assert sum(piece.visible for piece in pieces) == 9
    assert sum(not piece.visible for piece in pieces) == 3


def test_the_front_view_of_a_block_is_four_lines() -> None:
    scene = Scene([block(0, 10, 0, 10, 0, 10)], View((0, -1, 0)))
    drawn = picture_lines(scene, (piece for piece in scene.pieces() if piece.visible))
    assert set(drawn) == {
        ((0.0, 0.0), (10.0, 0.0)),
        ((0.0, 10.0), (10.0, 10.0)),
        ((0.0, 0.0), (0.0, 10.0)),
        ((10.0, 0.0), (10.0, 10.0)),
    }


def test_a_shelf_hides_the_middle_of_an_edge_behind_it_exactly() -> None:
    edge_behind = block(0, 30, 20, 30, 0, 10)
    before = block("31/3", 20, 0, 5, -5, 15)
    pieces = [
        (piece.start[0], piece.end[0], piece.visible)
        for piece in Scene([edge_behind, before], View((0, -1, 0))).pieces()
        if piece.solid == 0 and piece.start[0] != piece.end[0] and piece.start[1:] == (20.0, 10.0)
    ]
    third = pytest.approx(31 / 3, abs=1e-3)
    twenty = pytest.approx(20, abs=1e-3)
    assert pieces == [(0, third, True), (third, twenty, False), (twenty, 30, True)]


def test_what_is_hidden_does_not_depend_on_the_order_of_the_solids() -> None:
    solids = [block(0, 5, 0, 5, 0, 5), block(3, 9, -4, 2, 1, 8), block(-2, 1, -6, -5, -3, 9)]

    def drawn(row: list[Shape]) -> set[object]:
        scene = Scene(row, FRONT_RIGHT)
        return set(picture_lines(scene, (piece for piece in scene.pieces() if piece.visible)))

    assert drawn(solids) == drawn(solids[::-1])


@pytest.mark.parametrize(
    ("towards", "point", "picture"),
    [
        ((0, -1, 0), (1, 2, 3), (1.0, 3.0)),
        ((1, 0, 0), (1, 2, 3), (2.0, 3.0)),
        ((0, 0, 1), (1, 2, 3), (1.0, 2.0)),
    ],
)
def test_straight_views_show_true_sizes(
    towards: tuple[int, int, int], point: tuple[int, int, int], picture: tuple[float, float]
) -> None:
    at = (Fraction(point[0]), Fraction(point[1]), Fraction(point[2]))
    assert View(towards).project(at) == picture


def test_a_point_is_hidden_by_what_stands_before_it_and_not_by_its_own_face() -> None:
    scene = Scene([block(0, 9, 0, 9, 0, 9), block(2, 4, -9, -3, 2, 4)], View((0, -1, 0)))
    assert scene.hides((Fraction(3), Fraction(0), Fraction(3)))
    assert not scene.hides((Fraction(6), Fraction(0), Fraction(6)))
    assert scene.hides((Fraction(6), Fraction(9), Fraction(6)))


def test_touching_intervals_are_joined() -> None:
    assert joined([(3, 5), (0, 1), (1, 2), (4, 9)]) == ((0, 2), (3, 9))
