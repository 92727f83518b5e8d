"""Needs: every way to make all parts, blank by blank (TRADE A3.4, A5, A6)."""

from collections.abc import Iterable
from dataclasses import replace
from fractions import Fraction

from tests.unit.operations.worked import piece, shipped_shop, shop_without

from dryfit.placing.model import Model
from dryfit.stock.blanks.blank import Blank, shortest_fed
from dryfit.stock.blanks.needs import MOST, Needs, needs_of

SLATS = "5 slats, across, flat, 40 x 18"


def bench(**of_slats: object) -> Model:
    """The boot bench with slats that have other sizes, as if no length were measured."""
    model = piece()
    parts = tuple(
        replace(part, measures=(), **of_slats) if part.name == "slat" else part  # type: ignore[arg-type]
        for part in model.parts
    )
    return replace(model, parts=parts)


def usual(name: str = "boot_bench", *changes: tuple[str, str]) -> Needs:
    """The usual way to make an example's parts in the shipped shop."""
    return needs_of(piece(name, *changes), shipped_shop())[0]


def of(blanks: Iterable[Blank], name: str) -> list[Blank]:
    """The blanks of a part that become copies of it."""
    return [each for each in blanks if each.part.name == name and each.what == "part"]


def test_in_every_way_each_copy_and_each_stave_comes_out_of_one_blank() -> None:
    wanted = [copy.name for part in piece().parts if not part.made for copy in part.copies]
    wanted.remove("top")
    wanted += [f"top stave {number}" for number in range(1, 5)]
    ways = needs_of(piece(), shipped_shop())
    assert 1 < len(ways) <= MOST
    for way in ways:
        names = [name for blank in way.blanks for name in blank.names]
        assert len(set(names)) == len(names)
        if way.model is piece():
            made = [name for blank in way.blanks for name in blank.pieces]
            assert sorted(made) == sorted(wanted)


def test_what_the_tool_makes_of_scrap_takes_no_blank() -> None:
    assert not any(blank.part.made for blank in usual().blanks)


def test_a_last_blank_with_fewer_pieces_is_a_kind_of_its_own() -> None:
    # Slats 200 long, with 3.2 between them and 60 bitten off at both ends: four fit into 1100, and
    # five make two blanks, of three and of two.
    blanks = of(needs_of(bench(length=Fraction(200)), shipped_shop())[0].blanks, "slat")
    assert [(each.each, each.count, each.pieces) for each in blanks] == [
        (3, 1, ("slat 1", "slat 2", "slat 3")),
        (2, 1, ("slat 4", "slat 5")),
    ]
    # 3 x 200 + 2 x 3.2 + 120 = 726.4, and 2 x 200 + 3.2 + 120 = 523.2, to whole 5 mm.
    assert [float(each.length) for each in blanks] == [730, 525]
    assert [name for each in blanks for name in each.names] == ["slat blank 1", "slat blank 2"]


def test_short_parts_are_offered_ganged_otherwise() -> None:
    found = {
        way.why.split(",")[0]: [(each.each, each.count) for each in of(way.blanks, "post")]
        for way in needs_of(piece(), shipped_shop())
    }
    assert found[""] == [(2, 2)]
    # 4 x 430 + 3 x 3.2 + 120 = 1849.6: no longer than two of the shop's gangs, or the board.
    assert found["more short parts in one blank"] == [(4, 1)]
    assert found["every part in a blank of its own"] == [(1, 4)]


def test_no_gang_is_shorter_than_the_machines_take() -> None:
    # Without a planer an end loses 12.5 of 25 to saws alone: 3 x 90 + 2 x 3.2 + 25 = 301.4 is the
    # shortest gang of slats 90 long that the jointer takes (300, TRADE A6).
    shop = shop_without("planer")
    assert shortest_fed(shop) == 300
    ways = needs_of(bench(length=Fraction(90)), shop)
    for way in ways:
        assert all(each.each >= 2 for each in of(way.blanks, "slat"))
        assert all(each.length >= 300 for each in of(way.blanks, "slat"))
    singly = next(way for way in ways if way.why.startswith("every part"))
    assert [each.each for each in of(singly.blanks, "slat")] == [3, 2]


def test_planed_boards_of_the_right_thickness_need_no_gangs() -> None:
    # Nothing is planed, so no planer bites: a gang would save nothing.
    model = piece()
    planed = replace(
        model.stock[1],
        rough=False,
        sizes=(Fraction(2400), Fraction(160), Fraction(30)),
    )
    needs = needs_of(replace(model, stock=(planed,)), shipped_shop())[0]
    assert [(each.each, each.count) for each in of(needs.blanks, "post")] == [(1, 4)]
    rough = needs_of(replace(model, stock=(planed, *model.stock)), shipped_shop())[0]
    assert [(each.each, each.count) for each in of(rough.blanks, "post")] == [(2, 2)]


def test_what_is_wanted_from_one_board_is_a_group() -> None:
    in_one = usual("boot_bench", (SLATS, f"{SLATS}, in sequence from one board"))
    assert {(each.group, each.rule) for each in of(in_one.blanks, "slat")} == {
        ("slat", "in sequence")
    }
    same = usual("boot_bench", (SLATS, f"{SLATS}, all from the same board"))
    assert {(each.group, each.rule) for each in of(same.blanks, "slat")} == {("slat", "same board")}
    assert not any(each.group for each in of(same.blanks, "post"))


def test_spares_that_the_notes_ask_for_have_to_be_found() -> None:
    asked = usual("boot_bench", (SLATS, f"{SLATS}, 1 spare"))
    (spare,) = (each for each in asked.blanks if each.what == "spare" and not each.if_room)
    assert (spare.names, spare.pieces, spare.count) == (("slat spare 1",), (), 1)
    again = usual("boot_bench", ("finish oil", "spoiled: 1 bottom end rail\nfinish oil"))
    (spare,) = (each for each in again.blanks if each.what == "spare" and not each.if_room)
    # One alone: 340 + 120 for the planer's bite, though the others lie two in a blank.
    assert (spare.part.name, spare.each) == ("bottom end rail", 1)
    assert spare.length == 460


def test_a_test_piece_of_each_thickness_if_there_is_room() -> None:
    # TRADE A3.4, H55: 300 long when it is planed, of 30, 22 and 18, and one spare of what has most
    # cuts.
    blanks = usual().blanks
    optional = [each for each in blanks if each.if_room]
    assert blanks[-len(optional) :] == tuple(optional)
    tests = [each for each in optional if each.what == "test piece"]
    assert [float(each.to_thickness) for each in tests] == [30, 22, 18]
    assert all(each.part.length == 300 and not each.pieces for each in tests)
    assert [each.names for each in optional if each.what == "spare"] == [("apron spare 1",)]


def test_sheets_are_offered_sawn_to_size_at_once() -> None:
    ways = needs_of(piece("wall_cabinet"), shipped_shop())
    whole = next(way for way in ways if "factory edges" in way.why)
    (trimmed,), (kept,) = of(ways[0].blanks, "back"), of(whole.blanks, "back")
    assert kept.length == kept.part.length == trimmed.length - 6
    assert kept.width == kept.part.width == trimmed.width - 6


def test_the_ways_are_the_same_each_time() -> None:
    assert needs_of(piece(), shipped_shop()) == needs_of(piece(), shipped_shop())
