"""The stock in words and as JSON, of the boot bench's boards as TRADE I1 cuts them."""

from __future__ import annotations

import json
from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import jsonschema
import pytest
from tests.unit.booklet.fixtures import model
from tests.unit.stock import bench_boards as bench

import dryfit
from dryfit.diagnostics import Source
from dryfit.notes import parse
from dryfit.piece import declare
from dryfit.piece.declared import Avoid, Have
from dryfit.quantities import Display
from dryfit.shop import read_shop
from dryfit.shop.shop import Shop
from dryfit.stock.laid_out import LaidOut
from dryfit.stock.telling.as_json import stock_document
from dryfit.stock.telling.as_text import no_boards, stock_text
from dryfit.stock.telling.in_hand import halves, sawn
from dryfit.stock.telling.in_words import made_in_words, money, usable_thickness
from dryfit.stock.telling.left_over import left_over
from dryfit.stock.telling.verdict import is_tight

MM = Display()
SCHEMA = Path(dryfit.__file__).parent / "schemas" / "stock.json"


@pytest.fixture(scope="module")
def shop() -> Shop:
    found, _ = read_shop(None, {})
    assert found is not None
    return found


def test_the_verdict_comes_first_with_its_margin(shop: Shop) -> None:
    first = stock_text(bench.ENOUGH, model(), shop).splitlines()[0]
    assert first == (
        "Enough wood: 4 boards hold all 17 blanks. Tight: with a spare; the blanks could be 4 mm "
        "larger where they lie closest, on board A."
    )


def test_a_spare_that_nobody_asked_for_is_one_if_you_like() -> None:
    # TRADE A3.4, H55 want one; the maker who did not write it must know that it can be left out.
    (spare,) = (each for each in bench.ENOUGH.blanks if each.what == "spare")
    assert made_in_words(spare, {}) == "a spare"
    assert made_in_words(replace(spare, if_room=True), {}) == "a spare, if you like"
    test = next(each for each in bench.ENOUGH.blanks if each.what == "test piece")
    assert made_in_words(replace(test, if_room=True), {}) == "a test piece"


@pytest.mark.parametrize(
    ("room", "spare", "tight"), [(9, True, True), (10, True, False), (40, False, True)]
)
def test_under_ten_millimetres_or_without_a_spare_it_is_tight(
    room: int, spare: bool, tight: bool
) -> None:
    # M28: under 10 mm, or less than a spare (a maker's remark).
    kept = [
        replace(layout, placed=tuple(each for each in layout.placed if spare or each.blank.pieces))
        for layout in bench.LAYOUTS
    ]
    laid = replace(bench.ENOUGH, layouts=tuple(kept), spare_room=Fraction(room))
    assert is_tight(laid) is tight


def test_usable_thickness_of_the_cupped_board(shop: Shop) -> None:
    # TRADE A1.6 and H44: 34 thick, 160 wide, cup 4: 29.0 whole, 32.6 ripped to 50.
    usable = usable_thickness(bench.A, bench.LAYOUTS[0], MM, shop)
    assert {name: round(float(size), 1) for name, size in usable.items()} == {
        "whole": 29.0,
        "ripped to 50": 32.6,
    }
    assert list(usable_thickness(bench.B, bench.LAYOUTS[1], MM, shop)) == ["whole"]


def test_each_cut_says_what_is_in_hand_and_what_comes_of_it(shop: Shop) -> None:
    rows = [" ".join(line.split()) for line in stock_text(bench.ENOUGH, model(), shop).splitlines()]
    begin = rows.index("cut saw set on gives rest") + 1
    assert rows[begin : begin + 9] == [
        "1 crosscut 21.8 board A waste 2375 x 160: a, b, c, d, e, f",
        "2 crosscut 985 rest of 1 985 x 160: a, b, c 1386.8 x 160: d, e, f",
        "3 rip 50 piece from 2 a 985 x 107: b, c",
        "4 rip 50 rest of 3 b 985 x 54: c",
        "5 rip 50 rest of 4 c waste",
        "6 crosscut 805 rest of 2 805 x 160: d, e, f keep 578.6 x 160",
        "7 rip 50 piece from 6 d 805 x 107: e, f",
        "8 rip 50 rest of 7 e 805 x 54: f",
        "9 rip 50 rest of 8 f waste",
    ]


def test_both_sides_of_a_cut_and_its_kerf_are_the_piece_in_hand() -> None:
    for layout in bench.LAYOUTS:
        for each in sawn(layout):
            way = 0 if each.cut.saw == "crosscut" else 1
            (first, rest), whole = halves(each.cut), (each.cut.along, each.cut.across)[way]
            assert first[way][0] == whole[0]
            assert rest[way][1] == whole[1]
            assert rest[way][0] - first[way][1] == each.cut.kerf


def test_what_is_left_is_a_line_for_the_next_notes() -> None:
    # 2400 - 25 - 985 - 3.2 - 805 - 3.2 = 578.6, cut off to half a millimetre.
    assert left_over(bench.ENOUGH, MM) == ("have 1 offcut of ash, 578.5 x 160 x 34, rough, cup 4",)
    assert left_over(bench.ENOUGH, Display.inches()) == (
        'have 1 offcut of ash, 22 3/4" x 6 9/32" x 1 5/16", rough, cup 3/16"',
    )


def test_bad_wood_in_a_leftover_is_counted_from_its_own_end() -> None:
    layout = bench.LAYOUTS[2]
    kept = replace(layout.fallen[-1], keep=True)
    laid = replace(bench.ENOUGH, layouts=(replace(layout, fallen=(kept,)),))
    begin = kept.along[0]
    assert begin == Fraction("2271.4")
    # 2300 - 2271.4 = 28.6 goes down, 2380 - 2271.4 = 108.6 goes up.
    assert left_over(laid, MM) == (
        "have 1 offcut of ash, 228.5 x 210 x 27, rough, knot 28.5 to 109",
    )


def test_what_is_missing_and_bought_is_told(shop: Shop) -> None:
    lines = stock_text(bench.NOT_ENOUGH, model(), shop).splitlines()
    assert lines[:2] == [
        "Not enough wood, for certain: 3 slats are missing. No way of cutting can do it.",
        "The slats need 0.14 square metres of ash 27 thick more than there is.",
    ]
    assert "E  board of ash, 2400 x 180 x 27, rough (to buy)" in lines
    assert lines[lines.index("missing") + 1].strip().startswith("3 slats: no board")
    assert lines[lines.index("to buy") + 1] == "  1 of ash 2400 x 180 x 27 (line 7): 48.00"


def test_not_found_is_not_called_certain(shop: Shop) -> None:
    laid = replace(bench.NOT_ENOUGH, verdict="not found", proofs=())
    assert stock_text(laid, model(), shop).startswith("Not enough wood as far as was searched")


@pytest.mark.parametrize("laid", [bench.ENOUGH, bench.NOT_ENOUGH, None])
@pytest.mark.parametrize("display", [MM, Display.inches()])
def test_the_document_is_as_the_schema_says(
    laid: LaidOut | None, display: Display, shop: Shop
) -> None:
    schema = json.loads(SCHEMA.read_text(encoding="utf-8"))
    jsonschema.Draft202012Validator.check_schema(schema)
    made = stock_document("Boot bench", "boot_bench.dryfit", laid, [], display, shop)
    document = json.loads(json.dumps(made))
    jsonschema.Draft202012Validator(schema).validate(document)
    assert list(document) == schema["required"]


def test_a_row_of_the_document_worked_by_hand(shop: Shop) -> None:
    made = json.loads(json.dumps(stock_document("p", "n", bench.NOT_ENOUGH, [], MM, shop)))
    assert made["verdict"] == "not enough"
    assert made["buy"] == [{"line": 7, "what": "ash 2400 x 180 x 27", "count": 1, "price": "48.00"}]
    assert made["missing"][0]["copies"] == 3
    assert [board["price"] for board in made["boards"]] == [None, None, None, "48.00"]
    assert made["boards"][2]["avoid"] == [
        {"along": ["2300 mm", "2380 mm"], "across": ["0 mm", "210 mm"], "why": "knot"}
    ]
    blank = made["blanks"][0]
    assert blank["makes"] == [{"part": "post", "copies": 2}]
    # TRADE I1: 2 x 430 + 3.2 + 120 is 983.2, so that 985 leaves 123.2 beside two posts of 430.
    assert blank["allowance"]["length"]["mm"] == 123.2
    assert made["blanks"][2]["makes"] == []
    layout = made["layouts"][0]
    assert layout["yield"] == round((3 * 985 + 3 * 805) * 50 / (2400 * 160), 4)
    assert [cut["from"] for cut in layout["cuts"]][:3] == ["fresh end", "fresh end", "fresh edge"]
    assert layout["cuts"][2]["after"] == 2
    assert sum(row["keep"] for row in layout["leftovers"]) == 1


def test_money_has_two_decimals() -> None:
    assert money(Fraction(48)) == "48.00"
    assert money(Fraction("12.345")) == "12.35"
    assert money(None) is None


def test_without_boards_it_says_what_to_write() -> None:
    assert "have 1 board of ash, 2400 x 160 x 34, rough" in no_boards(MM)


_ZONES = (
    Avoid(
        (Fraction(2300), Fraction(2380)), (Fraction(10), Fraction(50)), "knot", bench.A.line.span
    ),
    Avoid(None, (Fraction(0), Fraction(12)), "sapwood", bench.A.line.span),
)


@pytest.mark.parametrize("display", [MM, Display.inches()])
@pytest.mark.parametrize(
    "line", [bench.A.line, replace(bench.B.line, avoid=_ZONES, bow=Fraction(3))]
)
def test_the_next_notes_read_what_is_left_as_it_is(line: Have, display: Display) -> None:
    board = replace(bench.LAYOUTS[2].board, line=replace(line, sizes=bench.C.line.sizes))
    layout = replace(bench.LAYOUTS[2], board=board)
    kept = replace(layout.fallen[-1], keep=True)
    (told,) = left_over(replace(bench.ENOUGH, layouts=(replace(layout, fallen=(kept,)),)), display)
    units = "mm" if display.unit == "mm" else "inches"
    declared, findings = declare(parse(Source("next.dryfit", f"units {units}\n{told}\n"), ())[0])
    assert [each for each in findings if each.span and each.span.line == 2] == []
    (read,) = declared.stock
    step = display.step * (1 if display.unit == "mm" else Fraction("25.4"))
    sizes = (kept.along[1] - kept.along[0], Fraction(210), Fraction(27))
    for size, real in zip(read.sizes, sizes, strict=True):
        assert size is not None
        assert real - step < size <= real
    assert read.rough
    assert len(read.avoid) == len(line.avoid)
    for bad, zone in zip(read.avoid, line.avoid, strict=True):
        assert bad.why == zone.why
        if zone.along is not None:
            assert bad.along is not None
            assert bad.along[0] <= zone.along[0] - kept.along[0]
            assert bad.along[1] >= min(zone.along[1], kept.along[1]) - kept.along[0]
