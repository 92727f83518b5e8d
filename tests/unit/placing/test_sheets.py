"""Sheet goods whose thickness nobody measured are listed once, with the line that says it (H52)."""

from __future__ import annotations

import pytest
from tests.pieces.reading import checked

BOX = """piece Box
units {units}
overall {overall}
timber oak
ply = {ply}
2 sides, front to back, on edge, {side}, at left and right, up 0
2 ends, across, on edge, {side}, at front and back, up 0
ends into sides: rabbet {half}
1 floor, flat, ply thick, of birch ply, inside sides and ends, groove {half}, up {half}
glue up box: sides, ends, floor
{more}
"""
METRIC = {
    "units": "mm",
    "overall": "400 wide, 300 deep, 200 high",
    "ply": "6",
    "side": "200 x 18",
    "half": "6",
}
INCHES = {
    "units": "inches to 1/16",
    "overall": "16 wide, 12 deep, 8 high",
    "ply": "1/4",
    "side": "8 x 3/4",
    "half": "1/4",
}


def lines(words: dict[str, str], more: str = "") -> list[str | None]:
    """The lines that would say how thick the sheet is."""
    model = checked(BOX.format(**words, more=more)).model
    assert model is not None
    return [each.instead for each in model.assumptions if "is taken to measure" in each.text]


@pytest.mark.parametrize(
    ("words", "line"),
    [(METRIC, "measured birch ply 6 = 6"), (INCHES, 'measured birch ply 1/4" = 1/4"')],
)
def test_a_sheet_in_a_groove_is_listed_with_a_line_that_changes_nothing(
    words: dict[str, str], line: str
) -> None:
    assert lines(words) == [line]
    assert lines(words, line) == []
    assert "measured-not-taken" not in {
        each.code for each in checked(BOX.format(**words, more=line)).findings
    }


@pytest.mark.parametrize("line", ["measured birch ply 6 = 5.8", "measured ply = 5.8"])
def test_what_was_measured_is_not_listed(line: str) -> None:
    assert lines(METRIC, line) == []


def test_a_sheet_that_goes_into_nothing_is_not_listed() -> None:
    text = """piece Board
overall 600 wide, 400 deep, 38 high
1 top, flat, 18 thick, of birch ply, onto bearers: screws
2 bearers, across, flat, 600 long, 40 x 20, of oak, at front and back
"""
    model = checked(text).model
    assert model is not None
    assert not [each for each in model.assumptions if "is taken to measure" in each.text]
