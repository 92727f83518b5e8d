from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.unit.booklet import fixtures, planned

from dryfit.booklet.cautions import for_visit, table
from dryfit.booklet.labels import LETTERS, label
from dryfit.booklet.settings import settings_view
from dryfit.booklet.text import Say, plain
from dryfit.booklet.view import Booklet, booklet_view
from dryfit.booklet.wording import clock, lag, minutes, roughly, title
from dryfit.plan.plan import Moment, Step, StepMinutes
from dryfit.plan.setting import Setting
from dryfit.quantities import Display


@pytest.fixture(scope="module")
def view() -> Booklet:
    return booklet_view(fixtures.model(), planned.plan(), planned.shop(), fixtures.findings())


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
    plan, shop = planned.plan(), planned.shop()
    step = plan.steps[7]
    found = settings_view(step, plan, shop, Say(Display()), column=True)
    assert [(box.label, plain(box.value)) for box in found.change] == [("Stop", "105")]
    assert [plain(kept.value) for kept in found.keep] == [
        "dado 20",
        "sled",
        "blade tilt 0°",
        "dado set height 27",
    ]
    assert plain(found.change[0].details[0]) == "to the NEAR side of the dado set"
    assert plain(found.change[0].details[1]) == "far side then at 125"
    assert plain(found.change[0].details[2]) == "end R against it"


def test_a_height_on_the_sled_says_what_the_floor_adds() -> None:
    plan = planned.plan()
    found = settings_view(plan.steps[6], plan, planned.shop(), Say(Display()), column=True)
    height = next(box for box in found.change if box.axis == "height")
    assert [plain(row) for row in height.details] == [
        "above the table",
        "15 deep + sled floor 12",
    ]


def test_a_through_cut_names_its_bound_and_no_far_side() -> None:
    plan = planned.plan()
    found = settings_view(plan.steps[1], plan, planned.shop(), Say(Display()), column=True)
    rows = [plain(row) for box in found.change for row in box.details]
    assert "cuts right through; 45 or more will do" in rows
    assert not any("far side" in row for row in rows)


def test_a_pair_of_stops_is_two_figures() -> None:
    plan = planned.plan()
    found = settings_view(plan.steps[4], plan, planned.shop(), Say(Display()), column=True)
    stops = [(box.label, plain(box.value)) for box in found.change if box.axis == "stop"]
    assert stops == [("First stop", "335"), ("Second stop", "375")]


def test_both_ends_are_named_when_both_touch_the_stop() -> None:
    plan = planned.plan()
    step = plan.steps[6]
    first, second = (
        replace(op, settings=(Setting("stop", Fraction(25), to="near", origin=end),))
        for op, end in zip(step.operations, ("R2", "R"), strict=True)
    )
    found = settings_view(
        replace(step, operations=(first, second)), plan, planned.shop(), Say(Display()), column=True
    )
    stop = next(box for box in found.change if box.axis == "stop")
    assert plain(stop.details[-1]) == "end R2, then end R against it"


def test_a_setting_that_stood_over_night_is_to_be_rechecked() -> None:
    plan = planned.plan()
    step = plan.steps[7]
    night = replace(step, starts=Moment(step.starts.tenths, step.starts.day + 1, "08:00"))
    kept = settings_view(night, plan, planned.shop(), Say(Display()), column=True).keep
    days = {row.axis: row.recheck for row in kept}
    assert days == {"cutter": None, "accessory": None, "tilt": 1, "height": 1}
    assert all(
        row.recheck is None
        for row in settings_view(step, plan, planned.shop(), Say(Display()), column=True).keep
    )


def test_long_figures_are_set_smaller_and_always_fit() -> None:
    plan, shop = planned.plan(), planned.shop()
    say = Say(Display.inches())
    assert settings_view(plan.steps[3], plan, shop, say, column=True).points < 40
    assert settings_view(plan.steps[0], plan, shop, say, column=False).points == 40
    assert settings_view(plan.steps[4], plan, shop, say, column=False).points < 40


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


def test_two_holds_with_the_same_passes_are_drawn_together(view: Booklet) -> None:
    rails = view.visits[3].steps[0].operations[1]
    assert rails.number == "7b"
    (work,) = rails.works
    (lot,) = work.lots
    assert [plain(hold) for hold in lot.holds] == [
        "face F down on the table, edge E against the fence, end R at the stop",
        "face F down on the table, edge E against the fence, end R2 at the stop",
    ]
    assert len(work.passes) == 2


def test_a_slot_is_cut_at_the_stop_then_with_the_spacer(view: Booklet) -> None:
    (work,) = view.visits[3].steps[1].operations[0].works
    assert [plain(line) for line in work.passes] == [
        "Pass 1: right up to the stop.",
        "Pass 2: the 25 mm spacer between stop and work.",
        "Then 1 pass to clear the wood between these two cuts.",
    ]


def test_one_hand_is_named_and_both_are_not(view: Booklet) -> None:
    assert view.visits[2].steps[0].operations[0].works[0].lots[0].hand == "A"
    assert view.visits[3].steps[0].operations[0].works[0].lots[0].hand is None


def test_a_wait_names_time_and_reason_and_comes_before_the_rest(view: Booklet) -> None:
    (wait,) = view.visits[5].steps[1].waits
    assert "1 h after step 11" in wait
    assert wait.endswith("the glue has to hold before it is handled")
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
    assert glue.meanwhile == ((14, "Measure: base length"), (15, "Length: slat"))


def test_a_clamp_that_the_shop_lacks_is_told() -> None:
    shop = replace(planned.shop(), clamps=())
    view = booklet_view(fixtures.model(), planned.plan(), shop, ())
    glue = view.visits[5].steps[0].glue
    assert glue is not None
    assert {clamp.fitting for clamp in glue.clamps} == {None}


def test_volumes_are_of_the_finished_parts(view: Booklet) -> None:
    expected = 4 * 430 * 45 * 30 + 4 * 340 * 45 * 30 + 2 * 920 * 100 * 22
    expected += 1000 * 360 * 20 + 5 * 940 * 40 * 18
    (volume,) = view.supplies.volumes
    assert volume.volume == expected
    assert volume.metric == "0.0188 m³"


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


def test_a_title_names_one_deed_with_its_parts_and_counts_the_rest() -> None:
    steps = planned.plan().steps
    assert (
        title(op for s in steps[1:4] for op in s.operations) == "Length: post, end rail and apron"
    )
    assert title(op for s in steps[6:9] for op in s.operations) == (
        "End lap, cross slot for end rail and tenon cheeks"
    )
    every = title(op for s in steps for op in s.operations)
    assert every.endswith(" more")
    assert len(every) < 60
    assert title(op for s in steps[4:6] for op in s.operations) == "Mortise for apron: post"


def test_the_bound_is_proved_or_said_with_its_gap() -> None:
    plan = planned.plan()
    model, shop = fixtures.model(), planned.shop()
    assert "at most 5 % above" in booklet_view(model, plan, shop, ()).cover.bound
    proven = replace(plan, totals=replace(plan.totals, proven=True, gap_percent=Fraction(0)))
    assert "(proved)" in booklet_view(model, proven, shop, ()).cover.bound


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
