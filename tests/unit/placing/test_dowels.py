"""A dowelled rack worked by hand: butted lengths, and holes that stand over one another."""

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.pieces.reading import changed, checked, codes, mm, model_of, text_of
from tests.unit.rehearsal.played import Played, played

from dryfit import workshop
from dryfit.joinery.dowels import length_that_fits
from dryfit.placing.model import Model, Part
from dryfit.quantities import Display
from dryfit.rehearsal.fault import Reason

RACK = text_of("dowelled_rack")


@pytest.fixture(scope="module")
def rack() -> Model:
    return model_of(RACK)


def holes(part: Part, mate: str) -> list[tuple[str, tuple[int, ...]]]:
    """Surface, then along, across and depth of the holes for a mate, in whole mm."""
    return [
        (each.surface, tuple(int(x) for x in (*each.along, *each.across, each.depth)))
        for each in part.features
        if each.mate == mate
    ]


def test_dowels_add_nothing_to_a_length(rack: Model) -> None:
    # 520 over all less two sides of 22; the sides end under the top of 22.
    rail, side = rack.part("rail"), rack.part("side")
    assert (rail.length, side.length) == mm(476, 380)
    assert rail.adds == ()


def test_two_dowels_of_a_third_stand_in_a_rail_of_60(rack: Model) -> None:
    # 22 / 3 is nearest to 8; a quarter of 60 from either edge: 15 and 45.  8 x 40 goes 16 into the
    # side, and 40 + 3 - 16 = 27 into the end.
    assert holes(rack.part("rail"), "side") == [
        ("R", (11, 19, 7, 15, 27)),
        ("R2", (11, 19, 7, 15, 27)),
        ("R", (41, 49, 7, 15, 27)),
        ("R2", (41, 49, 7, 15, 27)),
    ]
    # Rails 40 and 220 above the floor: 55, 85, 235 and 265 from the foot of the side.
    assert holes(rack.part("side"), "rail") == [
        ("B", (51, 59, 116, 124, 16)),
        ("B", (81, 89, 116, 124, 16)),
        ("B", (231, 239, 116, 124, 16)),
        ("B", (261, 269, 116, 124, 16)),
    ]


def test_as_many_as_thick_and_as_long_as_written(rack: Model) -> None:
    # 30 long: 16 into the face of the top, 30 + 3 - 16 = 17 into the ends of the sides.
    top = holes(rack.part("top"), "side")
    assert len(top) == 8
    assert {depth for _, (*_, depth) in top} == {16}
    assert {depth for _, (*_, depth) in holes(rack.part("side"), "top")} == {17}
    assert [(each.size, each.count) for each in rack.hardware if each.item == "dowel"] == [
        ("8 x 40", 8),
        ("8 x 30", 8),
    ]


def test_what_is_usual_is_listed_with_the_line_to_write(rack: Model) -> None:
    (told,) = (each for each in rack.assumptions if "dowels" in each.text)
    assert told.text == "rail into side: 2 dowels 8 thick 40 long"
    assert told.instead is not None
    assert "2 dowels 8 thick 40 long into sides" in told.instead
    again = model_of(changed(RACK, ("dowels into sides", "2 dowels 8 thick 40 long into sides")))
    assert again.part("rail").features[0].depth == rack.part("rail").features[0].depth


@pytest.mark.parametrize(
    "words",
    [
        "2 dowels 12 dia 40 long",
        "2 dowels 8 dia 600 long",
        "6 dowels 8 dia 40 long",
        "dowels 8 dia 12 long",
    ],
)
def test_dowels_without_room_are_refused(words: str) -> None:
    found = checked(changed(RACK, ("dowels into sides", f"{words} into sides")))
    assert codes(found).count("dowels-do-not-fit") == 1


TRAY = """piece Tray
units mm
overall 300 wide, 200 deep, 80 high
timber beech

2 sides, front to back, on edge, 80 x 9, at left and right
2 ends, across, on edge, 80 x {thick}, between sides, at front and back
ends into sides: dowels{sizes}

glue up tray: sides, ends
finish oil, 2 coats
"""


@pytest.mark.parametrize(("thick", "size"), [(9, "4 x 20"), (18, "5 x 25")])
def test_in_thin_sides_the_usual_dowel_gives_way(thick: int, size: str) -> None:
    # TRADE B5: a third of the wood, half at most; in a face no deeper than leaves 6: 9 - 6 = 3.
    # A dowel of 6 would hold there by no more than half of its thickness.
    model = model_of(TRAY.format(thick=thick, sizes=""))
    assert [each.size for each in model.hardware if each.item == "dowel"] == [size]
    assert {depth for _, (*_, depth) in holes(model.part("side"), "end")} == {3}
    told = [each.instead for each in model.assumptions if "dowels" in each.text]
    thin, _, long = size.partition(" x ")
    assert told == [f"ends into sides: 2 dowels {thin} thick {long} long"]
    written = TRAY.format(thick=thick, sizes=" 6 dia")
    assert "dowels-do-not-fit" in codes(checked(written))


def test_between_two_faces_the_usual_length_gives_way() -> None:
    # 8 x 40 where 20 lies on 20: 14 in either, 6 left behind each, 3 for the glue: 25.
    size = length_that_fits(Fraction(40), Fraction(28), Display("mm", Fraction(1)))
    assert size == 25
    assert length_that_fits(Fraction(40), Fraction(43), Display("mm", Fraction(1))) == 40


def test_what_dowels_do_not_take_is_told() -> None:
    found = checked(changed(RACK, ("dowels into sides", "dowels 8 dia 20 deep into sides")))
    assert "joint-size-unused" in codes(found)


@pytest.fixture(scope="module")
def plan() -> Played:
    return played(RACK)


def test_the_plan_passes_its_rehearsal(plan: Played) -> None:
    assert plan.said() == ""


@pytest.mark.parametrize("part", ["rail", "side"])
def test_a_dowel_without_its_hole_stops_the_joint(plan: Played, part: str) -> None:
    said = plan.idle(f"{part} / dowel holes").said()
    assert "dowels, or what takes their place" in said


def test_holes_that_the_notes_do_not_ask_for_are_refused(plan: Played) -> None:
    joints = tuple(replace(joint, loose_pieces=()) for joint in plan.goal.joints)
    bare = replace(plan, goal=replace(plan.goal, joints=joints))
    assert Reason.CUT in bare.reasons()


def test_rails_dowelled_at_both_ends_go_in_before_the_second_side() -> None:
    """With both sides glued as one first, no way in is left for the rails."""
    text = changed(
        RACK,
        ("glue up rack: sides, rails, top", "glue up ends: sides, top\nglue up rack: ends, rails"),
    )
    _, findings = workshop.plan(checked(text), lambda _: None)
    assert "cannot-go-together" in {finding.code for finding in findings}
