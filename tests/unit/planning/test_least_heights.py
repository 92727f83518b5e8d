"""The least height that is printed serves every cut that is made at it, worked by hand."""

from dataclasses import replace
from fractions import Fraction

from tests.unit.operations.worked import boot_bench, operation, shipped_shop
from tests.unit.planning.planned import plan_of

from dryfit.plan.operation import Operation
from dryfit.plan.plan import Step, StepMinutes
from dryfit.plan.setting import Setting
from dryfit.planning.least_heights import with_least_heights
from dryfit.planning.moments import moment


def cut(name: str, at_least: int | None) -> Operation:
    """A cut on the table saw with the blade 53 high, of which it needs `at_least`."""
    least = None if at_least is None else Fraction(at_least)
    height = Setting("height", Fraction(53), above="table", at_least=least)
    return replace(operation(boot_bench(), "slat / width"), id=name, settings=(height,))


def step(number: int, changed: tuple[str, ...], *done: Operation) -> Step:
    now = moment(number, shipped_shop())
    return Step(
        number=number,
        visit=1,
        station="table saw",
        settings=(("fence", None), ("height", done[-1].settings[0])),
        changed=changed,
        operations=done,
        minutes=StepMinutes(0, 0, 0, 1, 0),
        tests=0,
        starts=now,
        ends=now,
        waits_for=(),
    )


def least(*steps: Step) -> list[Fraction | None]:
    rows = [dict(each.settings)["height"] for each in with_least_heights(steps)]
    return [None if row is None else row.at_least for row in rows]


def test_the_thickest_part_of_a_step_counts() -> None:
    # Legs 50 and stretchers 24 thick, ripped in one step: 50 + 3.
    assert least(step(1, ("height",), cut("leg", 53), cut("stretcher", 27))) == [53]


def test_a_later_step_that_leaves_the_height_as_it_is_counts() -> None:
    steps = (step(1, ("height",), cut("stretcher", 27)), step(2, ("fence",), cut("leg", 53)))
    assert least(*steps) == [53, 53]


def test_a_height_that_is_set_anew_begins_anew() -> None:
    steps = (step(1, ("height",), cut("leg", 53)), step(2, ("height",), cut("stretcher", 27)))
    assert least(*steps) == [53, 27]


def test_a_depth_that_has_to_be_exact_allows_no_more() -> None:
    steps = (step(1, ("height",), cut("stretcher", 27)), step(2, (), cut("groove", None)))
    assert least(*steps) == [None, None]


def test_no_cut_of_the_boot_bench_needs_more_than_is_printed() -> None:
    for done in plan_of().steps:
        standing = dict(done.settings).get("height")
        for each in done.operations:
            for setting in each.settings:
                if setting.axis == "height" and setting.at_least is not None:
                    assert standing is not None
                    assert standing.at_least is not None
                    assert setting.at_least <= standing.at_least <= Fraction(standing.value)


def heights(*steps: Step) -> list[Fraction | str | None]:
    rows = [dict(each.settings)["height"] for each in with_least_heights(steps)]
    return [None if row is None else row.value for row in rows]


def test_a_blade_that_is_set_anew_does_not_stand_far_above_its_work() -> None:
    # 53 for the legs; two days later a top of 35 alone: 38, and not 53 once more.
    steps = (
        step(1, ("height",), cut("leg", 53)),
        step(2, ("cutter", "height"), cut("top", 38)),
    )
    assert heights(*steps) == [53, 38]
    lowered = with_least_heights(steps)[1].operations[0].settings[0]
    assert lowered.value == 38


def test_a_few_millimetres_are_not_worth_another_figure() -> None:
    steps = (step(1, ("height",), cut("leg", 53)), step(2, ("cutter", "height"), cut("rail", 43)))
    assert heights(*steps) == [53, 53]


def test_a_height_is_not_lowered_to_one_that_stood_before() -> None:
    # It would be printed as set anew and be the same.
    steps = (step(1, ("height",), cut("leg", 38)), step(2, ("height",), cut("top", 38)))
    assert heights(*steps) == [38, 53]


def test_thin_work_under_a_blade_set_for_thick_work_is_told_why() -> None:
    # 24 mm stretchers at the legs' 53: 29 mm of bare teeth.
    (done,) = with_least_heights((step(1, ("height",), cut("leg", 53), cut("stretcher", 27)),))
    leg, stretcher = done.operations
    assert not any("thicker" in str(detail[0]) for detail in leg.details)
    assert Fraction(27) in stretcher.details[-1]
    assert "keep the guard down" in str(stretcher.details[-1][-1])
