"""Small jobs whose best layout is plain to see, and the rules that a layout keeps."""

import doctest
from dataclasses import replace

import pytest
from tests.unit.cutting.jobs import BENCH, KNOT, RULES, bench_answer

import dryfit.cutting
from dryfit.cutting import (
    Area,
    Board,
    Job,
    Layout,
    Malformed,
    Missing,
    Part,
    Rules,
    lay_out,
    violations,
)


def test_the_example_of_the_library_runs() -> None:
    assert doctest.testmod(dryfit.cutting).failed == 0
    assert doctest.testmod(dryfit.cutting).attempted > 5


def test_a_job_with_everything_is_laid_out() -> None:
    answer = bench_answer()
    assert answer.verdict == "enough"
    assert answer.missing == ()
    assert violations(BENCH, answer.layouts) == ()
    assert {layout.board for layout in answer.layouts} <= {"A", "B"}


def test_the_same_job_gives_the_same_answer() -> None:
    assert lay_out(BENCH) == bench_answer()


def test_pieces_leftovers_and_kerfs_are_the_board() -> None:
    for layout in bench_answer().layouts:
        board = next(board for board in BENCH.boards if board.id == layout.board)
        kerfs = sum(
            cut.kerf * (cut.piece.width if cut.saw == "crosscut" else cut.piece.length)
            for cut in layout.cuts
        )
        pieces = sum(piece.area.size for piece in layout.pieces)
        fallen = sum(leftover.area.size for leftover in layout.leftovers)
        assert pieces + fallen + kerfs == board.length * board.width


def test_a_kerf_more_is_too_much() -> None:
    # Three of 300 and two cuts of 3 are 906.
    part = Part("slat", 30_000, 5_000, 2_000, quantity=3)
    rules = Rules(crosscut_kerf=300, rip_kerf=300)
    just = Job((part,), (Board("A", 90_600, 5_000, 2_000),), rules)
    assert lay_out(just).verdict == "enough"
    short = replace(just, boards=(Board("A", 90_599, 5_000, 2_000),))
    assert lay_out(short).missing == (Missing("slat", 1),)


def test_the_last_cut_needs_no_whole_kerf() -> None:
    part = Part("slat", 30_000, 5_000, 2_000)
    layout = one(Job((part,), (Board("A", 30_100, 5_000, 2_000),), Rules(300, 300)))
    assert [(cut.at, cut.kerf) for cut in layout.cuts] == [(30_000, 100)]
    assert layout.leftovers == ()


def one(job: Job) -> Layout:
    answer = lay_out(job)
    assert answer.verdict == "enough"
    assert len(answer.layouts) == 1
    return answer.layouts[0]


def test_cheap_boards_go_first_and_bought_ones_last() -> None:
    part = Part("rail", 50_000, 5_000, 2_000)
    dear, cheap = (
        Board("dear", 60_000, 6_000, 2_000, value=90),
        Board("offcut", 60_000, 6_000, 2_000, value=10),
    )
    shop = Board("yard", 60_000, 6_000, 2_000, value=0, price=1)
    kept = replace(cheap, id="kept", last=True)
    rules = Rules(300, 300)
    assert one(Job((part,), (dear, cheap, shop, kept), rules)).board == "offcut"
    assert one(Job((part,), (dear, shop, kept), rules)).board == "dear"
    assert one(Job((part,), (shop, kept), rules)).board == "kept"
    assert lay_out(Job((part,), (shop,), rules)).price == 1


def test_of_equal_value_less_wood_is_taken() -> None:
    part = Part("rail", 50_000, 5_000, 2_000)
    boards = (Board("long", 90_000, 6_000, 2_000), Board("short", 50_000, 6_000, 2_000))
    assert one(Job((part,), boards, Rules(300, 300))).board == "short"


def test_only_what_may_turn_turns_where_there_is_grain() -> None:
    part = Part("shelf", 30_000, 40_000, 1_800)
    sheet = Board("sheet", 50_000, 30_000, 1_800)
    rules = Rules(300, 300)
    assert lay_out(Job((part,), (sheet,), rules)).verdict != "enough"
    assert one(Job((replace(part, turns=True),), (sheet,), rules)).pieces[0].turned
    assert one(Job((part,), (replace(sheet, grain=False),), rules)).pieces[0].turned


def test_a_knot_is_cut_around() -> None:
    # Beside the knot the board is 160 - 90 = 70 wide, less the kerf.
    long_rail = Part("rail", 200_000, 6_800, 2_000, material="ash")
    board = Board("A", 240_000, 16_000, 3_400, "ash", zones=(KNOT,))
    layout = one(Job((long_rail,), (board,), RULES))
    assert layout.pieces[0].area.low >= KNOT.high
    wider = replace(long_rail, width=7_001)
    assert lay_out(Job((wider,), (board,), RULES)).missing == (Missing("rail", 1),)


def test_clear_wood_on_both_sides_of_a_knot_is_used() -> None:
    short = Part("stile", 87_000, 16_000, 2_000, material="ash")
    long = Part("rail", 139_000, 16_000, 2_000, material="ash")
    board = Board("A", 240_000, 16_000, 3_400, "ash", zones=(KNOT,))
    layout = one(Job((short, long), (board,), RULES))
    assert min(piece.area.start for piece in layout.pieces) == RULES.end_trim


def test_nothing_short_is_ripped() -> None:
    plugs = Part("plug", 5_000, 3_000, 2_000, quantity=8)
    board = Board("A", 60_000, 9_000, 2_000)
    answer = lay_out(Job((plugs,), (board,), replace(RULES, end_trim=0)))
    assert answer.verdict == "enough"
    ripped = [cut.piece.length for cut in answer.layouts[0].cuts if cut.saw == "rip"]
    assert ripped
    assert min(ripped) >= RULES.least_rip


def test_stages_bind() -> None:
    # Strips of different widths side by side, each of several lengths, from one end: two stages.
    parts = (Part("wide", 30_000, 8_000, 2_000, 2), Part("thin", 20_000, 4_000, 2_000, 3))
    board = Board("A", 60_600, 12_300, 2_000)
    job = Job(parts, (board,), Rules(300, 300, stages=2))
    assert lay_out(job).verdict == "enough"
    assert lay_out(replace(job, rules=Rules(300, 300, stages=1))).verdict != "enough"


def test_the_largest_leftover_stays_whole() -> None:
    parts = (Part("rail", 50_000, 5_000, 2_000, 2),)
    job = Job(parts, (Board("A", 200_000, 10_300, 2_000),), RULES)
    kept = [leftover for leftover in one(job).leftovers if leftover.keep]
    assert max(leftover.area.length for leftover in kept) >= 145_000


def test_nothing_to_cut_is_enough() -> None:
    assert lay_out(Job((), BENCH.boards, RULES)).verdict == "enough"
    assert lay_out(Job((), (), RULES)).layouts == ()
    assert lay_out(Job(BENCH.parts, (), RULES)).verdict != "enough"


@pytest.mark.parametrize(
    ("job", "name"),
    [
        (replace(BENCH, parts=(BENCH.parts[0], BENCH.parts[0])), "leg"),
        (replace(BENCH, boards=(BENCH.boards[0], BENCH.boards[0])), "A"),
        (Job((Part("rail", 0, 5, 5),), (), RULES), "rail"),
        (Job((), (Board("A", 5, 5, -1),), RULES), "A"),
        (Job((Part("rail", 5, 5, 5, group="g"),), (), RULES), "rail"),
        (Job((Part("rail", 5, 5, 5, rule="same board"),), (), RULES), "rail"),
        (
            Job((Part("rail", 5, 5, 5, turns=True, group="g", rule="in sequence"),), (), RULES),
            "rail",
        ),
        (
            Job(
                (
                    Part("rail", 5, 5, 5, group="g", rule="in sequence"),
                    Part("stile", 5, 6, 5, group="g", rule="in sequence"),
                ),
                (),
                RULES,
            ),
            "stile",
        ),
    ],
)
def test_a_job_that_makes_no_sense_is_refused(job: Job, name: str) -> None:
    with pytest.raises(Malformed) as refused:
        lay_out(job)
    assert refused.value.name == name


def test_zones_that_leave_nothing() -> None:
    bad = Board("A", 60_000, 6_000, 2_000, zones=(Area(0, 60_000, 0, 6_000),))
    assert lay_out(Job((Part("rail", 5_000, 5_000, 2_000),), (bad,), Rules(3, 3))).layouts == ()
