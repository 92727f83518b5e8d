"""Clamps: enough of them at every moment, and some that open far enough (TRADE C3, A9.4)."""

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.unit.rehearsal.damaged_times import HOUR, MINUTE, Built, built

from dryfit.plan.operation import ClampRow, Held

FRAME = "flat_lap_frame"
GLUE = "frame / glue up"


def with_rows(plan: Built, name: str, *rows: ClampRow) -> Built:
    """The glue-up asks for other clamps."""
    said = plan.operation(name).glue_up
    assert said is not None
    return plan.with_operation(name, glue_up=replace(said, clamps=rows))


def test_two_glue_ups_at_once_need_the_clamps_of_both() -> None:
    """The stool's second side frame is glued while the first is in its one bar."""
    stool = built("step_stool")
    assert stool.faults() == ()
    one = stool.with_clamps(lambda _: 1)
    told = [fault for fault in one.faults() if fault.operation == "side frame 2 / glue up"]
    assert told[0].message.endswith("2 clamps `bar 1200` are in use at once, the shop has 1")
    assert one.reasons() == {"RESOURCES"}


def test_clamps_are_free_again_when_the_glue_is_out_of_clamps() -> None:
    """The end frames of the bench follow one another in the same four C-clamps."""
    bench = built("boot_bench")
    first, second = (bench.plan.step_of(f"end frame {n} / glue up") for n in (1, 2))
    free = first.ends.tenths + HOUR
    assert second.starts.tenths >= free
    too_soon = free - second.starts.tenths - 10 * MINUTE
    assert "RESOURCES" in bench.moved(second.number, too_soon, too_soon).reasons()


def test_clamps_that_the_shop_does_not_have() -> None:
    frame = built(FRAME)
    held = (*frame.operation(GLUE).held[:1], Held("bar 2000", 2, HOUR))
    assert frame.with_operation(GLUE, held=held).reasons() == {"RESOURCES"}


@pytest.mark.parametrize("count", [1, 3])
def test_the_clamps_held_are_those_that_the_rows_ask_for(count: int) -> None:
    frame = built(FRAME)
    small, bars = frame.operation(GLUE).held
    assert bars.count == 2
    other = (small, replace(bars, count=count))
    assert frame.with_operation(GLUE, held=other).reasons() == {"RESOURCES"}


def test_clamps_stay_as_long_as_the_glue_needs() -> None:
    frame = built(FRAME)
    short = tuple(replace(each, lag=20 * MINUTE) for each in frame.operation(GLUE).held)
    assert frame.with_operation(GLUE, held=short).reasons() == {"RESOURCES"}


def test_some_clamp_opens_far_enough() -> None:
    frame = built(FRAME)
    clamps = tuple(replace(each, opens=Fraction(30)) for each in frame.shop.clamps)
    short = replace(frame, shop=replace(frame.shop, clamps=clamps))
    assert short.reasons() == {"RESOURCES"}
    assert "are needed" in short.faults()[0].message


def test_too_few_clamps_in_the_shop_are_all_taken() -> None:
    """The notes are warned of that; the plan does what it can."""
    frame = built(FRAME).with_clamps(lambda count: min(count, 3))
    small, bars = frame.operation(GLUE).held
    lent = (replace(small, count=3), bars)
    assert frame.with_operation(GLUE, held=lent).reasons() <= {"RESOURCES"}
    # Bars open farther than the C-clamps, so one of them takes the place of the missing one.
    helped = (replace(small, count=3), replace(bars, count=3))
    assert frame.with_operation(GLUE, held=helped).faults() == ()


def test_a_glue_up_without_clamps_is_pressed_by_what_the_notes_say() -> None:
    frame = with_rows(built(FRAME), GLUE).with_operation(GLUE, held=())
    assert "nothing presses its joints together" in frame.faults()[0].message
    weighed = tuple(replace(each, pressed=True) for each in frame.goal.assemblies)
    assert replace(frame, goal=replace(frame.goal, assemblies=weighed)).faults() == ()


def test_a_panel_is_pressed_all_along() -> None:
    """At both ends and at most 300 apart (TRADE A9.4), by bars over its width and two cauls."""
    board = built("glued_board")
    said = board.operation("board / glue up").glue_up
    assert said is not None
    (row,) = said.clamps
    held = board.operation("board / glue up").held[0]
    fewer = with_rows(board, "board / glue up", replace(row, count=row.count - 1))
    fewer = fewer.with_operation("board / glue up", held=(replace(held, count=row.count - 1),))
    assert fewer.reasons() == {"RESOURCES"}
    shorter = with_rows(board, "board / glue up", replace(row, length=Fraction(50)))
    assert shorter.reasons() == {"RESOURCES"}


def test_a_bar_spans_what_tenons_pull_together() -> None:
    """The base of the stool is closed from side to side: its width, two cauls and play (C3.2)."""
    stool = built("step_stool")
    said = stool.operation("base / glue up").glue_up
    assert said is not None
    rows = tuple(replace(row, length=Fraction(200)) for row in said.clamps)
    assert with_rows(stool, "base / glue up", *rows).reasons() == {"RESOURCES"}


def test_each_lap_has_a_clamp() -> None:
    frame = built(FRAME)
    small, bars = frame.operation(GLUE).held
    one = with_rows(frame, GLUE, ClampRow(Fraction(60), 3, "over three of four laps"))
    held = (replace(small, count=3),)
    assert one.with_operation(GLUE, held=held).reasons() == {"RESOURCES"}
    assert bars.resource == "bar 1200"


def test_what_a_long_bar_is_missing_for_no_short_clamp_holds() -> None:
    """Two bars for three: the third place stays empty, and the C-clamps are as many as asked."""
    frame = built(FRAME)
    small, bars = frame.operation(GLUE).held
    rows = frame.operation(GLUE).glue_up
    assert rows is not None
    longest = max(rows.clamps, key=lambda row: row.length)
    there = next(clamp for clamp in frame.shop.clamps if clamp.name == bars.resource).count
    wanting = replace(longest, count=there + 1)
    asked = with_rows(frame, GLUE, *(r for r in rows.clamps if r != longest), wanting)
    all_there = (small, replace(bars, count=there))
    alone = replace(
        asked.shop,
        clamps=tuple(c for c in asked.shop.clamps if c.name in {small.resource, bars.resource}),
    )
    lent = replace(asked, shop=alone).with_operation(GLUE, held=all_there)
    assert "RESOURCES" not in lent.reasons()
