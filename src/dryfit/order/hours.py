"""Working hours: from clock time to work time and back.

Clock time runs from the opening of day 1 through nights and days off. Work time stands still
while the shop is closed. The same moment of work time is both the closing of one day and the
opening of the next, hence two ways back.
"""

from bisect import bisect_left, bisect_right
from dataclasses import dataclass, field

from dryfit.order.problem import DAY, Calendar

WEEK = 7


@dataclass(frozen=True, slots=True)
class Hours:
    """A calendar in tables, counted from its first working day.

    day      work time in a working day
    working  per day of the week, 0 = the weekday of day 1: is it a working day
    before   per day of the week: working days before it
    nth      per working day of the week: its day of the week
    closed   single days off in order, those that would be worked only
    skips    per single day off: working days before it, single days off left out
    works    work times that were worked out, by their clock time: a search asks for few, and often
    starts   the same the other way round
    """

    day: int
    working: tuple[bool, ...]
    before: tuple[int, ...]
    nth: tuple[int, ...]
    closed: tuple[int, ...] = ()
    skips: tuple[int, ...] = ()
    works: dict[int, int] = field(default_factory=dict, repr=False, compare=False)
    starts: dict[int, int] = field(default_factory=dict, repr=False, compare=False)

    def work_at(self, clock: int) -> int:
        """Work time that has passed at a clock time."""
        work = self.works.get(clock)
        if work is None:
            work = self.works[clock] = self._work_at(clock)
        return work

    def _work_at(self, clock: int) -> int:
        day, offset = divmod(clock, DAY)
        weeks, weekday = divmod(day, WEEK)
        days = weeks * len(self.nth) + self.before[weekday]
        works = self.working[weekday]
        if self.closed:
            gone = bisect_left(self.closed, day)
            days -= gone
            works = works and day not in self.closed[gone : gone + 1]
        return days * self.day + (min(offset, self.day) if works else 0)

    def clock_at_start(self, work: int) -> int:
        """Clock time of a work time, as a start: never a day's closing."""
        clock = self.starts.get(work)
        if clock is None:
            clock = self.starts[work] = self._clock_at_start(work)
        return clock

    def _clock_at_start(self, work: int) -> int:
        days, offset = divmod(work, self.day)
        if self.closed:
            days += bisect_right(self.skips, days)
        weeks, nth = divmod(days, len(self.nth))
        return (weeks * WEEK + self.nth[nth]) * DAY + offset

    def clock_at_end(self, work: int) -> int:
        """Clock time of a work time, as an end: never a day's opening, except day 1's."""
        return self.clock_at_start(work - 1) + 1 if work else 0

    def unbroken(self, work: int, duration: int) -> int:
        """Earliest work time from `work` on at which `duration` passes without a closing.

        The duration must be at most `longest_stretch` of the calendar.
        """
        if work % self.day + duration <= self.day:
            return work
        while self.clock_at_end(work + duration) - self.clock_at_start(work) > duration:
            work = (work // self.day + 1) * self.day
        return work


def hours_of(calendar: Calendar) -> Hours:
    """Tables of a valid calendar."""
    first = first_working_weekday(calendar)
    working = tuple((first + day) % WEEK not in calendar.days_off for day in range(WEEK))
    before = tuple(sum(working[:day]) for day in range(WEEK))
    nth = tuple(day for day in range(WEEK) if working[day])
    closed = tuple(sorted(day for day in calendar.closed if working[day % WEEK]))
    counted = (day // WEEK * len(nth) + before[day % WEEK] for day in closed)
    return Hours(
        day=calendar.closes - calendar.opens,
        working=working,
        before=before,
        nth=nth,
        closed=closed,
        skips=tuple(days - gone for gone, days in enumerate(counted)),
    )


def first_working_weekday(calendar: Calendar) -> int:
    """Weekday of day 1, 0 = Monday."""
    days = ((calendar.first_weekday + step) % WEEK for step in range(WEEK))
    return next(day for day in days if day not in calendar.days_off)


def longest_stretch(calendar: Calendar) -> int | None:
    """Longest time without a closing, tenths of a minute; None if the shop never closes."""
    day = calendar.closes - calendar.opens
    if day < DAY:
        return day
    if not calendar.days_off:
        return None
    run = longest = 0
    for weekday in range(2 * WEEK):
        run = 0 if weekday % WEEK in calendar.days_off else run + 1
        longest = max(longest, run)
    return longest * DAY
