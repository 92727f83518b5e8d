"""How many people a step takes: for what is heavy, for glue that sets too fast for one."""

from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest
from tests.e2e.test_one_glue import SLOW
from tests.pieces.planning import planned
from tests.pieces.reading import changed, text_of

from dryfit.booklet.circumstances import circumstances
from dryfit.placing.hands import hands_needed
from dryfit.plan.as_text import steps_table
from dryfit.plan.lending import lent_hands
from dryfit.plan.operation import Operation
from dryfit.plan.plan import Plan
from dryfit.rehearsal import Reason, rehearse
from dryfit.rehearsing import goal_of
from dryfit.workshop import Checked

HEAVY = """piece Heavy table
overall 2000 wide, 700 deep, 740 high
timber ash
4 legs, upright, 90 x 90, at corners, set in 20
2 long rails, across, 110 x 40, tenon 40 long 8 thick into legs, set back 2
2 short rails, front to back, 110 x 40, tenon 40 long 8 thick into legs, set back 2
1 top, flat, 45 thick, glued from 6
top onto legs and long rails: buttons
glue up 2 ends: 2 legs, 1 short rail, two people
glue up base: ends, long rails
finish hard wax oil, 2 coats, 8 h apart
"""
BARS = '[clamp]\n"bar 2400" = { opens = "2400 mm", count = 8 }\n'


def plan_of(text: str, tmp_path: Path, *lines: str) -> tuple[Checked, Plan]:
    file = tmp_path / "shop.toml"
    file.write_text("\n".join(('format = "dryfit-shop/1"', *lines)) + "\n", encoding="utf-8")
    checked, plan, findings = planned(text, file)
    assert plan is not None, findings
    return checked, plan


def needing_more(plan: Plan) -> dict[str, int]:
    """The operations that take more than one, with how many."""
    every = (operation for step in plan.steps for operation in step.operations)
    return {operation.id: operation.hands for operation in every if operation.hands > 1}


def said(operation: Operation) -> str:
    return " ".join(str(word) for detail in operation.details for word in detail)


def test_a_top_of_41_kg_is_fed_and_laid_by_two(tmp_path: Path) -> None:
    """2.0 x 0.7 x 0.045 m at 650 kg/m3 is 41 kg; one lifts 25. Sanding lifts nothing."""
    checked, plan = plan_of(HEAVY, tmp_path, BARS)
    heavy = ["top / straight edge", "top / width", "top / length", "top / fit"]
    glued = ["end 1 / glue up", "end 2 / glue up"]
    assert needing_more(plan) == dict.fromkeys((*glued, *heavy), 2)
    fit = next(op for step in plan.steps for op in step.operations if op.id == "top / fit")
    assert "Takes two people: the top weighs about 41 kg" in said(fit)
    # The shop has one: the steps are planned, and it is told when somebody is needed.
    rows = lent_hands(plan)
    assert [row.deeds for row in rows] == [tuple(glued), tuple(heavy[:3]), (heavy[3],)]
    assert checked.model is not None
    table = steps_table(plan, {}, checked.model.display).splitlines()
    assert sum(line.startswith("call somebody for step") for line in table) == 3
    told = [row for row in circumstances(checked.model, (), plan) if "lend a hand" in row]
    assert told[-1].startswith(f"Ask somebody to lend a hand at step {rows[-1].first} (top: fit)")


def test_where_two_work_nobody_is_called(tmp_path: Path) -> None:
    checked, plan = plan_of(HEAVY, tmp_path, "workers = 2", BARS)
    assert len(needing_more(plan)) == 6
    assert lent_hands(plan) == ()
    assert checked.model is not None
    assert "call somebody" not in steps_table(plan, {}, checked.model.display)


def test_the_rehearsal_wants_the_people_that_the_notes_want(tmp_path: Path) -> None:
    checked, plan = plan_of(HEAVY, tmp_path, BARS)
    assert checked.model is not None
    assert checked.shop is not None
    goal = goal_of(checked.model)
    assert rehearse(plan, goal, checked.shop) == ()
    alone = tuple(
        replace(step, operations=tuple(replace(op, hands=1) for op in step.operations))
        for step in plan.steps
    )
    faults = rehearse(replace(plan, steps=alone), goal, checked.shop)
    assert {fault.reason for fault in faults} == {Reason.RESOURCES}
    assert {fault.operation for fault in faults} == {"end 1 / glue up", "end 2 / glue up"}


def test_the_second_of_the_shop_lends_a_hand_where_one_is_too_slow(tmp_path: Path) -> None:
    _, alone = plan_of(SLOW, tmp_path / "..", "workers = 1")
    _, helped = plan_of(SLOW, tmp_path, "workers = 2")
    one, two = (plan.step_of("case / glue up").operations[0] for plan in (alone, helped))
    assert (one.hands, two.hands) == (1, 2)
    assert one.glue_up is not None
    assert two.glue_up is not None
    assert (one.glue_up.glue, two.glue_up.glue) == ("slow white glue", "white glue")
    assert one.glue_up.closing_tenths > two.glue_up.limit_tenths >= two.glue_up.closing_tenths
    assert "call them before the glue is opened" in said(two)


@pytest.mark.parametrize(
    ("kilograms", "length", "people"), [(25, 1800, 1), (26, 500, 2), (5, 1801, 2), (51, 900, 3)]
)
def test_how_many_it_takes_to_lift(kilograms: int, length: int, people: int) -> None:
    assert hands_needed(Fraction(kilograms), Fraction(length)) == people


def test_a_light_piece_needs_nobody(tmp_path: Path) -> None:
    _, plan = plan_of(changed(text_of("step_stool"), ("# ", "# ")), tmp_path)
    assert needing_more(plan) == {}
