"""The sum behind a width that was worked out: every term, and the figure that they make."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.pieces.reading import FILES, model_of, model_of_piece

from dryfit.placing.as_text import parts_table

FRAME = """piece Framed panel
units mm to 1
overall 400 wide, 22 deep, 560 high
timber walnut
2 stiles, upright, 50 x 22, at left and right
2 rails, across, 60 x 22, at top and bottom, tenon 30 long 8 thick into stiles
1 panel, facing front, 10 thick, inside stiles and rails, groove 9
glue up frame: stiles, rails, panel, cure 1 h
"""


def test_a_panels_width_is_the_sight_and_two_grooves_less_the_room_in_them() -> None:
    terms = model_of(FRAME).figures["panel.width"].terms
    # TRADE B9: sight 300 + 2 x 9 - 2 x gap; the gap is 2.5 in walnut of that width.
    assert [(term.label, term.amount) for term in terms] == [
        ("overall width", 400),
        ("groove in stile", 9),
        ("groove in stile", 9),
        ("room in the groove", Fraction(-5, 2)),
        ("width of stile", -50),
        ("width of stile", -50),
        ("room in the groove", Fraction(-5, 2)),
    ]


def test_the_printed_sum_adds_up_though_the_ruler_is_coarser() -> None:
    table = parts_table(model_of(FRAME))
    assert "width 313 = overall width 400 + groove in stile 9 + groove in stile 9 - " in table
    assert table.count("room in the groove 2.5") == 2


@pytest.mark.parametrize("name", FILES)
def test_the_terms_of_a_figure_make_it(name: str) -> None:
    for figure in model_of_piece(name).figures.values():
        if figure.terms:
            assert sum((term.amount for term in figure.terms), Fraction(0)) == figure.value
