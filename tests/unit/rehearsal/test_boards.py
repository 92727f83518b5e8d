"""Boards laid out by hand, and one thing at a time that is wrong in how they are cut."""

from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest
from tests.pieces.reading import text_of, without_boards
from tests.rehearsal_damage.boarded import boarded
from tests.rehearsal_damage.in_boards import blanks_of, cuts_of, reboarded, recut, renamed
from tests.unit.rehearsal.damaged_times import built
from tests.unit.rehearsal.played import Played, played

from dryfit.plan.operation import Work
from dryfit.plan.plan import Plan
from dryfit.plan.sawing import BadZone, Becomes, SawnBoard
from dryfit.plan.setting import Hold
from dryfit.rehearsal.at_machines.cutters import Toolbox, toolbox
from dryfit.rehearsal.blank import Blank, Sawn
from dryfit.rehearsal.sawing.at_saws import wrong_at_saw
from dryfit.rehearsal.sawing.boards import boards_of, shown
from dryfit.rehearsal.sawing.closing import unaccounted
from dryfit.rehearsal.sawing.cuts import saw
from dryfit.rehearsal.sawing.resawing import resaw
from dryfit.rehearsal.sawing.warp import flat_of, warp_lost
from dryfit.rehearsal.state import Place, State, begin

LONG, WIDE, THICK = Fraction(2400), Fraction(160), Fraction(34)
ASH = SawnBoard("A", "ash", LONG, WIDE, THICK, rough=True, cup=Fraction(4))
"""TRADE I1: the board of the posts and end rails."""
ONE = Fraction(1)


def laid(name: str = "boot_bench") -> Played:
    """A sound plan whose blanks come out of boards."""
    of = built(name)
    return Played(boarded(of.plan, of.goal, of.shop), of.goal, of.shop)


def said(of: Played, plan: Plan) -> str:
    """What is said of the piece with another plan."""
    return replace(of, plan=plan).said()


@pytest.mark.parametrize("name", ["boot_bench", "step_stool", "panel_door", "garage_case"])
def test_what_is_sawn_as_it_must_be_is_sound(name: str) -> None:
    assert laid(name).said() == ""


@pytest.mark.parametrize("shop", ["no_table_saw", "hand_tools", "small_machines", "inch"])
def test_it_is_sound_in_other_shops(shop: str) -> None:
    of = built("boot_bench", shop)
    assert Played(boarded(of.plan, of.goal, of.shop), of.goal, of.shop).said() == ""


@pytest.mark.parametrize(
    ("width", "left"),
    # TRADE A1.6: t 34, w 160, c 4, 1 to clean up: 29.0 unripped, 32.6 ripped to 50.
    [(160, "29"), (50, "32.61")],
)
def test_cup_costs_itself_once_and_falls_with_the_square(width: int, left: str) -> None:
    blank = Blank("post", (ASH.length, Fraction(width), ASH.thickness), sawn=Sawn(ASH, "post", ()))
    flat = flat_of(blank, ONE)
    assert flat is not None
    assert shown(flat) == left


def test_bow_falls_with_the_square_and_twist_in_proportion() -> None:
    """TRADE A1.3, A1.4: half as long a piece keeps a quarter of the bow, half of the twist.

    Wedged level it costs half of what twist it has.
    """
    board = replace(ASH, cup=Fraction(0), bow=Fraction(8), twist=Fraction(6))
    half = (board.length / 2, board.width, board.thickness)
    assert warp_lost(board, half) == 2 + Fraction(3, 2)


def test_a_cupped_board_says_what_it_leaves() -> None:
    """TRADE H44: 34 thick and cup 4 over 160 leaves 29, and 30 is wanted."""
    of = played(text_of("boot_bench"))
    board = next(board for board in of.plan.boards if board.label == "A")
    wide = replace(board, cup=board.width * board.width / 50 / 50 * 4)
    told = said(of, reboarded(of.plan, board.label, cup=wide.cup))
    assert f"board {board.label}: cup" in told
    assert "leaves 29 of 34, 30 wanted" in told


def test_a_planer_snipes_what_is_cut_too_short() -> None:
    """TRADE A5.2: 60 at each end, so that two posts of 430 and a kerf take 983.2."""
    of = laid()
    for _, cut in cuts_of(of.plan):
        if "post" in cut.board and cut.saw == "crosscut" and cut.at > 900:
            told = said(of, recut(of.plan, cut, replace(cut, at=Fraction(980))))
            assert "a blank at least 983" in told
            # It bites the strips that go through beside it, where it is said that some do (A6.1).
            beside = of.with_operations(lambda row: replace(row, between_strips=True))
            plan = recut(beside.plan, cut, replace(cut, at=Fraction(980)))
            assert "a blank at least 983" not in said(of, plan)
            return
    raise AssertionError


def test_a_blank_holds_no_bad_wood() -> None:
    of = laid()
    blank = blanks_of(of.plan)[0]
    zone = BadZone((blank.rect[0][0], blank.rect[0][0] + 1), (Fraction(0), ONE), "a split")
    told = said(of, reboarded(of.plan, blank.board.label, zones=(zone,)))
    assert "holds a split from 28 to 29" in told
    beside = BadZone((blank.rect[0][0] - 1, blank.rect[0][0]), (Fraction(0), ONE), "a split")
    assert said(of, reboarded(of.plan, blank.board.label, zones=(beside,))) == ""


def test_a_rough_edge_runs_along_no_fence_of_a_table_saw(tmp_path: Path) -> None:
    """TRADE A2.5; the plan of a shop without a band saw makes the edge straight first."""
    shop = tmp_path / "shop.toml"
    shop.write_text('format = "dryfit-shop/1"\nstation."band saw" = false\n', encoding="utf-8")
    found = played(without_boards(text_of("boot_bench")), shop)
    of = replace(found, plan=boarded(found.plan, found.goal, found.shop))
    assert of.said() == ""
    assert "with a rough edge along the fence" in of.without("straight edge").said()
    assert "with a rough edge along the fence" not in of.idle("straight edge").said()


def test_what_is_shorter_along_the_fence_than_wide_from_it_is_no_rip(tmp_path: Path) -> None:
    """TRADE A6.2: between fence and blade it turns, and is thrown."""
    shop = tmp_path / "shop.toml"
    shop.write_text('format = "dryfit-shop/1"\nstation."band saw" = false\n', encoding="utf-8")
    of = played(PLANED, shop)
    state = begin(of.goal, of.shop, toolbox(of.plan, of.shop)[0], boards_of(of.plan))
    ripped = 0
    for step in of.plan.steps:
        assert list(state.standing.change(step)) == []
        for operation in step.operations:
            if operation.kind != "rip" or operation.station != "table saw":
                continue
            for cut in operation.board_cuts:
                whole = state.boards.whole[cut.board]
                axes, told = state.standing.at("table saw"), []
                for long in (cut.at, cut.at - 1):
                    piece = replace(whole, along=(Fraction(0), long), straight=True)
                    troubles = wrong_at_saw(state, operation, axes, cut, piece)
                    told.append(any("turns at the blade" in each.message for each in troubles))
                assert told == [False, True]
                ripped += 1
    assert ripped


def test_wood_rests_as_long_as_the_shop_says() -> None:
    """TRADE A3.7: rails of 20 out of 30 lose a third."""
    of = played(PLANED.replace("2400 x 95 x 20", "2400 x 110 x 30, rough"))
    assert of.said() == ""
    longer = replace(of, shop=replace(of.shop, rests=replace(of.shop.rests, planed=432000)))
    (close,) = {row.needed for row in longer.faults() if "begins too soon" in row.message}
    assert close == "720 h between them"


def test_all_of_a_board_is_accounted_for() -> None:
    """Blanks, kerfs and what falls together are the board, to the last cubic millimetre."""
    of = laid()
    state = played_through(of)
    assert of.plan.boards
    assert all(unaccounted(state.boards, board.label) == 0 for board in of.plan.boards)
    label = of.plan.boards[0].label
    state.boards.kerfs[label] += 1
    assert unaccounted(state.boards, label) < 0


def played_through(of: Played) -> State:
    """The boards when all their cuts are made."""
    state = begin(of.goal, of.shop, Toolbox({}, {}), boards_of(of.plan))
    for step in of.plan.steps:
        for operation in step.operations:
            saw(state, operation, Place(step.number, operation.id))
    return state


def test_a_whole_board_may_be_the_blank() -> None:
    of = laid()
    blank = next(b for b in blanks_of(of.plan) if "slat" in b.becomes.name)
    along, across = blank.rect
    board = replace(
        blank.board,
        label="Z",
        length=along[1] - along[0],
        width=across[1] - across[0],
        rough=False,
        becomes=blank.becomes,
    )
    plan = renamed(of.plan, blank, None)
    assert "never" not in said(of, replace(plan, boards=(*plan.boards, board)))
    rough = replace(board, rough=True)
    assert "has a raw end" in said(of, replace(plan, boards=(*plan.boards, rough)))


def test_leaves_are_as_thick_as_a_strip_gives() -> None:
    """TRADE A8.1: 34 rough, 3 lost: (34 - 3 - 1.3) / 2 - 1 = 13.85 is the thickest planed leaf.

    Sawn it is 14.85; a strip that loses no more than the least when it is trued gives half a
    millimetre more.
    """
    of = laid()
    copies = [copy.name for copy in of.goal.parts[0].copies][:2]
    state = begin(of.goal, of.shop, Toolbox({}, {}), boards_of(of.plan))
    for board, leaf in (
        (replace(ASH, cup=Fraction(3), zones=()), Fraction(297, 20)),
        (replace(ASH, cup=Fraction(0)), Fraction(307, 20)),
    ):
        sawn = Sawn(board, "strip", tuple(copies), leaves=2, uncut=True)
        for name in copies:
            blank = Blank(of.goal.parts[0].name, (ASH.length, ASH.width, ASH.thickness), sawn=sawn)
            blank.true = {"F", "E"}
            state.blanks[name] = blank
        state.boards.names = frozenset(copies)
        operation = next(op for step in of.plan.steps for op in step.operations)
        part = of.goal.parts[0].name
        by_hand = replace(operation, kind="resaw", station="bench", settings=(), board_cuts=())
        work = Work(part, tuple(copies), (), None, ())
        deed = replace(by_hand, part=part, work=(work,))
        resaw(state, deed, work, Place(1, deed.id))
        assert state.faults == []
        assert [state.blanks[name].sizes[2] for name in copies] == [leaf, leaf]
        state.blanks[copies[0]].sawn = sawn
        work = replace(work, hold=Hold("E", "F", None))
        resaw(state, replace(deed, station="band saw"), work, Place(1, deed.id))
        # The first leaf is sawn apart already, and cups: its face is not true any more.
        told = " ".join(fault.message for fault in state.faults)
        assert "stands 160 high on its edge" in told
        assert "against the fence with F, which is not true yet" in told
        state.faults.clear()


def test_a_sheet_may_be_turned_where_it_has_no_grain() -> None:
    """What stands in a frame, cut across the sheet."""
    frame = built("mitred_frame")
    plan, goal, shop = frame.plan, frame.goal, frame.shop
    part = next(part for part in goal.parts if part.stock == "sheet")
    copy = part.copies[0]
    long, wide, thick = (copy.box.extent(axis) for axis, _ in copy.frame.axes)
    becomes = Becomes("panel blank 1", "a", (copy.name,))
    sheet = SawnBoard(
        "S", part.timber, wide + 10, long + 10, thick, rough=False, sheet=True, becomes=becomes
    )
    of = Played(replace(plan, boards=(sheet,)), goal, shop)
    assert "long, and what it becomes" in of.said()
    assert said(of, replace(plan, boards=(replace(sheet, grain=False),))) == ""
    thin = replace(sheet, grain=False, thickness=thick - 2)
    assert "thick, and what it becomes" in said(of, replace(plan, boards=(thin,)))


PLANED = """piece Planed frame
units mm
overall 900 wide, 300 deep, 420 high
timber pine
have 1 board of pine, 2400 x 45 x 45
have 3 boards of pine, 2400 x 95 x 20
4 legs, upright, 45 x 45, at corners
2 long rails, across, on edge, 90 x 20, tenon 15 long into legs, flush with top of legs
2 short rails, front to back, on edge, 95 x 20, between legs, flush with top of legs
short rails into legs: dowels
glue up 2 ends: 2 legs, 1 short rail, cure 2 h
glue up base: ends, long rails, cure 2 h
"""


def test_planed_wood_lies_true_as_it_comes() -> None:
    """TRADE A5: at its thickness it is used as it is; what is not ripped has its edges too."""
    of = played(PLANED)
    assert of.plan.boards
    assert of.said() == ""
    done = {op.id for step in of.plan.steps for op in step.operations}
    assert {"leg / length", "long rail / edge", "long rail / width"} <= done
    assert not done & {"leg / face", "leg / edge", "leg / width", "long rail / thickness"}


SMALL_SHEETS = """piece Case
units mm
overall 900 wide, 300 deep, 700 high
timber birch ply
have 2 sheets of birch ply, 703 x 303 x 18
have 2 sheets of birch ply, 879 x 306 x 18
2 sides, upright, facing side, 300 x 18, at left and right
2 shelves, across, flat, 300 x 18, between sides, up 30 and 600, housing 6
glue up case: sides, shelves, cure 2 h
"""


def test_sheets_with_nothing_to_trim_are_sawn_to_size_once() -> None:
    """TRADE A5: where a factory edge is kept nothing is added; a second rip would take nothing."""
    of = played(SMALL_SHEETS)
    assert of.said() == ""
    done = [op.id for step in of.plan.steps for op in step.operations]
    assert {"side / width", "side / length"} <= set(done)
    assert not [name for name in done if name.startswith(("side / rip", "side / rough length"))]
