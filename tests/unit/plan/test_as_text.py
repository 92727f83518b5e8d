from fractions import Fraction
from pathlib import Path

import pytest
from tests.pieces.planning import planned as cached
from tests.pieces.reading import text_of

from dryfit import workshop
from dryfit.booklet.bench import Bench
from dryfit.booklet.labels import label
from dryfit.booklet.settings import settings_view
from dryfit.booklet.sides import sides_of
from dryfit.booklet.text import Say, plain
from dryfit.diagnostics import Source
from dryfit.placing.as_text import parts_table
from dryfit.plan.as_text import steps_table
from dryfit.plan.plan import Plan
from dryfit.workshop import Checked

BENCH = Path(__file__).parents[3] / "examples" / "boot_bench.dryfit"
STOOL = Path(__file__).parents[3] / "examples" / "step_stool.dryfit"


def planned(path: Path) -> tuple[Checked, Plan]:
    checked = workshop.check(Source("piece", path.read_text()), None, {})
    plan, _ = workshop.plan(checked, lambda _: None)
    assert plan is not None
    return checked, plan


def table(checked: Checked, plan: Plan) -> str:
    assert checked.model is not None
    return steps_table(plan, sides_of(plan, checked.model), checked.declared.display)


def test_the_order_of_work_names_every_operation_and_every_change() -> None:
    checked, plan = planned(STOOL)
    lines = table(checked, plan).splitlines()
    for step in plan.steps:
        for operation in step.operations:
            assert any(line.endswith(f"  {operation.id}") for line in lines)
    assert sum("set: " in line for line in lines) == sum(bool(step.changed) for step in plan.steps)


def test_a_distance_says_to_which_side_of_the_cutter_it_is() -> None:
    # A cut right through ends on the near side, and nothing lies beyond it.  Of a lap out to the
    # end the far side of the dado makes the shoulder; a drill is set by its centre: 20 in from
    # the edge with a drill of 5 has its near side at 17.5.
    lines = table(*planned(BENCH))
    assert "stop 340 mm to the NEAR side\n" in lines
    assert "stop 20 mm to the FAR side (near side then at 0 mm)" in lines
    assert "fence 20 mm to the CENTRE (near side then at 17.5 mm)" in lines
    assert "stop 335 mm and 375 mm, the two limits of the cut" in lines


@pytest.mark.parametrize("path", [STOOL, BENCH])
def test_the_figures_of_stop_and_fence_are_those_of_the_booklet(path: Path) -> None:
    checked, plan = planned(path)
    assert checked.model is not None
    assert checked.shop is not None
    bench = Bench(
        checked.model, plan, checked.shop, label(checked.model), Say(checked.declared.display)
    )
    lines = table(checked, plan)
    compared = 0
    for step in plan.steps:
        for box in settings_view(step, bench).change:
            setting = dict(step.settings)[box.axis]
            if setting is None or box.axis not in {"stop", "fence"} or setting.measure:
                continue
            if setting.to == "near":
                said = [plain(detail) for detail in box.details]
                side = next(words.split(" of ")[0] for words in said if words.startswith("to the "))
                assert f"{box.axis} {plain(box.value)} mm {side}" in lines
                compared += 1
    assert compared > 5


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


@pytest.mark.parametrize("name", ["framed_panel", "wall_cabinet"])
def test_a_cut_that_runs_out_at_an_end_shows_both_its_limits(name: str) -> None:
    """A haunch reaches from the end, 0, to its depth: the booklet printed its depth twice."""
    checked, plan, _ = cached(text_of(name))
    assert plan is not None
    assert checked.model is not None
    assert checked.shop is not None
    say = Say(checked.declared.display)
    bench = Bench(checked.model, plan, checked.shop, label(checked.model), say)
    compared = 0
    for step in plan.steps:
        boxes = settings_view(step, bench).change
        for axis, setting in step.settings:
            if setting is None or setting.to != "both" or axis not in step.changed:
                continue
            assert setting.far is not None
            assert isinstance(setting.value, Fraction)
            shown = [plain(box.value) for box in boxes if box.axis == axis]
            assert shown == [plain((say.setting(each),)) for each in (setting.value, setting.far)]
            compared += setting.value == 0
    assert compared
