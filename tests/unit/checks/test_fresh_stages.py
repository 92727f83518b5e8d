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
