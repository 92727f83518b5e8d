"""The axes of the machines as they stand, and what an operation lacks of them."""

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.pieces.reading import text_of
from tests.unit.rehearsal.played import Played, played

from dryfit.plan.operation import Operation
from dryfit.plan.plan import Step
from dryfit.plan.setting import Setting
from dryfit.rehearsal.at_machines.standing import Axes, Standing, unmet

PAIR = Setting("stop", Fraction(60), to="both", far=Fraction(300), origin="R")
ONE = Setting("stop", Fraction(60), to="near", far=Fraction(63), origin="R")
OFF = Setting("stop", "off", unit="name")
# 30 mm on a sled of 12: at least 45, at most 12 more (common practice).
THROUGH = Setting("height", Fraction(48), above="table", at_least=Fraction(45))
FENCE = Setting("fence", Fraction(12), to="near", far=Fraction(18), origin="E")


@pytest.fixture(scope="module")
def bench() -> Played:
    return played(text_of("boot_bench"))


def groove(bench: Played, *settings: Setting) -> Operation:
    """A cut that needs these settings and no others."""
    (some, *_) = (op for step in bench.plan.steps for op in step.operations if op.settings)
    return Operation(
        id="rail / groove",
        kind="groove",
        station="router table",
        part=some.part,
        settings=settings,
        work=some.work,
        tenths=some.tenths,
        sentence="Groove it",
    )


@pytest.mark.parametrize(
    ("stands", "wanted", "lacks"),
    [
        ({"fence": FENCE}, (FENCE,), []),
        ({}, (FENCE,), ["fence"]),
        ({"fence": FENCE, "stop": PAIR}, (FENCE,), ["stop"]),
        ({"fence": FENCE, "stop": PAIR}, (FENCE, OFF), ["stop"]),
        ({"fence": FENCE, "stop": PAIR}, (FENCE, PAIR), []),
        ({"fence": FENCE, "stop": ONE}, (FENCE,), []),
        ({"fence": FENCE, "stop": OFF}, (FENCE, OFF), []),
        ({"height": replace(THROUGH, value=Fraction(45))}, (THROUGH,), []),
        ({"height": replace(THROUGH, value=Fraction(44))}, (THROUGH,), ["height"]),
        ({"height": replace(THROUGH, value=Fraction(57))}, (THROUGH,), []),
        ({"height": replace(THROUGH, value=Fraction(58))}, (THROUGH,), ["height"]),
    ],
)
def test_what_an_operation_lacks(
    bench: Played, stands: Axes, wanted: tuple[Setting, ...], lacks: list[str]
) -> None:
    assert [axis for axis, _, _ in unmet(groove(bench, *wanted), stands)] == lacks


def steps_at_the_saw(bench: Played) -> list[Step]:
    return [step for step in bench.plan.steps if step.station == "table saw"]


def test_a_plan_announces_all_that_changes(bench: Played) -> None:
    standing = Standing(bench.shop)
    assert [fault for step in steps_at_the_saw(bench) for fault in standing.change(step)] == []


def test_a_step_that_is_left_out_takes_its_settings_with_it(bench: Played) -> None:
    first, *others = steps_at_the_saw(bench)
    assert "cutter" in first.changed
    standing = Standing(bench.shop)
    told = [fault.message for fault in standing.change(others[0])]
    assert any(message.endswith("but it stands at nothing") for message in told)


def test_a_new_cutter_spoils_the_height(bench: Played) -> None:
    first, *others = steps_at_the_saw(bench)
    at = next(n for n, each in enumerate(others) if {"cutter", "height"} <= set(each.changed))
    standing = Standing(bench.shop)
    for each in (first, *others[:at]):
        assert not list(standing.change(each))
    kept = tuple(axis for axis in others[at].changed if axis != "height")
    told = [fault.message for fault in standing.change(replace(others[at], changed=kept))]
    assert len(told) == 1
    assert told[0].startswith("the height is said to stand at ")
    assert told[0].endswith("but it stands at nothing")
