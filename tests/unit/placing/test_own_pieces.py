"""Pieces that say where things go by words alone: their places against numbers worked by hand.

Each is written without a derived number, and leans on at least four things that only the wider
language can say: openings, faces of other parts, lists, cuts with no mate, patterns, bought things,
finishes by surface, limits, measurements.
"""

from fractions import Fraction

import pytest
from tests.pieces.reading import model_of_piece

from dryfit.geometry.box import Box
from dryfit.placing.model import Model

INCH = Fraction(254, 10)


def box(x: str, y: str, z: str, unit: Fraction = Fraction(1)) -> Box:
    """A box from its three ranges, such as ``"3/2 15/4"``."""
    ranges = [[Fraction(end) * unit for end in each.split()] for each in (x, y, z)]
    (x0, x1), (y0, y1), (z0, z1) = ranges
    return Box((x0, y0, z0), (x1, y1, z1))


def boxes(model: Model) -> dict[str, Box]:
    made = {copy.name: copy.box for part in model.parts for copy in part.copies}
    return made | {copy.name: copy.box for thing in model.bought for copy in thing.copies}


# Legs end under slats whose top lies 5 below the piece: 36 - 5 - 7/8 = 30 1/8.
POTTING_TABLE = {
    "front left leg": ("3/2 15/4", "1/2 11/4", "0 241/8"),
    # The back board, 7/8 thick, lies behind them: 22 - 7/8 - 2 1/4 = 18 7/8.
    "back left leg": ("3/2 15/4", "151/8 169/8", "0 241/8"),
    # Between shoulders 3 3/4 .. 40 1/4, tenons of 1 1/8, set back 1/8 from the legs' face at 1/2.
    "front long apron": ("21/8 331/8", "5/8 3/2", "213/8 241/8"),
    # On the inside of a rail whose inner face is at 1 5/8 + 7/8 and whose top is at 10 1/2.
    "left ledger": ("5/2 27/8", "11/4 151/8", "17/2 39/4"),
    # As high as the rim, a slat and an apron: 5 + 7/8 + 3 1/2, up to the top.
    "back board": ("3/2 85/2", "169/8 22", "213/8 36"),
    # Six of 3 3/8 over 21 1/8: five gaps of 7/40.
    "top slat 2": ("0 44", "71/20 277/40", "241/8 31"),
}
PLANT_STAND = {
    # 520 less the slats of 18 and the frame of 26.
    "front left post": ("4 44", "4 44", "0 476"),
    "frame > front frame rail": ("0 640", "0 44", "476 502"),
    # Between posts 44 .. 596 and tenons of 18.
    "front long rail": ("26 614", "8 28", "416 476"),
    "left low rail": ("8 28", "19 281", "110 150"),
    # Seven of 36 over 300 without a gap at the ends: six gaps of 8.
    "slat 2": ("0 640", "44 80", "502 520"),
    # Between the posts from side to side, as deep as they reach (4 .. 296), with 4 all round; on
    # rails whose top is at 150.
    "drip tray": ("48 592", "8 292", "150 185"),
}
WALL_CASE = {
    # The opening is 664 x 484; gaps of 2, and 3 between: doors (664 - 7) / 2 wide.
    "left door": ("20 697/2", "0 20", "20 500"),
    "right door": ("703/2 680", "0 20", "20 500"),
    "shelf": ("19 681", "30 180", "248 264"),
    # Measured 5.6 thick, 10 from the back; its edges 6 deep in grooves with half a mm of play.
    "back": ("25/2 1375/2", "972/5 200", "25/2 1015/2"),
}
TRAY_CHEST = {
    "left ledger 1": ("16 26", "0 300", "40 60"),
    "right ledger 3": ("334 344", "0 300", "260 280"),
    # The opening is 328 wide, 2 are left at either side; they lie on the ledgers.
    "tray 1 > left tray side": ("18 28", "0 280", "60 140"),
    "tray 3 > back tray end": ("28 332", "270 280", "280 360"),
}
MIRROR = {
    "left stile": ("0 60", "0 22", "0 700"),
    "top rail": ("0 420", "0 22", "630 700"),
    # 25 over the inner edges of the stiles at 60 and 360; three equal gaps in 700 - 80.
    "batten 1": ("35 385", "22 34", "620/3 740/3"),
    # In the rabbet: 10 beyond the light on every side less 1.5 of play, on its floor at 22 - 8.
    "mirror": ("103/2 737/2", "14 18", "123/2 1277/2"),
}
TRESTLE = {
    # Centred on a foot of 70 that begins at 120; 30 into the foot, 20 into the bearer.
    "left leg": ("265/2 355/2", "60 260", "20 400"),
    # Between legs 177.5 .. 1022.5, through 45 of leg and 12 beyond; 90 below the top of the legs.
    "beam": ("241/2 2159/2", "144 176", "190 310"),
    "seat": ("0 1200", "0 320", "410 440"),
}


TOOL_TOTE = {
    # Both run to the outside: 460 and 220 over all, 13 fingers of 8 high.
    "front side": ("0 460", "0 12", "0 104"),
    "left end": ("0 12", "0 220", "0 104"),
    # In grooves 5 deep; half a mm of play at each end and along one edge.
    "bottom": ("15/2 905/2", "15/2 425/2", "9 15"),
    "left post": ("12 30", "75 145", "15 270"),
    # Between the posts at 30 and 430, 10 below their tops.
    "handle": ("30 430", "195/2 245/2", "220 260"),
}


@pytest.mark.parametrize(
    ("name", "unit", "worked"),
    [
        ("potting_table", INCH, POTTING_TABLE),
        ("plant_stand", Fraction(1), PLANT_STAND),
        ("wall_case", Fraction(1), WALL_CASE),
        ("tray_chest", Fraction(1), TRAY_CHEST),
        ("tool_tote", Fraction(1), TOOL_TOTE),
        ("mirror", Fraction(1), MIRROR),
        ("trestle", Fraction(1), TRESTLE),
    ],
)
def test_places_are_those_worked_by_hand(
    name: str, unit: Fraction, worked: dict[str, tuple[str, str, str]]
) -> None:
    found = boxes(model_of_piece(name))
    assert {copy: found[copy] for copy in worked} == {
        copy: box(*ranges, unit) for copy, ranges in worked.items()
    }
