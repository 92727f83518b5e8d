"""What is glued is fitted as one, ledgers by their heights, and what stands free goes in last."""

from fractions import Fraction

from tests.pieces.reading import changed, model_of, model_of_piece
from tests.unit.operations.worked import listed, operation, piece, rule

from dryfit.plan.operation import Operation, WorkList

FRAME = """piece Plant stand
units mm
overall 640 wide, 300 deep, 520 high
timber larch
1 frame, as lapped frame, 640 wide, 300 deep, 26 high, bar 44, down 18
4 posts, upright, 40 x 40, under frame, at corners, set in 4
2 long rails, across, on edge, 60 x 20, tenon 18 long 8 thick 30 wide into posts, set back 4,
    flush with top of posts
2 side rails, front to back, on edge, 60 x 20, tenon 18 long 8 thick 30 wide into posts, set back 4,
    flush with top of posts
7 slats, across, flat, 36 x 18, onto frame, spread front to back, no gap at ends
frame's frame rails onto long rails: screws
frame's frame ends onto side rails: screws
slats onto frame: screws
glue up 2 sides: 2 posts, 1 side rail
glue up stand: sides, long rails
"""
CASE = """piece Case
units mm
overall 500 wide, 300 deep, 400 high
timber oak
2 sides, upright, facing side, 300 x 20, at left and right
1 bottom, flat, 300 x 18, between sides, housing 6, up 60
1 top, flat, 20 thick, onto sides: screws
glue up case: sides, bottom, top
"""


def fits(work: WorkList) -> list[Operation]:
    return [each for each in work.operations if each.kind == "fit"]


def test_a_glued_frame_is_laid_on_a_glued_stand_by_name_and_screwed_once() -> None:
    work, _ = listed(model_of(FRAME))
    frame, slats = sorted(fits(work), key=lambda each: each.sentence)[1::-1]
    assert slats.sentence == "Lay 7 slats in place with spacers between, and drive the screws"
    assert frame.sentence == "Lay the frame in place on the stand, and drive the screws"
    assert frame.details == (("It stands over by ", Fraction(4), " all round"),)
    assert len(frame.work[0].copies) == 4


def test_ledgers_get_their_heights_and_no_spacers() -> None:
    ledgers = operation(listed(model_of_piece("tray_chest"))[0], "ledger / fit")
    assert "spacers" not in ledgers.sentence
    assert ledgers.details[0][0] == "Lower edges "
    assert [word for word in ledgers.details[0] if not isinstance(word, str)] == [40, 150, 260]
    assert ledgers.check != "gaps equal"


def test_trays_doors_and_loose_shelves_go_into_their_opening_last() -> None:
    work, _ = listed(model_of_piece("tray_chest"))
    tray = operation(work, "tray 1 / fit")
    assert tray.sentence == "Put tray 1 into the bay"
    assert ("ledger / fit", "tray 1 / fit") in {(r.before, r.after) for r in work.rules}
    work, _ = listed(model_of_piece("wall_case"))
    rules = {(rule.before, rule.after) for rule in work.rules}
    assert operation(work, "door / fit").sentence == "Put the 2 doors into the bay"
    assert {("hinge / fit", "door / fit"), ("shelf pin / fit", "shelf / fit")} <= rules


def test_what_is_screwed_in_a_glue_up_is_screwed_there_and_bought() -> None:
    model = model_of(CASE)
    work, _ = listed(model)
    assert fits(work) == []
    details = operation(work, "case / glue up").details
    assert any("between top and side: drive the screws" in str(each[0]) for each in details)
    assert [each.count for each in model.hardware if each.item == "wood screw"] != []


def test_a_single_board_has_no_gaps_to_compare() -> None:
    text = changed(CASE, ("glue up case: sides, bottom, top", "glue up case: sides, bottom"))
    top = operation(listed(model_of(text))[0], "top / fit")
    assert top.sentence == "Lay the top in place on the sides, and drive the screws"
    assert top.check != "gaps equal"


def test_wedges_of_a_dry_tenon_have_their_kerfs_and_are_driven() -> None:
    beam = operation(listed(model_of_piece("trestle"))[0], "beam / fit")
    said = " ".join(str(word) for detail in beam.details for word in detail)
    assert "Saw 2 kerfs across each tenon of beam" in said
    assert "Drive 4 wedges dry" in said


def test_a_lid_is_laid_on_after_the_last_glue_where_parts_were_painted_before_it() -> None:
    work, _ = listed(piece("linen_chest"))
    assert rule(work, "chest / glue up", "lid > top / fit")


def test_a_drawer_whose_bottom_was_slid_in_goes_into_its_opening_too() -> None:
    work, _ = listed(piece("wall_cabinet"))
    put_in = operation(work, "drawer / fit")
    assert "drawer > drawer front" in put_in.work[0].copies
    assert "drawer > drawer bottom" not in put_in.work[0].copies


def test_a_case_that_buttons_hold_by_its_bottom_is_laid_once_and_whole() -> None:
    # Found by the generator, seed 504: the bottom was laid a second time by itself.
    model = model_of(
        """piece Cabinet on a stand
units mm
overall 465 wide, 310 deep, 765 high
timber oak
4 legs, upright, 280 x 41 x 41, at corners, set in 20, up 0
2 long rails, across, on edge, 78 x 20, tenon 17 long 10 thick 46 wide into legs, set back 4,
  flush with top of legs
2 short rails, front to back, on edge, 78 x 20, tenon 17 long 10 thick 46 wide into legs,
  set back 4, flush with top of legs
1 chest, as case, 465 wide, 310 deep, 485 high, board 19, down 0
chest's bottom onto long rails: buttons
glue up 2 ends: 2 legs, 1 short rail
glue up stand: ends, long rails
"""
    )
    work, _ = listed(model)
    fits = [each.id for each in work.operations if each.kind == "fit"]
    assert fits == ["chest > carcase / fit"]
