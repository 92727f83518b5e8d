"""A face frame with pocket screws worked by hand: butted rails, slanted holes in their backs."""

from math import pi, sin, tan

import pytest
from tests.pieces.reading import changed, checked, codes, mm, model_of, text_of
from tests.unit.rehearsal.played import Played, played

from dryfit.placing.model import Model, Part

FRAME = text_of("pocket_frame")
SLANT = 15 * pi / 180


@pytest.fixture(scope="module")
def frame() -> Model:
    return model_of(FRAME)


def pockets(part: Part) -> list[tuple[str, tuple[float, ...]]]:
    """Surface, then along, across and depth of the pockets."""
    return [
        (each.surface, tuple(float(x) for x in (*each.along, *each.across, each.depth)))
        for each in part.features
    ]


def test_pocket_screws_add_nothing_to_a_length(frame: Model) -> None:
    # 500 over all less two stiles of 60, which is also the way between the stiles' faces.
    rail = frame.part("top rail")
    assert rail.length == 380
    assert rail.adds == ()
    left, right = (frame.copy(f"{side} stile").box for side in ("left", "right"))
    assert right.low[0] - left.high[0] == rail.copies[0].box.extent(0) == 380


def test_two_stand_20_from_the_edges_of_a_rail_of_60(frame: Model) -> None:
    # By trigonometry: from the middle of 19 a bore of 15 degrees reaches the face after
    # 9.5 / tan 15 = 35.5, and half of its mouth is 4.75 / sin 15 = 18.4; together 53.8, which is
    # 54 in whole mm.  Its deepest side is 2 / cos 15 = 2.1 beyond the middle: 2.5.
    assert 53 < 9.5 / tan(SLANT) + 4.75 / sin(SLANT) <= 54
    assert pockets(frame.part("top rail")) == [
        ("B", (0, 54, 15.25, 24.75, 12)),
        ("B", (0, 54, 35.25, 44.75, 12)),
        ("B", (326, 380, 15.25, 24.75, 12)),
        ("B", (326, 380, 35.25, 44.75, 12)),
    ]
    assert frame.part("stile").features == ()


def test_the_slant_is_part_of_the_feature(frame: Model) -> None:
    forms = [each.form for each in frame.part("top rail").features]
    assert {dict(form.sizes)["angle"] for form in forms if form is not None} == {15}
    assert {form.toward for form in forms if form is not None} == {"R", "R2"}


def test_they_are_bored_where_they_do_not_show(frame: Model) -> None:
    """The back of what faces the front; the inside of an apron."""
    rail = frame.part("top rail")
    feature = rail.features[0]
    box = feature.box(rail.copies[0].box, rail.copies[0].frame)
    assert (box.low[1], box.high[1]) == mm(7, 19)
    told = [each for each in frame.assumptions if "pocket" in each.text]
    assert [each.text for each in told] == [
        "top rail into stile: 2 pocket screws 32 long, bored from the inside face"
    ]
    assert told[0].instead is not None
    again = changed(FRAME, (FRAME.splitlines()[7], told[0].instead))
    assert pockets(model_of(again).part("top rail")) == pockets(rail)
    outside = changed(FRAME, ("pocket screws into", "pocket screws, pockets outside, into"))
    assert {each[0] for each in pockets(model_of(outside).part("top rail"))} == {"F"}


def test_the_screws_are_on_the_list(frame: Model) -> None:
    rows = [each for each in frame.hardware if each.item == "pocket screw"]
    assert [(each.count, each.size) for each in rows] == [(4, "32 long"), (4, "32 long")]


def test_a_top_is_held_from_the_edges_of_its_aprons() -> None:
    text = """piece Stool
units mm, to nearest 1
overall 300 wide, 200 deep, 219 high
timber birch ply
2 sides, upright, facing side, 200 x 19, at left and right
1 rail, across, on edge, 100 x 19, pocket screws into sides, flush top
1 top, flat, 300 x 200 x 19
top onto sides: pocket screws
glue up stool: sides, rail, top
"""
    model = model_of(text)
    side = model.part("side")
    assert [(each.surface, each.mate) for each in side.features] == [("B", "top")] * 3
    # 20 from the edges of 200, and none more than 150 from the next.
    assert [float(sum(each.across) / 2) for each in side.features] == [20, 100, 180]


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ("60 x 19, pocket screws", "60 x 10, pocket screws"),  # too thin for a jig
        ("60 x 19, pocket screws", "60 x 19, 4 pocket screws"),  # 20 apart, 20 from the edges
        ("60 x 19, pocket screws", "60 x 19, pocket screws 20 long"),  # 4 into the stile
        ("60 x 19, pocket screws", "60 x 19, pocket screws 90 long"),  # 72 of 60
        ("60 x 19, pocket screws", "60 x 19, pocket screws, pockets at top,"),
    ],
)
def test_screws_without_room_are_refused(before: str, after: str) -> None:
    assert "pocket-screws-do-not-fit" in codes(checked(changed(FRAME, (before, after))))


def test_pockets_belong_to_pocket_screws() -> None:
    text = changed(FRAME, ("pocket screws into", "dowels, pockets at back, into"))
    assert "detail-not-for-joint" in codes(checked(text))


@pytest.fixture(scope="module")
def plan() -> Played:
    return played(FRAME)


def test_the_plan_passes_its_rehearsal(plan: Played) -> None:
    assert plan.said() == ""


@pytest.mark.parametrize("part", ["top rail", "bottom rail"])
def test_a_rail_without_its_pockets_stops_the_joint(plan: Played, part: str) -> None:
    assert "no pocket leads a screw" in plan.idle(f"{part} / pocket").said()


def test_what_is_kept_dry_is_driven_without_glue() -> None:
    text = changed(FRAME, ("pocket screws into", "pocket screws, dry, into"))
    dry = played(text)
    assert dry.said() == ""
    (glue,) = (op for step in dry.plan.steps for op in step.operations if op.kind == "glue up")
    assert any("with no glue between" in str(row) for row in glue.details)


def test_a_broad_solid_rail_splits_on_them_glued_or_dry() -> None:
    for words in ("4 pocket screws", "4 pocket screws, dry,"):
        text = changed(FRAME, ("75 x 19, 2 pocket screws 32 long", f"250 x 19, {words}"))
        assert "glued-across-grain" in codes(checked(text))


def test_a_hole_in_a_pocket_is_told() -> None:
    hole = "hole in top rail: front, 8 dia, 15 deep, 30 from left, 20 from bottom"
    text = changed(FRAME, ("\n\nglue up", f"\n{hole}\n\nglue up"))
    assert "cut-in-joint" in codes(checked(text))
