"""Drawers on their runners, and lids on their pins (TRADE B21.3, B23; figures worked by hand)."""

from fractions import Fraction

from tests.pieces.reading import changed, checked

from dryfit.diagnostics import Diagnostic

DRAWER = """piece Drawer
units mm
overall 300 wide, 300 deep, 140 high
timber oak
2 sides, facing side, 140 x 300 x 18, at left and right
1 bottom, flat, 300 x 18, housing 6 into sides, up 0
1 top, flat, 300 x 18, housing 6 into sides, flush top
2 flanks, front to back, on edge, 80 x 12, at left and right, set in 19 across, up 36
2 ends, across, on edge, 80 x 12, into flanks, dowels, at front and back
2 runners, front to back, 18 thick, 18 high, at left and right,
    set in 18 across, onto bottom, screws, running under flanks
glue up case: sides, bottom, top
glue up drawer: flanks, ends
"""
CHEST = """piece Chest
units mm
timber pine
overall 600 wide, 400 deep, 400 high
4 posts, upright, 45 x 45, at corners
2 long rails, across, on edge, 60 x 25, tenon 20 long into posts, set back 0
2 short rails, front to back, on edge, 60 x 25, tenon 20 long into posts, set back 0
1 lid, flat, 20 thick, onto posts and long rails and short rails, from 3 staves
lid to back long rail: 2 hinges
glue up body: posts, long rails, short rails
"""
OURS = {"runner-bears-little", "drawer-tips", "hinge-pin-inside", "held-by-nothing"}


def told(text: str) -> list[Diagnostic]:
    return [each for each in checked(text).findings if each.code in OURS]


def test_a_drawer_that_stands_on_its_runners_with_a_top_above_is_sound() -> None:
    assert told(DRAWER) == []


def test_a_side_that_bears_by_less_than_half_of_itself_is_told_with_the_wider_runner() -> None:
    # The flank lies from 19 to 31, the runner from 26 on: 5 of 12 bear; 18 + 12 - 5 = 25.
    (found,) = told(changed(DRAWER, ("set in 18 across", "set in 26 across")))
    assert (found.code, found.severity.value) == ("runner-bears-little", "warning")
    assert found.figures["bears"] == 5
    assert "only 5 mm of its 12 mm" in found.message
    assert "25 mm" in found.hints[0].message
    # From 25 on, half of it bears.
    assert told(changed(DRAWER, ("set in 18 across", "set in 25 across"))) == []


def test_a_drawer_far_below_what_is_above_it_tips() -> None:
    # 36 + 60 = 96; the top begins at 122.
    (found,) = told(changed(DRAWER, ("80 x 12", "60 x 12")))
    assert (found.code, found.severity.value) == ("drawer-tips", "notice")


def test_a_runner_between_rails_that_nothing_fastens_is_held_by_nothing() -> None:
    (found,) = told(changed(DRAWER, ("onto bottom, screws, ", "up 18, ")))
    assert (found.code, found.severity.value) == ("held-by-nothing", "error")


def test_a_pin_inside_the_posts_jams_the_lid_and_flush_it_does_not() -> None:
    assert told(CHEST) == []
    # The rails are centred on posts of 45: (45 - 25) / 2 = 10.
    (found,) = told(changed(CHEST, ("posts, set back 0\n2 short", "posts, set back 10\n2 short")))
    assert (found.code, found.severity.value) == ("hinge-pin-inside", "error")
    assert found.figures["inside"] == Fraction(10)
    assert "10 mm inside its back edge" in found.message


def test_a_runner_under_a_drawer_of_a_pattern_is_told_the_name_of_its_sides() -> None:
    # Its figures are no matter: that is told before anything has a place.
    text = """piece Case
units mm
overall 300 wide, 300 deep, 140 high
timber oak
2 sides, facing side, 140 x 300 x 18, at left and right
1 bottom, flat, 300 x 18, housing 6 into sides, up 0
1 top, flat, 300 x 18, housing 6 into sides, flush top
bay = opening between sides and bottom and top
1 drawer, as plywood drawer, 250 deep, in bay, gap 1
2 runners, front to back, 18 thick, 18 high, onto bottom, screws, running under drawer
glue up case: sides, bottom, top
"""
    found = [each for each in checked(text).findings if each.code == "copies-and-hosts"]
    assert len(found) == 1
    assert "drawer's drawer sides" in found[0].hints[0].message
