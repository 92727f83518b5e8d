"""H72: solid wood glued fast across its grain; the middle alone, one edge and sheets are quiet."""

from fractions import Fraction

import pytest
from tests.pieces.reading import checked, codes
from tests.unit.placing.test_glue_patches import CASE, DOOR, SLATS

from dryfit.diagnostics import Diagnostic, Severity

WIDE = SLATS.replace("4 slats, across, 80 x 18", "2 slats, across, {wide} x 18")

TOP = """piece Stool
overall 400 wide, 300 deep, 240 high
timber ash
4 legs, upright, 45 x 45, at corners, set in 15
2 long rails, across, 55 x 20, tenon 15 long into legs
2 short rails, front to back, 55 x 20, tenon 15 long into legs
1 seat, flat, 22 thick
seat onto {under}: glue
glue up 2 ends: 2 legs, 1 short rail
glue up stool: ends, long rails, seat
"""


def held(text: str) -> list[Diagnostic]:
    return [each for each in checked(text).findings if each.rule == "H72"]


@pytest.mark.parametrize(
    ("wide", "severity"),
    [(70, None), (80, Severity.WARNING), (125, Severity.WARNING), (126, Severity.ERROR)],
)
def test_wood_glued_across_the_grain_over_its_width(wide: int, severity: Severity | None) -> None:
    # TRADE G8: "cross-grain battens glued > 75 mm (W), > 125 (E) wide solid" (common practice).
    found = held(WIDE.format(glue="glue", wide=wide))
    assert [each.severity for each in found] == ([severity] if severity else [])


def test_the_movement_is_that_of_the_wood_over_the_glued_width() -> None:
    # Red oak 0.00369 tangential (Wood Handbook, Table 13-5, read), 4 % of moisture in a year.
    found = held(WIDE.format(glue="glue", wide=150))
    assert found[0].figures["moves"] == 150 * Fraction("0.00369") * 4
    assert "red oak moves 2 mm there over the year, with 4 % of moisture" in found[0].message


def test_glue_on_the_middle_alone_is_quiet() -> None:
    assert held(WIDE.format(glue="glue the middle 60", wide=150)) == []


@pytest.mark.parametrize("under", ["legs and long rails", "short rails"])
def test_a_solid_seat_glued_on_its_rails(under: str) -> None:
    assert [each.code for each in held(TOP.format(under=under))] == ["glued-across-grain"]


def test_a_panel_glued_into_both_stiles_has_to_split() -> None:
    text = DOOR.format(glue=", glue the front edge")
    assert [each.code for each in held(text)] == ["panel-glued"]


@pytest.mark.parametrize("glue", ["", ", glue the middle 60", ", glue one edge", ", dry"])
def test_a_panel_that_may_move_is_quiet(glue: str) -> None:
    assert held(DOOR.format(glue=glue)) == []


def test_a_sheet_does_not_move() -> None:
    text = DOOR.format(glue=", glue the front edge, of birch plywood")
    assert codes(checked(text)) == []


def test_shelves_move_with_the_sides_that_they_stand_in() -> None:
    assert held(CASE.format(glue="")) == []


SHEET_CASE = """piece Case
overall 600 wide, {deep} deep, 500 high
timber ash
2 sides, upright, {deep} x 18, at left and right, of birch ply
2 shelves, across, flat, {deep} x 18, up 60 and 400, into sides: housing 6{glue}
glue up case: sides, shelves
"""


@pytest.mark.parametrize(
    ("deep", "glue", "codes"),
    [
        (250, "", []),
        (251, "", ["glued-across-grain"]),
        (300, ", glue front 75", []),
    ],
)
def test_a_solid_shelf_in_sides_of_plywood(deep: int, glue: str, codes: list[str]) -> None:
    # TRADE G8: "shelf of solid in plywood dado with glue along whole depth > 250 (W)".
    found = held(SHEET_CASE.format(deep=deep, glue=glue))
    assert [each.code for each in found] == codes
    assert all(each.severity is Severity.WARNING for each in found)


BREADBOARD = """piece Breadboard top
overall 900 wide, {deep} deep, 22 high
timber cherry
1 top, flat, across, {deep} x 22
2 board ends, front to back, flat, {deep} x 80 x 22, at left and right
top into board ends: 3 tenons 30 long 8 thick 30 wide{glue}
glue up whole: top, board ends
"""


@pytest.mark.parametrize(
    ("deep", "glue", "severity"),
    [
        (120, "", None),
        (200, "", None),
        (240, "", Severity.WARNING),
        (400, "", Severity.ERROR),
        (400, ", glue the middle 60", None),
        (400, ", dry, pegs 6", None),
    ],
)
def test_a_row_of_tenons_in_a_board_end(deep: int, glue: str, severity: Severity | None) -> None:
    # TRADE G5: "full tongue, one centre glued (50-80 mm) ... Never glue all along."
    text = BREADBOARD.format(deep=deep, glue=glue)
    if "dry" in glue:
        text = text.replace("glue up whole: top, board ends\n", "")
    found = held(text)
    assert [each.severity for each in found] == ([severity] if severity else [])


@pytest.mark.parametrize(
    ("wide", "severity"),
    [(140, None), (180, Severity.WARNING), (240, Severity.ERROR)],
)
def test_dowels_in_a_rails_end_hold_as_a_row_of_tenons_does(
    wide: int, severity: Severity | None
) -> None:
    """Rails up to 150 wide are dowelled as a matter of course (common practice)."""
    text = f"""piece Rack
overall 520 wide, 300 deep, 400 high
timber oak
2 sides, upright, facing side, 300 x 22, at left and right
1 rail, across, on edge, {wide} x 22, dowels into sides, up 40
glue up rack: sides, rail
"""
    found = held(text)
    assert [each.severity for each in found] == ([severity] if severity else [])
