"""Blanks: allowances of the shop file, short parts ganged, boards on hand looked at (TRADE A5)."""

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.unit.operations.worked import piece, shipped_shop, shop_without

from dryfit.stock.blanks.blank import blank_of, gangs_from_boards


def test_four_posts_come_out_of_two_blanks() -> None:
    blank = blank_of(piece().part("post"), piece(), shipped_shop())
    # 2 x 430 + 3.2 + 2 x 60 = 983.2 (TRADE A5.2), to whole 5 mm.
    assert (blank.each, blank.count, blank.length) == (2, 2, Fraction(985))
    assert (blank.width, blank.thickness) == (Fraction(50), Fraction(34))


def test_without_a_planer_no_snipe_is_cut_off() -> None:
    blank = blank_of(piece().part("apron"), piece(), shop_without("planer"))
    assert blank.length == 945  # 920 + 25: TRADE A5


def test_gangs_are_equal_and_no_longer_than_the_shop_allows() -> None:
    shop = shipped_shop()
    longer = replace(shop, allowances={**shop.allowances, "longest_gang": Fraction(1500)})
    blank = blank_of(piece().part("post"), piece(), longer)
    # Three fit into 1500, but two blanks of two are better than one of three and one of one.
    assert (blank.each, blank.count) == (2, 2)
    none = replace(shop, allowances={**shop.allowances, "longest_gang": Fraction(0)})
    assert blank_of(piece().part("post"), piece(), none).each == 1


def test_staves_keep_what_jointing_and_flattening_take() -> None:
    blank = blank_of(piece().part("top"), piece(), shipped_shop())
    # TRADE I1: staves 96.5 rough, 92.5 sawn, 91.5 jointed, 21.5 thick, 1120 long.
    assert blank.pieces == tuple(f"top stave {number}" for number in range(1, 5))
    sizes = (blank.width, blank.sawn_width, blank.to_width, blank.to_thickness, blank.length)
    assert [float(size) for size in sizes] == [96.5, 92.5, 91.5, 21.5, 1120]


@pytest.mark.parametrize(("part", "thickness"), [("post", 34), ("apron", 27), ("slat", 27)])
def test_the_thinnest_board_on_hand_that_is_thick_enough(part: str, thickness: int) -> None:
    assert blank_of(piece().part(part), piece(), shipped_shop()).thickness == thickness


def test_with_no_board_on_hand_the_usual_allowance() -> None:
    bare = replace(piece(), stock=())
    assert blank_of(bare.part("post"), bare, shipped_shop()).thickness == 35


def test_no_gang_is_longer_than_the_boards_on_hand() -> None:
    # Two posts of 430 take 983.2; the boards are 900 long, so each is milled alone: 430 + 120.
    model = piece()
    boards = tuple(replace(line, sizes=(Fraction(900), *line.sizes[1:])) for line in model.stock)
    short = replace(model, stock=boards)
    shop = gangs_from_boards(short, shipped_shop())
    assert shop.allowances["longest_gang"] == 900
    blank = blank_of(short.part("post"), short, shop)
    assert (blank.each, blank.count, blank.length) == (1, 4, Fraction(550))
    # As they are written, the boards are long enough for the shop's own limit.
    whole = gangs_from_boards(model, shipped_shop())
    assert whole.allowances["longest_gang"] == shipped_shop().allowances["longest_gang"]
