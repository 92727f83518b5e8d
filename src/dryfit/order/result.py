"""What comes back: an order, its schedule and its figures. All times in tenths of a minute."""

from dataclasses import dataclass
from typing import Literal

from dryfit.order.problem import Value

Over = Literal["every order", "every pick", "common tasks"]
Status = Literal["proved", "bounded", "stopped early"]


@dataclass(frozen=True, slots=True)
class Entry:
    """One task in its place.

    Clock times count from the opening of day 1, nights and days off included.

    ready       when the worker is free for it: the end of the task before
    start, end  of the attended work; set-up lies between `ready` and `start`
    changed     names of the axes that get another value, in the station's order
    values      (axis, value) of every axis that the task demands, in the station's order: what
                it stands at. Of a range it is the number used, as a point: the lowest one that
                also serves the tasks done at the same setting
    changeover  set-up by axis changes
    walk        set-up by going to the station
    trial       set-up by test cuts
    waiting     time inside working hours with nothing to do, after the set-up, before the start
    instead     pieces that serve for others: (resource that is asked for, resource whose pieces
                are taken, count); all else that the task holds is of the kind that it asks for
    """

    task: str
    station: str
    ready: int
    start: int
    end: int
    changed: tuple[str, ...]
    values: tuple[tuple[str, Value], ...]
    changeover: int
    walk: int
    trial: int
    waiting: int
    instead: tuple[tuple[str, str, int], ...] = ()


@dataclass(frozen=True, slots=True)
class Schedule:
    """One entry per task, in order of work."""

    entries: tuple[Entry, ...]


@dataclass(frozen=True, slots=True)
class Totals:
    """Sums over a schedule.

    changeovers  number of axis values changed; neither walks nor trials are changeovers
    setup        changeover + walk + trial
    attended     setup + work
    waiting      time inside working hours with nothing to do
    elapsed      clock time from the opening of day 1 until the last task, and all unattended
                 time after a task, is over
    """

    changeovers: int
    changeover: int
    walk: int
    trial: int
    setup: int
    work: int
    attended: int
    waiting: int
    elapsed: int


@dataclass(frozen=True, slots=True)
class Result:
    """The best order found.

    order        task ids
    lower_bound  changeover that no valid order can go below, see `over`
    fewest_found changeover of the best order for changeover alone that was come across. The order
                 itself may spend more, where that fills waiting. If it equals `lower_bound`, no
                 order has fewer (`fewest_proven`)
    proven       the order's changeover is the lowest possible
    gap_percent  by how much the order's changeover may exceed the lowest possible, at most, in
                 percent of `lower_bound` (100 where that is nothing and the changeover is not)
    effort       work counted: states opened by the search and tasks decoded for the improvement
    picks        (choice, option) of every choice of the problem
    picks_bound  changeover that no valid order of these picks can go below; it is at least
                 `lower_bound`, and the same where there are no choices
    over         what the lower bound holds over, and so `proven` and `gap_percent`:
                 "every order", where there are no choices;
                 "every pick", all orders of all combinations of options;
                 "common tasks", the same, but found from the tasks alone that all combinations
                 share, or all with one more choice made
    ended_early  an interrupt ended the search: another run may come to another order; the effort
                 is then not told
    """

    order: tuple[str, ...]
    schedule: Schedule
    totals: Totals
    lower_bound: int
    fewest_found: int
    proven: bool
    gap_percent: float
    effort: int
    ended_early: bool = False
    picks: tuple[tuple[str, str], ...] = ()
    picks_bound: int = 0
    over: Over = "every order"

    @property
    def fewest_proven(self) -> bool:
        """Whether `fewest_found` is the lowest changeover possible, whatever the order spends."""
        return self.fewest_found == self.lower_bound

    @property
    def status(self) -> Status:
        """What is known of the order's changeover; `gap_percent` says by how much it may be above.

        A search that was stopped early says so even if it has proved its order.
        """
        if self.ended_early:
            return "stopped early"
        return "proved" if self.proven else "bounded"


def gap_percent(changeover: int, least: int) -> float:
    """By how much a changeover may exceed the lowest possible, see `Result`."""
    over = changeover - least
    return round(100 * over / least, 1) if least else 100.0 * (over > 0)
