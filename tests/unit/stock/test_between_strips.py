"""Blanks that are too long for the wood with the planer's bite are fed between strips (A6.1)."""

from dataclasses import replace
from fractions import Fraction

from tests.unit.operations.worked import piece, said, shipped_shop, shop_without

from dryfit.operations import work_list
from dryfit.placing.model import Model
from dryfit.stock.blanks.needs import Needs, needs_of
from dryfit.stock.blanks.rough_sizes import rough_sizes
from dryfit.stock.laying.lay import lay_out_stock


def out_of(length: int) -> Model:
    """The boot bench with flat boards of one length, and nothing else."""
    model = piece()
    board = replace(model.stock[1], count=9, sizes=(Fraction(length), Fraction(210), Fraction(34)))
    return replace(model, stock=(board,))


def short(needs: Needs) -> set[str]:
    """The parts whose blanks are cut short."""
    return {each.part.name for each in needs.blanks if each.between_strips}


def test_a_part_that_no_board_holds_otherwise_is_cut_short() -> None:
    # Aprons 920 take 920 + 120 = 1040, and 1100 less 25 at both ends is 1050; 1060 of a slat and
    # 1120 of a stave it is not: slats 940 + 25 = 965, staves 1000 + 20 = 1020.
    needs = needs_of(out_of(1100), shipped_shop())[0]
    assert short(needs) == {"slat", "top"}
    lengths = {each.part.name: float(each.length) for each in needs.blanks if each.what == "part"}
    assert (lengths["apron"], lengths["slat"], lengths["top"]) == (1040, 965, 1020)
    slat = next(each for each in needs.blanks if each.part.name == "slat")
    rough = rough_sizes(slat, out_of(1100).stock[0], shipped_shop())
    assert rough is not None
    assert rough.length == 965
    assert "between strips" in rough.reason
    assert short(needs_of(out_of(1400), shipped_shop())[0]) == set()


def test_all_are_offered_short_where_the_wood_is_scarce() -> None:
    ways = needs_of(piece(), shipped_shop())
    everything = [short(way) for way in ways if "cut short" in way.why]
    # Wider than half of the narrowest board that they come out of, or all but what comes of sheets.
    assert everything[0] == {"apron", "top"}
    assert {"post", "slat", "bottom end rail"} < everything[1]
    without = needs_of(piece(), shop_without("planer"))
    assert not any("cut short" in way.why for way in without)


def test_the_plan_says_how_they_are_fed() -> None:
    shop, model = shipped_shop(), out_of(1100)
    made, laid, _ = lay_out_stock(model, shop)
    assert laid is not None
    assert laid.verdict == "enough"
    work, _ = work_list(made, shop, laid=laid)
    assert work is not None
    fed = [each for each in work.operations if each.between_strips]
    assert {(each.part, each.station) for each in fed} == {("top", "planer"), ("slat", "planer")}
    assert any("runs 60 mm past both ends" in said(detail) for detail in fed[0].details)
