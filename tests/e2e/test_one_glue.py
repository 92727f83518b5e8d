"""The glue to buy is the glue that the work is planned with, in `parts` and in the booklet."""

from __future__ import annotations

import pytest
from tests.pieces.reading import changed, checked

from dryfit import workshop
from dryfit.booklet.view import booklet_view
from dryfit.plan.operation import glues_of

# Four shelves in eight housings and a back in its grooves: to spread and to place them takes
# longer than the ten minutes that the shop's usual white glue allows.
CASE = """piece Case
overall 400 wide, 180 deep, 620 high
timber cherry
2 sides, upright, 180 x 18, at left and right
1 top, flat, 18 thick, between sides, housing 6, down 0
1 bottom, flat, 18 thick, between sides, housing 6, up 20
2 shelves, flat, 14 thick, set in 0 at front, 14 at back, between sides, housing 6, \
up 220 and 410
1 back, at back, set in 6 at back, upright, facing front, 6 thick, \
inside sides and top and bottom, groove 6
glue up case: sides, top, bottom, shelves, back
finish oil varnish
"""
SLOW = CASE
QUICK = changed(CASE, ("shelves, back\n", "shelves, back, two people\n"))
# Thirteen lines of glue in one board are too many for the white glue as well.
STAVES = """piece Board
overall 900 wide, 800 deep, 20 high
timber oak
1 board, flat, 20 thick, glued from 14
finish oil varnish
"""


def _silent(_words: str) -> None:
    """No terminal to show progress at."""


@pytest.mark.parametrize(
    ("text", "glue"),
    [(SLOW, "slow white glue"), (QUICK, "white glue"), (STAVES, "slow white glue")],
)
def test_the_glue_to_buy_is_that_of_the_plan(text: str, glue: str) -> None:
    found = checked(text)
    made, _ = workshop.plan(found, _silent)
    assert made is not None
    assert found.model is not None
    assert found.shop is not None
    operations = [operation for step in made.steps for operation in step.operations]
    assert set(glues_of(operations).values()) == {glue}

    listed = workshop.shopped(found)
    assert listed is not None
    in_parts = [(row.item, row.purpose) for row in listed.hardware]
    assert in_parts == [(glue, "the glue-ups"), ("oil varnish", in_parts[-1][1])]

    supplies = booklet_view(found.model, made, found.shop, found.findings).supplies
    assert [(item, purpose) for _, item, _, purpose in supplies.hardware] == in_parts
