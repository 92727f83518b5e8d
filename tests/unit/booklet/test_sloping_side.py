"""A side that slopes as it is drawn: turned out in space, its corners where four sides meet."""

import pytest
from tests.pieces.reading import model_of_piece

from dryfit.booklet.drawing.cut_shapes import cut_shapes, placed_copies
from dryfit.geometry.convex import Vector


def _close(one: Vector, two: Vector) -> bool:
    return all(abs(a - b) < 1e-6 for a, b in zip(one, two, strict=True))


def test_sides_are_drawn_turned_out_and_meet_in_plumb_corners() -> None:
    """By symmetry each corner of a side's end is one of its neighbour's too."""
    copies = placed_copies(model_of_piece("sloping_planter"))
    shapes = cut_shapes(copies)
    points = [
        tuple(dict.fromkeys(each for body in shape.bodies for each in body.corners()))
        for shape in shapes
    ]
    everything = [point for own in points for point in own]
    assert min(point[2] for point in everything) == pytest.approx(0)
    # Worked by hand in tests/unit/placing/test_sloping.py: 113 high, 344 wide at the bottom.
    assert max(point[2] for point in everything) == pytest.approx(112.8, abs=0.1)
    low = [point[0] for point in everything if point[2] < 0.1]
    assert max(low) - min(low) == pytest.approx(343.7, abs=0.2)
    by_name = dict(zip((copy.name for _, copy in copies), points, strict=True))
    front, left = by_name["front long side"], by_name["left short side"]
    shared = [one for one in front if any(_close(one, two) for two in left)]
    assert len(shared) >= 4
    assert all(point[0] == pytest.approx(point[1]) for point in shared)
