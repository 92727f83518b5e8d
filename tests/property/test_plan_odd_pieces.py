"""Pieces at the edge of what one builds: a sound plan, or a clear finding, never a traceback."""

import pytest
from tests.property.plan_oracle import faults
from tests.property.plan_oracle.documents import documents, shop_tables
from tests.property.test_plan_shops import SHOPS

SINGLE_BOARD = """\
piece Board
overall 600 wide, 200 deep, 20 high
timber ash
1 board, flat, 600 x 200 x 20
"""
NO_FINISH = """\
piece Frame
overall 800 wide, 300 deep, 30 high
timber oak
2 long bars, across, flat, 800 x 60 x 30, at front and back, up 0
2 end bars, front to back, flat, 60 x 30, at left and right
end bars crossing long bars: half lap
glue up frame: long bars, end bars, cure 1 h
"""
FORTY_SLATS = """\
piece Slatted base
overall 2000 wide, 500 deep, 60 high
timber ash
2 rails, across, on edge, 2000 x 40 x 25, at front and back, up 0
40 slats, front to back, flat, 500 x 30 x 20, onto rails, spread across
slats onto rails: screws
finish hard wax oil, 2 coats, 8 h apart
"""
TINY = """\
piece Block
overall 60 wide, 40 deep, 10 high
timber ash
1 block, flat, 60 x 40 x 10
"""
LONG_PANEL = """\
piece Long top
overall 3000 wide, 900 deep, 40 high
timber ash
1 top, flat, 40 thick, glued from 8
finish oil varnish
"""
BUILT = {
    "single board": SINGLE_BOARD,
    "single board with a finish": SINGLE_BOARD + "finish oil varnish, 2 coats, 24 h apart\n",
    "no finish": NO_FINISH,
    "forty slats": FORTY_SLATS,
    "tiny": TINY,
    "3 m panel": LONG_PANEL,
}
LONG_FRAME = NO_FINISH.replace("800", "3000")
REFUSED = {
    "3 m frame, no clamp so long": (LONG_FRAME, "clamp-too-short"),
    "laps but no glue-up": (NO_FINISH.rpartition("glue up")[0], "no-glue-up"),
    "forty housings at once": (
        FORTY_SLATS.replace("60 high", "40 high")
        .replace("500 x 30 x 20, onto rails", "30 x 12, housing 8 into rails, up 14")
        .replace("slats onto rails: screws", "glue up base: rails, slats, cure 1 h"),
        "glue-time-short",
    ),
    "no part": ("piece Nothing\noverall 1 wide, 1 deep, 1 high\n", "no-parts"),
}


@pytest.mark.parametrize("shop", [None, "hand_tools", "no_table_saw"])
@pytest.mark.parametrize("name", BUILT)
def test_an_odd_piece_is_planned_soundly(name: str, shop: str | None) -> None:
    file = SHOPS[shop] if shop is not None else None
    found, errors = documents(BUILT[name], file)
    assert found is not None, errors
    assert faults(*found, shop_tables(file)) == []


@pytest.mark.parametrize("name", REFUSED)
def test_what_cannot_be_built_is_refused_with_one_reason(name: str) -> None:
    text, code = REFUSED[name]
    found, errors = documents(text)
    assert found is None
    assert [each.code for each in errors] == [code]
