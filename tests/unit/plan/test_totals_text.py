"""What a plan comes to, in the words of the terminal and the front page."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.unit.planning.planned import plan_of

from dryfit.booklet.wording import roughly, to_five
from dryfit.plan.plan import Totals
from dryfit.plan.totals_text import (
    bound_in_words,
    done_in_words,
    duration,
    exactly,
    in_lines,
    percent_above,
    saved_in_words,
    spending_in_words,
    spent_in_words,
)


def with_changes(changeover: int, fewest: int, found: int | None = None) -> Totals:
    proven = changeover == fewest
    return replace(
        plan_of("tool_tote").totals,
        changeover=changeover,
        fewest=fewest,
        proven=proven,
        fewest_found=found,
        over="the chosen methods",
    )


def test_work_set_up_and_waiting_add_up_to_the_hours_in_the_shop() -> None:
    totals = replace(plan_of("tool_tote").totals, work=1940, setup=825, waiting=600)
    said = "work 3 h 14 min, setting up 1 h 22.5 min, waiting 1 h 00 min in work hours"
    assert spent_in_words(totals) == said


def test_what_is_saved_is_the_difference_of_the_figures_that_stand_beside_it() -> None:
    """3 h 27.6 min - 1 h 41.4 min = 1 h 46.2 min; to five minutes 3 h 30 - 1 h 40 = 1 h 50."""
    totals = plan_of("tool_tote").totals
    totals = replace(totals, setup=1014, part_by_part=replace(totals.part_by_part, setup=2076))
    assert [duration(each) for each in (1014, 2076)] == ["1 h 41.4 min", "3 h 27.6 min"]
    assert ": 1 h 46.2 min of setting up saved" in saved_in_words(totals)
    assert [roughly(each) for each in (1014, 2076)] == ["1 h 40 min", "3 h 30 min"]
    assert ": 1 h 50 min of setting up saved" in saved_in_words(totals, to_five)


LESS = "above the best possible (no order, over the chosen methods, takes less than 60 min)"


@pytest.mark.parametrize(
    ("totals", "said"),
    [
        (with_changes(600, 600, 600), ", the fewest possible over the chosen methods: proved"),
        (
            with_changes(625, 600, 600),
            "; the fewest possible over the chosen methods is 60 min: proved",
        ),
        (with_changes(625, 600, 606), f"; the fewest found is 60.6 min, at most 1 % {LESS}"),
        (with_changes(625, 600), f", at most 5 % {LESS}"),
    ],
)
def test_the_changes_are_told_beside_the_fewest(totals: Totals, said: str) -> None:
    assert bound_in_words(totals) == f"changing settings takes {totals.changeover / 10:g} min{said}"


@pytest.mark.parametrize(
    ("favour", "saves"),
    [("setups", "100 minutes"), ("balanced", "4 minutes"), ("soonest", "a minute")],
)
def test_it_is_said_what_more_set_up_is_spent_for(favour: str, saves: str) -> None:
    said = f"a minute more of setting up is taken where it saves over {saves} of waiting ({favour})"
    assert spending_in_words(favour) == said


@pytest.mark.parametrize(
    ("tenths", "least", "percent"), [(625, 600, 5), (606, 600, 1), (600, 600, 0), (601, 600, 1)]
)
def test_a_percentage_is_rounded_up_so_that_it_stays_true(
    tenths: int, least: int, percent: int
) -> None:
    assert percent_above(tenths, least) == percent
    assert tenths * 100 <= least * (100 + percent)


def test_a_plan_is_done_when_the_last_coat_is_dry() -> None:
    plan = plan_of("tool_tote")
    hands, done = plan.steps[-1].ends, plan.done
    assert done is not None
    assert done.tenths == plan.totals.elapsed > hands.tenths
    assert done_in_words(plan) == (
        f"done on {plan.done_on}, day {done.day} at {done.clock}, when all is dry; "
        f"the last work ends on day {hands.day} at {hands.clock}"
    )
    by_hand = replace(plan, done=hands, done_on="Thursday of the first week")
    assert done_in_words(by_hand) == (
        f"done on Thursday of the first week, day {hands.day} at {hands.clock}"
    )
    assert done_in_words(replace(plan, steps=())) == "nothing to do"


def test_sentences_are_broken_between_words_only() -> None:
    lines = in_lines(f"{70 * 'x'} a set-up and {60 * 'y'}")
    assert lines == [f"{70 * 'x'} a set-up", f"  and {60 * 'y'}"]
    assert exactly(745) == "74.5 min"
