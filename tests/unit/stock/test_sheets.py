"""Sheet goods: grain, what they measure, factory edges and the kerf of the table saw."""

from fractions import Fraction

import pytest

from dryfit.diagnostics import Source
from dryfit.stock.laid_out import LaidOut
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


def test_a_sheet_loses_nothing_at_its_ends() -> None:
    laid = told("1207 x 610 x 18, measures 17.6, no grain")
    board = laid.placed["panel blank 1"]
    assert min(one.along[0] for one in board.placed) == 0
    assert {cut.kerf for cut in board.cuts} <= {Fraction(32, 10), Fraction(6, 10)}
