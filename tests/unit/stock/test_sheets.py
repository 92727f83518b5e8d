"""Sheet goods: grain, what they measure, factory edges and the kerf of the table saw."""

from fractions import Fraction

import pytest
from tests.unit.operations.worked import shipped_shop

from dryfit.diagnostics import Source
from dryfit.quantities import Display
from dryfit.quantities.units import INCH
from dryfit.stock.blanks.needs import needs_of
from dryfit.stock.laid_out import LaidOut
from dryfit.stock.telling.in_words import board_in_words
from dryfit.stock.telling.said import spoken
from dryfit.workshop import check, laid_out

PIECE = """\
piece Row of panels
units mm
overall 1200 wide, 600 deep, 29.6 high
timber birch ply
have 1 sheet of birch ply, {sheet}
have 1 sheet of birch ply, 1220 x 610 x 12
3 panels, flat, 600 long, 400 wide, 18 thick, front to back, spread side to side, no gap at ends
2 bearers, across, flat, 1200 long, 100 x 12, under panels, at front and back
panels onto bearers: screws
finish oil, 2 coats
"""


def told(sheet: str) -> LaidOut:
    checked = check(Source("panels.dryfit", PIECE.format(sheet=sheet)), None, {})
    assert not checked.failed, checked.findings
    _, laid, _ = laid_out(checked)
    assert laid is not None
    return laid


@pytest.mark.parametrize(
    ("sheet", "verdict"),
    [
        # Along the grain three panels are 1800, and two side by side 800.
        ("1230 x 620 x 18, measures 17.6", "not enough"),
        # Across, with each edge still to trim, 3 x (400 + 2 x 3) + 2 x 3.2 = 1224.4 (A5, A10).
        ("1230 x 620 x 18, measures 17.6, no grain", "enough"),
        # Sawn to size, factory edges kept: 3 x 400 + 2 x 3.2 = 1206.4.
        ("1207 x 610 x 18, measures 17.6, no grain", "enough"),
        ("1206 x 610 x 18, measures 17.6, no grain", "not enough"),
    ],
)
def test_panels_turn_only_on_a_sheet_without_grain(sheet: str, verdict: str) -> None:
    laid = told(sheet)
    assert laid.verdict == verdict
    turned = [one for layout in laid.layouts for one in layout.placed if one.turned]
    assert not turned or "no grain" in sheet


def test_a_sheet_is_as_thick_as_it_measures() -> None:
    # What is called 18 and measures 17.6 serves parts of 18 (A5.5); what is 15 does not.
    laid = told("1230 x 620 x 18, measures 17.6, no grain")
    assert laid.placed["panel blank 1"].board.sizes[2] == Fraction(176, 10)
    laid = told("1230 x 620 x 15, no grain")
    assert laid.verdict == "not enough"
    assert "no sheet is 18 mm thick" in laid.proofs[0]


def test_what_a_sheet_measures_is_shown_to_a_tenth() -> None:
    laid = told("1230 x 620 x 18, measures 17.6, no grain")
    board = laid.placed["panel blank 1"].board
    assert "1230 x 620 x 17.6" in spoken(board_in_words(board), Display())


@pytest.mark.parametrize(
    ("long", "units", "sawn"),
    [
        # Both edges of 876.8 are trimmed by 3 mm (A10): 882.8, marked as 883 on the sheet.
        ("876.8", "mm", Fraction(883)),
        # 34 1/2 in and 2 x 3 mm are 34.7362 in: the next sixteenth is 34 3/4.
        ("34 1/2", "in", Fraction(3475, 100) * INCH),
    ],
)
def test_sheets_are_broken_down_to_whole_sizes(long: str, units: str, sawn: Fraction) -> None:
    wide, thick = ("400", "18") if units == "mm" else ("16", "3/4")
    notes = f"""\
piece Board
units {units}
overall {long} wide, {wide} deep, {thick} high
timber birch ply
1 panel, flat, across, {long} long, {wide} wide, {thick} thick
finish oil, 2 coats
"""
    checked = check(Source("board.dryfit", notes), None, {})
    assert checked.model is not None
    trimmed, to_size = (way.blanks[0] for way in needs_of(checked.model, shipped_shop())[:2])
    assert trimmed.length == sawn
    assert to_size.length == to_size.part.length


def test_a_sheet_loses_nothing_at_its_ends() -> None:
    laid = told("1207 x 610 x 18, measures 17.6, no grain")
    board = laid.placed["panel blank 1"]
    assert min(one.along[0] for one in board.placed) == 0
    assert {cut.kerf for cut in board.cuts} <= {Fraction(32, 10), Fraction(6, 10)}


def test_a_panel_that_fits_only_across_the_grain_is_told_what_to_write() -> None:
    # 600 along the grain is more than 500; the other way round both sizes fit.
    laid = told("500 x 1900 x 18, measures 17.6")
    assert laid.verdict == "not enough"
    assert "write `no grain` on the line of the sheet" in laid.missing[0].why
    assert told("1900 x 700 x 18, measures 17.6, no grain").verdict == "enough"
    narrow = told("500 x 590 x 18, measures 17.6")
    assert "no grain" not in narrow.missing[0].why


def test_strips_of_lips_that_find_no_wood_are_missing() -> None:
    lipped = PIECE.replace("no gap at ends", "no gap at ends, lipped 6 thick of oak at front")
    wood = "1900 x 700 x 18, measures 17.6, no grain\nhave 1 board of oak, 380 x 100 x 27, rough"
    checked = check(Source("panels.dryfit", lipped.format(sheet=wood)), None, {})
    assert not checked.failed, checked.findings
    _, laid, findings = laid_out(checked)
    assert laid is not None
    assert [(one.part, one.copies) for one in laid.missing] == [("panel lip", 3)]
    (found,) = findings
    assert found.span is not None
    assert found.span.text().startswith("lipped 6 thick")


CASE = """\
piece Small case
units mm, to nearest 0.1
overall 700 wide, 300 deep, 500 high
timber birch ply
{sheets}
2 sides, upright, facing side, depth x 18, at left and right
1 top, across, flat, depth x 18, into sides, housing 6, flush top
1 bottom, across, flat, depth x 18, into sides, housing 6, flush bottom
glue up case: sides, top, bottom
"""
SMALL = "have 1 sheet of birch ply, 600 x 400 x 18, measures 17.6"


def laid_of(*sheets: str) -> tuple[LaidOut, list[str], list[str]]:
    checked = check(Source("case.dryfit", CASE.format(sheets="\n".join(sheets))), None, {})
    assert not checked.failed, checked.findings
    _, laid, _ = laid_out(checked)
    assert laid is not None
    assert checked.model is not None
    taken = [each.text for each in checked.model.assumptions]
    return laid, [each.message for each in checked.findings], taken


@pytest.mark.parametrize("measures", [", measures 18.2", ""])
def test_nothing_comes_out_of_a_sheet_of_the_same_name_and_another_measure(measures: str) -> None:
    """Slots are cut to what the sheet measures that enters them (A5.5): 17.6 here, for all."""
    laid, told, _ = laid_of(SMALL, f"have 1 sheet of birch ply, 1525 x 1525 x 18{measures}")
    assert laid.verdict == "not enough"
    assert {each.board.sizes[2] for each in laid.layouts if each.placed} <= {Fraction("17.6")}
    (asked,) = [each for each in told if "the parts are planned 17.6 mm thick" in each]
    assert ("measures 18.2 mm" if measures else "is not measured") in asked


def test_a_sheet_that_measures_alike_is_laid_out_without_a_word() -> None:
    laid, told, _ = laid_of(SMALL, "have 1 sheet of birch ply, 1525 x 1525 x 18, measures 17.6")
    assert laid.verdict == "enough"
    assert told == []


def test_a_sheet_to_buy_is_to_measure_as_the_one_on_hand() -> None:
    """Nobody can measure it before it is bought: that it does so is said, and what to write."""
    laid, _, taken = laid_of(SMALL, "buy sheets of birch ply, 1525 x 1525 x 18, 60.00 each")
    assert {each.board.sizes[2] for each in laid.layouts if each.placed} == {Fraction("17.6")}
    assert [each.count for each in laid.buy] == [1]
    assert [each for each in taken if "measure 17.6 mm, as the one on hand does" in each]
