"""Runners below a drawer, and ends that float, worked by hand (TRADE B21.3, G6)."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.pieces.reading import (
    changed,
    checked,
    checked_piece,
    codes,
    model_of,
    model_of_piece,
    text_of,
)
from tests.unit.rehearsal.played import played

from dryfit.joinery.drawer_room import room_above
from dryfit.rehearsal.fault import Reason
from dryfit.wood import moving

GLUED = "glued at front, running"


def test_a_runner_is_glued_in_front_and_floats_behind() -> None:
    # Between rails 360 - 60 - 60 = 240; the rear shoulder 3 off (B21.3: 2 to 3): 237 between
    # shoulders.  Tenons of 15: 267 long.  Behind, the tenon is 12 in its host, the mortise
    # 15 + 1 for the glue: 16 deep in front, and so it is behind, that the sides may shrink by 3.
    model = model_of_piece("letter_case")
    part = model.part("runner")
    assert part.length == 267
    assert part.shoulder_length == 237
    assert {add.length for add in part.adds} == {15}
    for copy in part.copies:
        extent = copy.box.extent(1)
        assert extent == part.length
    ends = {each.end: each for each in model.joints if each.guest == "left runner" and each.tenon}
    assert [bool(ends[end].patches) for end in ("R", "R2")] == [True, False]
    assert ends["R2"].region.extent(1) == 12
    for name in ("front rail", "back rail"):
        depths = {each.depth for each in model.part(name).features if each.kind == "mortise"}
        assert depths == {16}


def test_a_runner_lies_under_the_side_and_is_as_wide_as_usual() -> None:
    # A side of the drawer 1 from the case: its outer face at 21, and 40 inwards (B21.3: W 40).
    model = model_of_piece("letter_case")
    box = model.copy("left runner").box
    assert box.low[0] == 21
    assert box.high[0] == 61
    assert box.high[2] == model.copy("drawer > left tray side").box.low[2] == 40


def test_the_written_gap_is_kept() -> None:
    text = changed(text_of("letter_case"), (GLUED, "glued at front, gap 2 at back, running"))
    assert model_of(text).part("runner").length == 268


def test_no_end_floats_that_is_glued() -> None:
    text = changed(text_of("letter_case"), (GLUED, "running"))
    assert model_of(text).part("runner").length == 270
    assert "ends-held-apart" in codes(checked(text))
    assert "ends-held-apart" not in codes(checked_piece("letter_case"))


def test_the_room_above_a_drawer_holds_what_its_sides_swell() -> None:
    # Equation 13-2: 136 x 0.00369 (northern red oak, tangential, Table 13-5) x (11 - 8) = 1.51,
    # and 1.5 on top (B21.3): 3.1 to the tenth above.
    assert room_above(Fraction(136), moving("red oak")) == Fraction(31, 10)


@pytest.mark.parametrize(("high", "told"), [(136, False), (138, True)])
def test_a_drawer_without_room_above_is_told(high: int, told: bool) -> None:
    # The opening is 180 - 40 = 140 high.
    text = changed(text_of("letter_case"), ("136 high", f"{high} high"))
    assert ("drawer-tight-above" in codes(checked(text))) == told


def test_the_rehearsal_knows_a_shoulder_that_does_not_float() -> None:
    play = played(text_of("letter_case"))
    assert not play.faults()
    joints = tuple(
        replace(each, floats=each.floats + 1) if each.floats else each for each in play.goal.joints
    )
    far = replace(play, goal=replace(play.goal, joints=joints))
    assert "its shoulder touches back rail, where it has to float" in far.said()
    assert Reason.FIT in far.reasons()
