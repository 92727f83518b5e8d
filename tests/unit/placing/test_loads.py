"""What is carried in one piece, what comes off, and how each gets in."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.pieces.reading import changed, model_of, model_of_piece

from dryfit.piece.declared.site import WayIn
from dryfit.placing.loads import carried, comes_apart_into, last_glue_up, through, titled
from dryfit.placing.model import Model

TABLE = """piece Table
overall 900 wide, 900 deep, 700 high
timber ash
fixed to the wall
{way}
4 legs, upright, 60 x 60, at corners, set in 240
2 aprons, across, 60 x 20, tenon 20 into legs
2 rails, front to back, 60 x 20, tenon 20 into legs
1 top, flat, 20 thick, onto aprons and rails: buttons
glue up base: legs, aprons, rails
"""


def titles(model: Model) -> list[str]:
    return [titled(group, model) for group in comes_apart_into(model)]


def size(*values: int) -> tuple[Fraction, Fraction, Fraction]:
    wide, deep, high = (Fraction(value) for value in values)
    return wide, deep, high


def way(wide: int, high: int, turn: int | None = None) -> WayIn:
    span = model_of(TABLE.format(way="")).parts[0].spans[0]
    return WayIn(Fraction(wide), Fraction(high), Fraction(turn) if turn else None, span)


def test_what_is_buttoned_or_screwed_on_comes_off() -> None:
    assert titles(model_of_piece("step_stool")) == ["base", "seat"]
    bench = titles(model_of_piece("boot_bench"))
    assert bench[:2] == ["base", "top"]


def test_doors_drawers_and_loose_shelves_come_out() -> None:
    cabinet = titles(model_of_piece("wall_cabinet"))
    assert cabinet == ["case", "shelf", "shelf", "door", "drawer"]


def test_a_back_in_its_rabbets_and_a_ledger_stay_on() -> None:
    assert titles(model_of_piece("spice_case")) == ["case"]
    assert titles(model_of_piece("tray_chest")).count("case") == 1


def test_what_is_knock_down_comes_apart() -> None:
    loose = changed(
        TABLE.format(way=""),
        ("tenon 20 into legs\n2 rails", "tenon 20 into legs, knock-down\n2 rails"),
        ("legs, aprons, rails", "legs, rails"),
        ("base", "2 ends"),
        ("legs, rails", "2 legs, 1 rail"),
    )
    assert titles(model_of(loose))[:2] == ["end", "end"]


def test_the_whole_is_one_load_where_it_gets_in() -> None:
    (load,) = carried(model_of(TABLE.format(way="way in 950 wide, 1980 high")))
    assert (load.title, load.ways, load.goes) == ("the whole piece", ("upright",), True)


def test_else_all_that_comes_off_is_carried_alone() -> None:
    loads = carried(model_of(TABLE.format(way="way in 600 wide, 1980 high")))
    assert [(load.title, load.size, load.ways) for load in loads] == [
        ("base", size(420, 420, 680), ("upright",)),
        ("top", size(900, 900, 20), ("on edge",)),
    ]


def test_what_is_built_in_place_is_carried_in_pieces() -> None:
    text = TABLE.format(way="way in 400 wide, 1980 high")
    assert not carried(model_of(text))[0].goes
    built = carried(model_of(changed(text, ("piece Table", "piece Table\nbuilt in place"))))
    assert [(load.title, load.count) for load in built] == [
        ("leg", 4),
        ("apron", 2),
        ("rail", 2),
        ("top", 1),
    ]
    assert all(load.goes for load in built)


def test_a_glue_up_names_its_load() -> None:
    model = model_of(TABLE.format(way=""))
    base = comes_apart_into(model)[0]
    found = last_glue_up(base, model)
    assert found is not None
    assert found.stage == "base"


@pytest.mark.parametrize(
    ("box", "door", "how"),
    [
        ((600, 300, 1900), (720, 1980), "upright"),
        ((600, 300, 2000), (720, 1980), "on its back"),
        ((1900, 800, 800), (720, 1980), None),
        ((1100, 1900, 1000), (1050, 1150), "on its end"),
        ((800, 760, 2600), (760, 1980), "on its side"),
        ((700, 2100, 2100), (1300, 2050), None),
        ((2300, 60, 2100), (720, 2080), "leaning to one side"),
    ],
)
def test_how_a_box_goes_through_a_door(
    box: tuple[int, int, int], door: tuple[int, int], how: str | None
) -> None:
    assert through(way(*door), size(*box)) == how


@pytest.mark.parametrize(
    ("long", "how"), [(900, "upright"), (1683, "upright"), (1684, None), (2300, None)]
)
def test_how_far_a_low_case_goes_round_a_corner(long: int, how: str | None) -> None:
    found = through(way(720, 1980, 900), size(long, 300, 1900))
    assert found == how or (how is None and found != "upright")
