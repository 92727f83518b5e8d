"""Whether the wood is enough, why not, what is missing and what has to be bought."""

import random
from dataclasses import replace
from fractions import Fraction

import pytest
from tests.unit.operations.worked import shipped_shop

from dryfit.diagnostics import Diagnostic, Source
from dryfit.stock.blanks.needs import needs_of
from dryfit.stock.blanks.rough_sizes import rough_sizes
from dryfit.stock.blanks.states import STATES
from dryfit.stock.board_edges import bad_places, usable_face
from dryfit.stock.laid_out import LaidOut
from dryfit.stock.laying.buying import large_enough
from dryfit.stock.laying.labels import label
from dryfit.stock.telling.verdict import rests_on, verdict_in_words
from dryfit.workshop import check, laid_out

PIECE = """\
piece Row of laths
units mm
overall 800 wide, 600 deep, 40 high
timber ash
{wood}
5 laths, across, flat, 100 x 20, spread front to back, no gap at ends
2 bearers, front to back, flat, 600 long, 40 x 20, under laths, at left and right
laths onto bearers: screws
finish oil, 2 coats
"""
# Blanks (TRADE A5, A5.2): a lath is 800 + 2 x 60 = 920 long and 100 + 5 wide, a bearer 720 x 45.


def told(*wood: str) -> tuple[LaidOut, tuple[Diagnostic, ...]]:
    text = PIECE.format(wood="\n".join(wood))
    checked = check(Source("laths.dryfit", text), None, {})
    assert not checked.failed
    _, laid, findings = laid_out(checked)
    assert laid is not None
    return laid, findings


def codes(findings: tuple[Diagnostic, ...]) -> list[str]:
    return [finding.code for finding in findings]


def test_enough_and_how_tight_it_is() -> None:
    # Each lath takes a board alone: 920 of 1000 - 2 x 25 = 950 (A5.1), 105 of 160 - 3 (A2.6), and
    # a bearer beside it, 105 + 3 + 45 = 153 of 157: 4 to spare. The sixth board stays whole.
    laid, findings = told("have 6 boards of ash, 1000 x 160 x 27, rough")
    assert (laid.verdict, laid.missing, laid.buy, findings) == ("enough", (), (), ())
    assert len(laid.layouts) == 5
    assert laid.spare_room == 4
    assert laid.spare_board == label(5)
    assert f"larger where they lie closest, on board {laid.tightest}" in str(
        verdict_in_words(laid, {})
    )
    assert laid.tightest in {layout.board.label for layout in laid.layouts}


def test_a_bad_place_leaves_one_blank_too_long_and_no_run_of_them() -> None:
    # The knot leaves 850 - 25 - 100 = 725 in one piece, 100 less than a blank cut short.
    laid, _ = told("have 6 boards of ash, 850 x 160 x 27, rough, knot 0 to 100")
    assert laid.verdict == "not enough"
    why = laid.missing[0].why
    assert why.startswith("lath: a blank is 825 mm long, and the longest clear "), why


def test_too_long_for_every_board() -> None:
    # 850 gives 800 between its trimmed ends, 25 less than a blank that is cut short: 800 + 25.
    laid, findings = told("have 6 boards of ash, 850 x 160 x 27, rough")
    assert laid.verdict == "not enough"
    assert [(one.part, one.copies) for one in laid.missing] == [("lath", 5)]
    assert "825 mm long" in laid.missing[0].why
    assert "25 mm too little" in laid.missing[0].why
    assert laid.proofs == (laid.missing[0].why,)
    assert codes(findings) == ["wood-not-enough"]
    # The least that does: 825 + 50 in length, 105 + 3 in width, up to round sizes.
    (buy,) = laid.buy
    assert buy.line.sizes == tuple(map(Fraction, (900, 110, 27)))
    assert buy.count == 5
    assert not buy.at_yard
    assert not any(layout.board.line is buy.line for layout in laid.layouts)


def test_too_few_boards() -> None:
    laid, findings = told("have 4 boards of ash, 1000 x 160 x 27, rough")
    assert laid.verdict == "not enough"
    assert [(one.part, one.copies) for one in laid.missing] == [("lath", 1)]
    assert "boards A, B, C and D" in laid.proofs[0]
    assert [(one.count, one.line.text) for one in laid.buy] == [
        (1, "have 4 boards of ash, 1000 x 160 x 27, rough")
    ]
    assert "buy 1 board of ash, 1000 x 160 x 27" in findings[0].hints[0].message


def test_too_thin_is_told_by_the_checks_alone() -> None:
    # 20 + 1 to clean both faces + 0.5 for hand work (A1.5): 21.5.
    checked = check(
        Source("laths.dryfit", PIECE.format(wood="have 6 boards of ash, 1000 x 160 x 21, rough")),
        None,
        {},
    )
    _, laid, findings = laid_out(checked)
    assert laid is not None
    assert "no-board-fits" in codes(checked.findings)
    assert findings == ()
    assert "20.5 mm once both faces are true" in laid.missing[0].why
    assert "gives 20 mm" in laid.missing[0].why


def test_the_yard_sells_the_least_by_price() -> None:
    laid, _ = told(
        "have 4 boards of ash, 1000 x 160 x 27, rough",
        "buy boards of ash, 2400 x 180 x 27, rough, 30.00 each",
        "buy boards of ash, 1000 x 120 x 27, rough, 11.00 each",
    )
    assert laid.verdict == "not enough"
    (buy,) = laid.buy
    assert buy.line.sizes[0] == 1000
    assert (buy.count, buy.price, buy.at_yard) == (1, Fraction(11), True)
    bought = [layout for layout in laid.layouts if not layout.board.on_hand]
    assert [layout.board.label for layout in bought] == [label(4)]
    missing = {(one.part, one.copies) for one in laid.missing}
    assert missing == {("lath", sum(len(one.blank.pieces) for one in bought[0].placed))}
    assert set(laid.placed) == {blank.name for blank in laid.blanks}


def test_what_to_buy_is_told_with_the_money_of_the_yard() -> None:
    _, (finding,) = told(
        "have 4 boards of ash, 1000 x 160 x 27, rough",
        "buy boards of ash, 1000 x 120 x 27, rough, €11.50 each",
    )
    (hint,) = finding.hints
    assert hint.message == "buy 1 board of ash, 1000 x 120 x 27 for €11.50"


def test_prices_by_length_and_by_volume() -> None:
    # 2400 x 180 x 27 are 11.664 dm3: at 1000 the cubic metre 11.66; at 5 the metre 12.
    laid, _ = told("buy boards of ash, 2400 x 180 x 27, rough, 1000 per m3")
    assert {one.price / one.count for one in laid.buy if one.price} == {Fraction(11664, 1000)}
    laid, _ = told("buy boards of ash, 2400 x 180 x 27, rough, 5 a metre")
    assert {one.price / one.count for one in laid.buy if one.price} == {12}


def test_the_yard_has_only_so_many() -> None:
    laid, _ = told(
        "buy boards of ash, 1000 x 160 x 27, rough, 10.00 each, at most 2",
        "buy boards of ash, 2400 x 160 x 27, rough, 40.00 each",
    )
    # A long board holds two laths: two of them and a short one are 90, one more short one is 100.
    # Five short ones would be 50.
    assert [one.count for one in laid.buy] == [1, 2]
    assert sum(one.price or 0 for one in laid.buy) == 90


def test_lines_that_cannot_be_laid_out_are_left_out() -> None:
    laid, _ = told(
        "have 6 boards of ash, 1000 x 160 x 27, rough",
        "have 2 boards of ash, 160 wide, 27 thick, rough",
        "buy boards of ash, 2400 x 180 x 27, rough, 30.00 each",
        "buy boards of ash, 2000 x 180 x 27, rough",
    )
    assert laid.verdict == "enough"


def test_a_wood_that_no_line_tells_of_is_not_missing() -> None:
    laid, findings = told("have 6 boards of oak, 1000 x 160 x 27, rough")
    assert laid.verdict == "enough"
    assert laid.unlisted == ("lath", "bearer")
    words = verdict_in_words(laid, {})
    assert words == (("No verdict: no line tells of the wood for lath and bearer.",),)
    assert (laid.missing, findings) == ((), ())


def test_bad_places_waney_edges_and_tapers_are_kept_clear() -> None:
    laid, _ = told(
        "have 5 boards of ash, 1000 x 160 x 27, rough",
        "have 1 board of ash, 2400 x 180 x 27, rough, knot 900 to 980",
        "have 1 slab of ash, 2400 x 260 to 180 x 27, rough, waney both edges",
    )
    assert laid.verdict == "enough"
    for layout in laid.layouts:
        for one in layout.placed:
            for bad in bad_places(layout.board):
                assert not (
                    one.along[0] < bad.along[1]
                    and bad.along[0] < one.along[1]
                    and one.across[0] < bad.across[1]
                    and bad.across[0] < one.across[1]
                )


def test_offcuts_are_used_first() -> None:
    laid, _ = told(
        "have 5 boards of ash, 1000 x 160 x 27, rough",
        "have 5 offcuts of ash, 1000 x 160 x 27, rough",
    )
    assert {layout.board.line.kind for layout in laid.layouts} == {"offcut"}


def test_test_pieces_come_out_of_what_falls() -> None:
    # A test piece is 300 + 2 x 60 = 420 long (A3.4, A5.2): beside the laths 900 - 920 is too short,
    # on a board of 2400 two laths leave 2350 - 2 x 923 = 504.
    laid, _ = told("have 6 boards of ash, 1000 x 110 x 27, rough")
    assert not any(blank.what == "test piece" for blank in laid.blanks)
    laid, _ = told("have 6 boards of ash, 2400 x 110 x 27, rough")
    tests = [blank.name for blank in laid.blanks if blank.what == "test piece"]
    assert tests == ["bearer test piece 1"]
    assert tests[0] in laid.placed
    assert len(laid.layouts) == 3


def test_thick_boards_are_spared_where_thinner_ones_do() -> None:
    # 52 planed down to 20 is wood lost, although the thick board is long enough for two laths.
    laid, _ = told(
        "have 1 board of ash, 2400 x 160 x 52, rough",
        "have 6 boards of ash, 1000 x 160 x 27, rough",
    )
    assert {layout.board.sizes[2] for layout in laid.layouts} == {27}
    laid, _ = told(
        "have 1 board of ash, 2400 x 160 x 52, rough",
        "have 3 boards of ash, 1000 x 160 x 27, rough",
    )
    assert laid.verdict == "enough"
    assert {layout.board.sizes[2] for layout in laid.layouts} == {27, 52}


def test_slivers_and_spoiled_boards_are_of_no_use_and_no_harm() -> None:
    laid, _ = told(
        "have 6 boards of ash, 1000 x 160 x 27, rough",
        "have 1 board of ash, 1000 x 3 x 27, rough",
        "have 1 board of ash, 40 x 160 x 27, rough",
        "have 1 board of ash, 1000 x 160 x 27, rough, split 0 to 1000",
    )
    assert laid.verdict == "enough"
    assert {layout.board.sizes[0] for layout in laid.layouts} == {1000}
    assert {layout.board.sizes[1] for layout in laid.layouts} == {160}
    assert not any(layout.board.line.avoid for layout in laid.layouts)


def test_what_is_bought_serves_what_is_missing() -> None:
    """A large board would hold everything; the small ones on hand keep all that they can give."""
    # Of 1000 x 160 each gives one lath and a bearer (see above); the yard's would give all seven.
    laid, _ = told(
        "have 3 boards of ash, 1000 x 160 x 27, rough",
        "buy boards of ash, 3000 x 400 x 27, rough, 60.00 each",
    )
    assert [(one.part, one.copies) for one in laid.missing] == [("lath", 2)]
    assert [bought.count for bought in laid.buy] == [1]
    on_hand = [layout for layout in laid.layouts if layout.board.on_hand]
    assert sum(bool(one.blank.pieces) for layout in on_hand for one in layout.placed) == 5


def test_a_certain_no_is_of_every_state_and_of_blanks_cut_short() -> None:
    """One planed board is too little, and the rough ones are too short unless blanks are cut so."""
    # 880 - 2 x 25 = 830 holds a lath of 800 + 25 that is fed between strips (A5.1, A6.1); with
    # the bite of the planer, 920, it does not. All laths go one way: 25 planed is trued to 20 too.
    laid, findings = told(
        "have 1 board of ash, 1000 x 160 x 20, planed",
        "have 6 boards of ash, 880 x 160 x 27, rough",
    )
    assert (laid.verdict, laid.proofs, findings) == ("enough", (), ())


def test_a_certain_no_counts_pieces_and_not_blanks() -> None:
    # Four boards give a lath each, whichever way; what cannot be had is told as copies of parts.
    laid, _ = told("have 4 boards of ash, 1000 x 160 x 27, rough")
    assert laid.proofs[0].startswith("5 laths")


def test_a_certain_no_holds_where_thick_boards_are_resawn() -> None:
    # 64 thick gives two leaves of 20 with what is lost to saw and planer, and never more than 64/20
    # = 3 (TRADE A8.1): five laths, one to a length of 1000, take more than one board, not than two.
    laid, _ = told("have 1 board of ash, 1000 x 160 x 64, rough")
    assert laid.verdict == "not enough"
    laid, _ = told("have 2 boards of ash, 1000 x 160 x 64, rough")
    assert laid.verdict != "not enough"
    laid, _ = told("have 1 board of ash, 1000 x 160 x 27, rough")
    assert "No way of cutting can do it" in str(verdict_in_words(laid, {})[0])


def test_a_certain_no_leaves_resawing_open_where_it_was_not_counted() -> None:
    """In a shop that resaws nothing, a board 64 thick might still give two laths of 20."""
    laid, _ = told("have 1 board of ash, 1000 x 160 x 64, rough")
    assert "no way of cutting can do it" in rests_on(laid)
    whole = tuple(
        replace(each, leaves=1, allowance=(*each.allowance[:2], each.thickness - 20))
        for each in laid.blanks
    )
    assert "no way of cutting short of resawing can do it" in rests_on(replace(laid, blanks=whole))


def test_a_board_that_is_too_short_is_not_the_widest() -> None:
    """What is too narrow is compared with boards that are long enough."""
    laid, _ = told(
        "have 1 board of ash, 700 x 190 x 27, rough, knot 300 to 380",
        "have 5 boards of ash, 1000 x 90 x 27, rough",
    )
    why = next(one.why for one in laid.missing if one.part == "lath")
    assert why.startswith(
        "lath: a blank is 105 mm wide, and where a board is clear for long enough"
    )


def test_a_certain_no_is_of_both_ways_to_lay_a_section() -> None:
    # A bearer of 40 x 20 may be sawn 20 wide out of a board 52 thick: 40 + 5 is too wide for 43.
    laid, _ = told(
        "have 5 boards of ash, 1000 x 110 x 27, rough",
        "have 2 boards of ash, 800 x 35 x 52, rough",
    )
    assert laid.verdict != "not enough"


def test_what_is_missing_and_to_buy_is_the_least_found() -> None:
    """One long board gives two laths: the small ones keep theirs, and one lath is bought for."""
    laid, _ = told(
        "have 1 board of ash, 2000 x 110 x 27, rough",
        "have 2 boards of ash, 1000 x 160 x 27, rough",
    )
    # 2000 - 50 holds 920 + 3 + 920 (A5.1, A5.2); the others a lath and a bearer each.
    assert [(one.part, one.copies) for one in laid.missing] == [("lath", 1)]
    assert len(laid.layouts) == 3
    assert sum(one.count for one in laid.buy) == 1


def test_a_way_that_does_not_suffice_is_not_said_to_serve() -> None:
    laid, _ = told("have 6 boards of ash, 1000 x 160 x 27, rough")
    said = [
        str(verdict_in_words(replace(laid, way="cut short", verdict=verdict), {}))
        for verdict in ("enough", "not enough")
    ]
    assert ["So that the wood serves: cut short" in words for words in said] == [True, False]
    assert "As it is laid out here: cut short" in said[1]


def test_tight_wood_names_the_first_board_to_buy() -> None:
    """M28 of our maker's remarks: the wood is enough, all boards are cut, and nothing is spare."""
    wood = "have 5 boards of ash, 1000 x 160 x 27, rough"
    laid, _ = told(wood)
    # A lath once more: 920 and 2 x 25 for the ends, 105 and 3 for the far edge, in whole steps.
    assert laid.first_to_buy is not None
    assert laid.first_to_buy.blank.subject == "lath"
    assert str(verdict_in_words(laid, {})[1]).startswith("('Buy first, so that one more lath blank")
    line = laid.first_to_buy.board.line
    assert line.sizes[:2] == (Fraction(1000), Fraction(110))
    # The cheapest line that gives one; the cheapest of all is too narrow.
    sold = ("2000 x 100 x 27, rough, 9 each", "1000 x 140 x 27, rough, 20 each")
    laid, _ = told(wood, *(f"buy boards of ash, {each}" for each in sold))
    assert laid.first_to_buy is not None
    assert laid.first_to_buy.board.price == 20
    # A sixth board stays whole: it is the spare.
    assert told("have 6 boards of ash, 1000 x 160 x 27, rough")[0].first_to_buy is None


def test_no_board_is_named_for_what_a_leftover_gives_once_more() -> None:
    # Five laths of 920 leave more than 4 m of 9.
    laid, _ = told("have 1 board of ash, 9000 x 160 x 27, rough")
    assert (laid.verdict, laid.first_to_buy) == ("enough", None)


@pytest.mark.parametrize("state", STATES)
def test_the_least_board_to_buy_gives_the_blank_in_its_state(state: str) -> None:
    checked = check(Source("laths.dryfit", PIECE.format(wood="")), None, {})
    assert checked.model is not None
    shop = shipped_shop()
    for blank in needs_of(checked.model, shop)[0].blanks:
        line = large_enough([replace(blank, state=state)], shop)
        assert line is not None
        rough, (long, wide) = rough_sizes(blank, line, shop), usable_face(line, shop)
        assert rough is not None
        assert (rough.length <= long, rough.width <= wide) == (True, True)
        # What would be used at its section comes out of a rough board as well as any.
        assert line.rough == (state in {"section", "trued"})


def test_each_part_is_made_in_the_way_that_its_board_asks_for() -> None:
    """Two laths out of each thick board, resawn; for a strip of both bearers none is wide enough.

    720 x 45 twice side by side, 93 of 97, come out of the thin board as they usually do.
    """
    laid, _ = told(
        "have 3 boards of ash, 1000 x 115 x 52, rough",
        "have 1 board of ash, 800 x 100 x 27, rough",
    )
    assert laid.verdict == "enough"
    assert laid.way == "thin parts resawn from thick boards (lath)"


def test_of_any_boards_one_more_is_never_worse() -> None:
    """Boards by lot, a line more each time: sections, states, warps and sizes of all kinds."""
    order = ("not enough", "not found", "enough")
    found: list[list[int]] = []
    for seed in (1, 6):
        lots = random.Random(seed)  # noqa: S311 - lots, not secrets
        lines = [
            f"have 1 board of ash, {lots.randrange(900, 2400, 50)} x {lots.randrange(90, 240, 5)} "
            f"x {lots.choice((25, 27, 34, 52))}, {lots.choice(('rough', 'rough, cup 4', 'planed'))}"
            for _ in range(4)
        ]
        found.append([order.index(told(*lines[:count])[0].verdict) for count in range(1, 5)])
    assert all(verdicts == sorted(verdicts) for verdicts in found), found
    assert any(len(set(verdicts)) > 1 for verdicts in found), found


def test_a_board_more_is_never_worse() -> None:
    """What the first boards suffice for is found, whatever ways other boards bring with them."""
    enough = ("have 5 boards of ash, 1000 x 160 x 27, rough",)
    others = (
        "have 1 board of ash, 300 x 60 x 20, planed",
        "have 1 board of ash, 1500 x 40 x 52, rough, cup 6",
    )
    for more in others:
        assert told(*enough, more)[0].verdict == "enough"
