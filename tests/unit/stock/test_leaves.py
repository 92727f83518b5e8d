"""Thin parts that are resawn out of thick boards (TRADE A8.1 to A8.3)."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest
from tests.pieces.planning import planned
from tests.unit.operations.worked import shipped_shop, shop_without
from tests.unit.rehearsal.played import Played, played

from dryfit.placing.model import Model
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.blank import Blank
from dryfit.stock.blanks.needs import needs_of
from dryfit.stock.laying.lay import lay_out_stock
from dryfit.stock.saws import shortest_rip

TRAY = Path(__file__).parents[2] / "pieces" / "resawn_tray.dryfit"
ASKED = ", resawn from thick boards"
THICK = "1400 x 110 x 34"


def text_of(*changes: tuple[str, str]) -> str:
    text = TRAY.read_text(encoding="utf-8")
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    return text


def tray(*changes: tuple[str, str]) -> Played:
    return played(text_of(*changes))


@pytest.fixture(scope="module")
def asked() -> Played:
    return tray()


def model_of(*changes: tuple[str, str]) -> Model:
    checked, _, _ = planned(text_of(*changes))
    assert checked.model is not None
    return checked.model


def sides(model: Model, shop: Shop, why: str = "") -> list[Blank]:
    ways = [each for each in needs_of(model, shop) if each.why == why]
    blanks = [one for way in ways for one in way.blanks if one.what == "part"]
    return [one for one in blanks if one.subject == "side"]


def test_two_sides_lie_in_a_strip_as_thick_as_both_with_their_planing_and_the_kerf() -> None:
    # TRADE A8.1: n (T + p) + (n - 1) k = 2 (10 + 1.5) + 1.3.  p is the shop's 1 of facing and 0.5
    # in reserve, more than the 1.0 of A8.1.
    (strip,) = sides(model_of(), shipped_shop())
    assert (strip.leaves, strip.each, strip.count) == (2, 2, 1)
    assert strip.strip == Fraction(243, 10)
    # As long as one leaf: 420 and 120 for the planer's bite.
    assert strip.length == 540


def test_the_band_saw_stands_at_the_leaf_as_sawn_and_the_leaves_rest_before_they_are_planed(
    asked: Played,
) -> None:
    assert not asked.faults()
    steps = [(step, row) for step in asked.plan.steps for row in step.operations]
    names = [row.id for _, row in steps]
    strip = ["strip face", "strip edge", "strip thickness"]
    order = ["rough length", "rip", *strip, "resaw", "face", "thickness", "width"]
    places = [names.index(f"side / {each}") for each in order]
    assert places == sorted(places)
    resaw = steps[names.index("side / resaw")][1]
    # TRADE A8.2: to the near face, 10 + 1.5, and not half of the strip.
    assert [each.value for each in resaw.settings if each.axis == "fence"] == [Fraction(23, 2)]
    assert resaw.station == "band saw"
    # A8.1: two leaves of 11.5 and a kerf of 1.3.  A leaf keeps the edge of its strip.
    planed = steps[names.index("side / strip thickness")][1]
    assert [each.value for each in planed.settings] == [Fraction(243, 10)]
    assert "side / edge" not in names
    faced = steps[names.index("side / face")][0]
    assert faced.release is not None
    assert "fresh leaf" in faced.release.reason


def test_planed_boards_need_no_truing_and_their_leaves_rest_as_well() -> None:
    planed = tray((f"{THICK}, rough", f"{THICK}, planed"))
    assert not planed.faults()
    rows = {row.id: step for step in planed.plan.steps for row in step.operations}
    assert "side / resaw" in rows
    # The faces of planed boards are true; what its saw has left is no edge to stand on.
    assert "side / strip face" not in rows
    assert "side / strip edge" in rows
    release = rows["side / face"].release
    assert release is not None
    assert "fresh leaf" in release.reason


def test_three_leaves_come_out_of_a_board_that_is_thick_enough() -> None:
    # 3 (8 + 1.5) + 2 * 1.3 = 31.1, and 33.1 rough with the 2 that warp takes (A8.1).
    model = model_of()
    part = next(each for each in model.parts if each.name == "side")
    third = replace(part.copies[0], name="third side")
    thin = replace(part, thickness=Fraction(8), copies=(*part.copies, third))
    model = replace(model, parts=(thin,))
    (strip,) = sides(model, shipped_shop())
    assert (strip.leaves, strip.each, strip.count) == (3, 3, 1)
    assert strip.strip == Fraction(311, 10)
    line = model.stock[0]
    thinner = replace(line, sizes=(line.sizes[0], line.sizes[1], Fraction(33)))
    strips = sides(replace(model, stock=(thinner,)), shipped_shop())
    # Two lie one after another in each leaf, and of the fourth place nothing becomes.
    assert [(each.leaves, each.along, each.each, each.count) for each in strips] == [(2, 2, 3, 1)]


def test_resawing_is_tried_where_the_wood_is_else_too_little() -> None:
    shop = shipped_shop()
    short = model_of((ASKED, ""), ("1400", "1050"))
    assert [each.leaves for each in sides(short, shop)] == [1]
    _, laid, _ = lay_out_stock(short, shop)
    assert laid is not None
    assert laid.verdict == "enough"
    assert laid.way == "thin parts resawn from thick boards"
    assert {blank.leaves for blank in laid.blanks if blank.part == "side"} == {2}


def test_without_a_band_saw_it_is_done_by_hand_where_it_is_asked_and_else_never_tried() -> None:
    why = "thin parts resawn from thick boards"
    assert sides(model_of((ASKED, "")), shipped_shop(), why)
    assert not sides(model_of((ASKED, "")), shop_without("band saw"), why)
    assert [each.leaves for each in sides(model_of(), shop_without("band saw"))] == [2]
    low = replace(
        shipped_shop(),
        stations={
            name: replace(each, limits={**each.limits, "depth": Fraction(80)})
            if name == "band saw"
            else each
            for name, each in shipped_shop().stations.items()
        },
    )
    assert not sides(model_of((ASKED, "")), low, why)


def test_a_spare_is_a_leaf_of_a_strip_and_none_is_planed_out_of_the_thick_board() -> None:
    model = model_of(("at front and back", "at front and back, 1 spare"))
    (needs,) = (each for each in needs_of(model, shipped_shop()) if not each.why)
    others = [one for one in needs.blanks if one.what != "part"]
    assert [(one.subject, one.leaves, one.count, one.along) for one in others] == [
        ("side", 2, 1, 1)
    ]


def test_what_is_asked_is_done_where_no_boards_are_told_of() -> None:
    bare = tray((f"have 1 board of ash, {THICK}, rough\n", ""))
    assert not bare.faults()
    rows = {row.id: row for step in bare.plan.steps for row in step.operations}
    cut = rows["side / rough length"]
    assert cut.sentence.startswith("Cut the 1 side strip from the boards")
    # 24.3 for two leaves and a kerf, and 2 for the warp (A8.1).
    assert cut.rough is not None
    assert cut.rough[2] == Fraction(263, 10)
    names = list(rows)
    assert names.index("side / rough length") < names.index("side / resaw")


def test_what_is_ripped_is_long_enough_for_the_table_saw_where_the_band_saw_is_the_lower() -> None:
    """TRADE A6: 75 at a band saw, 300 at a table saw, to which thicker boards than it takes go."""
    shop = shipped_shop()
    assert shortest_rip(shop) == 75
    low = replace(
        shop.stations["band saw"], limits={"depth": Fraction(50), "shortest": Fraction(75)}
    )
    lower = replace(shop, stations={**shop.stations, "band saw": low})
    assert shortest_rip(lower) == 300
    assert shortest_rip(shop_without("band saw")) == 300
