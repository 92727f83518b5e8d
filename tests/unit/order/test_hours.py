import pytest
from tests.unit.order.shops import EIGHT_TO_FOUR

from dryfit.order.hours import first_working_weekday, hours_of, longest_stretch
from dryfit.order.problem import DAY, ROUND_THE_CLOCK, Calendar

HOUR = 600


def test_a_days_closing_and_the_next_opening_are_one_moment_of_work_time() -> None:
    hours = hours_of(EIGHT_TO_FOUR)
    assert hours.clock_at_end(8 * HOUR) == 8 * HOUR
    assert hours.clock_at_start(8 * HOUR) == DAY


def test_friday_is_followed_by_monday() -> None:
    hours = hours_of(EIGHT_TO_FOUR)
    assert hours.clock_at_start(5 * 8 * HOUR) == 7 * DAY
    assert hours.clock_at_end(5 * 8 * HOUR) == 4 * DAY + 8 * HOUR


def test_nothing_passes_by_night_or_on_a_weekend() -> None:
    hours = hours_of(EIGHT_TO_FOUR)
    assert hours.work_at(8 * HOUR) == 8 * HOUR
    assert hours.work_at(20 * HOUR) == 8 * HOUR
    assert hours.work_at(5 * DAY + 3 * HOUR) == 5 * 8 * HOUR
    assert hours.work_at(7 * DAY + HOUR) == 5 * 8 * HOUR + HOUR


def test_day_1_is_moved_on_to_a_working_day() -> None:
    saturday = Calendar(4800, 9600, frozenset({5, 6}), first_weekday=5)
    assert first_working_weekday(saturday) == 0
    assert hours_of(saturday).clock_at_start(5 * 8 * HOUR) == 7 * DAY


@pytest.mark.parametrize("first", range(7))
def test_clock_and_work_time_are_each_others_inverse(first: int) -> None:
    hours = hours_of(Calendar(4800, 9000, frozenset({2, 6}), first))
    for work in range(0, 14 * 4200, 350):
        assert hours.work_at(hours.clock_at_start(work)) == work
        assert hours.work_at(hours.clock_at_end(work)) == work


def test_what_may_not_be_interrupted_is_put_into_the_next_day() -> None:
    hours = hours_of(EIGHT_TO_FOUR)
    assert hours.unbroken(7 * HOUR, HOUR) == 7 * HOUR
    assert hours.unbroken(7 * HOUR + 1, HOUR) == 8 * HOUR


def test_a_shop_that_never_closes_interrupts_nothing() -> None:
    assert hours_of(ROUND_THE_CLOCK).unbroken(13 * HOUR, 100 * HOUR) == 13 * HOUR


def test_round_the_clock_but_not_on_sundays() -> None:
    calendar = Calendar(0, DAY, frozenset({6}))
    assert longest_stretch(calendar) == 6 * DAY
    assert hours_of(calendar).unbroken(5 * DAY, 2 * DAY) == 6 * DAY


def test_the_longest_stretch_of_a_working_day() -> None:
    assert longest_stretch(EIGHT_TO_FOUR) == 8 * HOUR
    assert longest_stretch(ROUND_THE_CLOCK) is None


def test_a_single_day_off_is_skipped() -> None:
    # day 3 (the second after day 1, a Wednesday) and a Saturday, which is off anyway
    hours = hours_of(Calendar(4800, 9600, frozenset({5, 6}), closed=frozenset({2, 5})))
    assert hours.clock_at_start(2 * 8 * HOUR) == 3 * DAY
    assert hours.clock_at_end(2 * 8 * HOUR) == DAY + 8 * HOUR
    assert hours.work_at(2 * DAY + 3 * HOUR) == 2 * 8 * HOUR
    assert hours.clock_at_start(4 * 8 * HOUR) == 7 * DAY
    assert hours.unbroken(2 * 8 * HOUR - 1, 8 * HOUR) == 2 * 8 * HOUR


@pytest.mark.parametrize("closed", [{1}, {1, 2, 3}, {4, 7, 8}, {2, 9, 12, 13}])
def test_clock_and_work_time_are_inverse_with_single_days_off(closed: set[int]) -> None:
    hours = hours_of(Calendar(4800, 9000, frozenset({2, 6}), 1, frozenset(closed)))
    for work in range(0, 14 * 4200, 350):
        assert hours.work_at(hours.clock_at_start(work)) == work
        assert hours.work_at(hours.clock_at_end(work)) == work
        assert hours.clock_at_start(work) // DAY not in closed
