"""Drawers on wooden runners, worked by hand (TRADE B21, K7)."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.pieces.reading import changed, checked, codes, mm, model_of, model_of_piece, text_of
from tests.unit.rehearsal.played import played

from dryfit.placing.screw_slots import screw_slots
from dryfit.rehearsal.fault import Reason

INCH = Fraction(254, 10)
PLAIN = """piece Drawer
units inches to 1/32
overall 14 wide, 12 deep, 5 3/4 high
timber oak
2 sides, upright, facing side, 12 x 3/4, at left and right, glued from 3
1 bottom, across, flat, 12 x 3/4, housing 1/4 into sides, up 0, glued from 3
2 flanks, front to back, on edge, 12 x 3 7/8 x 1/2, at left and right, set in 25/32 across, up 13/16
2 ends, across, on edge, 3 7/8 x 1/2, into flanks, screws, at front and back
2 runners, on the inside of sides, screws, running in flanks
glue up case: sides, bottom
finish oil, 2 coats
"""


def test_a_runner_is_cut_for_its_groove_in_millimetres() -> None:
    # A side 100 x 12 x 280: groove 12 high and 6 deep, its upper edge at (100 + 12) / 2 = 56, from
    # 20 behind the front to the rear end: 260.  Runner 12 - 0.8 = 11.2 high, 6 + 1 - 0.8 = 6.2
    # thick, 260 - 6 = 254 long.
    model = model_of_piece("bedside_drawer")
    runner = model.part("runner")
    assert (runner.width, runner.thickness, runner.length) == (
        Fraction(112, 10),
        Fraction(62, 10),
        Fraction(254),
    )
    side = model.part("drawer > tray side")
    grooves = [each for each in side.features if each.mate == "runner"]
    for groove in grooves:
        assert groove.depth == 6
        assert groove.across == mm(44, 56)
        assert groove.along[1] - groove.along[0] == 260
    assert {hand for groove in grooves for hand in groove.hands} == {"A", "B"}


def test_a_runner_stands_as_high_as_the_groove_above_the_gap() -> None:
    # Worked in inches as TRADE B21 does: bottom gap 1/16 + groove top 2 3/16 = 2 1/4 above the
    # bottom of the case.  A side 3 7/8 high, its groove 1/2 in the middle: (3 7/8 + 1/2) / 2 =
    # 2 3/16; gap: 13/16 - 3/4 = 1/16.
    model = model_of(PLAIN)
    runner, bottom = model.copy("left runner"), model.copy("bottom")
    assert runner.box.high[2] - bottom.box.high[2] == INCH * 9 / 4
    # Height 1/2 - 1/32; thickness 1/4 + gap 1/32 - 1/32; groove 12 - 3/4, less 1/4.
    part = model.part("runner")
    assert part.width == INCH * 15 / 32
    assert part.thickness == INCH / 4
    assert part.length == INCH * 11


def test_the_front_screw_holds_and_the_rear_one_stands_in_a_slot() -> None:
    model = model_of_piece("bedside_drawer")
    (slots,) = screw_slots(model.parts, model.joints)
    assert slots.passed == "runner"
    runner = model.part("runner")
    copy = runner.copies[0]
    holes = {
        each.id: each.box(copy.box, copy.frame).low[1]
        for each in runner.features
        if each.role == "screw hole"
    }
    assert slots.holes == (max(holes, key=holes.__getitem__),)


def test_runners_get_no_finish_unless_a_line_finishes_them() -> None:
    model = model_of_piece("bedside_drawer")
    assert not any("runner" in name for each in model.coatings for name in each.copies)
    oiled = text_of("bedside_drawer") + "finish runners with oil, 1 coat\n"
    assert any("runner" in name for each in model_of(oiled).coatings for name in each.copies)


def test_what_the_line_says_is_kept_and_the_groove_follows() -> None:
    wide = changed(
        text_of("bedside_drawer"), ("on the inside of sides", "15 wide, on the inside of sides")
    )
    side = model_of(wide).part("drawer > tray side")
    (across,) = {each.across for each in side.features if each.mate == "runner"}
    assert across[1] - across[0] == 15 + Fraction(4, 5)


def test_a_runner_in_the_middle_runs_in_its_guide() -> None:
    # Guide 44 x 12 under the bottom; a runner 20 wide, its groove 20.5 (B21.2: rail + 0.5), 6 deep.
    model = model_of_piece("pencil_drawer")
    (groove,) = (each for each in model.part("drawer > guide").features if each.mate)
    assert groove.across[1] - groove.across[0] == Fraction(41, 2)
    assert groove.depth == 6
    assert model.part("centre runner").width == 20


def test_a_back_that_hangs_in_the_way_of_a_runner_is_told() -> None:
    whole = changed(
        text_of("pencil_drawer"),
        ("notch in back tray end: bottom edge, 48 mm wide, 26 mm deep, centred\n", ""),
    )
    assert "runner-blocked" in codes(checked(whole))


@pytest.mark.parametrize(("count", "told"), [("1 runner", True), ("2 runners", False)])
def test_each_side_has_a_runner_of_its_own(count: str, told: bool) -> None:
    text = text_of("bedside_drawer").replace("2 runners", count)
    assert ("copies-and-hosts" in codes(checked(text))) == told


def test_the_rehearsal_knows_a_groove_that_is_shut_behind() -> None:
    play = played(text_of("bedside_drawer"))
    assert not play.faults()
    shut = play.with_operations(
        lambda row: None if row.id.startswith("drawer > tray side / groove for runner") else row
    )
    assert Reason.FIT in shut.reasons()


def test_wax_comes_last_and_the_drawer_is_tried() -> None:
    play = played(text_of("bedside_drawer"))
    rows = [row for step in play.plan.steps for row in step.operations]
    (last,) = (row for row in rows if row.id == "drawer / fit" or "paste wax" in row.sentence)
    assert rows[-1].id == last.id
    assert "runs in and out without rocking" in (last.check or "")


def test_a_drawer_with_rabbeted_sides_has_room_for_its_runners() -> None:
    """The rabbets for front and back cross the groove: no strip beside it can split off."""
    text = """piece Case
overall 500 wide, 350 deep, 300 high
timber oak
2 sides, upright, facing side, 350 x 18, at left and right
1 top, across, flat, 350 x 18, into sides, housing 6, flush top
1 bottom, across, flat, 350 x 18, into sides, housing 6, flush bottom
bay = opening between sides and top and bottom
1 drawer, as plywood drawer, in bay, gap 1 across, 300 deep, 120 high, 0 from front,
  0 above the bottom of bay
2 runners, front to back, on the inside of sides, screws, running in drawer's drawer sides
glue up case: sides, top, bottom
"""
    assert "runner-groove-close" not in codes(checked(text))
