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


SHELF = """\
piece Shelf
overall 800 wide, 200 deep, 20 high
timber {}
{}
1 shelf, across, flat, 200 x 20
"""


def of_stock(timber: str, line: str) -> list[tuple[str, Severity]]:
    found = checked(SHELF.format(timber, line)).findings
    return [(each.code, each.severity) for each in found if each.code.startswith("wood-")]


def test_wood_on_hand_that_is_mistyped_is_told() -> None:
    warned = [("wood-unknown", Severity.WARNING)]
    assert of_stock("ash", "have 1 board of asj, 1200 x 230 x 27, rough") == warned
    assert of_stock("ash", "buy boards of waltnu, 1200 x 230 x 27, rough, 48 each") == warned


def test_wood_by_a_fuller_or_a_shorter_name_is_asked_about() -> None:
    asked = [("wood-called-otherwise", Severity.QUESTION)]
    board = "have 1 board of {}, 1200 x 230 x 27, rough"
    assert of_stock("ash", board.format("white ash")) == asked
    assert of_stock("white oak", board.format("oak")) == asked
    # Two kinds of oak are two woods; other woods may lie in the rack.
    assert of_stock("white oak", board.format("red oak")) == []
    assert of_stock("ash", board.format("zebrano")) == []
    assert of_stock("ash", "have 1 sheet of birch ply, 1200 x 600 x 18") == []


def test_boards_are_taken_as_planed_where_their_line_does_not_say_so() -> None:
    def said(line: str) -> list[str | None]:
        model = checked(SHELF.format("ash", line)).model
        assert model is not None
        return [each.instead for each in model.assumptions if "planed" in each.text]

    board = "have 1 board of ash, 1200 x 230 x 27"
    assert said(board) == [f"{board}, planed"]
    assert said(f"{board}, planed") == []
    assert said("have 1 sheet of birch ply, 1200 x 230 x 27") == []
    # Common practice: a slab with its bark on comes from the saw.
    slab = "have 1 slab of ash, 1200 x 300 x 50, waney both edges"
    assert said(slab) == [f"{slab}, rough"]
    assert said(f"{slab}, planed") == said(f"{slab}, rough") == []
    assert said("have 1 board of oak, 1200 x 230 x 27") == []
