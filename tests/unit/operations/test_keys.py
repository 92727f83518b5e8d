"""Keys across glued corners: slots in a cradle, keys glued and trimmed in their own time."""

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.pieces.reading import changed, model_of, text_of
from tests.unit.rehearsal.played import Played, played

from dryfit.plan.operation import Operation
from dryfit.rehearsal.fault import Reason

BOX = text_of("splined_box")


@pytest.fixture(scope="module")
def box() -> Played:
    return played(BOX)


def operation(plan: Played, name: str) -> Operation:
    return next(op for step in plan.plan.steps for op in step.operations if op.id == name)


def test_slots_are_sawn_in_the_cradle_as_deep_as_written(box: Played) -> None:
    """TRADE B12.1: thickness = kerf, 3.2; two over 110 leave (110 - 6.4) / 3 at each side."""
    slots = operation(box, "box / key slots")
    assert slots.station == "table saw"
    settings = {setting.axis: setting.value for setting in slots.settings}
    assert settings["accessory"] == "cradle"
    assert settings["height"] == 10 + 12
    assert settings["fence"] == (110 - Fraction(64, 10)) / 3
    # The other one lies as far from the other edge: one setting, the box turned over.
    assert sum(len(row.copies) for row in slots.work) == 2 * 8


def test_the_mitres_hold_before_they_are_sawn_into_and_the_keys_before_they_are_trimmed(
    box: Played,
) -> None:
    """TRADE B12.1, C4.6: glue mitres, 4 h, splines, 2 h, trim."""
    moments = {op.id: step for step in box.plan.steps for op in step.operations}
    glued, slots = moments["box / glue up"], moments["box / key slots"]
    keys, trim = moments["box / keys"], moments["box / trim keys"]
    assert slots.starts.tenths >= glued.ends.tenths + 4 * 600
    assert keys.number > slots.number
    assert trim.starts.tenths >= keys.ends.tenths + 2 * 600
    assert moments["box / sand 120"].number > trim.number
    assert box.faults() == ()


def test_a_key_of_another_thickness_than_the_blade_is_cut_by_hand() -> None:
    slots = operation(played(changed(BOX, ("3.2 thick", "6 thick"))), "box / key slots")
    assert slots.station == "bench"


def test_three_keys_take_two_places_of_the_fence() -> None:
    """(110 - 9.6) / 4 = 25.1 from either side, and the middle one at 53.4."""
    plan = played(changed(BOX, ("2 splines", "3 splines")))
    places = [
        {s.axis: s.value for s in operation(plan, f"box / key slots / {n}").settings}["fence"]
        for n in (1, 2)
    ]
    assert places == [Fraction(251, 10), Fraction(534, 10)]
    assert plan.faults() == ()


def test_the_keys_are_listed_as_made_of_offcuts() -> None:
    (row,) = (each for each in model_of(BOX).hardware if each.item == "key")
    assert (row.count, row.size) == (8, "3.2 thick")


def test_a_blade_too_high_or_a_key_that_is_never_glued_is_told(box: Played) -> None:
    def deeper(op: Operation) -> Operation:
        if op.kind != "key slot":
            return op
        rows = (replace(s, value=Fraction(30)) if s.axis == "height" else s for s in op.settings)
        return replace(op, settings=tuple(rows))

    steps = tuple(
        replace(
            step,
            settings=tuple(
                (axis, replace(s, value=Fraction(30)) if axis == "height" and s else s)
                for axis, s in step.settings
            ),
        )
        if "key slots" in step.id
        else step
        for step in box.plan.steps
    )
    high = replace(box, plan=replace(box.plan, steps=steps)).with_operations(deeper)
    assert Reason.SETTING in high.reasons()
    assert "keys are glued 0" in box.without("box / keys").said()
    assert "gets no keys" in box.without("key slots", "/ keys", "trim").said()


@pytest.mark.parametrize("word", ["2 splines", "2 keys", "2 keys a corner,", "keys 2 a corner,"])
def test_their_names_in_the_trade(word: str) -> None:
    model = model_of(changed(BOX, ("2 splines", word)))
    assert sum(each.count for each in model.hardware if each.item == "key") == 8
