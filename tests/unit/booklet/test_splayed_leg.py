"""What is drawn of a splayed leg: its sides unrolled, with true figures and none of the design."""

import re

import pytest
from tests.pieces.reading import model_of
from tests.unit.placing.test_splayed import STOOL

from dryfit.booklet.drawing.marking_out import families
from dryfit.booklet.drawing.part_sheet import part_sheets
from dryfit.booklet.labels import Labels, label


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
