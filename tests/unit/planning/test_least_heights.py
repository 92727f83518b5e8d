"""Heights of cuts right through: what the order picks, and the bounds that are printed.

Worked by hand from TRADE 0.5: at least the thickness and 3 mm, 12 more of a sled; and no teeth more
than 15 mm out of the work (common practice), which is 12 above the least.
"""

from dataclasses import replace
from fractions import Fraction

from tests.unit.operations.worked import boot_bench, operation, shipped_shop
from tests.unit.planning.planned import plan_of

from dryfit.order import Entry, Range, solve
from dryfit.plan.operation import Operation, WorkList
from dryfit.plan.plan import Step, StepMinutes
from dryfit.plan.setting import Setting
from dryfit.planning.least_heights import as_used, with_least_heights
from dryfit.planning.moments import moment
from dryfit.planning.problem_of import problem_of
from dryfit.planning.steps import steps_of

Bounds = tuple[Fraction | int | None, Fraction | int | None]


def cut(name: str, at_least: int | None) -> Operation:
    """A cut on the table saw: right through with `at_least`, or exactly 53 high."""
    exact = Setting("height", Fraction(53), above="table")
    height = exact
    if at_least is not None:
        least = Fraction(at_least)
        height = replace(exact, value=least, at_least=least, at_most=least + 12)
    blade = Setting("cutter", "combination blade", unit="name")
    return replace(operation(boot_bench(), "slat / width"), id=name, settings=(blade, height))


def step(number: int, changed: tuple[str, ...], *done: Operation) -> Step:
    now = moment(number, shipped_shop())
    return Step(
        number=number,
        visit=1,
        station="table saw",
        settings=(("fence", None), ("height", done[-1].settings[-1])),
        changed=changed,
        operations=done,
        minutes=StepMinutes(0, 0, 0, 1, 0),
        tests=0,
        starts=now,
        ends=now,
        waits_for=(),
    )


def bounds(*steps: Step) -> list[Bounds]:
    rows = [dict(each.settings)["height"] for each in with_least_heights(steps)]
    return [(None, None) if row is None else (row.at_least, row.at_most) for row in rows]


def test_the_thickest_and_the_thinnest_part_of_a_step_count() -> None:
    # Legs 50 and tops 45 thick, ripped in one step: from 50 + 3 to 45 + 3 + 12.
    assert bounds(step(1, ("height",), cut("leg", 53), cut("top", 48))) == [(53, 60)]


def test_a_later_step_that_leaves_the_height_as_it_is_counts() -> None:
    steps = (step(1, ("height",), cut("top", 48)), step(2, ("fence",), cut("leg", 53)))
    assert bounds(*steps) == [(53, 60), (53, 60)]


def test_a_height_that_is_set_anew_begins_anew() -> None:
    steps = (step(1, ("height",), cut("leg", 53)), step(2, ("height",), cut("stretcher", 27)))
    assert bounds(*steps) == [(53, 65), (27, 39)]


def test_a_depth_that_has_to_be_exact_allows_no_more() -> None:
    steps = (step(1, ("height",), cut("stretcher", 43)), step(2, (), cut("groove", None)))
    assert bounds(*steps) == [(None, None), (None, None)]


def heights(*cuts: Operation) -> list[list[Fraction | str]]:
    """Heights, a row a step, of cuts that have to be done in this order."""
    work = WorkList(cuts, (), ())
    problem = problem_of(work, shipped_shop())
    rows = steps_of(solve(problem, effort=0).schedule, work, shipped_shop())
    return [
        [setting.value for op in row.operations for setting in op.settings if setting.unit == "mm"]
        for row in rows
    ]


def test_one_height_serves_parts_that_differ_by_no_more_than_twelve() -> None:
    assert heights(cut("leg", 53), cut("top", 41)) == [[53, 53]]


def test_a_blade_is_lowered_for_what_is_much_thinner() -> None:
    # Stretchers of 24 at the legs' 53 would leave 29 mm of bare teeth.
    assert sorted(heights(cut("leg", 53), cut("stretcher", 27))) == [[27], [53]]


def test_a_cut_right_through_may_share_the_height_of_a_cut_to_a_depth() -> None:
    # A lap needs exactly 53; what is 45 thick is sawn through by it as well.
    assert heights(cut("lap", None), cut("top", 48)) == [[53, 53]]


def test_settings_take_the_value_that_is_used() -> None:
    done = cut("top", 48)
    value = Range(Fraction(53), Fraction(53), "with combination blade")
    entry = Entry("top", "table saw", 0, 0, 1, (), (("height", value),), 0, 0, 0, 0)
    assert [each.value for each in as_used(done, entry).settings] == ["combination blade", 53]


def test_no_cut_of_the_boot_bench_stands_outside_what_is_printed() -> None:
    for done in plan_of().steps:
        standing = dict(done.settings).get("height")
        for each in done.operations:
            for setting in each.settings:
                if setting.axis == "height" and setting.at_least is not None:
                    assert standing is not None
                    assert standing.value == setting.value
                    assert setting.at_least <= Fraction(setting.value) <= setting.at_least + 12
