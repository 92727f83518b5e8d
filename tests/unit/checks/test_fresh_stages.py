"""Glue-ups: what was left out is named, and what is only screwed is asked about."""

from __future__ import annotations

from tests.pieces.reading import changed, checked, errors

from dryfit.diagnostics import Severity

STOOL = """piece Garden stool
units mm
overall 400 wide, 320 deep, 430 high
timber oak
4 posts, upright, 60 x 30, at corners, set in 20 across
2 top bars, front to back, 60 x 30
2 foot bars, front to back, 60 x 30, up 80
posts crossing top bars: half lap
posts crossing foot bars: half lap
1 stretcher, across, 60 x 30, tenon 20 long 10 thick into foot bars
1 seat, flat, 20 thick
seat onto posts and top bars: screws
glue up 2 leg frames: 2 posts, 1 top bar, 1 foot bar
glue up base: leg frames, stretcher
"""


def test_the_part_that_no_glue_up_names_is_the_cause() -> None:
    (found,) = errors(checked(changed(STOOL, (", 1 foot bar\n", "\n"))))
    assert found.code == "stage-without-joint"
    assert "foot bars" in found.message
    assert found.hints[0].message == "name the foot bars in a glue-up too"


def test_what_is_only_screwed_is_asked_about_where_a_glue_up_names_it() -> None:
    found = checked(changed(STOOL, ("frames, stretcher\n", "frames, stretcher, seat\n")))
    (told,) = [each for each in found.findings if each.code == "screwed-not-glued"]
    assert told.severity is Severity.QUESTION
    assert "the seat is held by screws only" in told.message
    assert "glued-to-nothing" not in {each.code for each in found.findings}


def test_the_stool_as_it_was_has_neither() -> None:
    codes = {each.code for each in checked(STOOL).findings}
    assert not codes & {"stage-without-joint", "screwed-not-glued", "glued-to-nothing"}


PLANING_STOOL = """piece Planing stool
units mm, to nearest 0.5
overall 620 wide, 340 deep, 520 high
timber beech
4 legs, upright, 50 x 50, at corners
2 long aprons, across, 80 x 24, tenon 25 long 8 thick into legs, set back 4
2 short aprons, front to back, 80 x 24, tenon 25 long 8 thick into legs, set back 4
2 end stretchers, front to back, 50 x 24, tenon 25 long 8 thick into legs, up 110
1 middle stretcher, across, 50 x 24, tenon 16 long 8 thick into end stretchers
glue up 2 ends: 2 legs, 1 short apron, 1 end stretcher
"""


def test_a_forgotten_last_glue_up_is_offered_whole_and_serves() -> None:
    told = [each for each in checked(PLANING_STOOL).findings if each.code == "in-no-glue-up"]
    offered = {hint.message for each in told for hint in each.hints}
    line = "glue up frame: ends, long aprons, middle stretcher"
    assert offered == {f"add a line such as `{line}`"}
    assert errors(checked(f"{PLANING_STOOL}{line}\n")) == []


DRAWER_TABLE = """piece Side cupboard
units mm
overall 400 wide, 300 deep, 200 high
timber oak
2 sides, upright, facing side, 300 x 18, at left and right
1 top, flat, across, 300 x 18, between sides, housing 6, flush with top of sides
1 bottom, flat, across, 300 x 18, between sides, housing 6, flush with bottom of sides
1 shelf, flat, across, 300 x 18, between sides, housing 6, up 90
space = opening between sides and bottom and shelf
1 drawer, as dovetailed drawer, 250 deep, in space, gap 2, 0 above the bottom of space
glue up case: sides, top, bottom
"""


def test_a_drawer_is_never_offered_to_be_glued_to_what_it_runs_in() -> None:
    told = [each for each in checked(DRAWER_TABLE).findings if each.code == "in-no-glue-up"]
    assert [hint.message for each in told for hint in each.hints] == [
        "add `shelf` to a glue-up, such as `glue up case: ..., shelf`"
    ]
    without = changed(DRAWER_TABLE, ("glue up case: sides, top, bottom\n", ""))
    told = [each for each in checked(without).findings if each.code == "in-no-glue-up"]
    offered = {hint.message for each in told for hint in each.hints}
    line = "glue up frame: sides, top, bottom, shelf"
    assert offered == {f"add a line such as `{line}`"}
    assert errors(checked(f"{without}{line}\n")) == []
