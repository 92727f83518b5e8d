"""A housing runs out where a rabbet takes all that it would cut on its way to the edge."""

from fractions import Fraction

import pytest
from tests.pieces.reading import model_of

CASE = """
piece Case
units mm
overall 500 wide, 200 deep, 700 high
timber oak
2 sides, upright, facing side, 200 x 20, at left and right
1 top, flat, 20 thick, between sides, housing 6, flush with top of sides
1 bottom, flat, 20 thick, between sides, housing 6, flush with bottom of sides
1 shelf, flat, 190 x 20, 0 from front, between sides, housing {housing}, up 300
1 back, upright, facing front, 10 thick, inside sides and top and bottom, rabbet 8
glue up case: sides, top, bottom, shelf
finish oil, 2 coats
"""


@pytest.mark.parametrize(("housing", "across"), [(7, (0, 200)), (8, (0, 200)), (9, (10, 200))])
def test_a_shelf_before_a_back_is_housed_from_edge_to_edge(
    housing: int, across: tuple[int, int]
) -> None:
    # The rabbet is 10 wide and 8 deep: a housing no deeper meets no wood there.
    model = model_of(CASE.format(housing=housing))
    (trench,) = (each for each in model.part("side").features if each.mate == "shelf")
    assert trench.across == tuple(map(Fraction, across))
    assert trench.along[1] - trench.along[0] == 20
