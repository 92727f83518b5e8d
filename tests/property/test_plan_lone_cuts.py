"""Cuts with no mate come out of the plan as the notes want them."""

import tomllib

import pytest
from tests.property.plan_oracle import faults
from tests.property.plan_oracle.documents import SHIPPED, documents
from tests.unit.rehearsal.played import played

TABLE = """piece Table
units mm
overall 600 wide, 400 deep, 480 high
timber oak
4 legs, upright, 45 x 45, at corners
2 aprons, across, on edge, 90 x 20, at front and back,
    tenon 14 long 8 thick 40 wide, 20 from bottom, into legs
glue up pairs: legs, aprons
"""
LINES = (
    "groove in aprons: inside, 6 wide, 6 deep, 8 from top, through",
    "groove in aprons: inside, 6 wide, 6 deep, 8 from top, stopped 60 from left",
    "groove in legs: outside, 20 wide, 6 deep, 30 from bottom, through",
    "groove in legs: bottom end, 6 wide, 10 deep, centred, through",
    "rabbet in aprons: bottom inside edge, 8 wide, 6 deep, through",
    "rabbet in aprons: top inside edge, 8 wide, 6 deep, stopped 60 from left",
    "rabbet in legs: bottom outside end, 20 wide, 6 deep, through",
    "rabbet in pairs: back inner edge, 8 wide, 6 deep, after glue up pairs",
    "holes in aprons: inside, 8 dia, 12 deep, 20 from bottom, 200 from left",
    "holes in aprons: inside, 5 dia, through, rows 20 from bottom, 6 at 32 from 100",
    "hole in legs: bottom end, 8 dia, 30 deep, centred",
    "notch in aprons: bottom edge, 60 wide, 20 deep, 200 from left",
    "slot in aprons: outside, 20 wide, 80 long, through, 20 from bottom",
    "taper in legs: inside faces, from 120 below the top to the bottom end, 45 to 30",
    "taper in legs: left face, from 120 below the top to the bottom end, 45 to 30",
    "taper in legs: all faces, from 120 below the top to the bottom end, 45 to 30",
    "taper in legs: left and right faces, from 120 below the top to the bottom end, 45 to 30",
    "curve in aprons: bottom edge, 25 deep",
    "bevel in aprons: bottom edge, 10 degrees",
    "bevel in legs: bottom end, 10 degrees",
    "bevel in legs: right outside edge, 5 degrees",
)


@pytest.mark.parametrize("line", LINES)
def test_the_plan_cuts_what_the_line_says(line: str) -> None:
    made, errors = documents(f"{TABLE}{line}\n")
    assert made is not None, errors
    steps, parts = made
    shop = tomllib.loads(SHIPPED.read_text(encoding="utf-8"))
    assert faults(steps, parts, shop) == []


@pytest.mark.parametrize("edge", ["front edge", "left edge"])
def test_a_bevel_is_cut_across_the_grain_as_along_it(edge: str) -> None:
    # Across an end a bevel is a mitre cut.
    text = f"""piece Board
units mm
overall 300 wide, 400 deep, 20 high
timber oak
1 board, front to back, flat, 400 x 300 x 20
bevel in board: {edge}, 15 degrees
"""
    made, errors = documents(text)
    assert made is not None, errors
    assert faults(*made, tomllib.loads(SHIPPED.read_text(encoding="utf-8"))) == []
    assert played(text).said() == ""
