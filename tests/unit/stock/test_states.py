"""Blanks of a part come out of boards of one state; what is wanted from one board may part."""

from dataclasses import replace
from fractions import Fraction

from tests.unit.operations.worked import piece, shipped_shop

from dryfit.piece.declared import Have
from dryfit.stock.blanks.blank import Blank
from dryfit.stock.blanks.needs import needs_of
from dryfit.stock.blanks.rough_sizes import rough_sizes

SLATS = "5 slats, across, flat, 40 x 18"


def board(wide: int, thick: int, *, rough: bool = False) -> Have:
    """A board of ash 2400 long."""
    sizes = (Fraction(2400), Fraction(wide), Fraction(thick))
    return replace(piece().stock[1], sizes=sizes, rough=rough)


def blanks(name: str, *lines: Have) -> dict[str, Blank]:
    """The first blank of a part of the boot bench in every way, by what is said of the way."""
    ways = needs_of(replace(piece(), stock=lines), shipped_shop())
    return {way.why: next(each for each in way.blanks if each.part.name == name) for way in ways}


def fits(blank: Blank, *lines: Have) -> list[bool]:
    """Whether the blank comes out of each line."""
    return [rough_sizes(blank, line, shipped_shop()) is not None for line in lines]


def test_planed_boards_of_the_right_thickness_go_before_rough_ones() -> None:
    # The aprons are 22 thick: 22 is kept; 27 rough is made true; 24 planed may be made true too,
    # 24 - 1 - 0.5 = 22.5, and 23 may not.
    lines = board(150, 22), board(150, 27, rough=True), board(150, 24), board(150, 23)
    ways = blanks("apron", *lines)
    assert fits(ways[""], *lines) == [True, False, False, False]
    anyway = next(blank for why, blank in ways.items() if why.startswith("planed boards"))
    assert fits(anyway, *lines) == [False, True, True, False]


def test_boards_of_the_very_section_go_before_wider_ones() -> None:
    lines = board(100, 22), board(150, 22)
    assert fits(blanks("apron", *lines)[""], *lines) == [True, False]


def test_one_state_alone_is_nothing_to_tell_apart() -> None:
    ways = blanks("apron", board(150, 27, rough=True), board(150, 34, rough=True))
    assert not any(blank.state for blank in ways.values())


def test_what_cannot_be_in_sequence_may_be_out_of_one_board_at_last() -> None:
    model = piece("boot_bench", (SLATS, f"{SLATS}, in sequence from one board"))
    rules = []
    for way in needs_of(model, shipped_shop()):
        slat = next(each for each in way.blanks if each.part.name == "slat")
        rules.append((slat.rule, way.why))
    assert rules[0] == ("in sequence", "")
    assert ("same board", "one board, but not in sequence") in rules
    assert ("", "not out of one board") in rules
