"""Boxes whose sides slope: what is placed, taken for granted and told at the bench, and refused."""

from fractions import Fraction

import pytest
from tests.pieces.planning import planned
from tests.pieces.reading import changed, checked, errors, model_of

from dryfit.placing.model import Model

NOTES = """
piece Planter surround
units mm, to nearest 1
overall 400 wide, 300 deep, 120 high
timber larch
2 long sides, across, on edge, 120 x 15, at front and back, sloping out 1 in 4
2 short sides, front to back, on edge, 120 x 15, at left and right, sloping out 1 in 4
short sides crossing long sides: mitre
glue up surround: long sides, short sides
"""
LONG = "at front and back, sloping out 1 in 4"
BEVELS = """bevel in long sides: outside bottom edge, 14 degrees
bevel in long sides: inside top edge, 14 degrees
bevel in short sides: outside bottom edge, 14 degrees
bevel in short sides: inside top edge, 14 degrees
glue up surround"""


@pytest.fixture(scope="module")
def surround() -> Model:
    return model_of(NOTES)


def said(notes: str) -> str:
    return "\n".join(f"{each.text} | {each.instead}" for each in model_of(notes).assumptions)


def test_every_mitre_comes_in_as_it_goes_down(surround: Model) -> None:
    for part in surround.parts:
        assert part.slopes_out == Fraction(1, 4)
        assert [dict(each.slopes) for each in part.features] == [{"E": Fraction(1, 4)}] * 2
        assert part.width == 120
        assert part.shoulder_length is None


def test_sizes_are_told_at_the_bottom_and_standing(surround: Model) -> None:
    """400 - 2 * 120 / root 17 = 341.8; with a level lower edge 15 / 4 less of the width counts."""
    words = "\n".join(each.text for each in surround.assumptions)
    assert "at the bottom they stand 342 x 242 apart" in words
    assert "they stand 120 mm high" in words
    assert "the lower edges of the long sides and short sides are left square" in words
    level = said(NOTES.replace("glue up surround", BEVELS))
    # 116.25 / root 17 = 28.195; and 116.417 - 3.638 = 112.779.
    assert "at the bottom they stand 344 x 244 apart" in level
    assert "they stand 113 mm high" in level
    assert "left square" not in level


def test_what_is_left_square_comes_with_the_line_that_makes_it_level() -> None:
    assert "| bevel in long sides and short sides: outside bottom edge, 14.0 degrees" in said(NOTES)


def test_degrees_are_told_as_the_slope_that_they_are_rounded_to() -> None:
    text = NOTES.replace("1 in 4", "14 degrees")
    assert "14 degrees is taken for a slope of 249.328 in 1000, rounded" in said(text)


def test_the_step_tells_the_lines_in_mm_and_the_saw_in_degrees() -> None:
    _, plan, _ = planned(NOTES)
    assert plan is not None
    (mitres,) = {
        op
        for step in plan.steps
        for op in step.operations
        if op.kind == "mitre" and op.part == "long side"
    }
    words = "\n".join(
        "".join(each if isinstance(each, str) else f"{float(each):.3f}" for each in row)
        for row in mitres.details
    )
    assert "29.104 at the corner of F and E, 14.552 at B and E2, 43.656 at B and E" in words
    assert "tilted 43.31 degrees" in words
    assert "turned 13.63 degrees" in words


@pytest.mark.parametrize(
    ("old", "new", "code"),
    [
        (LONG, "at front and back, sloping out 1 in 4 to the sides", "splay-way-unclear"),
        (LONG, "at front and back, sloping out 1 in 5", "splay-unlike"),
        (LONG, "at front and back", "splay-joint"),
        ("crossing long sides: mitre", "crossing long sides: half lap", "splay-joint"),
        ("glue up", "chamfer on long sides: all long edges, 3 wide\nglue up", "splay-joint"),
        (
            "glue up",
            "bevel in long sides: outside bottom edge, 14 degrees\nglue up",
            "splay-unlike",
        ),
        ("glue up", "bevel in long sides: outside bottom edge, 30 degrees\nglue up", "splay-joint"),
        ("glue up", "bevel in long sides: inside bottom edge, 14 degrees\nglue up", "splay-joint"),
        (LONG, "at front and back, sloping out 1 in 1", "splay-too-steep"),
        ("glue up", "bay = opening between long sides\nglue up", "splay-joint"),
        ("glue up", "1 post, upright, 20 x 20, 120 long\nglue up", "splay-in-the-way"),
    ],
)
def test_what_is_not_planned_is_refused(old: str, new: str, code: str) -> None:
    found = {each.code for each in errors(checked(changed(NOTES, (old, new))))}
    assert code in found
