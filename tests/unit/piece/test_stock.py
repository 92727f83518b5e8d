"""Wood on hand and what the yard sells, as declared."""

from fractions import Fraction

import pytest

from dryfit.diagnostics import Diagnostic, Severity, Source
from dryfit.notes import parse
from dryfit.piece import Declared, declare
from dryfit.piece.declared import Have, Price

HEAD = """\
piece Shelf
overall 800 wide, 200 deep, 20 high
timber ash
1 shelf, across, flat, 200 x 20
"""


def of(*lines: str, head: str = HEAD) -> tuple[Declared, tuple[Diagnostic, ...]]:
    notes, in_notes = parse(Source("shelf", head + "\n".join(lines) + "\n"))
    assert in_notes == ()
    return declare(notes)


def board(line: str, head: str = HEAD, asked: tuple[str, ...] = ()) -> Have:
    declared, findings = of(line, head=head)
    assert tuple(each.code for each in findings) == asked
    (have,) = declared.stock or declared.yard
    return have


def mm(*sizes: int | str) -> tuple[Fraction, ...]:
    return tuple(map(Fraction, sizes))


def told(*lines: str) -> list[tuple[str, Severity]]:
    return [(each.code, each.severity) for each in of(*lines)[1]]


def zones(line: str) -> list[tuple[str, object, object]]:
    return [(zone.why, zone.along, zone.across) for zone in board(line).avoid]


def test_a_board_has_all_that_its_line_says() -> None:
    have = board(
        "have 2 boards of ash, 2400 x 160 x 34, rough, cup 4, bow 6, twist 3, moisture 12 %"
    )
    assert (have.count, have.kind, have.timber) == (2, "board", "ash")
    assert have.sizes == mm(2400, 160, 34)
    assert (have.cup, have.bow, have.twist, have.moisture) == mm(4, 6, 3, 12)
    assert (have.rough, have.hit_and_miss) == (True, False)


@pytest.mark.parametrize(
    ("word", "rough", "hit_and_miss"),
    [
        ("rough", True, False),
        ("rough sawn", True, False),
        ("hit-and-miss", False, True),
        ("skip planed", False, True),
        ("planed", False, False),
        ("dressed", False, False),
        ("surfaced", False, False),
    ],
)
def test_how_it_is_planed_has_several_words(word: str, rough: bool, hit_and_miss: bool) -> None:
    have = board(f"have 1 board of ash, 2400 x 160 x 34, {word}")
    assert (have.rough, have.hit_and_miss) == (rough, hit_and_miss)


def test_places_count_from_the_left_end_and_from_the_edge_towards_the_maker() -> None:
    start = "have 1 board of ash, 2400 x 160 x 34"
    assert zones(f"{start}, knot 300 to 380") == [("knot", (300, 380), None)]
    assert zones(f"{start}, knot 300 to 380, 0 to 40 from the edge") == [
        ("knot", (300, 380), (0, 40))
    ]
    assert zones(f"{start}, sapwood 20 from far edge") == [("sapwood", None, (140, 160))]
    assert zones(f"{start}, split 120 from the right end") == [("split", (2280, 2400), None)]
    assert zones(f"{start}, sapwood 0 to 15 from both edges") == [
        ("sapwood", None, (0, 15)),
        ("sapwood", None, (145, 160)),
    ]
    assert zones(f"{start}, knots 300 to 380 and 900 to 940") == [
        ("knot", (300, 380), None),
        ("knot", (900, 940), None),
    ]


def test_a_slab_is_wide_at_both_ends_and_has_bark() -> None:
    slab = board("have 1 slab of elm, 2200 x 480 to 560 x 52, rough, waney both edges")
    assert (slab.sizes, slab.other_width, slab.waney) == (mm(2200, 480, 52), Fraction(560), 2)
    assert board("have 1 slab of elm, 2200 x 480 x 52, waney one edge").waney == 1


def test_plywood_has_a_grain_and_fibreboard_has_none() -> None:
    assert board("have 1 sheet of birch ply, 2440 x 1220 x 18").grain
    assert not board("have 1 sheet of birch ply, 2440 x 1220 x 18, no grain").grain
    assert not board("have 1 sheet of MDF, 2440 x 1220 x 18").grain
    assert board("have 1 sheet of birch ply, 2440 x 1220 x 18, measures 17.6").measured == Fraction(
        "17.6"
    )


def test_a_line_may_have_a_unit_of_its_own() -> None:
    # 1 in = 25.4 mm
    have = board(
        "have (in) 3 boards of ash, 96 x 6 x 1, planed, knot 10 to 12", asked=("zone-on-several",)
    )
    assert have.sizes == mm("2438.4", "152.4", "25.4")
    assert have.avoid[0].along == mm(254, "304.8")
    inches = HEAD.replace("timber ash", "units in\ntimber ash").replace("800", "32")
    head = inches.replace("200", "8").replace("20 high", "1 high").replace("x 20", "x 1")
    assert board("have (mm) 1 board of ash, 2400 x 160 x 34", head=head).sizes == mm(2400, 160, 34)


@pytest.mark.parametrize(
    ("written", "price"),
    [
        ("48.00 each", Price(Fraction(48), "piece")),
        ("£9.50 per board foot", Price(Fraction("9.5"), "board foot", "£")),
        ("14 EUR a metre", Price(Fraction(14), "metre", "€")),
        ("62/m2", Price(Fraction(62), "square metre")),
        ("at € 62 per m²", Price(Fraction(62), "square metre", "€")),
        ("1900 per m3", Price(Fraction(1900), "cubic metre")),
        ("3.20 a foot", Price(Fraction("3.2"), "foot")),
        ("for $4 per sq ft", Price(Fraction(4), "square foot", "$")),
    ],
)
def test_prices_are_exact_and_keep_their_money(written: str, price: Price) -> None:
    have = board(f"buy boards of ash, 2400 x 180 x 27, rough, {written}, at most 3")
    assert (have.price, have.at_most, have.count) == (price, 3, 1)


def test_what_is_unclear_is_asked_and_the_rest_goes_on() -> None:
    asked, warned = Severity.QUESTION, Severity.WARNING
    start = "have 1 board of ash, 1800 x 160 x 32"
    buy = "buy boards of ash, 2400 x 180 x 27, rough"
    assert told("have 1 board of ash, 1800 x 160") == [("stock-size-missing", asked)]
    assert told("have 1 board of ash, 1800 x 34 x 160") == [("stock-size-order", asked)]
    assert told("have 1 board of ash, 96 x 6 x 1") == [("unit-slip", asked)]
    assert told(f"{start}, knot 1750 to 1850") == [("zone-outside-board", warned)]
    assert told(f"{start}, avoid 0 to 900, avoid 900 to 1800") == [("zone-covers-all", warned)]
    assert told("have 2 boards of ash, 1800 x 160 x 32, knot 300 to 380") == [
        ("zone-on-several", asked)
    ]
    assert told(f"{start}, 31 each") == [("price-on-have", asked)]
    assert told(f"{start}, no grain") == [("stock-word-unfit", asked)]
    assert told("have 1 sheet of birch ply, 2440 x 1220 x 18, measures 16") == [
        ("measured-far-off", asked)
    ]
    assert told(buy) == [("buy-without-price", asked)]
    assert told(f"{buy}, 48.00") == [("price-without-unit", warned)]
    assert told(f"{buy}, £48 each", f"{buy}, 48 EUR each") == [("currencies-mixed", warned)]
    assert told("buy 3 boards of ash, 2400 x 180 x 27, 48 each") == [("buy-count", asked)]


def test_inches_that_are_millimetres_are_asked_about() -> None:
    # M29: a bare 150 x 80 in notes in inches is 12 ft 6 wide.
    head = HEAD.replace("timber ash", "units in\ntimber ash").replace("800 wide, 200", "32 wide, 8")
    head = head.replace("20 high", "1 high").replace("200 x 20", "8 x 1")
    _, findings = of("have 3 boards of ash, 200 x 150 x 32", head=head)
    assert [each.code for each in findings] == ["unit-slip"]
    hint = findings[0].hints[0]
    assert hint.corrected_line == "have (mm) 3 boards of ash, 200 x 150 x 32"


def test_one_sign_for_inches_is_asked_whether_it_is_meant_for_all_three_sizes() -> None:
    _, findings = of('have 1 board of ash, 72 x 5 x 1 1/4", rough')
    assert [each.code for each in findings] == ["unit-slip"]
    hint = findings[0].hints[0]
    assert hint.corrected_line == 'have (in) 1 board of ash, 72 x 5 x 1 1/4", rough'
    assert told(hint.corrected_line) == []
    assert told('have 1 board of ash, 1800 x 160 x 1 1/4", rough') == []
    assert told('have 1 board of ash, 72" x 5 x 1 1/4, rough') == [("unit-slip", Severity.QUESTION)]
    assert told('have 1 board of ash, 72" x 120 x 32, rough') == []
    assert told('have 1 offcut of ash, 150 x 90 x 1 1/4", rough') == []


def test_a_slab_with_its_bark_on_is_rough_unless_its_line_says_otherwise() -> None:
    slab = "have 1 slab of ash, 1200 x 300 x 50, waney both edges"
    assert (board(slab).rough, board(f"{slab}, planed").rough) == (True, False)
    half = board(f"{slab}, hit-and-miss")
    assert (half.rough, half.hit_and_miss) == (False, True)


def test_a_place_beyond_the_end_is_cut_off_there() -> None:
    declared, _ = of("have 1 board of ash, 1800 x 160 x 32, knot 1750 to 1850, split 1900 to 1950")
    assert [zone.along for zone in declared.stock[0].avoid] == [mm(1750, 1800)]


def test_a_price_in_other_money_is_not_counted() -> None:
    buy = "buy boards of ash, 2400 x 180 x 27, rough"
    declared, _ = of(f"{buy}, 50 each", f"{buy}, £48 each", f"{buy}, 40 EUR each")
    assert [have.price for have in declared.yard] == [
        Price(Fraction(50), "piece", "£"),
        Price(Fraction(48), "piece", "£"),
        None,
    ]


PLY = HEAD + "1 back, facing front, 300 x 200 x 18, of birch ply\n"
SHEET = "have 1 sheet of birch ply, 2440 x 1220 x 18"


def test_a_measured_sheet_sets_the_parts_that_are_made_of_it() -> None:
    declared, findings = of(f"{SHEET}, measures 17.6", head=PLY)
    assert findings == ()
    back = declared.part("back")
    assert back is not None
    assert back.sizes[2] is not None
    assert back.sizes[2].value == Fraction("17.6")


def test_a_measured_line_outdoes_what_a_sheet_on_hand_measures() -> None:
    declared, findings = of(f"{SHEET}, measures 17.6", "measured birch ply 18 = 17.8", head=PLY)
    assert [each.code for each in findings] == ["sheet-measured-twice"]
    assert declared.stock[0].measured == Fraction("17.8")
    silent, findings = of(SHEET, "measured birch ply 18 = 17.8", head=PLY)
    assert findings == ()
    assert silent.stock[0].measured == Fraction("17.8")


def test_a_part_may_have_spare_blanks() -> None:
    declared, _ = of(head=HEAD.replace("200 x 20\n", "200 x 20, 1 spare\n"))
    assert declared.parts[0].spare == 1


def test_an_offcut_of_plywood_is_a_piece_of_a_sheet() -> None:
    """It serves sheet parts, measures its own thickness, and stays an offcut."""
    ply = board("have 1 offcut of birch ply, 900 x 380 x 18, measures 17.7")
    assert (ply.kind, ply.offcut, ply.measured) == ("sheet", True, Fraction(177, 10))
    ash = board("have 1 offcut of ash, 900 x 80 x 27, rough")
    assert (ash.kind, ash.offcut) == ("offcut", True)
