"""Horns: stiles stay longer until their frame is glued (TRADE B3.3: 20 to 25 mm an end)."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.pieces.reading import checked, errors, text_of

from dryfit import workshop
from dryfit.plan.operation import Operation
from dryfit.plan.plan import Plan
from dryfit.rehearsal import rehearse
from dryfit.rehearsing import goal_of
from dryfit.workshop import Checked

TEXT = text_of("horned_frame")


def planned(text: str = TEXT) -> tuple[Checked, Plan]:
    found = checked(text)
    assert not errors(found)
    plan, findings = workshop.plan(found, lambda _: None)
    assert plan is not None, findings
    return found, plan


def operations(plan: Plan) -> dict[str, Operation]:
    return {each.id: each for step in plan.steps for each in step.operations}


@pytest.mark.parametrize(
    "words",
    ["horns 20", "horns 20 at both ends", "horns of 20 at both ends", "with horns of 20 mm"],
)
def test_horns_are_said_in_the_words_of_the_trade(words: str) -> None:
    found = checked(TEXT.replace("horns 20", words))
    assert not errors(found)
    assert found.model is not None
    assert found.model.part("stile").horns == 20


def test_a_stile_is_cut_with_its_horns_and_marked_from_their_ends() -> None:
    # By hand: 640 + 2 x 20 = 680 (TRADE B3.3), and what lies a from the finished end lies
    # a + 20 from the end of the horn.
    found, plan = planned()
    assert found.model is not None
    stile = found.model.part("stile")
    assert stile.length == 640
    assert stile.cut_length == 680
    rows = operations(plan)
    (stop,) = [each for each in rows["stile / length"].settings if each.axis == "stop"]
    assert stop.value == 680
    mortise = next(each for each in stile.features if each.id == "mortise for lower rail")
    (stop,) = [e for e in rows["stile / mortise for lower rail"].settings if e.axis == "stop"]
    assert (stop.value, stop.far) == (mortise.along[0] + 20, mortise.along[1] + 20)


def test_the_horns_are_sawn_off_and_levelled_when_the_glue_holds() -> None:
    _, plan = planned()
    order = list(operations(plan))
    glued, sawn = order.index("door / glue up"), order.index("door / horns")
    assert glued < sawn < order.index("door / level") < order.index("door / sand 120")
    assert operations(plan)["door / level"].tenths == 2 * 2 * 10  # both ends of 2 stiles
    saw = operations(plan)["door / horns"]
    assert {name for work in saw.work for name in work.copies} == {"left stile", "right stile"}
    assert [each for detail in saw.details for each in detail if isinstance(each, Fraction)] == [
        640,
        20,
    ]


def test_the_diagonals_run_from_horn_to_horn() -> None:
    # 420 wide, 640 + 2 x 20 high: the root of 420 squared + 680 squared is 799.2 (Pythagoras).
    _, plan = planned()
    glued = operations(plan)["door / glue up"].glue_up
    assert glued is not None
    assert [round(float(length), 1) for _, length in glued.diagonals] == [799.2]


def test_horns_that_stay_on_or_come_off_before_the_glue_are_found() -> None:
    found, plan = planned()
    assert found.model is not None
    assert found.shop is not None
    goal = goal_of(found.model)
    assert rehearse(plan, goal, found.shop) == ()

    def without(step_operations: tuple[Operation, ...]) -> tuple[Operation, ...]:
        return tuple(each for each in step_operations if each.kind != "horns")

    kept = replace(
        plan, steps=tuple(replace(s, operations=without(s.operations)) for s in plan.steps)
    )
    said = [fault.message for fault in rehearse(kept, goal, found.shop)]
    assert any("height over all is 680 instead of 640" in message for message in said)

    horns = operations(plan)["door / horns"]
    early = []
    for step in kept.steps:
        rows = step.operations
        if any(each.kind == "dry fit" for each in rows):
            rows = (horns, *rows)
        early.append(replace(step, operations=rows))
    said = [
        fault.message for fault in rehearse(replace(plan, steps=tuple(early)), goal, found.shop)
    ]
    assert any("horns are sawn off before it is glued" in message for message in said)


def test_a_mortise_near_the_end_is_offered_a_horn_and_is_content_with_it() -> None:
    text = """piece Frame
overall 400 wide, 40 deep, 500 high
timber ash
2 posts, upright, 40 x 40, at left and right
1 rail, across, on edge, 60 x 20, up 0
rail into posts: tenon 25 long 6 thick 30 wide, 5 from bottom
glue up frame: posts, rail
"""
    found = checked(text)
    (near,) = [each for each in found.findings if each.code == "mortise-near-end"]
    assert "`horns 20`" in str(near.hints)
    again = checked(text.replace("at left and right", "at left and right, horns 20"))
    assert "mortise-near-end" not in [each.code for each in again.findings]
