"""What a blank is larger than its part, row by row of the table of TRADE A5, and A1 at its size."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.unit.operations.worked import piece, shipped_shop, shop_without

from dryfit.piece.declared import Have
from dryfit.stock.blanks.blank import Blank
from dryfit.stock.blanks.needs import needs_of
from dryfit.stock.blanks.rough_sizes import Rough, rough_sizes
from dryfit.stock.boards import Lack, flat, lack, reserve, sizes, wanted

MM = Fraction


def mm(*sizes: int | Fraction) -> tuple[Fraction, ...]:
    """Exact millimetres."""
    return tuple(Fraction(size) for size in sizes)


def board(*sizes: int, state: str = "rough") -> Have:
    """A board of ash of that length, width and thickness."""
    long, wide, thick = mm(*sizes)
    line = replace(piece().stock[1], sizes=(long, wide, thick))
    return replace(line, rough=state == "rough", hit_and_miss=state == "hit and miss")


def blank(name: str) -> Blank:
    """A blank of the boot bench."""
    return next(
        each for each in needs_of(piece(), shipped_shop())[0].blanks if each.subject == name
    )


def out_of(name: str, line: Have) -> Rough:
    """How a blank of the boot bench is sawn out of a board."""
    rough = rough_sizes(blank(name), line, shipped_shop())
    assert rough is not None
    return rough


def test_rough_boards() -> None:
    # Apron 920 x 100 x 22: + 25 in length or twice the planer's snipe of 60, + 5 on the band saw.
    rough = out_of("apron", board(2400, 160, 27))
    assert (rough.length, rough.width, rough.thickness) == mm(1040, 105, 27)
    assert rough.allowance == mm(120, 5, 5)
    assert rough.reason == "the planer bites deeper at both ends"
    shop = shop_without("planer", "band saw")
    alone = rough_sizes(blank("apron"), board(2400, 160, 27), shop)
    assert alone is not None
    assert (alone.length, alone.width) == mm(945, 106)


def test_boards_planed_here_and_there() -> None:
    rough = out_of("apron", board(2400, 160, 25, state="hit and miss"))
    assert (rough.length, rough.width, rough.thickness) == mm(1040, 105, 25)
    assert rough.trued
    assert rough.planed
    assert not rough.reason.endswith("the board")  # 3 of thickness is the usual allowance
    assert out_of("apron", board(2400, 160, 24, state="hit and miss")).reason.endswith(
        "of the board"
    )


def test_planed_boards_of_the_thickness_of_the_part_are_not_planed() -> None:
    rough = out_of("apron", board(2400, 160, 22, state="planed"))
    assert (rough.length, rough.width, rough.thickness) == mm(930, 103, 22)
    assert rough.allowance == mm(10, 3, 0)
    assert not rough.trued
    assert not rough.planed
    assert rough.ripped


def test_thicker_planed_boards_are_planed_down_and_lose_the_snipe() -> None:
    rough = out_of("apron", board(2400, 160, 24, state="planed"))
    assert (rough.length, rough.width) == mm(1040, 103)
    assert rough.planed
    assert not rough.trued


def test_a_planed_board_of_the_very_section_is_only_cut_to_length() -> None:
    line = board(2400, 100, 22, state="planed")
    assert out_of("apron", line).width == 100
    assert not out_of("apron", line).ripped
    shop = shipped_shop()
    assert lack(line, wanted(piece().part("apron"), shop), shop) is Lack.NOTHING
    # A wider or a thinner one is ripped, and a rough one has no true edge.
    assert rough_sizes(blank("apron"), replace(line, rough=True), shop) is None
    assert out_of("apron", board(2400, 110, 22, state="planed")).ripped


def test_a_planed_board_thinner_than_the_part_is_none() -> None:
    assert rough_sizes(blank("apron"), board(2400, 160, 21, state="planed"), shipped_shop()) is None


def test_staves_of_a_panel() -> None:
    # Panel + 20 in length, + 1.5 of thickness for flattening; 96.5 x 4 of TRADE I1.
    shop = shop_without("planer")
    top = next(each for each in needs_of(piece(), shop)[0].blanks if each.staves)
    rough = rough_sizes(top, board(2500, 210, 27), shop)
    assert rough is not None
    assert (rough.length, rough.width) == mm(1020, Fraction(193, 2))
    assert top.to_thickness == Fraction(43, 2)


def test_a_part_wider_than_the_planer_is_not_bitten_by_it() -> None:
    # TRADE A7: a router sled, or hand planes, and 1.5 in place of 1 to clean both faces.
    wide = replace(blank("apron"), to_width=MM(320), sawn_width=MM(320))
    rough = rough_sizes(wide, board(2400, 340, 25), shipped_shop())
    assert rough is not None
    assert rough.length == 945
    assert rough_sizes(wide, board(2400, 340, 24), shipped_shop()) is not None
    # 23.9 would do with 1 to clean up: 22 + 0.5 + 1.5 = 24.
    thin = replace(board(2400, 340, 24), sizes=(MM(2400), MM(340), MM(239, 10)))
    assert rough_sizes(wide, thin, shipped_shop()) is None


def test_each_state_asks_for_its_own_size() -> None:
    lines = (
        board(2400, 160, 27),
        board(2400, 160, 22, state="planed"),
        board(2400, 160, 25, state="hit and miss"),
    )
    found = [out_of("apron", line) for line in lines]
    assert [(rough.length, rough.width) for rough in found] == [
        mm(1040, 105),
        mm(930, 103),
        mm(1040, 105),
    ]


def test_j1_a_cupped_board_serves_strips_that_it_does_not_serve_whole() -> None:
    """TRADE A1.6, H44: 34 thick, 160 wide, cup 4: 29.0 whole, 32.6 ripped to 50.

    The loss of the whole board taken for each strip, in `rough_sizes`, would refuse the posts.
    """
    cupped, shop = piece().stock[0], shipped_shop()
    long, wide, _ = sizes(cupped)
    whole, rough = flat(cupped, long, wide, shop), out_of("post", cupped)
    assert whole == 29
    assert rough.width == 50
    ripped = flat(cupped, rough.length, rough.width, shop)
    assert float(ripped) == pytest.approx(32.6, abs=0.05)
    assert whole < blank("post").trued_thickness + reserve(cupped, shop) == Fraction(61, 2)


def test_a_twist_counts_half_and_a_bow_by_the_square_of_the_length() -> None:
    """TRADE A1.3-A1.5 at the blank's own size: 1040 x 105 of 2080 x 210.

    Bow 4 leaves 1, twist 8 leaves 2 and costs half of it; 1 is cleaned off: 27 - 3 = 24.
    """
    line = replace(board(2080, 210, 27), bow=MM(4), twist=MM(8))
    rough, shop = out_of("apron", line), shipped_shop()
    assert mm(rough.length, rough.width) == mm(1040, 105)
    assert flat(line, rough.length, rough.width, shop) == 24
    assert flat(line, MM(2080), MM(210), shop) == 27 - 4 - 4 - 1


def test_a_strip_for_two_leaves() -> None:
    """TRADE A8.1: 34 rough, 3 lost, kerf 1.3, 1 of planing a leaf: leaves of 13.85 at most.

    Here at the shop's allowances: 2 x (t + 1.5 flattening + 1.5 planing) + 1.3 + 2 lost to warp,
    with half a millimetre of reserve inside the planing, is 34 for t = 12.35.
    """
    shop = shipped_shop()
    slab = replace(board(2400, 210, 34), kind="slab")
    for thick, fits in ((MM(1235, 100), True), (MM(1236, 100), False)):
        model = piece()
        top = replace(model.part("top"), thickness=thick, wishes=frozenset({"bookmatched"}))
        parts = tuple(top if part.name == "top" else part for part in model.parts)
        needs = needs_of(replace(model, parts=parts), shop)[0]
        (strip,) = (each for each in needs.blanks if each.staves)
        assert [strip.count, strip.each, strip.leaves, strip.along] == [2, 2, 2, 1]
        assert (rough_sizes(strip, slab, shop) is not None) is fits


def test_sheets_are_broken_down_larger_all_round() -> None:
    # TRADE A5: + 3 for each trimmed edge; A10: broken down oversize, + 6.
    cabinet, shop = piece("wall_cabinet"), shipped_shop()
    back = next(each for each in needs_of(cabinet, shop)[0].blanks if each.subject == "back")
    sheet = next(line for line in cabinet.stock if line.kind == "sheet")
    rough = rough_sizes(back, sheet, shop)
    assert rough is not None
    assert rough.allowance == mm(6, 6, 0)
    # TRADE A5.5: a sheet is used as thick as it measures, which is never its name alone.
    assert rough_sizes(back, replace(sheet, measured=MM(56, 10)), shop) is None
    assert rough_sizes(back, replace(sheet, measured=MM(9)), shop) is None
    assert rough_sizes(back, cabinet.stock[0], shop) is None
