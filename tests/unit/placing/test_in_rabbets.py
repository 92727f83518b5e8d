"""A pane lies in the rabbet round its opening, where the notes cut one."""

from fractions import Fraction

import pytest
from tests.pieces.reading import changed, checked, mm, model_of

MIRROR = """\
piece Mirror
units mm
overall 420 wide, 22 deep, 700 high
timber walnut
2 stiles, upright, facing front, 60 x 22, at left and right, 0 from front
2 rails, across, on edge, 70 x 22, at bottom and top, 0 from front
rails crossing stiles: half lap, stiles show
rabbet in frame: back inner edges, 10 wide, 8 deep, after glue up frame
light = opening between stiles and rails
bought 1 mirror, 4 thick, in light
glue up frame: stiles, rails
"""


def _box(words: str) -> tuple[tuple[Fraction, ...], tuple[Fraction, ...]]:
    (thing,) = model_of(changed(MIRROR, ("4 thick, in light", words))).bought
    return thing.copies[0].box.low, thing.copies[0].box.high


@pytest.mark.parametrize(("words", "play"), [("", Fraction(3, 2)), (", gap 2", Fraction(2))])
def test_a_pane_fills_the_rabbet_less_its_play_and_lies_on_its_floor(
    words: str, play: Fraction
) -> None:
    """The light is 300 x 560 and begins at 60 and 70; the rabbet adds 10 all round, floor at 14."""
    low, high = _box(f"4 thick, in light{words}")
    assert low == (50 + play, Fraction(14), 60 + play)
    assert high == (370 - play, Fraction(18), 640 - play)


def test_that_it_lies_in_the_rabbet_is_listed_with_the_play() -> None:
    (row,) = [row for row in model_of(MIRROR).assumptions if "mirror" in row.text]
    assert "in the rabbet of frame round light, not in light itself, with 1.5" in row.text
    assert row.instead == "bought 1 mirror, 4 thick, in light, gap 1.5"


def test_a_written_size_or_place_wins() -> None:
    assert _box("4 thick, in light, gap 0, 0 from front") == (mm(60, 0, 70), mm(360, 4, 630))
    assert _box("4 thick, 200 wide, 300 high, in light")[0] == mm(110, 0, 200)


def test_what_is_made_fills_the_opening_and_so_does_a_pane_without_a_rabbet_all_round() -> None:
    made = changed(MIRROR, ("bought 1 mirror", "1 panel, upright, facing front, 280 wide"))
    panel = checked(made).model
    assert panel is not None
    assert panel.part("panel").length == 560
    part = changed(MIRROR, ("rabbet in frame: back inner", "rabbet in stiles: back inner"))
    assert not any("rabbet of" in row.text for row in model_of(part).assumptions)


@pytest.mark.parametrize("pane_first", [False, True])
def test_it_lies_there_too_where_nothing_says_how_deep_the_frame_stands(pane_first: bool) -> None:
    """Frame and piece are both 22 deep, so that the front of the light is known last."""
    pane, rabbet = "bought 1 mirror, 4 thick, in light\n", "rabbet in frame"
    text = changed(MIRROR, (", 0 from front", ""))
    if pane_first:
        text = changed(text, (pane, ""), (rabbet, pane + rabbet))
    (thing,) = model_of(text).bought
    assert (thing.copies[0].box.low[1], thing.copies[0].box.high[1]) == mm(14, 18)
