"""Wood on hand: H42 to H45, by the worked rows of TRADE A1 and A5 and by counting faces."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.pieces.reading import checked
from tests.unit.operations.worked import shipped_shop

from dryfit.diagnostics import Diagnostic
from dryfit.stock.boards import flat

BOARD = """piece Board
units {units}
overall {length} wide, {width} deep, {thick} high
timber ash
have {have}
1 board, across, flat, {thick} thick{more}
finish oil, 2 coats
"""
WOOD = {"no-board-fits", "board-too-warped", "blank-longer-than-boards", "wood-short"}


def told(
    have: str, length: str, width: str, thick: str, more: str = "", units: str = "mm"
) -> list[Diagnostic]:
    """What is told of one board so large out of the wood on hand."""
    text = BOARD.format(have=have, length=length, width=width, thick=thick, more=more, units=units)
    return [each for each in checked(text).findings if each.code in WOOD]


def codes_of(have: str, length: str, width: str, thick: str, more: str = "") -> list[str]:
    """The codes of what is told."""
    return [each.code for each in told(have, length, width, thick, more)]


LONG = "1 board of ash, 2400 x 160 x 34, rough"


@pytest.mark.parametrize(("width", "left"), [(160, "29.0"), (50, "32.6")])
def test_a_cup_costs_itself_and_falls_with_the_square_of_the_width(width: int, left: str) -> None:
    # TRADE A1.6: t 34, w 160, c 4, a 1.0.
    model = checked(
        BOARD.format(have=f"{LONG}, cup 4", length=600, width=50, thick=30, more="", units="mm")
    ).model
    assert model is not None
    (line,) = model.stock
    assert f"{float(flat(line, Fraction(600), Fraction(width), shipped_shop())):.1f}" == left


def test_a_slab_is_as_wide_as_its_wider_end_whichever_its_line_tells_first() -> None:
    # 350 + 5 of ripping are no more than 420; where the slab is so wide is for a layout to say.
    for widths in ("300 to 420", "420 to 300"):
        assert not codes_of(f"1 slab of ash, 2000 x {widths} x 50, rough", "600", "350", "30")
        narrow = codes_of(f"1 slab of ash, 2000 x {widths} x 50, rough", "600", "450", "30")
        assert "no-board-fits" in narrow


def test_a_bow_and_a_twist_cost_too() -> None:
    # 600 of 2400: bow 8 / 16 = 0.5; twist 6 x 600/2400 x 50/160 = 0.47, half of it; clean-up 1.
    model = checked(
        BOARD.format(
            have=f"{LONG}, bow 8, twist 6", length=600, width=50, thick=30, more="", units="mm"
        )
    ).model
    assert model is not None
    (line,) = model.stock
    assert f"{float(flat(line, Fraction(600), Fraction(50), shipped_shop())):.3f}" == "32.266"


@pytest.mark.parametrize(
    ("have", "sizes", "code"),
    [
        (LONG, ("600", "150", "30"), []),
        (LONG, ("2375", "150", "30"), ["blank-longer-than-boards"]),
        (LONG, ("2380", "150", "30"), ["no-board-fits"]),
        (LONG, ("600", "155", "30"), []),
        (LONG, ("600", "156", "30"), ["no-board-fits"]),
        (LONG, ("600", "150", "32.5"), []),
        (LONG, ("600", "150", "33"), ["no-board-fits"]),
        # The thickness of a narrow piece may lie along the width of a board.
        (LONG, ("600", "30", "50"), []),
        (f"{LONG}, cup 4", ("600", "150", "30"), ["board-too-warped"]),
        (f"{LONG}, cup 4", ("600", "75", "30"), []),
        # Planed boards are used as thick as they are.
        ("1 board of ash, 1000 x 140 x 20", ("600", "120", "20"), []),
        ("1 board of ash, 1000 x 140 x 20", ("600", "120", "21"), ["no-board-fits"]),
        # What the notes have none of is bought, and what a line does not say lacks nothing.
        ("1 board of oak, 300 x 100 x 20, rough", ("600", "150", "30"), []),
        ("1 board of ash, ? x 160 x 34, rough", ("3000", "150", "30"), []),
    ],
)
def test_a_board_is_held_against_a_part(
    have: str, sizes: tuple[str, str, str], code: list[str]
) -> None:
    assert codes_of(have, *sizes) == code


def test_a_wide_part_is_glued_from_as_many_as_fit() -> None:
    # (300 + 6) / (160 - 5) = 1.97: two staves of 153, ripped to 158.
    (one,) = told(LONG, "600", "300", "25")
    assert one.hints[0].message == "write `glued from 2` in its line, or buy a wider board"
    assert codes_of(LONG, "600", "300", "25", more=", glued from 2") == []
    assert codes_of(LONG, "600", "330", "25", more=", glued from 2") == ["no-board-fits"]


def test_warp_is_met_by_narrower_staves() -> None:
    # 25 takes 25 + 1.5 + 0.5: of the 34 less 1 a cup of 6 may be left, of 8 over 160.
    (one,) = told(f"{LONG}, cup 8", "600", "300", "25", more=", glued from 2")
    assert one.code == "board-too-warped"
    assert "glued from 3" in one.hints[0].message
    assert codes_of(f"{LONG}, cup 8", "600", "300", "25", more=", glued from 3") == []


def test_sheets_are_looked_up_by_their_thickness_and_may_be_turned() -> None:
    ply = "1 sheet of birch ply, 1220 x 610 x 12"
    more = ", of birch ply"
    assert codes_of(ply, "600", "1200", "12", more=more) == []
    assert codes_of(ply, "600", "1200", "9", more=more) == ["no-board-fits"]
    assert codes_of(ply, "700", "1200", "12", more=more) == ["no-board-fits"]
    assert codes_of(ply, "1230", "500", "12", more=more) == ["no-board-fits"]


ROW = """piece Row of laths
units {units}
overall {overall} high
timber ash
have {have}
{laths} laths, across, flat, {lath}, spread front to back, no gap at ends
2 bearers, front to back, flat, {bearer}, under laths, at left and right
laths onto bearers: screws
"""


def row(have: str, laths: int) -> list[Diagnostic]:
    text = ROW.format(
        units="mm",
        overall="800 wide, 600 deep, 40",
        have=have,
        laths=laths,
        lath="100 x 20",
        bearer="600 long, 40 x 20",
    )
    return [each for each in checked(text).findings if each.code == "wood-short"]


def test_boards_are_too_few_when_their_faces_are() -> None:
    # With the band saw's 1.3: laths 801.3 x 101.3 x 5 and bearers 601.3 x 41.3 x 2 make 455 525
    # mm2, boards 951.3 x 161.3 x 2 make 306 889, of which 304 000 are wood: 160 wide, 1900 long.
    (one,) = row("2 boards of ash, 950 x 160 x 27, rough", 5)
    assert one.notes[0].message.startswith("counted are")
    assert one.figures["needed"] == Fraction(2820)
    assert one.figures["have"] == Fraction(1900)
    assert row("3 boards of ash, 950 x 160 x 27, rough", 5) == []


def test_what_can_be_resawn_counts_for_each_leaf() -> None:
    # 45 holds two layers of 20 and a kerf of 3.2, or of 1.3; 41 holds one.
    assert row("2 boards of ash, 950 x 160 x 45, rough", 5) == []
    assert len(row("2 boards of ash, 950 x 160 x 41, rough", 5)) == 1


def test_a_shortage_of_sheets_is_told_in_sheets() -> None:
    text = """piece Shelves
overall 800 wide, 300 deep, 600 high
have 1 sheet of birch ply, 1000 x 620 x 18
2 sides, upright, 300 x 18, of birch ply, at left and right
3 shelves, across, flat, 300 x 18, of birch ply, housing 6 into sides,
  spread up and down
glue up case: sides, shelves
"""
    (one,) = [each for each in checked(text).findings if each.code == "wood-short"]
    # 2 x 600 x 300 and 3 x 776 x 300 of 1000 x 620, and a little for the saw.
    assert "at least 1.71 sheets of 1000 mm by 620 mm, and there are 1.00" in one.message
