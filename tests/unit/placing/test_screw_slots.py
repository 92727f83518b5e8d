"""A broad part screwed across its grain: one row holds it, the others are slotted (B17, G8)."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.pieces.reading import (
    changed,
    checked,
    checked_piece,
    codes,
    model_of,
    model_of_piece,
    text_of,
)

from dryfit.placing.screw_slots import ScrewSlots, screw_slots

RUNNERS = """piece Board on battens
units mm
overall 900 wide, 300 deep, 50 high
timber oak
1 board, flat, 900 x 300 x 20, up 30
2 battens, front to back, flat, 280 x 40 x 30, at left and right, set in 100 across, up 0
board onto battens: screws
"""


def slots(text: str) -> tuple[ScrewSlots, ...]:
    model = model_of(text)
    return screw_slots(model.parts, model.joints)


def assumed(text: str) -> list[str]:
    model = checked(text).model
    assert model is not None
    return [each.text for each in model.assumptions if "slots" in each.text]


def test_a_broad_board_on_battens_has_slots_and_it_is_said_how_far_it_moves() -> None:
    # Three screws on 280, the outer ones 93.3 from the middle one, which holds (TRADE B18):
    # 93.3 x 0.00369 x 4 % = 1.38 mm, red oak flat-sawn (Wood Handbook, table 13-5, as in `wood`).
    # The hole for a 4 mm screw, 4.5, twice the movement and 1 mm make 8.3, which is 8.5.
    (found,) = slots(RUNNERS)
    assert (found.mover, found.passed) == ("board", "board")
    assert found.apart == Fraction(280 * 2, 3)
    assert Fraction(137, 100) < found.moves < Fraction(138, 100)
    assert found.slot == Fraction(17, 2)
    (said,) = assumed(RUNNERS)
    assert "1.5 mm over the year" in said


@pytest.mark.parametrize(
    "changes",
    [
        [("timber oak", "timber birch ply")],
        [("300 deep", "140 deep"), ("900 x 300", "900 x 140"), ("280 x 40", "130 x 40")],
        [("2 battens, front to back, flat, 280 x 40", "2 battens, across, flat, 120 x 120")],
    ],
)
def test_sheets_slats_and_short_rows_are_left_alone(changes: list[tuple[str, str]]) -> None:
    assert slots(changed(RUNNERS, *changes)) == ()


def test_what_is_held_on_by_cleats_has_the_slots_in_the_cleats() -> None:
    (found,) = slots(text_of("glued_board"))
    assert (found.mover, found.passed) == ("board", "cleat")


def test_boards_of_a_box_that_swell_the_same_way_need_none() -> None:
    # The grain of ends and sides runs level, each across the other: both swell upwards (G9).
    box = """piece Crate
units mm
overall 600 wide, 300 deep, 240 high
timber pine
2 sides, across, on edge, 240 x 18, at front and back, up 0
2 ends, front to back, on edge, 240 x 18, at left and right, between sides, up 0
ends between sides: screws
"""
    assert slots(box) == ()


@pytest.mark.parametrize("name", ["boot_bench", "step_stool", "slat_bench", "slatted_stand"])
def test_slats_and_buttoned_tops_are_left_alone(name: str) -> None:
    assert slots(text_of(name)) == ()


def test_the_row_nearest_to_the_middle_is_not_slotted() -> None:
    # The middle one of three (TRADE B18).
    (found,) = slots(text_of("trestle"))
    holes = {each.id: each for each in model_of_piece("trestle").part("seat").features}
    slotted = {holes[name].across for name in found.holes}
    round_ones = {each.across for each in holes.values() if each.role == "screw hole"} - slotted
    (held,) = round_ones
    before, behind = sorted(slotted)
    assert before < held < behind


def test_screws_keep_clear_of_a_rabbet_that_is_cut_in_the_glued_frame() -> None:
    # The rabbet takes 10 of the 25 that the batten laps over the stile: the middle of the rest.
    model = model_of_piece("mirror")
    stile = model.part("stile")
    (pilots,) = {each.across for each in stile.features if each.role == "pilot hole"}
    (rabbet,) = {each.across for each in stile.features if each.role == "rabbet"}
    nearest = min(abs(pilot - edge) for pilot in pilots for edge in rabbet)
    assert nearest > 5


def test_where_a_late_rabbet_leaves_no_room_it_is_said_once() -> None:
    narrow = changed(text_of("mirror"), ("lapping 25", "lapping 14"))
    (told,) = (each for each in checked(narrow).findings if each.code == "screw-near-cut")
    assert "stile" in told.message
    assert "rabbet" in told.message
    assert told.hints
    assert "screw-near-cut" not in codes(checked_piece("mirror"))
