"""Holes from two sides of a part do not meet in it (TRADE H01, H05)."""

from __future__ import annotations

import pytest
from tests.pieces.reading import changed, checked

from dryfit.diagnostics import Diagnostic, Severity
from dryfit.diagnostics.explain import page

PINS = """piece Case
units mm
overall 800 wide, 250 deep, 700 high
timber oak
2 sides, upright, facing side, 250 x 18, at left and right
1 top, flat, 250 x 18, into sides, housing 6, flush top
1 bottom, flat, 250 x 18, into sides, housing 6, flush bottom
1 divider, upright, facing side, 250 x 18, between bottom and top, housing 6, 391 from left
left bay = opening between left side and divider and bottom and top
right bay = opening between divider and right side and bottom and top
1 left shelf, flat, 230 x 18, in left bay, gap 1 at ends, 0 from front, up 300
1 right shelf, flat, 230 x 18, in right bay, gap 1 at ends, 0 from front, up 300
left shelf onto left side and divider: shelf pins
right shelf onto right side and divider: shelf pins
glue up case: sides, top, bottom, divider
"""
CORNER = """piece Stool
units mm
overall 400 wide, 300 deep, 450 high
timber oak
4 legs, upright, 30 x 30, at corners
2 rails, across, on edge, 60 x 20, 2 dowels 10 thick 60 long into legs, flush top
2 ends, front to back, on edge, 60 x 20, 2 dowels 10 thick 60 long into legs, flush top
glue up base: legs, rails, ends
"""


def meeting(text: str) -> list[Diagnostic]:
    return [each for each in checked(text).findings if each.code == "holes-meet"]


@pytest.mark.parametrize(("thick", "by"), [(18, 2), (20, 0), (24, None)])
def test_pins_from_both_faces_of_a_divider(thick: int, by: int | None) -> None:
    # Pin holes are 10 deep in 18 and more (B19: 10 to 12, 6 left behind): 2 x 10 - 18 = 2.
    found = meeting(changed(PINS, ("250 x 18, between", f"250 x {thick}, between")))
    assert [each.figures["common"] for each in found] == ([by] if by else [])
    assert all(each.severity is Severity.WARNING for each in found)


def test_rows_at_other_distances_pass_one_another() -> None:
    apart = ("1 right shelf, flat, 230 x 18", "1 right shelf, flat, 150 x 18")
    assert (
        meeting(changed(PINS, apart, ("0 from front, up 300\nleft", "60 from front, up 300\nleft")))
        == []
    )


def test_dowels_of_two_shelves_are_told_once() -> None:
    shown = page("holes-meet")
    assert shown is not None
    (found,) = meeting(shown.example)
    # 6 thick dowels go two diameters deep into a face: 2 x 12 - 18.
    assert (found.rule, found.severity) == ("H01", Severity.ERROR)
    assert found.figures["common"] == 6


def test_dowels_of_two_rails_in_one_leg() -> None:
    found = meeting(CORNER)
    assert {each.rule for each in found} == {"H05"}
