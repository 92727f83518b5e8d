from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.unit.booklet import fixtures, planned

from dryfit.booklet.bench import Bench
from dryfit.booklet.blocks import Block, blocks
from dryfit.booklet.cautions import for_visit, table
from dryfit.booklet.glueing import glue_view
from dryfit.booklet.labels import LETTERS, label
from dryfit.booklet.settings import SettingsView, settings_view
from dryfit.booklet.text import Say, plain
from dryfit.booklet.titles import title, titles
from dryfit.booklet.view import Booklet, booklet_view
from dryfit.booklet.wording import clock, lag, minutes, roughly
from dryfit.plan.plan import Moment, Step, StepMinutes
from dryfit.plan.reasons import StepReasons
from dryfit.plan.setting import Setting
from dryfit.quantities import Display


@pytest.fixture(scope="module")
def view() -> Booklet:
    return booklet_view(fixtures.model(), planned.plan(), planned.shop(), fixtures.findings())


def bench(display: Display | None = None) -> Bench:
    model = fixtures.model(display)
    say = Say(display or Display())
    return Bench(model, planned.plan(), planned.shop(), label(model), say)


def settings(step: Step, display: Display | None = None) -> SettingsView:
    return settings_view(step, bench(display))


def test_no_letter_stands_for_a_mark_or_a_hand() -> None:
    assert set("ABEFRIO").isdisjoint(LETTERS)


def test_letters_never_run_out_and_never_repeat() -> None:
    model = fixtures.model()
    parts = tuple(
        replace(model.parts[0], name=f"part {n}", copies=()) for n in range(len(LETTERS) ** 2 + 40)
    )
    letters = list(label(replace(model, parts=parts)).parts.values())
    assert len(set(letters)) == len(parts)
    assert letters[:3] == ["C", "D", "G"]
    assert letters[len(LETTERS)] == "CC"


def test_copies_are_numbered_in_the_order_of_the_model() -> None:
    labels = label(fixtures.model())
    assert labels.copy("back right post") == "C4"
    assert labels.copy("slat 3") == "J3"
    assert labels.copy("end frame 1") == ""


def test_the_changed_setting_stands_out_and_the_rest_stays() -> None:
    """The far side of the set stands on the slot's limit at 125: that figure is the large one."""
    found = settings(planned.plan().steps[7])
    assert [(box.label, plain(box.value)) for box in found.change] == [("Stop", "125")]
    assert [plain(kept.value) for kept in found.keep] == [
        "dado 20",
        "sled",
        "blade tilt 0°",
        "dado set height 27",
    ]
    assert [plain(row) for row in found.change[0].details] == [
        "to the FAR side of the dado set",
        "near side then at 105",
        "end R against it",
    ]


def test_the_shoulder_of_a_lap_is_the_large_figure() -> None:
    stop = next(box for box in settings(planned.plan().steps[6]).change if box.axis == "stop")
    assert plain(stop.value) == "45"
    assert stop.short == "Stop, FAR side"
    assert plain(stop.details[1]) == "near side then at 25"


def test_a_cut_right_through_ends_on_the_near_side() -> None:
    fence = next(box for box in settings(planned.plan().steps[1]).change if box.figure)
    rows = [plain(row) for box in settings(planned.plan().steps[1]).change for row in box.details]
    assert fence.value
    assert not any("FAR" in row for row in rows)
    assert any("NEAR side" in row for row in rows)


def test_a_height_on_the_sled_says_what_the_floor_adds() -> None:
    plan = planned.plan()
    found = settings(plan.steps[6])
    height = next(box for box in found.change if box.axis == "height")
    assert [plain(row) for row in height.details] == [
        "above the table",
        "15 deep + sled floor 12",
    ]


def test_a_through_cut_names_its_bound_and_no_far_side() -> None:
    plan = planned.plan()
    found = settings(plan.steps[1])
    rows = [plain(row) for box in found.change for row in box.details]
    assert "cuts right through; 45 to 57 will do" in rows
    assert not any("far side" in row for row in rows)


def test_a_height_that_only_just_serves_thick_and_thin_says_so() -> None:
    step = planned.plan().steps[1]
    axes = dict(step.settings)
    height = axes["height"]
    assert height is not None
    axes["height"] = replace(height, value=Fraction(45), at_most=Fraction(45))
    found = settings(replace(step, settings=tuple(axes.items())))
    rows = [plain(row) for box in found.change for row in box.details]
    assert "cuts right through thick and thin: no lower, and hardly higher" in rows


def test_a_pair_of_stops_is_two_figures() -> None:
    plan = planned.plan()
    found = settings(plan.steps[4])
    stops = [(box.label, plain(box.value)) for box in found.change if box.axis == "stop"]
    assert stops == [("First stop", "335"), ("Second stop", "375")]


def test_both_ends_are_named_when_both_touch_the_stop() -> None:
    plan = planned.plan()
    step = plan.steps[6]
    first, second = (
        replace(op, settings=(Setting("stop", Fraction(25), to="near", origin=end),))
        for op, end in zip(step.operations, ("R2", "R"), strict=True)
    )
    found = settings(replace(step, operations=(first, second)))
    stop = next(box for box in found.change if box.axis == "stop")
    assert plain(stop.details[-1]) == "end R2, then end R against it"


def test_a_setting_that_stood_over_night_is_to_be_rechecked() -> None:
    plan = planned.plan()
    step = plan.steps[7]
    night = replace(step, starts=Moment(step.starts.tenths, step.starts.day + 1, "08:00"))
    kept = settings(night).keep
    days = {row.axis: row.recheck for row in kept}
    assert days == {"cutter": None, "accessory": None, "tilt": 1, "height": 1}
    assert all(row.recheck is None for row in settings(step).keep)


def test_long_figures_are_set_smaller_and_always_fit() -> None:
    steps = planned.plan().steps
    assert settings(steps[0]).points == 40
    assert settings(steps[3], Display.inches()).points < 40


def test_the_general_cautions_are_not_repeated_on_every_visit(view: Booklet) -> None:
    general = {caution.key for caution in table() if caution.general}
    assert general - {"isolate"} <= {caution.key for caution in view.cautions}
    plug = [visit.number for visit in view.visits if "isolate" in {c.key for c in visit.cautions}]
    changes = {s.visit for s in planned.plan().steps if "cutter" in s.changed}
    assert plug == sorted(changes)
    assert all((general - {"isolate"}).isdisjoint(c.key for c in v.cautions) for v in view.visits)


def test_only_cautions_of_what_occurs_are_printed() -> None:
    planer = planned.plan().visits()[0]
    assert {caution.key for caution in for_visit(planer.steps)} == {"thickness-planer"}


def test_every_caution_has_a_source_and_a_mark() -> None:
    keys = [caution.key for caution in table()]
    assert len(set(keys)) == len(keys)
    assert all(caution.source and caution.title and caution.text for caution in table())


def same_deed(*names: str) -> Block:
    """Return the block of one step in which posts and rails get the same cut, held two ways."""
    post, rail = planned.plan().steps[6].operations
    said = [
        replace(operation, sentence=f"Cut the end laps on {words}")
        for operation, words in zip((post, rail), names, strict=True)
    ]
    (block,) = blocks(said, bench())
    return block


def test_a_deed_on_two_parts_is_said_once_with_a_row_for_each() -> None:
    block = same_deed("all 4 posts", "both end rails")
    assert not block.single
    assert [plain(sentence) for _, sentence in block.columns] == ["Cut the end laps on each."]
    assert [row.thing for row in block.rows] == ["4 posts", "2 end rails"]
    assert [box.id for row in block.rows for box in row.boxes] == [
        "post / end lap",
        "end rail / end lap",
    ]
    assert block.checks == ("two test laps lie flush",)


def test_holds_are_rows_of_a_table_that_parts_held_alike_share() -> None:
    holding = same_deed("all 4 posts", "both end rails").holding
    assert holding is not None
    assert holding.places == ("down", "at the fence", "at the stop")
    rows = [tuple(mark and mark.sign for mark in row.marks) for row in holding.rows]
    assert rows == [("F", "E", "R2"), ("F", "E", "R"), ("F", "E", "R2")]
    assert [plain(row.whom) for row in holding.rows] == ["C1–C4", "D1–D4", ""]


def test_what_is_said_differently_is_printed_apart(view: Booklet) -> None:
    posts, rails = view.visits[3].steps[0].blocks
    assert posts.single
    assert rails.single
    assert rails.holding is not None
    assert not rails.holding.told
    assert len(rails.holding.rows) == 2


def test_the_only_hold_is_a_sentence(view: Booklet) -> None:
    (block,) = view.visits[1].steps[0].blocks
    assert block.holding is not None
    assert plain(block.holding.sentence()) == "Face B down, edge E at the fence, end R at the stop"


def test_face_and_edge_of_a_part_are_two_boxes_in_its_row() -> None:
    posts, rails = planned.plan().steps[6].operations
    made = [
        replace(operation, id=f"{name} / {deed}", kind=deed, sentence=f"{words} {thing} true")
        for operation, name, thing in (
            (posts, "post", "all 4 posts"),
            (rails, "end rail", "both end rails"),
        )
        for deed, words in (("face", "Make one face of"), ("edge", "Joint one edge of"))
    ]
    (block,) = blocks(made, bench())
    assert [heading for heading, _ in block.columns] == ["Face", "Edge"]
    assert [[box.heading for box in row.boxes] for row in block.rows] == [["face", "edge"]] * 2


def test_steps_with_another_figure_only_share_a_drawing(view: Booklet) -> None:
    first, second, third = view.visits[1].steps
    assert first.drawing is not None
    assert first.serves == (3, 4)
    assert [(step.drawing, step.like) for step in (second, third)] == [(None, 2), (None, 2)]
    assert all(block.holding is None for step in (second, third) for block in step.blocks)


def test_joints_keep_their_drawings(view: Booklet) -> None:
    cut = [step for visit in view.visits[2:4] for step in visit.steps]
    assert all(step.drawing is not None and step.like is None for step in cut)


def test_a_slot_is_cut_at_the_stop_then_with_the_spacer(view: Booklet) -> None:
    (block,) = view.visits[3].steps[1].blocks
    assert [plain(line) for line in block.passes] == [
        "Pass 1: right up to the stop.",
        "Pass 2: the 25 mm spacer between stop and work.",
        "Then 1 pass to clear the wood between these two cuts.",
    ]


def test_one_hand_is_named_and_both_are_not(view: Booklet) -> None:
    assert view.visits[2].steps[0].blocks[0].rows[0].hand == "A"
    assert view.visits[3].steps[0].blocks[0].rows[0].hand is None


def test_reasons_of_several_steps_are_said_once(view: Booklet) -> None:
    assert view.visits[1].steps[0].reasons == ("After step 1: thickness before length",)


def test_a_glue_up_has_clock_clamps_and_diagonals(view: Booklet) -> None:
    glue = view.visits[5].steps[0].glue
    assert glue is not None
    assert [(cell.label, cell.value) for cell in glue.clock] == [
        ("Open time", "5 min"),
        ("Last clamp shut within", "10 min"),
        ("In clamps", "1 h"),
    ]
    assert [row.label for row in glue.parts] == ["C1", "C3", "D1", "D3"]
    assert [clamp.count for clamp in glue.clamps] == [2, 4]
    assert plain(glue.diagonals[0].length) == "548.2 mm"
    assert plain(glue.diagonals[0].tolerance) == "0.5 mm"
    assert glue.meanwhile == ((14, 14, "Measuring: base length"), (15, 15, "Lengths"))


def test_steps_in_a_row_with_the_same_work_are_named_once() -> None:
    plan = planned.plan()
    glued = next(step for step in plan.steps if step.operations[0].glue_up is not None)
    operation = glued.operations[0]
    assert operation.glue_up is not None
    same = replace(plan.steps[0], number=2)
    steps = (plan.steps[0], same, *plan.steps[2:])
    bench_of = Bench(
        fixtures.model(),
        replace(plan, steps=steps),
        planned.shop(),
        label(fixtures.model()),
        Say(Display()),
    )
    found = glue_view(operation.glue_up, operation, replace(glued, meanwhile=(1, 2, 14)), bench_of)
    assert [row[:2] for row in found.meanwhile] == [(1, 2), (14, 14)]
    apart = glue_view(operation.glue_up, operation, replace(glued, meanwhile=(1, 14)), bench_of)
    assert [row[:2] for row in apart.meanwhile] == [(1, 1), (14, 14)]


def test_a_clamp_that_the_shop_lacks_is_told() -> None:
    shop = replace(planned.shop(), clamps=())
    view = booklet_view(fixtures.model(), planned.plan(), shop, ())
    glue = view.visits[5].steps[0].glue
    assert glue is not None
    assert {clamp.fitting for clamp in glue.clamps} == {None}


def test_volumes_are_of_the_finished_parts(view: Booklet) -> None:
    expected = 4 * 430 * 45 * 30 + 4 * 340 * 45 * 30 + 2 * 920 * 100 * 22
    expected += 1000 * 360 * 20 + 5 * 940 * 40 * 18
    (wood,) = view.supplies.wood
    assert wood.amount == expected
    assert wood.metric == "0.0188 m³"


@pytest.mark.parametrize(
    ("tenths", "shown"),
    [(0, "1 min"), (4, "1 min"), (15, "2 min"), (90, "9 min"), (604, "60 min")],
)
def test_step_minutes_are_whole(tenths: int, shown: str) -> None:
    assert minutes(tenths) == shown


@pytest.mark.parametrize(
    ("tenths", "shown"),
    [(90, "9 min"), (118, "10 min"), (133, "15 min"), (5919, "9 h 50 min"), (6000, "10 h")],
)
def test_sums_of_minutes_are_to_five(tenths: int, shown: str) -> None:
    assert roughly(tenths) == shown


def test_clock_and_lag() -> None:
    assert clock(Moment(0, 2, "10:58")) == "day 2, 11:00"
    assert lag(14400) == "24 h"
    assert lag(450) == "45 min"


def test_a_title_is_what_a_maker_calls_the_work() -> None:
    steps = planned.plan().steps

    def titled(*numbers: int) -> str:
        return title((op for number in numbers for op in steps[number].operations), bench())

    assert titled(1, 2, 3) == "Lengths"
    assert titled(6, 7, 8) == "Laps and tenons"
    assert titled(4, 5) == "Mortises"
    assert titled(*range(len(steps))).endswith(" and more")
    assert len(titled(*range(len(steps)))) < 50


def test_no_two_visits_have_one_title() -> None:
    plan = planned.plan()
    found = titles(plan, bench())
    assert sorted(found) == [visit.number for visit in plan.visits()]
    assert len(set(found.values())) == len(found)


def test_the_bound_is_proved_or_said_with_its_gap() -> None:
    plan = planned.plan()
    model, shop = fixtures.model(), planned.shop()
    assert "at most 9 % above" in booklet_view(model, plan, shop, ()).cover.bound
    proven = replace(plan, totals=replace(plan.totals, proven=True, gap_percent=Fraction(0)))
    assert "over all alternatives: proved" in booklet_view(model, proven, shop, ()).cover.bound


def test_a_search_that_was_ended_by_hand_is_told_first_and_has_its_own_number() -> None:
    plan = planned.plan()
    model, shop = fixtures.model(), planned.shop()
    usual = booklet_view(model, plan, shop, ())
    ended = booklet_view(model, replace(plan, ended_early=True), shop, ())
    assert "ended by hand" in ended.assumptions[0].text
    assert ended.assumptions[1:] == usual.assumptions
    other = replace(plan, steps=plan.steps[:-1])
    assert booklet_view(model, other, shop, ()).id != usual.id


def test_the_cover_says_what_it_takes_and_when_it_is_done() -> None:
    done = replace(planned.plan(), done=Moment(99999, 9, "10:02"), done_on="Tuesday 1 June 2027")
    rows = booklet_view(fixtures.model(), done, planned.shop(), ()).cover.totals
    assert [row.label for row in rows[2:5]] == ["work", "setting up", "waiting in work hours"]
    assert (rows[5].value, rows[5].label) == ("9 days", "to done, on Tuesday 1 June 2027 at 10:00")


def test_errors_and_notices_are_not_printed_but_warnings_come_first(view: Booklet) -> None:
    assert [finding.question for finding in view.findings] == [False, True]


def test_a_booklet_without_steps_can_be_made() -> None:
    plan = replace(planned.plan(), steps=())
    view = booklet_view(fixtures.model(), plan, planned.shop(), ())
    assert view.visits == ()


def test_minutes_of_a_visit_are_set_up_and_work_together(view: Booklet) -> None:
    step: Step = planned.plan().steps[0]
    assert step.minutes == StepMinutes(0, 15, 0, 72, 0)
    assert view.visits[0].minutes == "9 min"


def test_a_step_says_where_else_it_could_be_done_if_that_was_worked_out() -> None:
    plan = planned.plan()
    visit = plan.visits()[0]
    step = visit.steps[0]
    later = plan.steps[-1].number
    why = StepReasons(step.number, None, None, None, None, None, None, (), (later,), None, None)
    view = booklet_view(fixtures.model(), plan, planned.shop(), (), reasons={step.number: why})
    told = view.visits[0].steps[0].reasons
    assert told[-1] == f"Could as well be done after step {later}"
