"""Lips in the rehearsal: the core grows by each, and what is wrong with one is told."""

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.pieces.lipped import played_with_lips
from tests.unit.rehearsal.played import Played

from dryfit.plan.operation import Operation
from dryfit.plan.plan import Step
from dryfit.plan.setting import Setting
from dryfit.rehearsal.fault import Reason

SIDES = ("side", (("E", 8, "birch"), ("R", 8, "birch")))
BANDED = ("bottom", (("E", 1, None),))


@pytest.fixture(scope="module")
def case() -> Played:
    return played_with_lips(SIDES, BANDED)


def _moved(case: Played, name: str, before: str) -> Played:
    """The plan with an operation alone in a step before that of another one."""
    rows = [(step, row) for step in case.plan.steps for row in step.operations]
    own, row = next(each for each in rows if each[1].id == name)
    steps: list[Step] = []
    for step in case.plan.steps:
        if any(each.id == before for each in step.operations):
            steps.append(replace(own, operations=(row,), starts=step.starts, ends=step.starts))
        kept = tuple(each for each in step.operations if each is not row)
        if kept:
            steps.append(replace(step, operations=kept))
    return replace(case, plan=replace(case.plan, steps=tuple(steps)))


def _set_otherwise(case: Played, name: str, axis: str, value: int) -> Played:
    """The plan with the machine set otherwise in the step of an operation, which asks for it."""

    def other(setting: Setting | None) -> Setting | None:
        return setting and replace(setting, value=Fraction(value))

    def reset(row: Operation) -> Operation:
        return replace(
            row,
            settings=tuple(
                replace(each, value=Fraction(value)) if each.axis == axis else each
                for each in row.settings
            ),
        )

    steps = [
        replace(
            step,
            operations=tuple(reset(row) for row in step.operations),
            settings=tuple((at, other(set_) if at == axis else set_) for at, set_ in step.settings),
        )
        if any(row.id == name for row in step.operations)
        else step
        for step in case.plan.steps
    ]
    return replace(case, plan=replace(case.plan, steps=tuple(steps)))


def test_a_sound_plan_has_no_fault(case: Played) -> None:
    assert case.faults() == ()


def test_a_lip_that_is_left_out_is_missed(case: Played) -> None:
    damaged = case.without("side / lip / edges")
    assert "right side: E is never lipped" in damaged.said()
    assert "right side lip at E is left over" in damaged.said()


def test_banding_that_is_left_out_is_missed(case: Played) -> None:
    assert "bottom: E is never lipped" in case.without("bottom / band").said()


def test_a_lip_that_is_not_trimmed_stands_proud(case: Played) -> None:
    said = case.without("side / trim lip / edges").said()
    assert "its lip at E still stands proud" in said
    assert "its lip at E is never trimmed" in said


def test_strips_over_the_ends_wait_for_the_trim_of_those(case: Played) -> None:
    assert "the lip at R stands past E still" in case.without("side / trim lip / ends").said()


def test_nothing_is_cut_before_the_lip_is_on(case: Played) -> None:
    damaged = _moved(case, "side / housing for shelf", "side / lip / ends")
    assert "E and R is not lipped yet" in damaged.said()
    assert Reason.ORDER in damaged.reasons()


def test_a_core_of_the_finished_size_is_refused(case: Played) -> None:
    damaged = _set_otherwise(case, "side / width", "fence", 300)
    assert "its core is 300 wide when E is lipped" in damaged.said()


@pytest.mark.parametrize(
    ("deed", "axis", "value", "said"),
    [
        ("length", "stop", 400, "the strip is 400 long, and what it covers 500"),
        ("thickness", "thickness", 6, "the strip is 6 thick and should be 8"),
        ("width", "fence", 17, "the strip is 17 wide, and what it covers 18"),
    ],
)
def test_a_strip_of_another_size_is_refused(
    case: Played, deed: str, axis: str, value: int, said: str
) -> None:
    damaged = _set_otherwise(case, f"side edge lip / {deed}", axis, value)
    assert said in damaged.said()
    assert Reason.SIZE in damaged.reasons()


def test_a_strip_that_is_not_made_cannot_be_glued_on(case: Played) -> None:
    damaged = case.with_operations(
        lambda row: None if row.id.startswith("side edge lip / ") else row
    )
    assert "right side lip at E: it is not made yet, or used up" in damaged.said()


def test_a_strip_is_glued_where_it_belongs(case: Played) -> None:
    def of_the_edges(row: Operation) -> Operation:
        if row.id != "side / lip / ends":
            return row
        host = replace(row.work[0], copies=row.work[0].copies[:1])
        return replace(row, work=(host, *row.work[1:]))

    assert "it belongs on right side" in case.with_operations(of_the_edges).said()


def test_a_trim_while_the_glue_is_swollen_is_refused(case: Played) -> None:
    # White glue: levelled after 12 h.
    steps = {row.id: step for step in case.plan.steps for row in step.operations}
    early, trim = steps["side / lip / ends"].ends, steps["side / trim lip / ends"]
    hurried = tuple(
        replace(step, starts=early, ends=early) if step is trim else step
        for step in case.plan.steps
    )
    assert "the glue needs 12 h" in replace(case, plan=replace(case.plan, steps=hurried)).said()
