"""The place (M18): walls, ceiling, skirting, floor and scribes, each fired and kept quiet."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.pieces.reading import checked

from dryfit.diagnostics import Diagnostic, Severity

CASE = """piece Case
overall {wide} wide, 300 deep, {high} high
timber pine
fixed to the wall
{place}
2 sides, upright, 300 x {board}, facing side, at left and right
2 shelves, flat, 300 x 18, into sides, housing 6, up {foot} and {top}
glue up case: sides, shelves
"""


def found(place: str, wide: int = 600, high: int = 800, foot: int = 0, board: int = 18) -> str:
    """The codes with their messages, of the findings about the place."""
    rows = findings(place, wide, high, foot, board)
    return "\n".join(f"{each.code}: {each.message}" for each in rows)


def findings(
    place: str, wide: int = 600, high: int = 800, foot: int = 0, board: int = 18
) -> list[Diagnostic]:
    text = CASE.format(place=place, wide=wide, high=high, foot=foot, top=high - 18, board=board)
    return [each for each in checked(text).findings if each.rule in ("M18", "M19")]


def test_wider_than_the_place_is_an_error_with_the_difference() -> None:
    (row,) = findings("place 594 to 604 wide")
    assert row.code == "place-too-small"
    assert row.severity is Severity.ERROR
    assert "6 mm too much" in row.message
    assert row.figures["place"] == 594


def test_what_is_scribed_counts() -> None:
    kept = found("place 594 to 600 wide\nscribe 6 at left and right")
    assert kept == (
        "place-kept: the piece is 600 mm wide: between 0 mm and 6 mm is cut away on site at both "
        "sides together"
    )
    assert "8 mm too much" in found("place 580 to 600 wide\nscribe 6 at left and right")


def test_a_scribe_that_leaves_a_gap_at_the_widest() -> None:
    assert "scribe-too-short" in found("place 590 to 604 wide\nscribe 6 at left and right")
    assert "4 mm stays open" in found("place 590 to 604 wide\nscribe 6 at left and right")


@pytest.mark.parametrize(("room", "code"), [(600, "tight"), (603, "tight"), (604, "kept")])
def test_walls_need_some_room(room: int, code: str) -> None:
    assert found(f"place {room} wide").startswith(f"place-{'too-' * (code == 'tight')}{code}")


def test_deeper_than_the_place() -> None:
    assert "the piece is 300 mm deep" in found("place 290 deep")


def test_higher_than_the_ceiling_counts_what_levelling_lifts() -> None:
    assert "10 mm too much" in found("place 900 wide, ceiling 790")
    assert "3 mm too much" in found("place 900 wide, ceiling 805, floor 8 out")
    assert "too-small" not in found("place 900 wide, ceiling 1000, floor 8 out")


@pytest.mark.parametrize(("ceiling", "fires"), [(2022, True), (2023, False)])
def test_what_is_tilted_up_needs_its_diagonal(ceiling: int, fires: bool) -> None:
    told = found(f"place 900 wide, ceiling {ceiling}", high=2000)
    assert ("cannot-stand-up" in told) is fires


def test_what_is_built_in_place_is_not_tilted_up() -> None:
    assert "stand-up" not in found("built in place\nplace 900 wide, ceiling 2010", high=2000)


def test_what_is_carried_in_upright_is_not_tilted_up() -> None:
    way = "place 900 wide, ceiling 2010\nway in 720 wide, 2005 high"
    assert "stand-up" not in found(way, high=2000)
    assert "stand-up" in found(way.replace("2005", "1980"), high=2000)


def test_the_skirting_meets_what_stands_on_the_floor() -> None:
    told = found("place 900 wide, skirting 60 x 15")
    assert "meets sides and shelves at the back: the piece stands 15 mm off the wall" in told
    assert "left" not in told


def test_between_walls_the_skirtings_narrow_the_place() -> None:
    told = found("place 610 wide, skirting 60 x 15")
    assert "at the left and right: between the skirtings are 580 mm" in told


def test_a_notch_for_the_skirting_or_a_scribe_of_its_thickness_is_enough() -> None:
    notched = "scribe 15 at back\nplace 900 wide, skirting 60 x 15"
    assert "skirting" not in found(notched)


def test_what_is_over_between_the_skirtings_is_shared_out_and_serves() -> None:
    """A case of 600 between skirtings of 18 in 610: 600 - 574 = 26 too much, 13 a side."""
    place = "place 610 to 616 wide, skirting 120 x 18\nscribe 18 at back"
    (told,) = [row for row in findings(place) if row.code == "skirting-in-the-way"]
    assert "`scribe 13 mm at left and right`" in told.hints[0].message
    kept = found(f"{place}\nscribe 13 mm at left and right", board=24)
    assert "place-kept: scribed to the skirtings, the piece leaves up to 16 mm open" in kept
    assert "skirting-in-the-way" not in kept
    short = findings(f"{place}\nscribe 9 at left and right", board=24)
    (again,) = [row for row in short if row.code == "skirting-in-the-way"]
    assert "`scribe 13 mm at left and right`" in again.hints[0].message


def test_of_a_skirting_the_larger_figure_is_its_height() -> None:
    assert found("place 900 wide, skirting 15 x 60") == found("place 900 wide, skirting 60 x 15")
    thick = "place 900 wide, skirting 15 high x 60 thick"
    assert "15 mm high and 60 mm thick" in found(thick)


def test_the_floor_is_a_notice_with_how_it_is_done() -> None:
    assert "set the piece level with wedges, up to 8 mm" in found("place 900 wide, floor 8 out")
    assert "only 5 mm may be cut away" in found("place 900 wide, floor 8 out\nscribe 5 at bottom")


def test_nothing_is_left_of_a_side_thinner_than_its_scribe() -> None:
    rows = findings("scribe 30 at left")
    assert [row.code for row in rows] == ["scribe-through"]
    assert rows[0].figures == {"scribe": Fraction(30), "size": Fraction(18)}


def test_a_scribe_stays_out_of_joints() -> None:
    assert "the joint of" in found("scribe 15 at left")
    assert found("scribe 12 at left") == ""


CABINET = """piece Cabinet
overall 400 wide, 180 deep, 620 high
timber cherry
{place}
2 sides, upright, facing side, 180 x 18, at left and right
2 shelves, flat, 180 x 18, into sides, housing 6, up 0 and 602
bay = opening between sides and shelves
1 door, upright, 18 thick, in bay, gap 2, 0 from front
door to {side} side: 2 hinges, 50 long
{pull}
glue up case: sides, shelves
"""


def doors(
    place: str, side: str = "left", pull: str = "bought 1 knob, for door"
) -> list[Diagnostic]:
    text = CABINET.format(place=place, side=side, pull=pull)
    return [each for each in checked(text).findings if each.rule == "H34"]


@pytest.mark.parametrize(("wide", "fires"), [(439, True), (440, False)])
@pytest.mark.parametrize("side", ["left", "right"])
def test_a_pull_meets_the_wall_beside_the_hinges(wide: int, fires: bool, side: str) -> None:
    # The door begins 18 + 2 inside the case; half of what the place is wider stays at each side.
    found = doors(f"place {wide} wide", side)
    assert [each.code for each in found] == ["door-meets-wall"] * fires
    if fires:
        assert found[0].figures["clear"] == 20 + Fraction(39, 2)
        assert f"from the {side} wall" in found[0].message


def test_a_door_without_a_pull_or_a_place_opens() -> None:
    assert doors("place 410 wide", pull="") == []
    assert doors("place 400 deep") == []


def test_what_is_scribed_brings_the_wall_nearer() -> None:
    (row,) = doors("place 390 to 400 wide\nscribe 10 at left")
    assert row.figures["clear"] == 10


def test_a_place_may_be_told_in_several_lines_but_nothing_of_it_twice() -> None:
    told = found("place 900 wide\nplace ceiling 790\nplace skirting 60 x 15, floor 3 out")
    assert "13 mm too much" in told
    assert "skirting" in told
    twice = CASE.format(
        place="place 900 wide\nplace 910 wide", wide=600, high=800, board=18, foot=0, top=782
    )
    rows = [each for each in checked(twice).findings if each.code == "place-twice"]
    assert [each.message for each in rows] == ["the width of the place is given twice"]


def test_what_to_scribe_is_told_in_the_unit_of_the_notes() -> None:
    # `scribe 30` would be thirty inches in notes in inches.
    text = CASE.format(place="place 24 wide", wide=24, high=30, foot=0, top=29, board=1)
    inches = text.replace("piece Case", "piece Case\nunits inches").replace("300", "12")
    inches = inches.replace("flat, 12 x 18", "flat, 12 x 1").replace("housing 6", "housing 1/4")
    (row,) = [each for each in checked(inches).findings if each.code == "place-too-tight"]
    assert '`scribe 1 1/8" at left and right`' in row.hints[0].message
