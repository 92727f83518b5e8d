"""What is drawn of a splayed leg: its sides unrolled, with true figures and none of the design."""

import re

import pytest
from tests.pieces.reading import model_of, text_of
from tests.unit.booklet import planned
from tests.unit.placing.test_splayed import STOOL

from dryfit.booklet.bench import Bench
from dryfit.booklet.drawing.marking_out import families
from dryfit.booklet.drawing.part_sheet import part_sheets
from dryfit.booklet.front import cover
from dryfit.booklet.labels import Labels, label
from dryfit.booklet.text import Say, plain


@pytest.fixture(scope="module")
def labels() -> Labels:
    return label(model_of(STOOL))


def test_a_leg_shows_its_corners_and_its_length_along_the_slope(labels: Labels) -> None:
    # Worked by hand in tests/unit/joinery/test_splay.py.
    model = model_of(STOOL)
    (sheet,) = part_sheets(model.part("leg"), model, labels)
    for figure in ("417.8", "421", "422.6", "425.7", "468"):
        assert f">{figure}<" in sheet.markup, figure
    for upright in ("410", "450"):
        assert f">{upright}<" not in sheet.markup, upright
    assert sheet.markup.count("its sides unrolled") >= 2, "both hands"


def test_legs_are_not_laid_together_to_be_marked_square() -> None:
    assert all(
        part.name != "leg" for family in families(model_of(STOOL).parts) for part, _ in family.rows
    )


def test_the_seat_says_from_which_side_its_holes_are_bored(labels: Labels) -> None:
    model = model_of(STOOL)
    (sheet,) = part_sheets(model.part("seat"), model, labels)
    # The sentence may be broken into several lines.
    told = " ".join(re.sub("<[^>]*>", " ", sheet.markup).split())
    assert "Tenon holes lean: their middles are those on B" in told


def test_the_cover_says_how_far_out_the_feet_stand() -> None:
    # By hand: legs that are true at the seat's underside, 418 up, and lean 8 degrees (0.14054),
    # stand 58.75 farther out at each side, less the 30 that they are set in.
    stool = """piece Stool
units mm
overall 340 wide, 300 deep, 450 high
timber ash
1 seat, flat, 340 x 300 x 32, glued from 2 staves, down 0
4 legs, upright, 34 x 34, at corners, set in 30, up 0, splayed 8 degrees both ways
legs into seat: through wedged round tenon 24
glue up stool: legs, seat
"""
    model = model_of(stool)
    told = plain(
        cover(
            Bench(model, planned.plan(), planned.shop(), label(model), Say(model.display)), None
        ).stands
    )
    assert told == "with its splay: the feet stand 397.5 × 357.5 over all, the most that it takes"
    square = model_of(stool.replace(", splayed 8 degrees both ways", ""))
    assert not cover(
        Bench(square, planned.plan(), planned.shop(), label(square), Say(square.display)), None
    ).stands


def test_holes_across_the_lean_are_drawn_where_they_are_bored() -> None:
    # Worked by hand in tests/unit/placing/test_ladders.py.
    for name, middle, upright in (
        ("stretchered_bench", "170.9", "163"),
        ("railed_bench", "188.1", "180"),
    ):
        model = model_of(text_of(name))
        (sheet,) = part_sheets(model.part("leg"), model, label(model))
        assert sheet.markup.count(f">{middle}<") == 2, "both hands"
        assert f">{upright}<" not in sheet.markup
        assert "shoulder and middles from" in " ".join(re.sub("<[^>]*>", " ", sheet.markup).split())
