"""Every check of TRADE H-a and H-b fires on a piece that has the fault, and not on its mended twin.

Each case changes something in notes that have no finding of that rule; the thresholds are TRADE's
(common practice), the figures are worked out by hand beside the case.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

import pytest
from tests.pieces.reading import (
    FILES,
    changed,
    checked,
    checked_piece,
    codes,
    model_of,
    model_of_piece,
    text_of,
)

from dryfit.checks import check_model
from dryfit.diagnostics import Severity
from dryfit.placing.model import Model
from dryfit.shop import read_shop
from dryfit.shop.shop import Shop

# TRADE B26.3: a 45 leg; each mortise begins 12 in from the face, is 10 wide and so leaves 23
# inside; 25 deep mortises collide by 2, 22 deep ones leave 1 mm.
B26_3 = """piece Corner of TRADE B26.3
units mm
overall 445 wide, 345 deep, 500 high
timber oak
4 legs, upright, 45 x 45, at corners
2 long rails, across, on edge, 80 x 22, tenon 19 long 10 thick 40 wide, into legs, set back 6
2 end rails, front to back, on edge, 80 x 22, tenon 19 long 10 thick 40 wide, into legs, set back 6
glue up base: legs, long rails, end rails
"""

WIDE_LAP = """piece Wide crossing
units mm
overall 600 wide, 600 deep, 30 high
timber oak
1 long bar, across, flat, 600 x 80 x 30
1 tie bar, front to back, flat, 600 x 80 x 30
tie bar crossing long bar: half lap
glue up frame: long bar, tie bar
"""


@dataclass(frozen=True)
class Case:
    """A piece, what to change in it, and what is then found."""

    rule: str
    code: str
    severity: str
    piece: str
    figure: Fraction | int | None
    changes: tuple[tuple[str, str], ...]

    def text(self) -> str:
        """The notes before the change."""
        texts = {"b26_3": B26_3, "wide_lap": WIDE_LAP}
        return texts[self.piece] if self.piece in texts else text_of(self.piece)


def case(
    found: str, severity: str, piece: str, figure: Fraction | int | None, *changes: tuple[str, str]
) -> Case:
    rule, code = found.split(" ")
    return Case(rule, code, severity, piece, figure, changes)


SPARE = "1 spare block, flat, 100 x 50 x 10, up 20, 100 from left, 120 from front"
CASES = [
    # An 18 divider with 8 deep housings from both sides: 2 are left; with 9 deep ones nothing.
    case(
        "H01 opposed-slots", "warning", "divided_box", 2,
        ("housing 6 into divider", "housing 8 into divider"), ("up 160", "up 120"),
    ),
    case(
        "H01 opposed-slots", "error", "divided_box", 0,
        ("housing 6 into divider", "housing 9 into divider"), ("up 160", "up 120"),
    ),
    # 11 in 18 is over half, 13 over two thirds.
    case("H02 slot-too-deep", "warning", "shelf_box", 11, ("housing 6, up", "housing 11, up")),
    case("H02 slot-too-deep", "error", "shelf_box", 13, ("housing 6, up", "housing 13, up")),
    # In a 40 leg 40 - 1 - 5 = 34 is the longest; 45 comes out behind.
    case("H03 tenon-too-long", "error", "slatted_stand", 36, ("tenon 25 long", "tenon 36 long")),
    case("H03 tenon-too-long", "error", "slatted_stand", 45, ("tenon 25 long", "tenon 45 long")),
    case("H04 tenon-short", "warning", "slatted_stand", 14, ("tenon 15 long", "tenon 14 long")),
    # 11 is less than one and a half times 8.
    case("H04 tenon-short", "warning", "slatted_stand", 11, ("tenon 25 long", "tenon 11 long")),
    case("H04 tenon-thick", "warning", "slatted_stand", 12, ("long 8 thick", "long 12 thick")),
    case("H05 mortises-collide", "error", "b26_3", 2, ("tenon 19 long", "tenon 24 long")),
    case("H05 mortises-close", "warning", "b26_3", 1, ("tenon 19 long", "tenon 21 long")),
    # TRADE I1: the lap zone begins at 385; 335 to 385 touches it, 335 to 390 runs 5 into it.
    case("H06 mortise-meets-lap", "warning", "boot_bench", 0, ("40 wide, 5", "50 wide, 5")),
    case("H06 mortise-meets-lap", "error", "boot_bench", -5, ("40 wide, 5", "55 wide, 5")),
    # The tenon lies 55 to 95 below the apron's top; a 6 wide groove at 70 lies all in it.
    case("H06 groove-in-tenon", "warning", "boot_bench", 6, ("12 from top", "70 from top")),
    case("H09 tenon-wide", "warning", "slatted_stand", 42, ("35 wide", "42 wide")),
    # 38 of 60 is over 60 % and the rail ends with its leg.
    case(
        "H09 tenon-wide-at-corner", "warning", "slatted_stand", 38,
        ("35 wide", "38 wide"),
    ),
    # 20 + 35 from the bottom of a 60 rail leaves 5 of the leg.
    case(
        "H10 mortise-near-end", "warning", "slatted_stand", 5,
        ("35 wide,", "35 wide, 20 from bottom,"),
    ),
    case("H11 no-such-chisel", "error", "slatted_stand", 7, ("long 8 thick", "long 7 thick")),
    case("H26 overall-not-met", "error", "step_stool", 430, ("22 thick", "22 thick, 430 long")),
    case("H28 held-by-nothing", "error", "step_stool", None, ("seat onto", f"{SPARE}\nseat onto")),
    # A runner in its groove alone would slide out with the drawer.
    case("H28 held-by-nothing", "error", "bedside_drawer", None, ("screws, running", "running")),
    case("H28 only-lies-there", "warning", "step_stool", None, ("rails: buttons", "rails")),
    case("H28 no-glue-up", "error", "flat_lap_frame", None,
         ("glue up frame: long bars, short bars, cure 1 h", "")),
    case(
        "H28 in-no-glue-up", "error", "housed_stretcher", None,
        ("rails, stretcher, cure", "rails, cure"),
    ),
    case("H28 in-no-glue-up", "error", "panel_door", None, ("rails, panel, cure", "rails, cure"),
         ("finish panel before glue up door", "")),
    # 200 between the legs less 9 times 20 in ten gaps.
    case("H30 gap-narrow", "warning", "slatted_stand", 2, ("5 slats", "9 slats")),
    case("B1.4 lap-wide", "warning", "wide_lap", 120, ("80 x 30", "120 x 30")),
    case("B1.4 lap-wide", "error", "wide_lap", 160, ("80 x 30", "160 x 30")),
]  # fmt: skip


def case_name(each: Case) -> str:
    return f"{each.rule}-{each.code}-{each.severity}"


@pytest.mark.parametrize("each", CASES, ids=case_name)
def test_the_fault_is_found_with_its_figure(each: Case) -> None:
    found = checked(changed(each.text(), *each.changes))
    own = [finding for finding in found.findings if finding.code == each.code]
    assert own, codes(found)
    assert {finding.rule for finding in own} == {each.rule}
    assert each.severity in {finding.severity.value for finding in own}
    assert all(finding.span and finding.hints for finding in own)
    if each.figure is not None:
        assert each.figure in {value for finding in own for value in finding.figures.values()}


@pytest.mark.parametrize("each", CASES, ids=case_name)
def test_the_piece_as_it_was_has_no_such_fault(each: Case) -> None:
    assert each.code not in codes(checked(each.text()))


@pytest.mark.parametrize("name", FILES)
def test_no_test_piece_has_an_error(name: str) -> None:
    assert all(f.severity is not Severity.ERROR for f in checked_piece(name).findings)


def shop() -> Shop:
    found, _ = read_shop(None, {})
    assert found is not None
    return found


def with_feature(model: Model, part: str, role: str, **changes: object) -> Model:
    """The Model with one feature of a part altered, as no notes could."""
    parts = []
    for each in model.parts:
        features = tuple(
            replace(feature, **changes) if each.name == part and feature.role == role else feature  # type: ignore[arg-type]
            for feature in each.features
        )
        parts.append(replace(each, features=features))
    return replace(model, parts=tuple(parts))


def test_lap_depths_that_do_not_make_the_thickness_are_h07() -> None:
    model = model_of(WIDE_LAP)
    assert not [f for f in check_model(model, shop()) if f.code == "lap-not-flush"]
    shallow = with_feature(model, "long bar", "lap", depth=Fraction(14))
    (finding,) = (f for f in check_model(shallow, shop()) if f.code == "lap-not-flush")
    assert (finding.rule, finding.figures["sum"]) == ("H07", Fraction(29))


def test_a_housing_wider_than_its_mate_is_h08() -> None:
    model = model_of_piece("shelf_box")
    assert not [f for f in check_model(model, shop()) if f.code == "slot-width"]
    loose = with_feature(
        model, "side", "housing", along=(Fraction(100), Fraction(119)), mate="shelf"
    )
    findings = [f for f in check_model(loose, shop()) if f.code == "slot-width"]
    assert {(f.rule, f.figures["width"]) for f in findings} == {("H08", Fraction(19))}


def test_copies_that_enter_unequally_many_mates_are_h27() -> None:
    model = model_of_piece("step_stool")
    assert not [f for f in check_model(model, shop()) if f.code == "mates-unequal"]
    first, *others = model.joints
    one_less = replace(model, joints=tuple(others))
    (finding,) = (f for f in check_model(one_less, shop()) if f.code == "mates-unequal")
    assert finding.rule == "H27"
    assert first.guest in finding.message


def test_sheet_goods_may_be_lapped_as_wide_as_they_are() -> None:
    solid = changed(WIDE_LAP, ("80 x 30", "160 x 30"))
    assert "lap-wide" in codes(checked(solid))
    sheets = changed(WIDE_LAP, ("80 x 30", "160 x 30"), ("timber oak", "timber birch ply"))
    assert "lap-wide" not in codes(checked(sheets))
    one_sheet = changed(WIDE_LAP, ("600 x 80 x 30\ntie", "600 x 160 x 30, of birch ply\ntie"))
    assert "lap-wide" not in codes(checked(one_sheet))


def test_screws_into_the_ends_of_rails_are_h19() -> None:
    butted = text_of("screwed_frame")
    (finding,) = (f for f in checked(butted).findings if f.code == "screw-in-end-grain")
    assert finding.rule == "H19"
    housed = changed(butted, ("end rails between long rails: screws", "")) + GLUED
    assert "screw-in-end-grain" not in codes(checked(housed))


GLUED = """end rails into long rails: housing 6
glue up frame: long rails, end rails
"""


def test_a_tray_above_its_ledgers_lies_on_nothing() -> None:
    text = text_of("tray_chest")
    assert "lies-on-nothing" not in codes(checked(text))
    assert "lies-on-nothing" in codes(checked(changed(text, ("up 60, 170", "up 62, 170"))))


def test_a_shelf_on_bought_pins_is_carried() -> None:
    text = text_of("wall_case")
    assert "lies-on-nothing" not in codes(checked(text))
    pins = "bought 4 shelf pins, 5 dia, for shelf\n"
    assert "lies-on-nothing" in codes(checked(changed(text, (pins, ""))))


def test_a_drawer_a_little_above_what_carries_it_is_told_so() -> None:
    runners = "2 runners, front to back, on the inside of sides, screws, running in "
    text = changed(text_of("bedside_drawer"), (runners + "drawer's tray sides\n", ""))
    told = [each for each in checked(text).findings if each.code == "lies-on-nothing"]
    assert ["stands 1.5 mm above the bottom" in each.message for each in told] == [True]
    assert "`0 above the bottom of bay`" in told[0].hints[0].message


CHEST = """piece Chest
overall 600 wide, 360 deep, 300 high
timber pine
2 ends, front to back, on edge, 300 x 18, at left and right, up 0, box joint 20 into sides
2 sides, across, on edge, 300 x 18, at front and back, up 0
1 floor, flat, 9 thick, of ply, FLOOR, up 20
glue up chest: ends, sides, floor
"""


def test_a_floor_housed_on_all_four_sides_is_told_of_grooves() -> None:
    # Its front and back edges run along the sides: a housing would be 594 deep from their ends.
    housed = checked(CHEST.replace("FLOOR", "housed 6 into ends and sides")).findings
    told = next(each for each in housed if each.code == "slot-too-deep")
    assert "the floor lies along it" in told.message
    assert "`inside ..., groove 6`" in told.hints[0].message
    mended = checked(CHEST.replace("FLOOR", "inside ends and sides, groove 6"))
    assert "slot-too-deep" not in codes(mended)


def test_a_flat_rail_is_not_told_to_lie_flat() -> None:
    text = """piece Frame
overall 800 wide, 60 deep, 700 high
timber beech
2 legs, upright, 60 x 60, at left and right
1 top rail, across, on edge, 80 x 20, tenon 30 into legs, flush with top of legs
1 drawer rail, across, flat, 50 x 22, tenon 30 into legs, up 500
glue up frame: legs, top rail, drawer rail
"""
    told = next(each for each in checked(text).findings if each.code == "tenon-across-grain")
    assert "`dowels`" in told.hints[0].message
    assert "`flat`" not in told.hints[0].message


def test_what_sticks_out_at_both_sides_is_made_smaller_and_not_moved() -> None:
    # The stool is 300 deep: 430 sticks out by 65 at either side.
    text = changed(text_of("step_stool"), ("22 thick", "22 thick, 430 wide"))
    (told,) = (each for each in checked(text).findings if each.code == "overall-not-met")
    assert told.message.endswith("the seat sticks out by 65 at the front and 65 at the back")
    assert told.hints[0].message == "write 430 deep, or make the seat `300 wide`"
