"""Needs: every way to make all parts, blank by blank (TRADE A5, A6, A9)."""

from dataclasses import replace
from fractions import Fraction

from tests.unit.operations.worked import piece, shipped_shop

from dryfit.stock.needs import Needs, needs_of


def usual(name: str = "boot_bench", *changes: tuple[str, str]) -> Needs:
    """The usual way to make an example's parts in the shipped shop."""
    return needs_of(piece(name, *changes), shipped_shop())[0]


def test_each_copy_and_each_stave_comes_out_of_one_blank() -> None:
    made = [name for blank in usual().blanks for name in blank.pieces]
    wanted = [copy.name for part in piece().parts if not part.made for copy in part.copies]
    wanted.remove("top")
    wanted += [f"top stave {number}" for number in range(1, 5)]
    assert sorted(made) == sorted(wanted)


def test_what_the_tool_makes_of_scrap_takes_no_blank() -> None:
    assert not any(blank.part.made for blank in usual().blanks)


def test_a_last_blank_with_fewer_pieces_is_a_kind_of_its_own() -> None:
    # Slats 200 long, with 3.2 between them and 60 bitten off at both ends: four fit into 1100, and
    # five make two blanks, of three and of two.
    bench = piece()
    parts = tuple(
        replace(part, length=Fraction(200), measures=()) if part.name == "slat" else part
        for part in bench.parts
    )
    needs = needs_of(replace(bench, parts=parts), shipped_shop())[0]
    blanks = [blank for blank in needs.blanks if blank.part.name == "slat"]
    assert [(each.each, each.count, each.pieces) for each in blanks] == [
        (3, 1, ("slat 1", "slat 2", "slat 3")),
        (2, 1, ("slat 4", "slat 5")),
    ]
    assert [name for each in blanks for name in each.names] == ["slat blank 1", "slat blank 2"]
