"""Leaves resawn from one rectangle: how many there are, and that search, checker and proof agree.

TRADE A8.1: leaves * (thickness + planing) + (leaves - 1) * kerf is what the board must be thick.
"""

from dataclasses import replace

import pytest

from dryfit.cutting import Board, Job, Malformed, Part, Piece, Rules, lay_out, violations
from dryfit.cutting.instance import leaves_of

RULES = Rules(300, 300, resaw_kerf=200)
# 8 thick and 1.5 to plane on both sides is 11; two of these and a kerf of 2 are 24.
LEAF = Part("leaf", 50_000, 12_000, 800, quantity=2, leaf=300)


@pytest.mark.parametrize(
    ("board", "thickness", "leaves"),
    [
        (2_700, 800, 2),
        (3_400, 1_200, 2),
        (5_200, 2_200, 2),
        (5_200, 1_200, 3),
        (6_500, 1_800, 2),
        (6_500, 1_500, 3),
        (6_500, 2_500, 2),
        (2_399, 800, 1),
        (2_400, 800, 2),
    ],
)
def test_leaves_of_a_board(board: int, thickness: int, leaves: int) -> None:
    """The first seven are of a table of our trials, each worked by the formula above."""
    job = Job((replace(LEAF, thickness=thickness),), (), RULES)
    assert leaves_of(job, 0, Board("A", 9, 9, board)) == leaves


def test_two_leaves_come_out_of_one_place() -> None:
    board = Board("A", 50_000, 12_000, 2_400)
    job = Job((LEAF,), (board,), RULES)
    answer = lay_out(job)
    assert answer.verdict == "enough"
    (layout,) = answer.layouts
    area = layout.pieces[0].area
    assert layout.pieces == (Piece("leaf", 1, area, layer=1), Piece("leaf", 2, area, layer=2))
    thinner = replace(job, boards=(replace(board, thickness=2_399),))
    assert lay_out(thinner).verdict == "not enough"
    once = replace(job, parts=(replace(LEAF, leaf=None),))
    assert lay_out(once).verdict == "not enough"


def test_a_leaf_too_many_is_proved() -> None:
    # Three places of two leaves each hold six; the board has room for three places, not four.
    board = Board("A", 50_000, 36_600, 2_400)
    six = replace(LEAF, quantity=6)
    assert lay_out(Job((six,), (board,), RULES)).verdict == "enough"
    answer = lay_out(Job((replace(LEAF, quantity=7),), (board,), RULES))
    assert (answer.verdict, [lack.copies for lack in answer.missing]) == ("not enough", [1])


def test_the_caller_may_say_how_many_leaves_a_board_gives() -> None:
    part = replace(LEAF, thickness=1, leaf=None, quantity=3, layers=(("A", 3),))
    boards = (Board("A", 50_000, 12_000, 1), Board("B", 50_000, 12_000, 1))
    job = Job((part,), boards, RULES)
    answer = lay_out(job)
    assert [layout.board for layout in answer.layouts] == ["A"]
    assert lay_out(replace(job, boards=boards[1:])).verdict == "not enough"


def test_a_bookmatched_pair_is_one_place_on_a_thick_board() -> None:
    pair = replace(LEAF, group="doors", rule="bookmatched")
    thin = Board("thin", 120_000, 30_000, 2_300)
    thick = Board("thick", 60_000, 14_000, 2_400, value=9)
    job = Job((pair,), (thin, thick), RULES)
    answer = lay_out(job)
    (layout,) = answer.layouts
    assert layout.board == "thick"
    assert [piece.layer for piece in layout.pieces] == [1, 2]
    alone = lay_out(replace(job, boards=(thin,)))
    assert alone.proofs[0].size == "thickness"
    assert (alone.proofs[0].needed, alone.proofs[0].there) == (2_400, 2_300)


def test_what_is_resawn_wrongly_is_found_out() -> None:
    pair = replace(LEAF, group="doors", rule="bookmatched")
    board = Board("A", 120_000, 30_000, 2_400)
    job = Job((pair,), (board,), RULES)
    (layout,) = lay_out(job).layouts
    first, second = layout.pieces
    spoilt = (
        (job, replace(second, layer=1), "overlap"),
        (job, replace(second, layer=3), "counted wrongly"),
        (replace(job, boards=(replace(board, thickness=2_399),)), second, "too thin"),
        (replace(job, parts=(replace(pair, leaf=None),)), second, "not to be resawn"),
    )
    for other, piece, reason in spoilt:
        faults = violations(other, (replace(layout, pieces=(first, piece)),))
        assert any(reason in fault for fault in faults), (reason, faults)


def test_leaves_of_one_group_are_alike() -> None:
    other = replace(LEAF, id="other", length=40_000, group="doors", rule="bookmatched")
    pair = replace(LEAF, group="doors", rule="bookmatched")
    with pytest.raises(Malformed):
        lay_out(Job((pair, other), (Board("A", 120_000, 30_000, 2_400),), RULES))
