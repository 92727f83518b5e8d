"""Default proportions and the sizes of buttons and screws, against what the trade notes say."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

import pytest
from tests.pieces.reading import mm

from dryfit.geometry.box import Box
from dryfit.joinery.buttons import (
    ButtonSlot,
    button_places,
    button_sizes,
    buttons_along,
    buttons_at_most,
    usual_slot,
)
from dryfit.joinery.panel import edge_movement, panel_gap
from dryfit.joinery.proportions import (
    glue_gap,
    usual_groove_depth,
    usual_housing_depth,
    usual_tenon_length,
    usual_tenon_thickness,
    usual_tenon_width,
)
from dryfit.joinery.screws import passes_guest, screw_for, screw_places
from dryfit.quantities import Display
from dryfit.quantities.units import INCH
from dryfit.wood import moving

MM, INCHES = Display(), Display.inches()
CHISELS = tuple(Fraction(size) for size in (6, 8, 10, 12))


# TRADE B3.1, common practice: two thirds of the depth, at most 30.
@pytest.mark.parametrize(("depth", "length"), [(30, 20), (40, 26), (45, 30), (60, 30)])
def test_a_blind_tenon_is_two_thirds_of_its_host(depth: int, length: int) -> None:
    assert usual_tenon_length(Fraction(depth), MM) == length


# TRADE B3.1: T/3 to the nearest chisel, never over T/2.
@pytest.mark.parametrize(("thick", "tenon"), [(20, 6), (22, 8), (27, 8), (30, 10), (12, 6)])
def test_a_tenon_is_a_third_of_its_rail_in_chisels(thick: int, tenon: int) -> None:
    assert usual_tenon_thickness(Fraction(thick), CHISELS, MM) == tenon


def test_without_a_chisel_that_fits_a_tenon_is_a_third_in_whole_steps() -> None:
    assert usual_tenon_thickness(Fraction(10), CHISELS, MM) == 3


# TRADE B3.1 and H09: at most 5 t, 60 % of the rail, and what the shoulders leave.
@pytest.mark.parametrize(
    ("rail", "thick", "shoulders", "width"),
    [(55, 6, 10, 30), (45, 8, 10, 27), (100, 8, 10, 40), (30, 8, 10, 18), (30, 8, 15, 15)],
)
def test_a_tenon_is_no_wider_than_five_times_its_thickness(
    rail: int, thick: int, shoulders: int, width: int
) -> None:
    sizes = (Fraction(rail), Fraction(thick), Fraction(shoulders))
    assert usual_tenon_width(*sizes, MM) == width


def test_gaps_and_depths_by_the_ruler_of_the_piece() -> None:
    assert (glue_gap(MM), glue_gap(INCHES)) == (Fraction(1), INCH / 16)  # B3.1
    assert usual_housing_depth(Fraction(18), MM) == 6  # B7.1: T/3
    assert (usual_groove_depth(MM), usual_groove_depth(INCHES)) == (Fraction(8), INCH * 3 / 8)


def test_the_button_of_the_boot_bench() -> None:
    # TRADE B26.2, example 1: stand-off 2.5, tongue 8.5, engagement 6; I1: tongue 5.5 thick, its
    # top 11 below the button's top.
    slot = ButtonSlot(Fraction(12), Fraction(6), Fraction(9))
    button = button_sizes(slot, Fraction(2))
    assert (button.stand_off, button.tongue) == (Fraction(5, 2), Fraction(17, 2))
    assert (button.engagement, slot.depth - button.engagement) == mm(6, 3)
    assert (button.tongue_thickness, button.set_down) == (Fraction(11, 2), Fraction(11))
    assert (button.length, button.breadth, button.thickness) == mm(40, 28, 20)


def test_a_shallow_slot_keeps_room_to_move_and_gives_up_engagement() -> None:
    button = button_sizes(ButtonSlot(Fraction(12), Fraction(6), Fraction(7)), Fraction(3))
    assert button.engagement == 4


# TRADE B22: 150 to 300 apart, at least two a side, 50 from the corners.
@pytest.mark.parametrize(("clear", "count"), [(80, 1), (190, 2), (400, 2), (401, 3), (880, 4)])
def test_buttons_stand_at_most_300_apart(clear: int, count: int) -> None:
    assert buttons_along(Fraction(clear)) == count
    places = button_places(Fraction(0), Fraction(clear), count)
    assert len(places) == count
    assert all(b - a <= 300 for a, b in pairwise(places))
    if count > 1:
        assert (places[0], places[-1]) == mm(50, clear - 50)


def test_no_more_buttons_than_fit_side_by_side() -> None:
    # A slot 30 long for each, 3 mm between two, the first 50 from the shoulder: 100 + 2 x 33 = 166.
    clear = (0, 29, 60, 165, 166, 190)
    assert [buttons_at_most(Fraction(each)) for each in clear] == [0, 0, 1, 2, 3, 3]


def test_a_slot_for_a_button_is_as_wide_as_the_nearest_chisel() -> None:
    """TRADE B22: 6 wide, 12 from the top, 9 deep; 1/4, 1/2 and 3/8 in."""
    assert usual_slot(INCHES) == ButtonSlot(INCH / 2, INCH / 4, INCH * 3 / 8)
    assert usual_slot(MM, CHISELS) == ButtonSlot(*mm(12, 6, 9))
    assert usual_slot(MM, (INCH / 4, Fraction(8))) == ButtonSlot(
        Fraction(12), INCH / 4, Fraction(9)
    )


def test_a_panel_has_room_to_swell_across_the_grain_only() -> None:
    along, _ = panel_gap(mm(520)[0], mm(9)[0], along_grain=True, wood=moving("oak"), display=MM)
    across, words = panel_gap(
        mm(300)[0], mm(9)[0], along_grain=False, wood=moving("oak"), display=MM
    )
    sheet, _ = panel_gap(mm(300)[0], mm(5)[0], along_grain=False, wood=None, display=MM)
    assert (along, sheet) == (Fraction(1), Fraction(1, 2))  # TRADE B9
    assert across > along
    assert words is not None
    assert "red oak" in words


def test_an_unknown_wood_moves_like_the_liveliest() -> None:
    assert edge_movement(Fraction(360), moving("no such wood")) >= edge_movement(
        Fraction(360), moving("beech")
    )


# TRADE H18: the tip stays 3 inside the second part; common practice: half of it holds.
@pytest.mark.parametrize(
    ("thickness", "depth", "size"),
    [(18, 45, "4 x 35"), (20, 40, "4 x 40"), (20, 20, "4 x 35"), (10, 60, "3.5 x 20")],
)
def test_a_screw_is_twice_the_thickness_and_does_not_come_out(
    thickness: int, depth: int, size: str
) -> None:
    screw = screw_for(Fraction(thickness), Fraction(depth))
    assert screw is not None
    assert screw.size() == size
    assert thickness < screw.length <= thickness + depth - 3


def test_no_screw_passes_a_beam_and_then_the_other_part_is_passed() -> None:
    assert screw_for(Fraction(90), Fraction(500)) is None
    assert not passes_guest(Fraction(256), Fraction(22))
    assert passes_guest(Fraction(25), Fraction(20))


def test_one_screw_in_a_narrow_slat_two_in_a_broad_one() -> None:
    narrow = Box((Fraction(0),) * 3, (Fraction(40), Fraction(30), Fraction(0)))
    broad = Box((Fraction(0),) * 3, (Fraction(80), Fraction(30), Fraction(0)))
    assert screw_places(narrow, 2) == (mm(20, 15, 0),)
    assert [place[0] for place in screw_places(broad, 2)] == [20, 60]
