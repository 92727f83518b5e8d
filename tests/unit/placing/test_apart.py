"""The piece taken apart: each part stands clear of what it came off, along the way it comes off."""

import pytest

from dryfit import workshop
from dryfit.diagnostics import Source
from dryfit.placing.apart import Apart, taken_apart
from dryfit.placing.model import Model
from dryfit.placing.pulls import WAYS, abreast, around, boxes_of
from dryfit.placing.units_of import units_of

STOOL = """piece Stool
units mm
overall 300 wide, 300 deep, 400 high
timber ash
4 legs, upright, 40 x 40, at corners
2 long rails, across, on edge, 60 x 20, tenon 20 long into legs, up 300
2 short rails, front to back, on edge, 60 x 20, tenon 20 long into legs, up 220
1 seat, flat, 300 x 20, on legs, screws
"""
SIDES = """glue up side: front left leg, back left leg, left short rail
glue up base: side, front right leg, back right leg, right short rail, long rails
"""


def model(text: str) -> Model:
    checked = workshop.check(Source("stool.dryfit", text), None, {})
    assert checked.model is not None, [finding.message for finding in checked.findings]
    return checked.model


@pytest.fixture(scope="module")
def stool() -> tuple[Model, Apart]:
    placed = model(STOOL + SIDES)
    return placed, taken_apart(placed, 50)


def test_each_part_moves_along_the_axis_in_which_its_joint_opens(
    stool: tuple[Model, Apart],
) -> None:
    _, apart = stool
    assert apart.offsets["seat"][:2] == (0, 0)
    assert apart.offsets["seat"][2] == 100  # a top is lifted twice as far
    left, right = apart.offsets["front left leg"], apart.offsets["front right leg"]
    # The legs came off the short rail, front to back; the side comes off the long rails by their
    # tenon and a gap inside a glue-up, half of one outside, and these were moved by one already.
    assert (left[0], right[0]) == (-(20 + 25) - 25, 0)
    assert left[2] == right[2] == 0


def test_what_was_together_stands_apart(stool: tuple[Model, Apart]) -> None:
    placed, apart = stool
    assert apart.pulled
    now = {}
    for part in placed.parts:
        for copy in part.copies:
            bounds = around(boxes_of(part, copy))
            by = apart.offsets[copy.name]
            now[copy.name] = tuple(at + by[index % 3] for index, at in enumerate(bounds))
    for pulled in apart.pulled:
        for one, other, _ in pulled.pairs:
            a, b = now[one], now[other]
            gaps = [max(a[axis] - b[axis + 3], b[axis] - a[axis + 3]) for axis in range(3)]
            assert max(gaps) > 0


def test_glue_ups_are_units_within_units() -> None:
    (base, seat) = units_of(model(STOOL + SIDES))
    assert (base.name, seat.name) == ("base", "seat")
    assert base.parts[0].name == "side"
    assert base.parts[0].copies == ("front left leg", "back left leg", "left short rail")
    assert len(base.copies) == 8


def test_a_glue_up_is_taken_off_as_a_whole_and_then_apart() -> None:
    apart = taken_apart(model(STOOL + SIDES), 50)
    side = next(row for row in apart.pulled if len(row.copies) == 3)
    assert set(side.copies) == {"front left leg", "back left leg", "left short rail"}
    assert apart.offsets["left short rail"][1] != apart.offsets["front left leg"][1]


def test_the_same_piece_is_taken_apart_alike() -> None:
    assert taken_apart(model(STOOL), 50) == taken_apart(model(STOOL), 50)


def test_boxes_are_abreast_only_where_one_runs_into_the_other() -> None:
    one, beside, behind = (0, 0, 0, 4, 4, 4), (4, 0, 0, 8, 4, 4), (6, 1, 1, 7, 2, 2)
    assert abreast(one, beside, 0)
    assert not abreast(one, beside, 1)
    assert abreast(one, behind, 0)
    assert len(WAYS) == 6
