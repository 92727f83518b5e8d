from pathlib import Path

from dryfit import workshop
from dryfit.diagnostics import Source
from dryfit.placing.as_text import parts_table
from dryfit.plan.as_text import steps_table

STOOL = Path(__file__).parents[3] / "examples" / "step_stool.dryfit"


def test_the_order_of_work_names_every_operation_and_every_change() -> None:
    checked = workshop.check(Source("stool", STOOL.read_text()), None, {})
    plan, _ = workshop.plan(checked, lambda _: None)
    assert plan is not None
    lines = steps_table(plan, checked.declared.display).splitlines()
    for step in plan.steps:
        for operation in step.operations:
            assert any(line.endswith(f"  {operation.id}") for line in lines)
    assert sum("set: " in line for line in lines) == sum(bool(step.changed) for step in plan.steps)
    assert any("stop 218 mm (far side 221.2 mm)" in line for line in lines)


def test_the_cut_list_shows_the_sum_behind_each_length() -> None:
    checked = workshop.check(Source("stool", STOOL.read_text()), None, {})
    assert checked.model is not None
    table = parts_table(checked.model)
    assert "    length 218 = overall height 240 - thickness of seat 22\n" in table
    assert "    length 350 = between shoulders 310 + tenon at R 20 + tenon at R2 20\n" in table


def test_the_shop_is_taken_for_granted_out_loud() -> None:
    checked = workshop.check(Source("stool", STOOL.read_text()), None, {})
    assert checked.model is not None
    said = {assumption.text: assumption.instead for assumption in checked.model.assumptions}
    assert said["the table saw can mount the dado"] == (
        "in the shop file under [cutter]: dado = false"
    )
    assert "day 1 is a Monday; free is Saturday and Sunday" in said
