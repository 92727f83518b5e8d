"""A row set in by different amounts at its two ends, and distances outwards from a side."""

from tests.pieces.reading import mm, model_of

BENCH = """\
piece Bench
units mm
overall 600 wide, 300 deep, 400 high
timber ash
4 legs, upright, 40 x 40, at corners
2 long rails, across, on edge, 60 x 20, tenon 15 long into legs, up 100
2 end rails, front to back, on edge, 60 x 20, tenon 15 long into legs, {place}
3 slats, across, flat, 50 x 20, down 0, spread front to back, {inset}
1 board, flat, 600 x 300 x 15, of mdf, onto legs, screws
slats onto board: screws
glue up 2 ends: 2 legs, 1 end rail
glue up base: ends, long rails
"""


def test_the_ends_of_a_row_are_set_in_each_by_its_own_amount() -> None:
    text = BENCH.format(place="up 200", inset="set in 10 at front, 40 at back")
    slats = model_of(text).part("slat").copies
    # 300 deep, less 10 and 40 at the ends and three slats of 50: two gaps of 50.
    assert tuple(slat.box.low[1] for slat in slats) == mm(10, 110, 210)


def test_above_the_top_runs_outwards_and_below_the_top_inwards() -> None:
    above = BENCH.format(place="20 above the top of long rails", inset="set in 10")
    below = BENCH.format(place="20 below the top of long rails", inset="set in 10")
    rail, lower = (model_of(text).part("end rail").copies[0].box for text in (above, below))
    assert (rail.low[2], lower.high[2]) == mm(180, 140)
