"""Which member shows in a lap, and which edge of a part enters its host."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.pieces.reading import changed, checked, codes, errors, model_of

from dryfit.geometry.box import Box
from dryfit.placing.model import Copy, Model

TRIVET = """piece Trivet
units mm
overall 300 wide, 200 deep, 20 high
timber beech
2 bars, across, flat, 300 x 30 x 20, at front and back
2 cross bars, front to back, flat, 200 x 30 x 20, at left and right
cross bars crossing bars: half lap
glue up trivet: bars, cross bars
"""
SIDE_FRAMES = """piece Side frames
units mm
overall 500 wide, 300 deep, 700 high
timber oak
4 stiles, upright, facing side, 50 x 30, at corners
4 rails, front to back, on edge, 50 x 30, at top and bottom and left and right
rails crossing stiles: half lap
glue up 2 frames: 2 stiles, 2 rails
2 ties, across, on edge, 60 x 18, between stiles, up 300, screws, at front and back
"""
CASE = """piece Shelf case
units mm
overall 500 wide, 250 deep, 700 high
timber oak
2 sides, upright, facing side, 250 x 18, at left and right
1 bottom rail, across, on edge, 100 x 20, between sides, housing 6, up 40, 10 from back
1 shelf, across, flat, 20 thick, between sides, housing 6, up 80, 0 from front
shelf into bottom rail: housing 6
glue up all: sides, bottom rail, shelf
"""


PLACES = {
    "left": (0, -1),
    "right": (0, 1),
    "front": (1, -1),
    "back": (1, 1),
    "bottom": (2, -1),
    "top": (2, 1),
}


def cut_from(model: Model, part: str, copy: Copy) -> set[str]:
    """From which sides of the piece the laps of a copy are cut."""
    return {
        word
        for feature in model.part(part).features
        if feature.role == "lap" and copy.hand in feature.hands
        for word, (axis, side) in PLACES.items()
        if copy.frame.surface_facing(axis, side) == feature.surface
    }


def surfaces(model: Model, part: str) -> set[str]:
    """From which sides of the piece the laps of all copies are cut."""
    return {word for copy in model.part(part).copies for word in cut_from(model, part, copy)}


def extent(box: Box, axis: int) -> tuple[Fraction | int, Fraction | int]:
    """Where a box begins and ends on an axis."""
    return box.low[axis], box.high[axis]


def test_the_guest_shows_where_nothing_is_said() -> None:
    model = model_of(TRIVET)
    assert surfaces(model, "cross bar") == {"bottom"}
    assert surfaces(model, "bar") == {"top"}


def test_the_bars_show() -> None:
    model = model_of(changed(TRIVET, ("half lap", "half lap, bars show")))
    assert surfaces(model, "bar") == {"bottom"}
    assert surfaces(model, "cross bar") == {"top"}
    assert not any("where they are lapped" in each.text for each in model.assumptions)


def test_who_shows_where_nothing_is_said_is_listed() -> None:
    texts = [each.text for each in model_of(TRIVET).assumptions]
    assert "where they are lapped, the top shows the cross bars, the bottom the bars" in texts


@pytest.mark.parametrize(("words", "inside"), [("rails show", "left"), ("stiles show", "right")])
def test_a_frame_that_stands_laps_through_its_own_thickness(words: str, inside: str) -> None:
    model = model_of(changed(SIDE_FRAMES, ("half lap", f"half lap, {words}")))
    laps = [joint for joint in model.joints if joint.kind == "half lap"]
    assert len(laps) == 8
    assert {joint.region.extent(0) for joint in laps} == {Fraction(30)}
    # Who shows on the left of the left frame is cut from the right, inside.
    assert cut_from(model, "stile", model.part("stile").copies[0]) == {inside}


def test_the_thicker_shows_only_where_the_other_is_flush_with_its_back() -> None:
    text = changed(
        TRIVET,
        ("300 x 30 x 20, at front and back", "300 x 30 x 20, at front and back, up 0"),
        ("200 x 30 x 20", "200 x 30 x 14"),
        ("half lap", "half lap, bars show"),
    )
    model = model_of(text)
    assert {copy.box.low[2] for copy in model.part("cross bar").copies} == {0}
    assert surfaces(model, "bar") == {"bottom"}
    plain = model_of(changed(text, (", bars show", "")))
    assert {copy.box.high[2] for copy in plain.part("cross bar").copies} == {20}


def test_what_is_not_in_the_lap_cannot_show_in_it() -> None:
    text = changed(
        TRIVET,
        ("cross bars crossing", "1 foot, upright, 30 x 30, up 0, 10 long\ncross bars crossing"),
        ("half lap", "half lap, foot show"),
    )
    assert "shows-neither" in codes(checked(text))


@pytest.mark.parametrize("words", ["shelf into", "shelf back edge into"])
def test_an_edge_enters_and_nothing_is_added_to_the_length(words: str) -> None:
    model = model_of(changed(CASE, ("shelf into", words)))
    (box,) = (copy.box for copy in model.part("shelf").copies)
    # The rail's front face stands 10 + 20 from the back; the shelf goes 6 into it.
    assert extent(box, 1) == (0, 226)
    assert extent(box, 0) == (12, 488)
    (joint,) = (j for j in model.joints if j.kind == "housing" and j.host == "bottom rail")
    assert joint.region.extent(1) == 6


def test_the_named_edge_enters_also_where_the_host_runs_otherwise() -> None:
    text = changed(
        CASE,
        ("1 bottom rail, across, on edge, 100 x 20", "1 post, upright, facing front, 40 x 20"),
        ("between sides, housing 6, up 40, 10 from back", "up 0, 230 from left, 10 from back"),
        ("shelf into bottom rail", "shelf back edge into post"),
        ("sides, bottom rail", "sides, post"),
    )
    model = model_of(text)
    (box,) = (copy.box for copy in model.part("shelf").copies)
    assert extent(box, 1) == (0, 226)


def test_handed_parts_that_are_cut_alike() -> None:
    text = changed(CASE, ("at left and right", "at left and right, handed"))
    # Housings stopped short of the back tell a left side from a right one.
    assert "not-handed" not in codes(checked(text))
    plain = changed(TRIVET, ("at left and right", "at left and right, handed"))
    assert "not-handed" in codes(checked(plain))
    assert not errors(checked(plain))
