"""A groove must leave wood beside it (TRADE H22): figures worked out by hand."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.pieces.reading import FILES, changed, checked, checked_piece

from dryfit.diagnostics import Severity

FRAME = """piece Framed panel
units mm
overall 400 wide, 22 deep, 560 high
timber walnut
2 stiles, upright, 50 x 22, at left and right
2 rails, across, 60 x 22, at top and bottom, tenon 30 long 8 thick into stiles
1 panel, facing front, 10 thick, inside stiles and rails, groove 9
glue up frame: stiles, rails, panel, cure 1 h
"""


@pytest.mark.parametrize(
    ("thick", "severity", "wall"),
    [
        # (22 - 20) / 2 and (22 - 14) / 2 are left on either side.
        (20, Severity.ERROR, 1),
        (14, Severity.WARNING, 4),
    ],
)
def test_a_groove_nearly_as_wide_as_the_wood_is_told(
    thick: int, severity: Severity, wall: int
) -> None:
    found = checked(changed(FRAME, ("10 thick", f"{thick} thick")))
    told = [each for each in found.findings if each.code == "groove-wide"]
    assert {each.severity for each in told} == {severity}
    assert {each.figures["wall"] for each in told} == {Fraction(wall)}
    assert {each.hints[0].message for each in told} == {
        "make the edge of the panel 11 thick or less"
    }
    # One line, one fact, for the rails and the stiles.
    (only,) = told
    assert {"rail", "stile"} == set(only.message.partition(": ")[0].split(" and "))


def test_a_groove_of_less_than_half_the_wood_is_no_fault() -> None:
    assert "groove-wide" not in {each.code for each in checked(FRAME).findings}


@pytest.mark.parametrize("name", FILES)
def test_no_piece_of_ours_has_one(name: str) -> None:
    assert "groove-wide" not in {each.code for each in checked_piece(name).findings}


def test_a_back_that_stands_past_the_edge_of_a_side_is_told() -> None:
    """Sides of 380 end 10 before the back of the piece; the back of 6 lies 8 to 14 before it."""
    case = """piece Case
units mm
overall 600 wide, 400 deep, 300 high
timber birch ply
2 sides, upright, facing side, 380 x 18, at left and right, 10 from front
1 bottom, across, flat, 380 x 18, into sides, housing 6, up 0, 10 from front
1 top, across, flat, 380 x 18, into sides, housing 6, flush top, 10 from front
1 back, facing front, upright, 6 thick, inside sides and bottom and top, groove 6, {} from back
glue up case: sides, bottom, top, back
"""
    (found,) = (
        each for each in checked(case.format(8)).findings if each.code == "groove-past-edge"
    )
    assert found.severity is Severity.ERROR
    # It begins 14 before the back of the piece, 4 before the edge: 2 of its 6 stand beside.
    assert found.figures["out"] == 2
    assert set(found.message.partition(":")[0].split(" and ")) == {"side, bottom", "top"}
    clear = checked(case.format(16)).findings
    assert "groove-past-edge" not in {each.code for each in clear}
