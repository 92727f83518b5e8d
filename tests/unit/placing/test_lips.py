"""Edges of sheets that are lipped or banded: which, how thick, of what; what cannot be covered."""

from fractions import Fraction

import pytest

from dryfit import workshop
from dryfit.diagnostics import Source
from dryfit.placing.lip import added
from dryfit.placing.model import Model, Part

CASE = """piece Shelf case
overall 620 wide, 250 deep, 700 high
timber {timber}
2 sides, upright, facing side, of birch ply, 250 x 18, at left and right{sides}
2 shelves, across, flat, of birch ply, 250 x 18, between sides, up 60 and 400, housing 6{shelves}
glue up case: sides, shelves
finish hard wax oil, 2 coats, 8 h apart
"""
Covered = tuple[str, Fraction, str | None, bool]


def checked(shelves: str, sides: str = "", timber: str = "oak") -> workshop.Checked:
    text = CASE.format(shelves=shelves and f", {shelves}", sides=sides, timber=timber)
    return workshop.check(Source("case", text), None, {})


def model(shelves: str, sides: str = "") -> Model:
    found = checked(shelves, sides)
    assert found.model is not None, found.findings
    return found.model


def part(of: Model, name: str) -> Part:
    return next(each for each in of.parts if each.name == name)


def covered(part: Part) -> list[Covered]:
    return [(lip.surface, lip.thickness, lip.timber, lip.banded) for lip in part.lips]


def test_the_front_of_a_shelf_is_its_edge_and_its_size_counts_the_lip() -> None:
    shelf = part(model("lipped 6 thick of oak at front"), "shelf")
    assert covered(shelf) == [("E", Fraction(6), "oak", False)]
    assert [shelf.length, shelf.width] == [Fraction(596), Fraction(250)]
    assert added(shelf.lips, 1) == 6
    assert added(shelf.lips, 0) == 0


@pytest.mark.parametrize(
    ("words", "surfaces"),
    [
        ("at front and back", "E E2"),
        ("at ends", "R R2"),
        ("at left", "R"),
        ("at right and front", "E R2"),
        ("on long edges", "E E2"),
        ("all round", "E E2 R R2"),
    ],
)
def test_places_name_edges_and_ends(words: str, surfaces: str) -> None:
    shelf = part(model(f"lipped 8 of ash {words}"), "shelf")
    assert covered(shelf) == [(each, Fraction(8), "ash", False) for each in surfaces.split(" ")]


def test_mirrored_sides_are_banded_at_the_same_mark_and_the_frame_of_each_says_where() -> None:
    side = part(model("", ", edge banded 1 thick at front and top"), "side")
    assert covered(side) == [("E", Fraction(1), None, True), ("R2", Fraction(1), None, True)]
    assert {copy.frame.axes[1] for copy in side.copies} == {(1, 1)}


def test_holes_near_one_edge_do_not_turn_the_marks_of_a_lip_round() -> None:
    notes = CASE.format(shelves=", lipped 6 of oak at front", sides="", timber="oak")
    notes = notes.replace("finish", "holes in shelves: top, 8 dia, 8 deep, 40 from front\nfinish")
    found = workshop.check(Source("case", notes), None, {})
    assert found.model is not None
    shelf = part(found.model, "shelf")
    assert [lip.surface for lip in shelf.lips] == ["E"]
    assert all(copy.frame.surface_facing(1, -1) == "E" for copy in shelf.copies)


def test_what_is_left_out_is_listed_with_the_line_that_says_it() -> None:
    said = {each.text: each.instead for each in model("lipped at front").assumptions}
    line = said["the lipping of the shelves is 6 mm thick and of oak"]
    assert line is not None
    assert line.endswith("housing 6, lipped 6 thick of oak at front")
    # The thickness of banding is the shop's.
    said = {each.text: each.instead for each in model("banded at ends").assumptions}
    line = said["the edge banding of the shelves is 0.5 mm thick"]
    assert line is not None
    assert line.endswith("edge banded 0.5 thick at ends")
    assert not any("lipping" in each.text for each in model("lipped 6 of oak at front").assumptions)


@pytest.mark.parametrize(
    ("words", "code"),
    [
        ("lipped 6 of oak at top", "lip-on-face"),
        ("lipped 6 of oak at front, edge banded at front", "said-twice"),
        ("lipped 2 of oak at front", "lip-thickness"),
        ("edge banded 4 thick at front", "lip-thickness"),
        ("lipped 70 of oak at front and back", "lip-too-thick"),
    ],
)
def test_what_cannot_be_covered_so_is_an_error(words: str, code: str) -> None:
    assert code in {each.code for each in checked(words).findings}


@pytest.mark.parametrize(("spare", "size"), [("", "about 1.5 m"), (", 3 spare", "about 3.5 m")])
def test_banding_is_bought_for_spares_too(spare: str, size: str) -> None:
    # By hand: (596 + 2 x 10) x 1.1 is 677.6 for each of 2 shelves, and of 5.
    (bought,) = [
        each
        for each in model(f"edge banded at front{spare}").hardware
        if each.item.startswith("edge banding")
    ]
    assert bought.size.endswith(size)


def test_a_sheet_without_a_solid_wood_asks_what_it_is_lipped_with() -> None:
    found = checked("lipped 6 at front", timber="birch ply")
    (told,) = [each for each in found.findings if each.code == "lip-timber-missing"]
    assert told.hints[0].message == "name it: `lipped 6 thick of oak at front`"
