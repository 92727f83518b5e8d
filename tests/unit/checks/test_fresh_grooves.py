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
