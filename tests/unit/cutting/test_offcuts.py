"""Offcuts that serve are used up, and what is left of a large board stays large."""

from dataclasses import replace

import pytest

from dryfit.cutting import Board, Job, Part, Rules, lay_out

RULES = Rules(crosscut_kerf=300, rip_kerf=300, keep_length=24_000, keep_width=12_000)
SHEET = Board("sheet", 200_000, 90_000, 1, value=1_800)
OFFCUT = Board("offcut", 61_200, 30_000, 1, count=2, value=73, offcut=True)
SIDES = Part("side", 80_000, 30_000, 1, quantity=2)
SHELVES = Part("shelf", 61_200, 30_000, 1, quantity=3)


def test_offcuts_that_fit_are_used_although_the_sheet_alone_holds_everything() -> None:
    """Worked by hand: two shelves are the two offcuts, without any cut.

    On the sheet alone the five blanks take two strips: 2 rips, and a crosscut for each blank. With
    the offcuts, three blanks are left: again two strips, and 3 crosscuts.
    """
    answer = lay_out(Job((SIDES, SHELVES), (OFFCUT, SHEET), RULES))
    assert answer.verdict == "enough"
    taken = {(layout.board, layout.copy): layout for layout in answer.layouts}
    assert set(taken) == {("offcut", 1), ("offcut", 2), ("sheet", 1)}
    assert taken["offcut", 1].cuts == taken["offcut", 2].cuts == ()
    assert len(taken["sheet", 1].cuts) == 2 + 3


@pytest.mark.parametrize(
    "other",
    [
        pytest.param(replace(OFFCUT, offcut=False, value=184), id="whole boards stay whole"),
        pytest.param(replace(OFFCUT, last=True), id="kept for last"),
        pytest.param(replace(OFFCUT, price=10), id="it would have to be bought"),
        pytest.param(
            replace(OFFCUT, length=79_000, width=41_500, value=500), id="worth more than it saves"
        ),
    ],
)
def test_what_is_no_offcut_or_too_good_stays_whole(other: Board) -> None:
    """The sheet has to be cut anyway, and holds everything."""
    shelf = replace(SHELVES, quantity=1)
    answer = lay_out(Job((SIDES, shelf), (other, SHEET), RULES))
    assert {layout.board for layout in answer.layouts} == {"sheet"}


def test_an_offcut_is_left_alone_where_it_asks_for_many_more_cuts() -> None:
    """Three small blanks of three sizes: 3 cuts more at most, whichever board they come from."""
    small = tuple(
        Part(f"small {size}", 20_000 + size, 3_000 + size, 1) for size in (0, 1_000, 2_000)
    )
    offcut = replace(OFFCUT, length=61_200, width=6_000, count=1, value=15)
    plain = lay_out(Job((SIDES, SHELVES, *small), (SHEET,), RULES))
    answer = lay_out(Job((SIDES, SHELVES, *small), (offcut, SHEET), RULES))
    cuts = [sum(len(layout.cuts) for layout in one.layouts) for one in (plain, answer)]
    assert answer.verdict == "enough"
    assert cuts[1] <= cuts[0] + 3
