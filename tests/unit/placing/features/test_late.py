"""Sizes and distances of cuts may lean on what only the placed piece knows."""

from __future__ import annotations

from tests.unit.placing.features.where import bounds, cuts, found, placed

RAILS = """piece Rails
units mm
overall 600 wide, 400 deep, 480 high
timber oak
4 legs, upright, 480 x 45 x 45, at corners
2 aprons, across, on edge, 90 x 20, at front and back, tenon 20 long 8 thick 40 wide into legs
bay = opening between legs
"""


def test_a_distance_may_be_a_share_of_a_length_that_nobody_typed() -> None:
    # The aprons come to 550 long, from 25 to 575; a fifth is 110.
    line = "hole in aprons: front, 10 dia, through, 30 from top, apron.length / 5 from left\n"
    assert cuts(placed(RAILS + line), "front apron", "hole") == {
        bounds((130, 140), (12.5, 32.5), (445, 455))
    }


def test_a_size_and_a_stretch_may_lean_on_an_opening() -> None:
    # The bay is 600 - 2 x 45 = 510 wide: a curve of 51 from 25 + 102 to 575 - 102.
    line = (
        "curve in aprons: bottom edge, bay.width / 10 deep, "
        "from bay.width / 5 from left to bay.width / 5 from right\n"
    )
    assert cuts(placed(RAILS + line), "front apron", "curve") == {
        bounds((127, 473), (12.5, 32.5), (390, 441))
    }


def test_a_late_size_of_less_than_nothing_is_told() -> None:
    line = "curve in aprons: bottom edge, bay.width - 600 deep\n"
    (finding,) = found(RAILS + line, "size-not-positive")
    assert dict(finding.figures) == {"size": -90}
    assert finding.span is not None
    assert finding.span.text() == "bay.width - 600 deep"
