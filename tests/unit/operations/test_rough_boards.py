"""Rough boards: how they come to rough width, and what is too wide for the machines."""

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.pieces.reading import model_of
from tests.unit.operations.worked import (
    boot_bench,
    listed,
    operation,
    piece,
    rule,
    setting,
    shipped_shop,
    shop_without,
)

from dryfit.diagnostics import Severity
from dryfit.operations.boards.wide_boards import hand_planed
from dryfit.placing.model import Model
from dryfit.stock.blanks.blank import blank_of

SHELF = """piece Case
units mm
overall 600 wide, {deep} deep, 500 high
timber pine
2 sides, upright, facing side, {deep} x 18, at left and right
1 shelf, across, flat, {deep} x 18, up 30, housing 6 into sides
glue up case: sides, shelf, cure 2 h
"""


def case(deep: int) -> Model:
    """Two sides and a shelf, as wide as the case is deep."""
    return model_of(SHELF.format(deep=deep))


def test_a_narrow_board_is_ripped_at_the_fence_of_the_band_saw() -> None:
    rip = operation(listed(piece())[0], "post / rip")
    assert rip.station == "band saw"
    assert setting(rip, "fence").value == Fraction(50)


def test_a_board_wider_than_the_throat_is_ripped_along_a_line() -> None:
    # Throat 300 mm: 350 + 5 is kept on the open side, so no fence stands there.
    work, _ = listed(case(350))
    rip = operation(work, "side / rip")
    assert rip.station == "band saw"
    assert [row.axis for row in rip.settings] == ["cutter"]
    assert "along a chalk line" in rip.sentence


def test_without_a_band_saw_an_edge_is_made_straight_before_the_table_saw() -> None:
    # TRADE A2.5: the table saw takes a rough board only with one straight edge at the fence.
    work, _ = listed(piece(), shop_without("band saw"))
    straight, rip = operation(work, "post / straight edge"), operation(work, "post / rip")
    assert (straight.station, rip.station) == ("jointer", "table saw")
    assert "straight edge at the fence" in rip.sentence
    assert rule(work, "post / rough length", "post / straight edge")
    assert "throws the board back" in rule(work, straight.id, rip.id).reason


def test_without_a_jointer_either_the_edge_is_straightened_by_hand() -> None:
    work, _ = listed(piece(), shop_without("band saw", "jointer"))
    assert operation(work, "post / straight edge").station == "bench"


def test_without_any_saw_nothing_is_straightened_for_a_fence() -> None:
    work, _ = listed(piece(), shop_without("band saw", "table saw"))
    assert operation(work, "post / rip").station == "bench"
    assert "post / straight edge" not in {each.id for each in work.operations}


def test_a_board_wider_than_jointer_and_planer_is_better_glued_from_several() -> None:
    # 350 + 6 from staves of at most 130: three (TRADE A9.1); the planer takes 310 (A6).
    _, findings = listed(case(350))
    found = [each for each in findings if each.code == "board-too-wide"]
    assert [each.message.split(" is ")[0] for each in found] == ["side", "shelf"]
    first = found[0]
    assert (first.rule, first.severity) == ("H47", Severity.WARNING)
    assert "jointer 200 mm and planer 310 mm" in first.message
    assert first.hints[0].message == "write `glued from 3` in its line"
    assert first.figures["planer takes"] == 310


@pytest.mark.parametrize("deep", [190, 300])
def test_a_board_that_one_machine_takes_raises_no_warning(deep: int) -> None:
    _, findings = listed(case(deep))
    assert not [each for each in findings if each.code == "board-too-wide"]


def test_planing_by_hand_takes_20_minutes_a_square_metre_and_millimetre() -> None:
    # TRADE A7.4: 15 to 25 min. One blank of 1000 x 400, 3 mm off: 0.4 x 20 x 3 = 24 min.
    model = case(350)
    blank = blank_of(model.part("shelf"), model, shipped_shop())
    board = replace(blank, length=Fraction(1000), width=Fraction(400), count=1)
    assert hand_planed(board, Fraction(3), shipped_shop()) == 240


def test_faces_and_thickness_of_a_wide_board_are_counted_as_hand_planing() -> None:
    model = case(350)
    work, _ = listed(model)
    blank = blank_of(model.part("shelf"), model, shipped_shop())
    area = blank.length * blank.width * blank.count / 1_000_000
    face, thickness = operation(work, "shelf / face"), operation(work, "shelf / thickness")
    assert face.station == thickness.station == "bench"
    # 1 mm for a true face; rough 23, less 1, to 18: 4 mm.
    assert abs(face.tenths - area * 200) <= Fraction(1, 2)
    assert abs(thickness.tenths - area * 200 * 4) <= Fraction(1, 2)


def test_a_glued_panel_gets_a_straight_edge_before_it_is_ripped() -> None:
    work = boot_bench()
    edge = operation(work, "top / straight edge")
    assert edge.station == "jointer"
    assert setting(edge, "fence").value == 90
    rule(work, "top / flatten", edge.id)
    assert "fence" in rule(work, edge.id, "top / width").reason


def test_without_a_jointer_the_panels_edge_is_planed_by_hand() -> None:
    work, _ = listed(piece(), shop_without("jointer"))
    edge = operation(work, "top / straight edge")
    assert (edge.station, edge.settings) == ("bench", ())
    assert edge.tenths > operation(boot_bench(), "top / straight edge").tenths
