"""The five waits after a glue-up, by the shop's glue and the cure of the notes (TRADE C2, J8)."""

from dataclasses import replace

import pytest
from tests.unit.rehearsal.damaged_times import DAY, HOUR, MINUTE, Built, Value, built

from dryfit.rehearsal.times.glue_lags import glue_for, lag_before, lags_after
from dryfit.shop.shop import Glue

FRAME = "flat_lap_frame"
STOOL = "step_stool"


def with_cure(plan: Built, cure: int | None, glue: str | None = None) -> Built:
    """The same piece with another cure and glue in the notes of every glue-up."""
    rows = tuple(replace(each, cure=cure, glue=glue) for each in plan.goal.assemblies)
    return replace(plan, goal=replace(plan.goal, assemblies=rows))


def lags(plan: Built, name: str) -> dict[str, int]:
    """The waits after a glue-up, in tenths of a minute."""
    return lags_after(plan.operation(name), plan.goal, plan.shop)


def test_without_a_cure_the_glue_decides() -> None:
    """White glue: 60 min in clamps and to the next stage, 12 h, 24 h, 24 h (TRADE C2.4)."""
    assert lags(with_cure(built(FRAME), None), "frame / glue up") == {
        "out of clamps": HOUR,
        "next stage": HOUR,
        "level": 12 * HOUR,
        "machine": 24 * HOUR,
        "finish": 24 * HOUR,
    }


def test_a_cure_stands_for_the_time_in_clamps_and_to_the_next_stage() -> None:
    """The maker's own number wins (TRADE C2.1), shorter or longer."""
    for cure in (45 * MINUTE, 3 * HOUR):
        found = lags(with_cure(built(FRAME), cure), "frame / glue up")
        assert (found["out of clamps"], found["next stage"]) == (cure, cure)
        assert (found["level"], found["machine"]) == (12 * HOUR, 24 * HOUR)


def test_no_wait_is_shorter_than_the_clamps_stay() -> None:
    """What is in clamps cannot be levelled (TRADE H86)."""
    assert set(lags(with_cure(built(FRAME), 30 * HOUR), "frame / glue up").values()) == {30 * HOUR}


def test_the_glue_of_the_notes_is_the_glue() -> None:
    frame = with_cure(built(FRAME), None, "polyurethane")
    assert glue_for(frame.operation("frame / glue up"), frame.goal, frame.shop).name == (
        "polyurethane glue"
    )
    assert lags(frame, "frame / glue up")["out of clamps"] == 4 * HOUR
    assert "WAIT" in frame.reasons()


def with_other_glue(plan: Built, name: str, glue: Glue, closing: int | None = None) -> Built:
    """The plan takes another glue of the shop and prints all that belongs to it."""
    said = plan.operation(name).glue_up
    assert said is not None
    other = replace(
        said,
        glue=glue.name,
        open_tenths=glue.open,
        limit_tenths=glue.close_within,
        closing_tenths=said.closing_tenths if closing is None else closing,
    )
    return plan.with_operation(name, glue_up=other)


def test_a_slower_glue_is_taken_only_where_the_usual_one_sets_too_fast() -> None:
    """White glue allows 10 min from the first glue to the last clamp, the slow one 20."""
    frame = built(FRAME)
    slow = frame.shop.glues["slow white glue"]
    taken = with_other_glue(frame, "frame / glue up", slow)
    assert taken.reasons() == {"WAIT"}
    assert with_other_glue(frame, "frame / glue up", slow, 12 * MINUTE).faults() == ()
    assert with_other_glue(frame, "frame / glue up", slow, 21 * MINUTE).reasons() == {"WAIT"}


def test_a_glue_that_lasts_outdoors_may_be_taken() -> None:
    frame = built(FRAME)
    glues = dict(frame.shop.glues)
    glues["slow white glue"] = replace(glues["slow white glue"], outdoors=True)
    outdoors = replace(frame, shop=replace(frame.shop, glues=glues))
    assert with_other_glue(outdoors, "frame / glue up", glues["slow white glue"]).faults() == ()


@pytest.mark.parametrize(
    ("name", "until", "kinds"),
    [
        (FRAME, "level", {"level", "sand", "ease edges"}),
        (FRAME, "finish", {"coat"}),
        (STOOL, "level", {"sand", "ease edges"}),
        ("glued_board", "machine", {"flatten", "straight edge", "width", "length", "hole"}),
    ],
)
def test_what_comes_before_its_wait_is_over_is_found(
    name: str, until: str, kinds: set[str]
) -> None:
    """A shop whose glue needs ten days for one thing, and a plan that prints this but hurries."""
    plan = built(name).with_lag(until, 10 * DAY)
    found = plan.faults()
    assert {fault.reason.name for fault in found} == {"WAIT"}
    hurried = {plan.operation(fault.operation).kind for fault in found if fault.operation}
    assert hurried <= kinds
    assert len(hurried) > 1 or len(kinds) == 1


def test_the_next_stage_waits_and_its_dry_fit_too() -> None:
    plan = built(STOOL).with_lag("next stage", 10 * DAY)
    late = with_cure(plan, None)
    assert {fault.operation for fault in late.faults() if "next stage" in fault.message} >= {
        "base / glue up"
    }
    assert lag_before("dry fit") == "next stage"


def test_what_is_done_with_a_member_waits_until_it_is_out_of_clamps() -> None:
    """The bench is measured 1 h after the base is glued; with 20 h in the clamps that is early."""
    bench = with_cure(built("boot_bench"), 20 * HOUR)
    early = [each for each in bench.faults() if each.operation == "base length / measure"]
    told = {fault.message: fault.needed for fault in early}
    assert (
        told[
            "base length / measure begins 1 h after base / glue up; the glue needs 20 h before "
            "the base can come out of the clamps"
        ]
        == f"not before day 3, 04:26: 20 h after step {bench.plan.step_of('base / glue up').number}"
    )


def test_a_skipped_cure_is_found() -> None:
    """The frame is levelled the same day, an hour after the glue, and not next morning."""
    frame = built(FRAME)
    level, glue = (frame.plan.step_of(f"frame / {name}") for name in ("level", "glue up"))
    back = glue.ends.tenths + HOUR - level.starts.tenths
    early = frame.moved(level.number, back, back)
    assert early.reasons() == {"WAIT"}
    told = next(fault for fault in early.faults() if fault.operation == "frame / level")
    assert told.step == level.number
    assert "begins 1 h after frame / glue up; the glue needs 12 h" in told.message


@pytest.mark.parametrize("until", ["out of clamps", "next stage", "level", "machine", "finish"])
def test_the_waits_that_the_plan_prints_are_the_glue_s(until: str) -> None:
    frame = built(FRAME)
    said = frame.operation("frame / glue up").glue_up
    assert said is not None
    wrong = tuple(replace(each, tenths=7) if each.until == until else each for each in said.lags)
    named = replace(said, lags=wrong)
    assert frame.with_operation("frame / glue up", glue_up=named).reasons() == {"WAIT"}
    gone = replace(said, lags=tuple(each for each in said.lags if each.until != until))
    assert frame.with_operation("frame / glue up", glue_up=gone).reasons() == {"WAIT"}


@pytest.mark.parametrize("changes", [{"open_tenths": 10}, {"limit_tenths": 900}])
def test_open_time_and_limit_are_the_glue_s(changes: dict[str, Value]) -> None:
    frame = built(FRAME)
    said = frame.operation("frame / glue up").glue_up
    assert said is not None
    wrong = frame.with_operation("frame / glue up", glue_up=replace(said, **changes))
    assert wrong.reasons() == {"WAIT"}


def test_the_rest_in_the_clamps_is_as_long_as_the_cure() -> None:
    frame = built(FRAME)
    number = frame.plan.step_of("frame / glue up").number
    short = frame.with_operation("frame / glue up", after_tenths=10 * MINUTE)
    assert short.with_minutes(number, after=10 * MINUTE).reasons() == {"WAIT"}


def test_a_panel_of_staves_is_a_glue_up_too() -> None:
    """Its staves and the panel are one thing: flattened 24 h after the glue, not before."""
    board = built("glued_board")
    flat, glue = (board.plan.step_of(f"board / {name}") for name in ("flatten", "glue up"))
    assert flat.starts.tenths - glue.ends.tenths >= 24 * HOUR
    assert glue.operations[0].glue_up is not None
    assert glue.operations[0].glue_up.parts[0] == "board stave 1"


def test_a_length_waits_for_its_measurement() -> None:
    bench = built("boot_bench")
    parts = tuple(
        replace(part, waits=(replace(part.waits[0], measurement="gap"),)) if part.waits else part
        for part in bench.goal.parts
    )
    other = replace(bench, goal=replace(bench.goal, parts=parts))
    assert other.reasons() == {"WAIT"}
    assert other.faults()[0].message == "slat / length is done before gap is measured"


def test_what_a_measurement_sets_comes_after_it() -> None:
    bench = built("boot_bench")
    point = bench.operation("base length / measure").measure
    assert point is not None
    early = replace(point, sets=("post / length",))
    wrong = bench.with_operation("base length / measure", measure=early)
    assert wrong.reasons() == {"WAIT"}
