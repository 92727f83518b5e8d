"""Uprights face the way that makes their contacts possible, when no word says how they lie."""

from __future__ import annotations

import pytest
from tests.pieces.reading import changed, checked, errors, model_of

from dryfit.placing.model import Model

BENCH = """piece Boot bench
units mm
overall 900 wide, 350 deep, 450 high
timber beech
2 ends, upright, 350 x 25, at left and right, set in 60
1 seat, flat, 25 thick, glued from 3
1 shelf, flat, 20 thick, between ends, up 120, housing 8
seat onto ends: screws
glue up body: ends, shelf
"""

STOOL = """piece Garden stool
units mm
overall 400 wide, 320 deep, 430 high
timber oak
4 posts, upright, 60 x 30, at corners, set in 20 across
2 foot bars, front to back, 60 x 30, up 80
2 top bars, front to back, 60 x 30
posts crossing foot bars: half lap
posts crossing top bars: half lap
1 seat, flat, 20 thick
seat onto posts and top bars: screws
glue up 2 leg frames: 2 posts, 1 top bar, 1 foot bar
"""


def thickness_axis(model: Model, part: str) -> int:
    """The axis of the piece along which the part is thin."""
    return model.part(part).copies[0].frame.axes[2][0]


def assumed(model: Model, part: str) -> list[str]:
    return [each.text for each in model.assumptions if each.text.startswith(f"{part}: it faces")]


def test_ends_as_wide_as_the_piece_is_deep_face_the_side() -> None:
    model = model_of(BENCH)
    assert thickness_axis(model, "end") == 0
    # 900 - 2 x 60 - 2 x 25 between the ends, and 8 into each.
    assert model.part("shelf").length == 746
    assert assumed(model, "end") == [
        "end: it faces the side, not facing front, since it is as wide as the piece is deep"
    ]


def test_boards_that_take_a_wider_shelf_in_a_housing_face_the_side() -> None:
    text = changed(
        BENCH, ("upright, 350 x 25", "upright, 320 x 25"), ("flat, 20 thick", "flat, 300 x 20")
    )
    model = model_of(text)
    assert thickness_axis(model, "end") == 0
    assert assumed(model, "end") == [
        "end: it faces the side, not facing front, since the shelf is housed in it"
    ]


def test_lapped_posts_turn_so_that_the_faces_come_flush() -> None:
    model = model_of(STOOL)
    assert thickness_axis(model, "post") == 0
    lap = next(feature for feature in model.part("post").features if feature.role == "lap")
    assert lap.depth == 15
    assert assumed(model, "post") == [
        (
            "post: it faces the side, not facing front, since it is as thick as the foot bars "
            "that it is lapped with"
        )
    ]


def test_posts_lapped_across_keep_facing_the_front() -> None:
    text = changed(
        STOOL,
        ("2 foot bars, front to back", "2 foot bars, across"),
        ("2 top bars, front to back", "2 top bars, across"),
        ("set in 20 across", "set in 20 front to back"),
    )
    assert thickness_axis(model_of(text), "post") == 1


@pytest.mark.parametrize("word", ["facing front", "facing side"])
def test_a_word_on_the_line_wins(word: str) -> None:
    text = changed(STOOL, ("upright, 60 x 30", f"upright, {word}, 60 x 30"))
    model = checked(text).model
    assert model is not None
    assert thickness_axis(model, "post") == (1 if word == "facing front" else 0)
    assert assumed(model, "post") == []


def test_the_offered_line_says_the_same() -> None:
    model = model_of(BENCH)
    instead = next(
        each.instead for each in model.assumptions if each.text.startswith("end: it faces")
    )
    assert instead == "2 ends, upright, 350 x 25, at left and right, set in 60, facing side"
    again = checked(
        changed(
            BENCH, ("at left and right, set in 60", "at left and right, set in 60, facing side")
        )
    )
    assert not errors(again)
