"""Cuts with no mate that leave too little wood, run into joints, or into one another."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.pieces.reading import checked, text_of
from tests.unit.placing.features.where import found

from dryfit.diagnostics import Severity

BOARD = """piece Board
units mm
overall 500 wide, 400 deep, 20 high
timber oak
1 board, across, flat, 500 x 400 x 20
"""
LEGS = """piece Legs
units mm
overall 600 wide, 400 deep, 480 high
timber oak
4 legs, upright, 480 x 45 x 45, at corners
2 aprons, across, on edge, 90 x 20, at front and back,
    tenon 20 long 8 thick 40 wide, 20 from bottom, into legs
glue up pairs: legs, aprons
"""
CASE = """piece Case
units mm
overall 600 wide, 300 deep, 800 high
timber birch
2 sides, upright, facing side, 800 x 300 x 18, at left and right
2 boards, across, flat, 18 thick, 300 wide, at bottom and top, housing 6 into sides
glue up case: sides, boards
"""
FRAME = """piece Frame
units mm
overall 400 wide, 22 deep, 560 high
timber walnut
2 stiles, upright, facing front, 560 x 50 x 22, at left and right
2 rails, across, on edge, 60 x 22, at top and bottom,
    tenon 30 long 8 thick 30 wide, 15 from bottom, into stiles
glue up frame: stiles, rails
"""


@pytest.mark.parametrize(
    ("line", "code", "severity", "figures"),
    [
        # 20 - 18 = 2; 20 - 14 = 6, but two thirds of 20 are 13.3.
        ("rabbet in board: front top edge, 10 wide, 18 deep, through", "rabbet-too-deep",
         Severity.ERROR, {"depth": 18, "lip": 2}),
        ("rabbet in board: front top edge, 10 wide, 14 deep, through", "rabbet-too-deep",
         Severity.WARNING, {"depth": 14, "lip": 6}),
        ("rabbet in board: front top edge, 398 wide, 9 deep, through", "rabbet-too-wide",
         Severity.ERROR, {"width": 398, "face": 400}),
        ("hole in board: top, 8 dia, 18 deep, 50 from left, 60 from front", "hole-nearly-through",
         Severity.WARNING, {"depth": 18, "left": 2}),
        # The middle 20 from the edge less half of 35 leaves 2.5; half of 35 is the least.
        ("hole in board: top, 35 dia, through, 20 from left, 60 from front", "hole-near-edge",
         Severity.WARNING, {"wall": Fraction(5, 2), "least": Fraction(35, 2)}),
        ("hole in board: top, 35 dia, through, 18 from left, 60 from front", "hole-near-edge",
         Severity.ERROR, {"wall": Fraction(1, 2), "least": Fraction(35, 2)}),
        ("notch in board: front edge, 60 wide, 300 deep, at left", "notch-too-deep",
         Severity.WARNING, {"depth": 300, "left": 100}),
        ("notch in board: front edge, 60 wide, 400 deep, 90 from left", "notch-too-deep",
         Severity.ERROR, {"depth": 400, "left": 0}),
        ("taper in board: top face, from 100 from left to the right end, 20 to 8", "taper-thin",
         Severity.WARNING, {"left": 8, "least": 10}),
        ("taper in board: top face, from 100 from left to 50 from right, 20 to 12",
         "taper-stops-short", Severity.WARNING, {"short": 50, "step": 8}),
        # A third of 400 is 133.3.
        ("curve in board: front edge, 300 deep, from 100 from left to 100 from right",
         "curve-leaves-little", Severity.WARNING, {"left": 100, "least": Fraction(400, 3)}),
        # 20 times the tangent of 50 degrees, 1.1917536, rounded up to 1.1918.
        ("bevel in board: front top edge, 50 degrees", "bevel-steep",
         Severity.WARNING, {"depth": Fraction("23.836")}),
        ("chamfer on board: front edges, 12 wide", "edges-meet",
         Severity.ERROR, {"together": 24, "between": 20}),
        ("chamfer on board: front edges, 10 wide", "edges-meet",
         Severity.WARNING, {"together": 20, "between": 20}),
    ],
)  # fmt: skip
def test_a_cut_that_leaves_too_little_is_told_with_its_figures(
    line: str, code: str, severity: Severity, figures: dict[str, Fraction]
) -> None:
    (finding,) = found(f"{BOARD}{line}\n", code)
    assert (finding.severity, dict(finding.figures)) == (severity, figures)
    assert finding.hints
    assert finding.span is not None
    assert finding.span.text() == line


@pytest.mark.parametrize(
    "line",
    [
        "rabbet in board: front top edge, 10 wide, 13 deep, through",
        "hole in board: top, 8 dia, 17 deep, 50 from left, 60 from front",
        "hole in board: top, 35 dia, through, 35 from left, 60 from front",
        "notch in board: front edge, 60 wide, 40 deep, at left",
        "taper in board: top face, from 100 from left to the right end, 20 to 10",
        "curve in board: front edge, 200 deep, from 100 from left to 100 from right",
        "bevel in board: front top edge, 45 degrees",
        "chamfer on board: all edges, 3 wide",
        "slot in board: top, 25 wide, 90 long, through, 30 from front, centred",
    ],
)
def test_a_cut_that_leaves_enough_is_no_fault(line: str) -> None:
    assert [each.code for each in checked(f"{BOARD}{line}\n").findings] == []


def test_two_cuts_on_one_edge_are_told() -> None:
    lines = "chamfer on board: top edges, 3\nround-over on board: front top edge, 5\n"
    (finding,) = found(BOARD + lines, "edge-cut-twice")
    assert finding.message == "board: the chamfer and the round-over are on the same edge"


@pytest.mark.parametrize(
    ("line", "severity"),
    [
        # The mortises of the aprons are 410 to 450 high and 20 deep, the aprons 390 to 480.
        ("taper in legs: inside faces, from 20 below the top to the bottom end, 45 to 30",
         Severity.ERROR),
        ("notch in legs: right edge, 30 wide, 20 deep, 20 from top", Severity.ERROR),
        ("hole in legs: front, 10 dia, through, 50 from top, centred", Severity.WARNING),
    ],
)  # fmt: skip
def test_a_cut_in_a_joint_is_told(line: str, severity: Severity) -> None:
    (finding,) = found(f"{LEGS}{line}\n", "cut-in-joint")
    assert finding.severity is severity
    assert finding.message.endswith("takes wood where the mortise and tenon with the apron is")


@pytest.mark.parametrize(
    "line",
    [
        # It begins where the aprons end.
        "taper in legs: inside faces, from 90 below the top to the bottom end, 45 to 28",
        "chamfer on legs: all long edges, 2",
        "hole in legs: front, 10 dia, through, 200 from top, centred",
        "groove in aprons: inside, 6 wide, 5 deep, 8 from top, through",
    ],
)
def test_a_cut_clear_of_the_joints_is_no_fault(line: str) -> None:
    assert found(f"{LEGS}{line}\n", "cut-in-joint") == []


def test_a_taper_that_begins_on_the_shoulder_leaves_it_open() -> None:
    line = "taper in legs: inside faces, from 80 below the top to the bottom end, 45 to 28"
    assert found(f"{LEGS}{line}\n", "cut-in-joint")


@pytest.mark.parametrize(
    ("piece", "line", "stands"),
    [
        # The biscuit lies 7 to 11 of 18, 33.5 to 86.5 from the front of the shelf, 9.5 into it.
        ("biscuit_case", "hole in shelf: top, 10 dia, 10 deep, 60 from front, 8 from left",
         "biscuits with the side are"),
        # The dowels of the rail stand 15 and 45 of 60, 27 into it.
        ("dowelled_rack", "hole in rails: front, 8 dia, 15 deep, 10 from left, 15 from bottom",
         "dowels with the side are"),
        # The tenon lies 12 to 48 of 60: 20 deep takes 8 of its 36.
        ("loose_tenon_frame", "groove in top rail: bottom edge, 8 wide, 20 deep, 8 from front",
         "loose tenon with the stile is"),
    ],
)  # fmt: skip
def test_a_cut_through_what_lies_in_both_parts_is_told(piece: str, line: str, stands: str) -> None:
    (finding,) = found(f"{text_of(piece)}{line}\n", "cut-in-joint")
    assert finding.message.endswith(f"takes wood where the {stands}")


@pytest.mark.parametrize(
    ("piece", "line"),
    [
        ("biscuit_case", "hole in shelf: top, 10 dia, 10 deep, 60 from front, 40 from left"),
        ("biscuit_case", "hole in shelf: top, 10 dia, 6 deep, 60 from front, 8 from left"),
        ("loose_tenon_frame", "groove in top rail: bottom edge, 8 wide, 11 deep, 8 from front"),
    ],
)  # fmt: skip
def test_a_cut_beside_what_lies_in_both_parts_is_no_fault(piece: str, line: str) -> None:
    assert found(f"{text_of(piece)}{line}\n", "cut-in-joint") == []


def test_a_rabbet_for_a_back_may_pass_the_end_of_a_housing() -> None:
    line = "rabbet in sides: back inside edge, 6 wide, 8 deep, through\n"
    assert found(CASE + line, "cut-in-joint") == []


def test_a_rabbet_past_a_rail_is_told_unless_it_is_cut_in_the_glued_frame() -> None:
    # A shoulder of 22 would stand on 16.
    line = "rabbet in stiles and rails: back inner edge, 8 wide, 6 deep, through"
    (finding,) = found(f"{FRAME}{line}\n", "cut-in-joint")
    assert finding.severity is Severity.WARNING
    assert found(f"{FRAME}{line}, after glue up frame\n", "cut-in-joint") == []


def test_a_hole_in_a_groove_and_holes_too_close_are_told() -> None:
    groove = "groove in board: top, 20 wide, 6 deep, 50 from front, through\n"
    hole = "hole in board: top, 8 dia, 12 deep, 60 from front, 100 from left\n"
    (finding,) = found(BOARD + groove + hole, "cut-into-cut")
    assert finding.message == "board: hole runs into the groove, 6 deep"
    row = "holes in board: top, 8 dia, 12 deep, rows 60 from front, 3 at 7 from 100\n"
    (finding,) = found(BOARD + row, "cut-into-cut")
    assert finding.message == "board: hole runs into another one, 12 deep"
    apart = row.replace("at 7", "at 9")
    assert found(BOARD + groove.replace("50 from", "150 from") + apart, "cut-into-cut") == []


@pytest.mark.parametrize(
    ("deep", "severity"),
    [
        # From corner to corner it is (50 + 60) / 1.41429 = 77.8; 3 are to be left.
        (74, None),
        (76, Severity.WARNING),
        (78, Severity.ERROR),
    ],
)
def test_keys_stay_clear_of_the_inside(deep: int, severity: Severity | None) -> None:
    line = f"keys in frame: 1 a corner, 3 thick, {deep} deep, after glue up frame\n"
    told = [each.severity for each in found(FRAME + line, "key-shows-inside")]
    assert told == ([severity] if severity else [])
