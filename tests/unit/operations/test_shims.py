"""Gaps: usual ones by kind of thing, and the spacers that hold them open (TRADE C5.5, K7)."""

from fractions import Fraction

import pytest
from tests.pieces.reading import changed, model_of, text_of
from tests.unit.operations.worked import shipped_shop
from tests.unit.rehearsal.played import played

from dryfit.operations.fitting.shims import stack_for

CASE = text_of("measured_case")


@pytest.mark.parametrize(
    ("gap", "stack"),
    [
        # TRADE K7: playing card about 0.3, card 0.5, veneer 0.6, craft stick 2.
        ("2", (("craft stick", 1),)),
        ("1", (("card", 2),)),
        ("0.8", (("card", 1), ("playing card", 1))),
        ("2.6", (("craft stick", 1), ("veneer", 1))),
        ("4", (("craft stick", 2),)),
        # 1/16 in is 1.5875: veneer and two cards, 1.6, come nearer than three cards.
        ("1.5875", (("veneer", 1), ("card", 2))),
    ],
)
def test_the_fewest_spacers_make_up_a_gap(gap: str, stack: tuple[tuple[str, int], ...]) -> None:
    assert stack_for(Fraction(gap), shipped_shop().shims) == stack


def test_what_no_spacer_makes_up_is_machined() -> None:
    assert stack_for(Fraction("0.15"), shipped_shop().shims) is None
    assert stack_for(Fraction(3), {"brick": Fraction(50)}) is None


def test_the_step_that_hangs_a_door_says_what_to_shim_with() -> None:
    plan = played(CASE).plan
    rows = {op.id: op for step in plan.steps for op in step.operations}
    told = [tuple(detail) for detail in rows["left door / fit"].details]
    assert (
        "Gap ",
        Fraction(2),
        " in height: shim it with 1 craft stick, the same at each place",
    ) in told
    three = " from side to side: shim it with 1 craft stick and 2 cards, the same at each place"
    assert ("Gap ", Fraction(3), three) in told
    one = " from side to side: shim it with 2 cards, the same at each place"
    assert rows["shelf / fit"].details == (("Gap ", Fraction(1), one),)


def test_doors_and_shelves_have_the_gaps_of_their_kind() -> None:
    text = changed(CASE, ("gap 2, 3 between, ", ""), ("gap 1 across, ", ""))
    model = model_of(text)
    # 564 less 2 + 2 + 2 for a pair: 279 each, rails 279 - 100 + 50; the shelf 562; 464 less 4.
    assert model.part("door > rail").length == 229
    assert model.part("shelf").length == 562
    assert model.part("door > stile").length == 460
    told = {each.text: each.instead for each in model.assumptions}
    line = told["the shelf has the usual gap of a shelf across, 1"]
    assert line is not None
    assert line.endswith(", gap 1 across")
    assert "the doors have the usual gap of a door up and down, 2" in told


def test_inches_have_gaps_of_their_own() -> None:
    text = """piece Box
units in
overall 12 wide, 6 deep, 10 high
timber cherry
2 sides, upright, facing side, 6 x 3/4, at left and right
1 top, flat, 6 x 3/4, into sides, housing 1/4, flush top
1 bottom, flat, 6 x 3/4, into sides, housing 1/4, flush bottom
bay = opening between sides and top and bottom
1 door, upright, facing front, 3/4 thick, in bay
bought 2 hinges, for door
glue up case: sides, top, bottom
"""
    door = model_of(text).part("door")
    # 10 - 1 1/2 - 2/16 high, 12 - 1 1/2 - 2/16 wide.
    inch = Fraction(254, 10)
    assert (door.length, door.width) == (Fraction(67, 8) * inch, Fraction(83, 8) * inch)
