"""Parts on faces of others lie where a maker would measure them; all numbers worked out by hand."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.pieces.reading import changed, checked, errors, model_of, text_of

from dryfit.diagnostics import Diagnostic
from dryfit.placing.model import Model

BED = """piece Day bed
units mm
overall 900 wide, 400 deep, 450 high
timber beech
4 posts, upright, 40 x 40, at corners
2 low long rails, across, on edge, 70 x 20, into posts, tenon 20, up 100, set back 5
2 end rails, front to back, on edge, 70 x 20, into posts, tenon 20, set back 5, down 20
2 ledgers, 30 x 20, on the inside of low long rails, 15 below the top: screws
glue up base: posts, low long rails, end rails
"""
CASE = """piece Case
units mm
overall 600 wide, 400 deep, 800 high
timber birch ply
2 sides, upright, facing side, 394 x 18, at left and right
2 boards, flat, across, 394 x 18, between sides, housing 6, at top and bottom
6 runners, front to back, 20 x 16, on the inside of sides, up 78.7, 262.6, 446.5: glue
1 back, 6 thick, behind sides and boards: glue
glue up case: sides, boards, runners, back
"""
HEADBOARD = """piece Headboard
units mm
overall 800 wide, 45 deep, 900 high
timber beech
2 stiles, upright, facing front, 60 x 30, at left and right
2 rails, across, on edge, 80 x 30, into stiles, tenon 20, at top and bottom
4 slats, 70 x 15, on the back of stiles, lapping 20, spread up and down: screws
glue up frame: stiles, rails
"""
STAND = """piece Stand
units mm
overall 700 wide, 360 deep, 500 high
timber beech
4 legs, upright, 40 x 40, at corners
2 long rails, across, on edge, 60 x 20, on the outside of legs, 20 below the top: screws
2 short rails, front to back, on edge, 60 x 20, on the inside of legs, 100 above the bottom: screws
"""

Length = Fraction | int
Spans = tuple[tuple[Length, Length], ...]


def spans(model: Model, part: str) -> list[Spans]:
    """The extents of each copy on x, y and z, in the order of the copies."""
    boxes = [copy.box for copy in model.part(part).copies]
    return [tuple((box.low[axis], box.high[axis]) for axis in range(3)) for box in boxes]


def only_error(text: str) -> Diagnostic:
    """The one error of notes that have one."""
    (finding,) = errors(checked(text))
    return finding


def said(model: Model, words: str) -> str | None:
    """What the assumption with these words says to write instead."""
    (assumption,) = (each for each in model.assumptions if words in each.text)
    return assumption.instead


def test_a_ledger_on_the_inside_of_each_rail() -> None:
    model = model_of(BED)
    # The rail's inner face is 5 + 20 from the outside; 15 below its top at 100 + 70.
    front, back = spans(model, "ledger")
    assert front == ((40, 860), (25, 45), (125, 155))
    assert back == ((40, 860), (355, 375), (125, 155))
    assert [copy.name for copy in model.part("ledger").copies] == ["front ledger", "back ledger"]


def test_it_runs_from_shoulder_to_shoulder_and_says_so() -> None:
    instead = said(model_of(BED), "the ledgers run along the low long rails from shoulder")
    assert instead is not None
    assert instead.endswith("15 below the top: screws, 820 long")
    assert spans(model_of(changed(BED, ("screws\nglue", "screws, 820 long\nglue"))), "ledger") == (
        spans(model_of(BED), "ledger")
    )


def test_without_a_height_it_lies_midway_on_the_rail() -> None:
    model = model_of(changed(BED, (", 15 below the top", "")))
    assert spans(model, "ledger")[0][2] == (120, 150)
    instead = said(model, "the ledgers lie midway on the low long rails in height")
    assert instead is not None
    assert instead.endswith(", 20 above the bottom of low long rails")
    line = next(line for line in BED.splitlines() if "ledgers" in line)
    assert spans(model_of(changed(BED, (line, instead))), "ledger") == spans(model, "ledger")
    again = model_of(changed(BED, ("15 below the top", "20 above the bottom")))
    assert spans(again, "ledger") == spans(model, "ledger")


def test_its_ends_are_set_in_from_those_of_what_it_lies_on() -> None:
    model = model_of(changed(BED, ("15 below the top", "15 below the top, set in 30 at ends")))
    assert spans(model, "ledger")[0][0] == (70, 830)


def test_a_host_named_with_its_place_has_one() -> None:
    model = model_of(
        changed(BED, ("2 ledgers", "1 ledger"), ("inside of low", "inside of back low"))
    )
    assert spans(model, "ledger") == [((40, 860), (355, 375), (125, 155))]


def test_three_heights_at_two_sides_are_six_runners() -> None:
    model = model_of(CASE)
    lows = [Fraction(787, 10), Fraction(2626, 10), Fraction(4465, 10)]
    left = [((18, 34), (0, 394), (low, low + 20)) for low in lows]
    right = [((566, 582), (0, 394), (low, low + 20)) for low in lows]
    assert spans(model, "runner") == left + right
    names = [copy.name for copy in model.part("runner").copies]
    assert names[0] == "left runner 1"
    assert names[-1] == "right runner 3"


def test_a_back_behind_the_case_covers_all_that_it_lies_on() -> None:
    # 394 deep sides and a back of 6 fill 400 together: nobody writes where the sides stand.
    model = model_of(CASE)
    assert spans(model, "back") == [((0, 600), (394, 400), (0, 800))]
    assert spans(model, "side")[0][1] == (0, 394)


def test_slats_reach_over_the_near_edges_of_the_stiles() -> None:
    model = model_of(HEADBOARD)
    slats = spans(model, "slat")
    assert {each[0] for each in slats} == {(40, 760)}
    assert {each[1] for each in slats} == {(30, 45)}
    # Equal gaps at the ends too: (900 - 4 x 70) / 5.
    assert [each[2] for each in slats] == [(low, low + 70) for low in (124, 318, 512, 706)]


def test_behind_is_on_the_back() -> None:
    behind = model_of(changed(HEADBOARD, ("on the back of stiles", "behind stiles")))
    assert spans(behind, "slat") == spans(model_of(HEADBOARD), "slat")


def test_outside_and_inside_of_legs_at_four_corners() -> None:
    model = model_of(STAND)
    assert spans(model, "long rail") == [
        ((0, 700), (0, 20), (420, 480)),
        ((0, 700), (340, 360), (420, 480)),
    ]
    # The legs stand within the long rails, and the short ones within the legs.
    assert spans(model, "leg")[0] == ((0, 40), (20, 60), (0, 500))
    assert spans(model, "short rail")[0] == ((40, 60), (20, 340), (100, 160))


@pytest.mark.parametrize(
    ("words", "height"),
    [("15 above short rails", (175, 195)), ("15 below short rails", (65, 85))],
)
def test_above_and_below_a_part(words: str, height: tuple[int, int]) -> None:
    found = checked(f"{STAND}1 shelf, flat, across, 300 x 200 x 20, {words}\n")
    assert found.model is not None
    assert spans(found.model, "shelf")[0][2] == height


def test_a_housing_takes_the_part_into_the_face() -> None:
    model = model_of(changed(CASE, ("446.5: glue", "446.5: housing 5")))
    assert spans(model, "runner")[0][0] == (13, 29)
    housings = [
        joint for joint in model.joints if joint.kind == "housing" and "runner" in joint.guest
    ]
    assert len(housings) == 6
    assert {joint.region.extent(0) for joint in housings} == {Fraction(5)}


def test_screws_and_glue_hold_what_lies_on_a_face() -> None:
    kinds = {joint.guest: joint.kind for joint in model_of(BED).joints if "ledger" in joint.guest}
    assert kinds == {"front ledger": "screws", "back ledger": "screws"}
    glued = [joint for joint in model_of(CASE).joints if joint.guest == "left runner 2"]
    assert [(joint.host, joint.area) for joint in glued] == [("left side", Fraction(394 * 20))]


def test_against_is_the_face_that_looks_at_the_part() -> None:
    model = model_of(
        changed(
            CASE,
            ("6 runners, front to back, 20 x 16, on the inside of sides", CLEATS),
            ("boards, runners", "boards, cleats, runners"),
        )
    )
    assert spans(model, "cleat") == [
        ((18, 34), (0, 394), (200, 220)),
        ((566, 582), (0, 394), (200, 220)),
    ]


DIVIDED = """1 divider, upright, facing side, 394 x 18, into boards, housing 6, 291 from left
1 cleat, front to back, 20 x 16, against divider, up 200: glue
1 back, 6"""
IN_A_BAY = """bay = opening between sides and boards
2 runners, front to back, 20 x 16, on the inside of sides, 40 above the bottom of bay"""
CLEATS = """2 cleats, front to back, 20 x 16, against sides, up 200: glue
6 runners, front to back, 20 x 16, on the inside of sides"""


def test_a_face_that_nothing_decides_is_asked_for() -> None:
    text = changed(
        CASE,
        (
            "1 back, 6",
            DIVIDED,
        ),
        ("case: sides", "case: cleat, divider, sides"),
    )
    found = only_error(text)
    assert found.code == "face-unclear"
    assert found.span is not None
    assert found.span.text().startswith("against divider")
    hint = found.hints[0].message
    assert hint == "write `on the left of divider` or `on the right of divider`"
    model = model_of(changed(text, ("against divider", "on the left of divider")))
    assert spans(model, "cleat") == [((275, 291), (0, 394), (200, 220))]


def test_what_runs_otherwise_than_its_name_suggests_says_so() -> None:
    model = model_of(HEADBOARD)
    texts = [each.text for each in model.assumptions]
    assert "slat: its length runs side to side" in texts
    assert "slat: it stands on edge, since it is put on a face of the stiles" in texts
    assert model.part("slat").thickness == 15


def test_numbered_hosts_have_one_each() -> None:
    text = """piece Rack
overall 900 wide, 400 deep, 60 high
timber oak
3 bearers, front to back, on edge, 60 x 30, up 0, spread across, set in 0 across, 0 from back
3 blocks, upright, 40 long, 30 x 20, on the front of bearers: glue
"""
    found = checked(text)
    assert found.model is not None
    lefts = (0, 435, 870)
    assert spans(found.model, "block") == [((x, x + 30), (0, 20), (10, 50)) for x in lefts]
    narrow = checked(
        changed(text, ("40 long, 30 x 20", "40 long, 10 x 20, 5 from the left of bearers"))
    )
    assert narrow.model is not None
    assert [each[0] for each in spans(narrow.model, "block")] == [(x + 5, x + 15) for x in lefts]


def test_more_copies_than_hosts() -> None:
    found = only_error(changed(BED, ("2 ledgers", "3 ledgers")))
    assert (found.code, found.hints[0].message) == ("copies-and-hosts", "write 2 ledgers")


def test_fewer_copies_than_hosts_names_one_of_them() -> None:
    found = only_error(changed(BED, ("2 ledgers", "1 ledger")))
    assert found.code == "copies-and-hosts"
    assert "such as `front low long rail`" in found.hints[0].message


def test_two_in_one_place_are_told_what_to_add() -> None:
    found = only_error(changed(BED, ("2 ledgers", "4 ledgers")))
    assert found.code == "copies-in-one-place"
    assert found.message == "2 ledgers on each of the low long rails would lie in one place"
    assert "at left and right" in found.hints[0].message
    assert "spread" in found.hints[0].message


def test_lapping_over_one_part_is_a_question_of_edges() -> None:
    found = only_error(changed(BED, ("15 below the top", "15 below the top, lapping 10")))
    assert found.code == "lapping-over-nothing"


def test_a_distance_that_waits_is_not_assumed_away() -> None:
    text = changed(
        CASE,
        (
            "6 runners, front to back, 20 x 16, on the inside of sides, up 78.7, 262.6, 446.5",
            IN_A_BAY,
        ),
    )
    assert spans(model_of(text), "runner")[0] == ((18, 34), (0, 394), (58, 78))


def test_faces_that_look_different_ways_cannot_carry_one_part() -> None:
    strip = "1 strip, 30 x 16, at front, on the inside of left side and bottom board: glue"
    found = errors(checked(f"{CASE}{strip}\n"))
    assert [each.code for each in found] == ["face-unclear"]
    assert found[0].message.endswith("the inside of bottom board look different ways")


BOXES = """piece Two boxes
units mm
overall 600 wide, 400 deep, 300 high
timber birch ply
pattern small box with width, depth, height
2 walls, upright, facing side, depth x 12, at left and right
1 floor, flat, across, depth x 12, between walls, housing 4, up 0
2 ledges, front to back, 20 x 12, on the inside of walls, 15 below the top: glue
glue up shell: walls, floor, ledges
end
2 boxes, as small box, 250 wide, 400 deep, 300 high, at left and right, up 0
4 cleats, front to back, 30 x 10, on the inside of boxes' walls, up 100: glue
"""


def test_inside_a_pattern_the_inside_is_that_of_the_pattern() -> None:
    found = checked(BOXES).model
    assert found is not None
    (ledge,) = (part.name for part in found.parts if part.name.endswith("ledge"))
    # The right wall of the left box looks left, into its own box.
    assert [each[0] for each in spans(found, ledge)] == [
        (12, 24),
        (226, 238),
        (362, 374),
        (576, 588),
    ]


def test_copies_on_parts_of_several_instances_have_one_each() -> None:
    found = checked(BOXES).model
    assert found is not None
    assert sorted(each[0] for each in spans(found, "cleat")) == [
        (12, 22),
        (228, 238),
        (362, 372),
        (578, 588),
    ]


def test_a_joint_that_needs_room_within_the_host_is_refused() -> None:
    found = only_error(changed(CASE, ("446.5: glue", "446.5: groove 6")))
    assert found.code == "joint-not-on-face"
    assert found.span is not None
    assert found.span.text() == "groove 6"
    assert "`inside`" in found.hints[0].message


def test_at_the_sides_of_the_face_that_it_lies_on() -> None:
    blocks = "2 blocks, 60 long, 20 x 15, on the inside of bottom board, at left and right: glue"
    text = changed(
        CASE, ("1 back, 6", f"{blocks}\n1 back, 6"), ("runners, back", "blocks, runners, back")
    )
    model = model_of(changed(text, ("446.5: glue", "446.5, set in 80 at front: glue")))
    # Between the sides, as far as one sees the board, and midway in depth.
    left, right = spans(model, "block")
    assert left == ((18, 78), (187, 207), (18, 33))
    assert right[0] == (522, 582)


def test_lapping_further_than_a_part_is_wide_is_told_with_its_width() -> None:
    found = only_error(changed(text_of("mirror"), ("lapping 25", "lapping 70")))
    assert found.code == "lapping-too-far"
    assert found.figures["laps"] == 70
    assert found.figures["most"] == 60
    assert "over left stile, which is 60 wide" in found.message


LIDDED = """piece Lidded box
overall 400 wide, 300 deep, 200 high
timber oak
2 ends, upright, 300 x 18, facing side, at left and right
2 walls, across, 180 x 18, between ends, at front and back, glued
1 lid, flat, 18 thick, onto ends and walls
2 {names}, front to back, {lie}50 x 20, 200 long, at left and right, set in 60 across, under lid, \
slotted screws
glue up box: ends, walls
"""


@pytest.mark.parametrize(
    ("names", "lie", "high"),
    [("battens", "", 20), ("battens", "on edge, ", 50), ("bearers", "", 50), ("rails", "", 50)],
)
def test_what_lies_under_a_flat_part_lies_flat_unless_it_is_said(
    names: str, lie: str, high: int
) -> None:
    model = checked(LIDDED.format(names=names, lie=lie)).model
    assert model is not None
    (part,) = (part for part in model.parts if part.name == names[:-1])
    assert all(copy.box.extent(2) == high for copy in part.copies)
    texts = [each.text for each in model.assumptions]
    said = "batten: it lies flat, since it is put on a face of the lid"
    assert (said in texts) is (high == 20)
