"""A wood that no table holds is told, whether or not a panel asks for its movement."""

from __future__ import annotations

import pytest
from tests.pieces.reading import checked

from dryfit.diagnostics import Diagnostic, Severity


def told(timber: str, part: str = "1 shelf, across, flat, 200 x 20") -> list[Diagnostic]:
    text = f"piece Shelf\noverall 800 wide, 200 deep, 20 high\ntimber {timber}\n{part}\n"
    return [each for each in checked(text).findings if each.code == "wood-unknown"]


def test_a_mistyped_wood_is_a_warning_with_the_nearest_known_one() -> None:
    (found,) = told("mahoganny")
    assert found.severity is Severity.WARNING
    assert found.hints[0].message == "did you mean `mahogany`?"
    assert found.span is not None
    assert found.span.line == 3


def test_a_wood_of_the_part_s_own_line_is_told_there() -> None:
    (found,) = told("oak", "1 shelf, across, flat, 200 x 20, of waltnu")
    assert "`walnut`" in found.hints[0].message
    assert found.span is not None
    assert found.span.line == 4


def test_two_woods_in_one_line_are_told_with_the_lines_to_write() -> None:
    (found,) = told("cherry and walnut")
    assert found.severity is Severity.WARNING
    assert "`timber cherry`, and `of walnut`" in found.hints[0].message


def test_a_wood_that_is_like_none_is_a_notice_for_the_tables_hold_not_every_wood() -> None:
    (found,) = told("zebrano")
    assert found.severity is Severity.NOTICE


@pytest.mark.parametrize(
    ("timber", "part"),
    [
        ("oak", "1 shelf, across, flat, 200 x 20"),
        ("brown ash", "1 shelf, across, flat, 200 x 20"),  # known by its last word
        ("Honduran mahogany", "1 shelf, across, flat, 200 x 20"),
        ("birch plywood", "1 shelf, across, flat, 200 x 20"),  # sheets do not move
        ("mahoganny", "1 shelf, across, flat, 200 x 20, of oak"),  # no part is of it
    ],
)
def test_known_woods_sheets_and_woods_that_no_part_is_of_are_not_told(
    timber: str, part: str
) -> None:
    assert told(timber, part) == []
