"""Boards that are laid out: their cuts as operations, and the milling of what comes out of them."""

from collections import Counter
from dataclasses import replace
from fractions import Fraction

import networkx as nx
import pytest
from tests.pieces.reading import checked as checked_notes
from tests.pieces.reading import model_of, text_of
from tests.unit.operations.layouts import (
    across,
    along,
    blanks_of_the_bench,
    boards,
    by_lot,
    cut_up,
    in_the_rough,
    laid,
    trade_example,
)
from tests.unit.operations.worked import operation, piece, rule, setting, shipped_shop, shop_without

from dryfit.operations import work_list
from dryfit.operations.boards.board_words import FRESH_END
from dryfit.plan.operation import Operation, WorkList
from dryfit.shop.shop import Shop
from dryfit.stock.laid_out import Fallen, LaidOut
from dryfit.workshop import laid_out


def sawn(layouts: LaidOut, shop: Shop | None = None, notes: str = "boot_bench") -> WorkList:
    """The work list with the boards laid out."""
    work, findings = work_list(piece(notes), shop or shipped_shop(), {}, layouts)
    assert work is not None, findings
    return work


def sawing(work: WorkList) -> list[Operation]:
    """The operations that cut boards."""
    return [each for each in work.operations if each.board_cuts]


def test_seven_sections_and_their_rips_as_in_the_worked_example() -> None:
    # TRADE I1, rows 01 to 02: 11 crosscuts of 0.5 min, rips at 0.6 min a metre at four fences.
    work = sawn(trade_example(piece()))
    cuts = sawing(work)
    across_them = [each for each in cuts if each.kind == "rough length"]
    assert {each.station for each in across_them} == {"mitre saw"}
    assert sum(len(each.board_cuts) for each in across_them) == 11
    assert sum(each.tenths for each in across_them) == 55
    ripped: Counter[Fraction] = Counter()
    for each in cuts:
        if each.kind == "rip":
            assert each.station == "band saw"
            ripped[Fraction(setting(each, "fence").value)] += each.tenths
    told = {Fraction(50): 32, Fraction(105): 13, Fraction(193, 2): 27, Fraction(45): 32}
    assert ripped.keys() == told.keys()
    # The minutes of each operation are rounded by themselves.
    assert all(abs(ripped[fence] - tenths) <= 1 for fence, tenths in told.items())
    assert [each.id for each in cuts] == [
        "post / rough length",
        "post / rip",
        "top end rail / rough length",
        "top end rail / rip",
        "bottom end rail / rip",
        "apron / rough length",
        "apron / rip",
        "top stave / rough length",
        "top stave / rip",
        "slat / rip",
        "slat / rough length",
    ]


def test_each_cut_is_told_from_the_fresh_end_of_the_piece_in_hand() -> None:
    work = sawn(trade_example(piece()))
    rough, rip = operation(work, "post / rough length"), operation(work, "post / rip")
    assert rough.sentence == "Crosscut the wood for the posts to chalk marks"
    assert rough.details == (FRESH_END,)
    assert rough.cut_lines == (
        ("Cut A1: the raw end, ", Fraction(22)),
        (
            "Cut A2: ",
            Fraction(985),
            " from the end; off comes the wood for M, N and O",
        ),
    )
    assert rip.sentence == "Rip the wood for the posts along the fence"
    assert rip.cut_lines == (
        (
            "Cuts A3, A4 and A5, in what A2 took off: each ",
            Fraction(50),
            f" from the edge; off come {OFF_A2}",
        ),
    )


def test_what_is_worth_keeping_is_not_told_as_waste() -> None:
    # The reach of what falls is that of the cut in hand: 22 and a kerf of 3.2, then 900.
    of, (a, *_) = blanks_of_the_bench(), boards(piece())
    cut = cut_up(a, across((900, None), (1060, along((105, of["S"])))))
    whole, begin = (Fraction(0), a.sizes[1]), Fraction(22) + Fraction(16, 5)
    falls = (begin, begin + 900)
    end = (begin + 900 + 1060 + 2 * Fraction(16, 5), a.sizes[0])
    kept = (Fallen(falls, whole, (falls, whole), True), Fallen(end, whole, (end, whole), True))
    told = operation(sawn(laid((replace(cut, fallen=kept),))), "apron / rough length").cut_lines
    ends = [words[-1] for words in told if words[0] in {"Cut A2: ", "Cut A3: "}]
    assert ends == [
        " from the end; what falls is a leftover to keep",
        " from the end; off comes the wood for S, and what is left is a leftover to keep",
    ]
    burnt = operation(sawn(laid((cut,))), "apron / rough length").cut_lines
    assert [words[-1] for words in burnt if words[0] == "Cut A2: "] == [
        " from the end; what falls is waste"
    ]


def test_cuts_alike_tell_all_that_comes_off() -> None:
    # The second strip is crosscut once more, the first is a blank.
    of, (b, *_) = blanks_of_the_bench(), boards(piece())[1:]
    cut = cut_up(b, across((1060, along((45, of["F"]), (45, across((1060, of["G"])))))))
    told = [words for each in sawing(sawn(laid((cut,)))) for words in each.cut_lines]
    assert any("off come slat blank 1 (F) and the wood for G" in str(words) for words in told)


def test_a_cut_waits_for_the_cut_that_gave_its_piece_and_milling_for_all_blanks() -> None:
    work = sawn(trade_example(piece()))
    assert "bow" in rule(work, "post / rough length", "post / rip").reason
    assert rule(work, "post / rough length", "top end rail / rough length")
    assert rule(work, "apron / rip", "slat / rip")
    assert rule(work, "slat / rip", "slat / face")
    assert not [
        each for each in work.rules if each.before == "slat / rough length" and "face" in each.after
    ]
    # The spare of the top end rails is sawn last, and goes through the machines with them.
    face = operation(work, "top end rail / face")
    assert ("With them: 1 spare or test piece",) in face.details
    # TRADE F1: 0.6 min each and 1.2 a metre, two pieces of 0.805 m.
    assert face.tenths == round(10 * (2 * 0.6 + 2 * 0.805 * 1.2))


def test_thickness_is_planed_from_that_of_the_boards() -> None:
    # 34 - 1 - 30 in passes of 1.5 mm: 2 of two blanks and a spare, 0.3 min and 0.2 a metre (F1).
    thickness = operation(sawn(trade_example(piece())), "post / thickness")
    assert thickness.tenths == round(10 * 2 * (3 * 0.3 + 3 * 0.985 * 0.2))


def test_without_a_layout_nothing_changes() -> None:
    with_none, _ = work_list(piece(), shipped_shop(), {}, None)
    assert with_none == work_list(piece(), shipped_shop())[0]
    assert with_none is not None
    assert with_none.boards == ()


OFF_A2 = "post blank 1 (M), post blank 2 (N) and post spare 1 (O)"


def graph_of(work: WorkList) -> "nx.DiGraph[str]":
    """The rules as a graph."""
    graph: nx.DiGraph[str] = nx.DiGraph()
    graph.add_nodes_from(each.id for each in work.operations)
    graph.add_edges_from((each.before, each.after) for each in work.rules)
    return graph


@pytest.mark.parametrize("seed", range(25))
def test_any_layout_is_sawn_once_and_in_order(seed: int) -> None:
    layouts = by_lot(piece(), seed)
    work = sawn(layouts)
    cuts = [(cut, each) for each in sawing(work) for cut in each.board_cuts]
    wanted = {(each.board.label, cut.number) for each in layouts.layouts for cut in each.cuts}
    assert len(cuts) == len(wanted)
    assert {(cut.board, cut.number) for cut, _ in cuts} == wanted
    by = {(cut.board, cut.number): each.id for cut, each in cuts}
    assert len({each.id for each in work.operations}) == len(work.operations)
    graph = graph_of(work)
    assert nx.is_directed_acyclic_graph(graph)
    for cut, each in cuts:
        if cut.after is None:
            continue
        before = by[cut.board, cut.after]
        if before == each.id:
            numbers = [(one.board, one.number) for one in each.board_cuts]
            assert numbers.index((cut.board, cut.after)) < numbers.index((cut.board, cut.number))
        else:
            assert graph.has_edge(before, each.id)
    freed = Counter(
        side.name for cut, _ in cuts for side in (cut.first, cut.rest) if side is not None
    )
    assert freed == {each.name: 1 for each in layouts.blanks}
    # Every copy is told at most once in each direction, and its milling waits for its last cut.
    for kind in ("rough length", "rip"):
        told = Counter(
            copy
            for each in sawing(work)
            if each.kind == kind
            for row in each.work
            for copy in row.copies
        )
        assert set(told.values()) <= {1}
    for cut, each in cuts:
        for side in (cut.first, cut.rest):
            if side is not None and side.pieces:
                subject = side.name.rpartition(" blank ")[0]
                assert nx.has_path(graph, each.id, f"{subject} / face")


def test_parts_that_take_turns_on_two_boards_are_parted_by_board() -> None:
    # On board A a slat is ripped off before an apron, on B after it.
    of, (a, b, *_) = blanks_of_the_bench(), boards(piece())
    layouts = laid(
        (
            cut_up(a, along((45, across((1060, of["F"]))), (105, across((1060, of["S"]))))),
            cut_up(b, along((105, across((1060, of["T"]))), (45, across((1060, of["G"]))))),
        )
    )
    work = sawn(layouts)
    ids = [each.id for each in sawing(work)]
    assert "apron / rip / board A" in ids
    assert "slat / rip / board B" in ids
    assert "slat / rough length" in ids
    assert "slat / raw end" in ids
    # The other slats and all else have no wood yet.
    assert operation(work, "slat / rip / to buy").work[0].copies == ("slat 3", "slat 4", "slat 5")
    assert rule(work, "slat / rip / to buy", "slat / face")


def test_what_is_done_to_boards_is_named_without_them() -> None:
    """Whatever the layout, `done: apron / rip` names it, though it may be parted by boards."""
    of, (a, b, *_) = blanks_of_the_bench(), boards(piece())
    layouts = laid(
        (
            cut_up(a, along((45, across((1060, of["F"]))), (105, across((1060, of["S"]))))),
            cut_up(b, along((105, across((1060, of["T"]))), (45, across((1060, of["G"]))))),
        )
    )
    model = model_of(text_of("boot_bench") + "done: apron / rip\ndone: apron / saw\n")
    work, findings = work_list(model, shipped_shop(), {}, layouts)
    assert work is not None
    unknown = [each.message for each in findings if each.code == "done-unknown-operation"]
    assert unknown == ["no operation is called `apron / saw`"]


def test_a_table_saw_rips_from_a_straight_edge_only() -> None:
    # TRADE A2.5.
    work = sawn(trade_example(piece()), shop_without("band saw"))
    straight, rip = operation(work, "post / straight edge"), operation(work, "post / rip")
    assert (straight.station, rip.station) == ("jointer", "table saw")
    assert "straight edge at the fence" in rip.sentence
    assert rule(work, "post / rough length", "post / straight edge")
    assert rule(work, "post / straight edge", "post / rip")
    # The slats from board B come off edges that the apron's rip has left, those from D do not.
    assert operation(work, "slat / straight edge").tenths == round(10 * (0.4 + 0.6 * 1.06))


def test_why_a_board_is_parted_before_it_is_planed_tells_how() -> None:
    # TRADE H44: cup goes with the width, bow with the length as well.
    for bow, word in ((0, "ripped"), (12, "cut up")):
        of, (a, *_) = blanks_of_the_bench(), boards(piece())
        bowed = replace(a, line=replace(a.line, bow=Fraction(bow)))
        work = sawn(laid((cut_up(bowed, along((45, across((1060, of["F"]))))),)))
        told = [each for row in sawing(work) for each in row.details if "Planed flat" in str(each)]
        assert [each[-1] for each in told] == [f": so it is {word} first"]


def wide_and_short(long: int) -> LaidOut:
    """A board of which 400 are ripped off a piece of a length."""
    (a, *_), top = boards(piece()), blanks_of_the_bench()["U"]
    wide = in_the_rough(a, rough=False, sizes=(Fraction(2400), Fraction(900), Fraction(27)))
    own = replace(top, length=Fraction(long), width=Fraction(400))
    return laid((cut_up(wide, across((long, along((400, own))))),))


def test_what_is_shorter_along_the_fence_than_wide_from_it_goes_to_another_saw() -> None:
    # TRADE A6.2: between fence and blade it turns, and is thrown.
    no_band_saw = shop_without("band saw")
    even, short = wide_and_short(400), wide_and_short(399)
    assert operation(sawn(even, no_band_saw), "top stave / rip").station == "table saw"
    assert operation(sawn(short), "top stave / rip").station == "band saw"
    by_hand = operation(sawn(short, no_band_saw), "top stave / rip")
    assert (by_hand.station, by_hand.settings) == ("bench", ())
    assert any("turn at the blade" in str(detail) for detail in by_hand.details)


def test_without_saws_boards_are_sawn_by_hand() -> None:
    work = sawn(trade_example(piece()), shop_without("band saw", "table saw", "mitre saw"))
    cuts = sawing(work)
    assert {each.station for each in cuts} == {"bench"}
    assert operation(work, "post / rip").sentence.endswith("with a hand saw")
    assert "by hand to chalk marks" in operation(work, "post / rough length").sentence


def test_planed_wood_keeps_its_thickness_and_its_faces() -> None:
    # TRADE A5: planed stock is used at its thickness; its sawn edges are jointed all the same.
    of, (a, *_) = blanks_of_the_bench(), boards(piece())
    planed = in_the_rough(
        a, rough=False, cup=Fraction(0), sizes=(Fraction(2400), Fraction(160), Fraction(18))
    )
    kept = [
        replace(of[letter], allowance=(Fraction(10), Fraction(3), Fraction(0)))
        for letter in "FGHIJ"
    ]
    rows = [(45, each) for each in kept]
    layouts = laid((cut_up(planed, across((1060, along(*rows[:3])), (1060, along(*rows[3:])))),))
    work = sawn(layouts)
    chain = [each.id for each in work.operations if each.part == "slat"][:5]
    assert chain == [
        "slat / rough length",
        "slat / rip",
        "slat / edge",
        "slat / width",
        "slat / length",
    ]
    assert rule(work, "slat / rip", "slat / edge")


def test_planed_wood_of_the_right_width_is_only_cut_to_length() -> None:
    of, (a, *_) = blanks_of_the_bench(), boards(piece())
    planed = in_the_rough(
        a, rough=False, cup=Fraction(0), sizes=(Fraction(5500), Fraction(40), Fraction(18))
    )
    ready = [
        replace(of[letter], width=Fraction(40), allowance=(Fraction(10), Fraction(0), Fraction(0)))
        for letter in "FGHIJ"
    ]
    work = sawn(laid((cut_up(planed, across(*((1060, each) for each in ready))),)))
    chain = [each.id for each in work.operations if each.part == "slat"][:2]
    assert chain == ["slat / rough length", "slat / length"]
    assert rule(work, "slat / rough length", "slat / length")


def test_a_sheet_that_one_does_not_lift_takes_two_to_break_down() -> None:
    # TRADE A10: 18 mm plywood is 12 to 13 kg a square metre, so that 2440 x 1220 is over 25 kg.
    model = model_of(CASE_OF_PLY)
    checked, layouts, _ = laid_out(checked_notes(CASE_OF_PLY))
    assert layouts is not None
    assert checked.model is not None
    work, _ = work_list(checked.model, shipped_shop(), {}, layouts)
    assert work is not None
    first = [each for each in sawing(work) if any(cut.after is None for cut in each.board_cuts)]
    assert [each.hands for each in first] == [2]
    assert first[0].station == "bench"
    assert "sheet A weighs about " in str(first[0].details[0])
    assert "along a straight edge" in first[0].sentence
    assert {part.stock for part in model.parts} == {"sheet"}
    # Broken down a little large, and sawn to size from a straight edge (A10).
    width = operation(work, "side / width")
    assert width.station == "table saw"
    assert "one sawn straight" in width.sentence
    assert [each.before for each in work.rules if each.after == "side / width"]


CASE_OF_PLY = """piece Case
units mm
overall 900 wide, 300 deep, 700 high
timber birch ply
have 1 sheet of birch ply, 2440 x 1220 x 18
2 sides, upright, facing side, 300 x 18, at left and right
2 shelves, across, flat, 300 x 18, between sides, up 30 and 600, housing 6
glue up case: sides, shelves, cure 2 h
"""
