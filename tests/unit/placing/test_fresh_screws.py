"""Screws stand in free wood: beside laps, and clear of one another."""

from __future__ import annotations

from fractions import Fraction
from itertools import combinations

import pytest
from tests.pieces.reading import FILES, changed, checked, model_of, model_of_piece

from dryfit.geometry.box import Box
from dryfit.joinery.screws import screw_for
from dryfit.placing.model import Model

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
4 slats, across, 70 x 22, spread front to back
slats onto posts and top bars: screws
glue up 2 leg frames: 2 posts, 1 top bar, 1 foot bar, cure 1 h
glue up base: leg frames, stretcher, cure 2 h
"""

Hole = tuple[str, str, Box]


def features(model: Model, *roles: str) -> list[Hole]:
    return [
        (copy.name, feature.role, feature.box(copy.box, copy.frame))
        for part in model.parts
        for copy in part.copies
        for feature in part.features
        if feature.role in roles and copy.hand in feature.hands
    ]


def middle(box: Box) -> tuple[float, float]:
    """The middle seen from above: every screw of these pieces is driven downwards."""
    return (float(box.low[0] + box.high[0]) / 2, float(box.low[1] + box.high[1]) / 2)


def test_no_pilot_hole_meets_a_lap() -> None:
    model = model_of(STOOL)
    pilots, laps = features(model, "pilot hole"), features(model, "lap")
    assert len(pilots) >= 12
    for copy, _, hole in pilots:
        for other, _, lap in laps:
            assert copy != other or hole.overlap(lap) is None, (copy, hole, lap)


def test_a_screw_beside_a_lap_stands_in_the_middle_of_what_is_left() -> None:
    # The lap takes 15 of the post's 30: its screw stands 7.5 from either side of the rest.
    model = model_of(STOOL)
    post = model.copy("front left post")
    (hole,) = (box for copy, _, box in features(model, "pilot hole") if copy == post.name)
    (lap, *_) = (box for copy, _, box in features(model, "lap") if copy == post.name)
    free = [(post.box.low[0], lap.low[0]), (lap.high[0], post.box.high[0])]
    (low, high) = next(each for each in free if each[0] < each[1])
    assert middle(hole)[0] == (low + high) / 2


def test_holes_in_one_slat_stand_three_diameters_apart() -> None:
    model = model_of(STOOL)
    by_copy: dict[str, list[Box]] = {}
    for copy, _, hole in features(model, "screw hole"):
        by_copy.setdefault(copy, []).append(hole)
    pairs = [pair for holes in by_copy.values() for pair in combinations(holes, 2)]
    assert pairs
    for one, two in pairs:
        (x, y), (other_x, other_y) = middle(one), middle(two)
        assert max(abs(x - other_x), abs(y - other_y)) >= 12


def test_the_screws_to_buy_are_those_that_are_drilled_for() -> None:
    model = model_of(STOOL)
    screws = [item.count for item in model.hardware if "screw" in item.item]
    assert sum(screws) == len(features(model, "pilot hole"))


def test_mirrored_copies_have_mirrored_screws() -> None:
    model = model_of(STOOL)
    own = {copy: middle(box) for copy, _, box in features(model, "pilot hole") if "post" in copy}
    left, right = own["front left post"], own["front right post"]
    assert left[1] == right[1]
    assert left[0] + right[0] == 400


def test_where_no_wood_is_left_it_is_said_with_numbers() -> None:
    # Posts of 14 leave 7 beside the lap, under twice a screw's diameter.
    text = changed(
        STOOL,
        ("4 posts, upright, 60 x 30", "4 posts, upright, 60 x 14"),
        ("2 top bars, front to back, 60 x 30", "2 top bars, front to back, 60 x 14"),
    )
    found = checked(text)
    told = [each for each in found.findings if each.code == "screw-in-joint"]
    assert told
    assert all(each.figures and each.hints and each.span for each in told)


@pytest.mark.parametrize("name", FILES)
def test_our_pieces_screws_meet_no_joint(name: str) -> None:
    model = model_of_piece(name)
    cuts = features(model, "mortise", "housing", "groove")
    for copy, _, hole in features(model, "pilot hole"):
        assert all(copy != other or hole.overlap(cut) is None for other, _, cut in cuts)


def test_square_through_a_lap_a_screw_may_go() -> None:
    # The slats of this stand lie over the corners of a lapped frame.
    model = model_of_piece("slat_bench")
    pilots, laps = features(model, "pilot hole"), features(model, "lap")
    assert any(
        copy == other and hole.overlap(lap) for copy, _, hole in pilots for other, _, lap in laps
    )


PLINTH = """piece Plinth frame
units mm
overall 535 wide, 465 deep, 47 high
timber white oak
2 long bars, across, flat, 64 x 30, at front and back, up 0
2 end bars, front to back, flat, 64 x 30, at left and right, up 0
6 slats, across, flat, 32 x 17, onto end bars, spread front to back
end bars crossing long bars: half lap{shows}
slats onto end bars: screws
glue up frame: long bars, end bars
finish wax
"""


def test_over_a_lap_a_screw_holds_to_the_part_whose_wood_lies_there() -> None:
    """Slats 1 and 6 begin 39 from front and back; bars 64 wide are lapped there, 15 deep: end bars
    show below, where the piece is seen from, so that above them the wood is that of long bars.

    The screws reach 13 below the slats, so that nothing of the end bars is in their way.
    """
    model = model_of(PLINTH.format(shows=", end bars show"))
    hosts: dict[str, set[str]] = {f"slat {number}": set() for number in range(1, 7)}
    for joint in model.joints:
        if joint.kind == "screws":
            hosts[joint.guest].add(model.part_of(joint.host).name)
    expected = {f"slat {number}": {"end bar"} for number in range(1, 7)}
    assert hosts == expected | {"slat 1": {"long bar"}, "slat 6": {"long bar"}}
    laps = features(model, "lap")
    for copy, _, hole in features(model, "pilot hole"):
        assert not any(copy == other and lap.contains(hole) for other, _, lap in laps)
    words = "at laps that take the wood of the end bars, the slats are screwed to the long bars"
    assert words in [each.text for each in model.assumptions]


def test_where_the_wood_above_is_that_of_the_named_part_it_takes_the_screws() -> None:
    model = model_of(PLINTH.format(shows=", long bars show"))
    hosts = {model.part_of(joint.host).name for joint in model.joints if joint.kind == "screws"}
    assert hosts == {"end bar"}


def test_a_thin_part_gets_the_shortest_screw_that_holds_where_none_is_sold_between() -> None:
    # 12 thick: 22 to 24 would do, and screws are sold 20 and 25 long.
    screw = screw_for(Fraction(12), Fraction(22))
    assert screw is not None
    assert screw.length == 25
    assert screw_for(Fraction(12), Fraction(10)) is None


def along(model: Model, copy: str, role: str, axis: int) -> list[float]:
    """Where the holes of a copy lie along a direction, from its low side, in order."""
    low = model.copy(copy).box.low[axis]
    holes = [box for name, _, box in features(model, role) if name == copy]
    return sorted(float((box.low[axis] + box.high[axis]) / 2 - low) for box in holes)


def test_beside_mortises_a_screw_stands_near_each_end_of_the_bearer() -> None:
    # The tenons of the leg take 73.5 to 206.5 of the bearer's 280.
    model = model_of_piece("trestle")
    first, _, last = along(model, "left bearer", "pilot hole", 1)
    assert first < 73.5
    assert last > 206.5
    assert first + last == 280


def test_a_long_row_has_a_screw_each_250_at_most() -> None:
    text = """piece Shelf
units mm
overall 1200 wide, 250 deep, 148 high
timber pine
1 board, flat, 1200 x 250 x 28, down 0
1 rail, across, on edge, 1200 x 120 x 20, at back, under board, screws
"""
    row = along(model_of(text), "back rail", "pilot hole", 0)
    assert row == [120, 360, 600, 840, 1080]
    shorter = text.replace("1200", "500")
    assert along(model_of(shorter), "back rail", "pilot hole", 0) == [125, 375]


def test_the_screws_of_the_boot_bench_stay_where_they_are() -> None:
    model = model_of_piece("boot_bench")
    assert along(model, "slat 1", "screw hole", 0) == [15, 925]
    assert len(along(model, "left bottom end rail", "pilot hole", 1)) == 5


def test_screws_of_a_piece_in_inches_say_that_they_are_sized_in_mm() -> None:
    sizes = {each.size for each in model_of_piece("slat_bench").hardware if "screw" in each.item}
    assert sizes == {"4 x 35 mm"}
    metric = {each.size for each in model_of(STOOL).hardware if "screw" in each.item}
    assert not any("mm" in size for size in metric)


@pytest.mark.parametrize(("over", "holes"), [(7, 0), (8, 2)])
def test_a_face_narrower_than_two_screws_takes_none(over: int, holes: int) -> None:
    """A lid lies on two bearers with so much at each side; its screws are 4 thick."""
    found = checked(
        f"""piece Lid
units mm
overall 500 wide, 220 deep, 40 high
timber larch
2 bearers, front to back, flat, 40 x 20, at left and right
1 lid, flat, 20 thick, at top, set in {40 - over} across
lid onto bearers: screws
"""
    )
    bored = features(found.model, "pilot hole") if found.model is not None else []
    assert len({name for name, _, _ in bored}) == holes
    told = [finding.message for finding in found.findings if finding.code == "screw-in-joint"]
    assert bool(told) == (holes == 0)
    assert all(f"touch over {over} x 220: beside the edges" in message for message in told)
