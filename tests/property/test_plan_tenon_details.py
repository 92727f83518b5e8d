"""Tenons with more than their sizes come out of the plan as the notes want them."""

import tomllib

import pytest
from tests.property.plan_oracle import faults
from tests.property.plan_oracle.documents import SHIPPED, documents

TABLE = """piece Table base
units mm
overall 800 wide, 500 deep, 700 high
timber oak
4 legs, upright, 60 x 60, at corners
2 aprons, across, 100 x 24, {} into legs, flush with top of legs
2 side rails, front to back, 100 x 24, tenon 24 long 8 thick 40 wide into legs, up 300
glue up sides: 2 legs, 1 side rail
glue up base: sides, aprons
""".replace("glue up sides", "glue up 2 sides")

FRAME = """piece Late mortise
units mm
overall 600 wide, 340 deep, 430 high
timber ash
4 posts, upright, facing side, 45 x 30, at corners
2 end rails, front to back, on edge, 45 x 30, at left and right, flush with top of posts
posts crossing end rails: half lap
2 aprons, across, on edge, 100 x 22, flush with top of posts
aprons into posts: tenon 20 long 8 thick 40 wide, 30 from bottom, after glue up ends
glue up 2 ends: 2 posts, 1 end rail
glue up base: ends, aprons
"""


@pytest.mark.parametrize(
    "tenon",
    [
        "tenon 24 long 8 thick, shoulders 5 below 65 above",
        "tenon 24 long 8 thick 40 wide, offset 2 to front",
        "tenon 24 long 8 thick 40 wide, haunch 10 long",
        "2 tenons 24 long 8 thick 25 wide",
        "tenon 8 thick 40 wide, through, wedged",
        "tenon 24 long 8 thick 40 wide, pegs 8, drawbored",
    ],
)
def test_the_plan_cuts_what_is_said_of_a_tenon(tenon: str) -> None:
    made, errors = documents(TABLE.format(tenon))
    assert made is not None, errors
    steps, parts = made
    shop = tomllib.loads(SHIPPED.read_text(encoding="utf-8"))
    assert faults(steps, parts, shop) == []


def test_a_mortise_in_a_lap_is_cut_when_the_lap_is_glued() -> None:
    made, errors = documents(FRAME)
    assert made is not None, errors
    steps, parts = made
    shop = tomllib.loads(SHIPPED.read_text(encoding="utf-8"))
    assert faults(steps, parts, shop) == []
