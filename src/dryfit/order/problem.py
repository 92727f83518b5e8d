"""What is to be ordered: plain integers and names, in frozen records.

Every duration and cost is a whole number of tenths of a minute.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

DAY = 14_400  # tenths of a minute from one midnight to the next


@dataclass(frozen=True, slots=True)
class Range:
    """Any number from `low` to `high`, both included: a blade that must only be high enough.

    high  None for no limit; a point has `low` and `high` equal
    of    what the number is set for, where something else spoils it: a height with its cutter.
          Numbers of different `of` are different values
    """

    low: Fraction | int
    high: Fraction | int | None
    of: str = ""


Value = str | Range
"""What a task demands of an axis: a plain name, or a number out of a range."""


@dataclass(frozen=True, slots=True)
class Axis:
    """One thing that a station has set: a cutter, a height, a fence.

    `change` is the cost of moving to any other value, in tenths of a minute. `between` replaces
    single costs: (from value, to value, cost), where a from value of None means "not set yet".
    Before use the costs are closed: a change never costs more than going by way of a third value.
    An axis that a `Range` is demanded of has no `between`.
    """

    name: str
    change: int
    between: tuple[tuple[str | None, str, int], ...] = ()


@dataclass(frozen=True, slots=True)
class Station:
    """A machine or bench. Its axes, in the order of setting."""

    name: str
    axes: tuple[Axis, ...] = ()


@dataclass(frozen=True, slots=True)
class Hold:
    """`count` pieces of a resource, taken from a task's start until `lag` after its end.

    Test cuts belong to it: those that the task pays for are made right before it, and take the
    pieces already.  `lag` is clock time in tenths of a minute, nights counted.
    """

    resource: str
    count: int
    lag: int


@dataclass(frozen=True, slots=True)
class Task:
    """One operation that the worker attends to at one station.

    demands     (axis name, value) pairs; an axis not named keeps whatever value it has. Of a
                `Range` any number will do
    work        attended time, tenths of a minute
    after       unattended time that belongs to the task (a cure, a drying coat), clock tenths.
                The plan is not done before it is over; what a later task must wait for is said
                by a precedence's lag
    splittable  may be interrupted by the end of the working day and go on in the morning
    holds       resources taken while it runs and for a time after
    trial       name of a trial group (test cuts): the first task of the group in the order
                pays `Problem.trials[trial]` as set-up
    together    name of a group that is done in one visit: from its first task to its last the
                worker stays at the station
    workers     people it takes from its start to its end
    """

    id: str
    station: str
    demands: tuple[tuple[str, Value], ...]
    work: int
    after: int = 0
    splittable: bool = True
    holds: tuple[Hold, ...] = ()
    trial: str | None = None
    together: str | None = None
    workers: int = 1


@dataclass(frozen=True, slots=True)
class Precedence:
    """`after` starts no earlier than `lag` clock tenths (nights counted) after `before` ends."""

    before: str
    after: str
    lag: int
    reason: str


@dataclass(frozen=True, slots=True)
class Option:
    """One way to get a piece of work done: the ids of all tasks that it takes, perhaps none."""

    name: str
    tasks: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Choice:
    """Ways to do the same work, of which one is picked.

    The tasks of the option picked are done; those that only other options have are not, and what
    precedences say of them falls away: nothing follows from a chain through a task not done. A
    task may belong to several options of one choice, not to two choices.
    """

    name: str
    options: tuple[Option, ...]


@dataclass(frozen=True, slots=True)
class Resource:
    """Something counted that tasks hold: clamps of one length, bench or drying places.

    `instead` names resources whose pieces serve in its place, as a longer clamp does, those first
    that are to be taken first.  It is followed one step only: whatever serves has to be named.
    """

    name: str
    capacity: int
    instead: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Calendar:
    """Working hours, the same on every working day.

    opens, closes  tenths after midnight: 4800 and 9600 are 08:00 and 16:00
    days_off       weekdays without work, 0 = Monday .. 6 = Sunday
    first_weekday  the weekday of day 1; moved on to the first working day
    closed         single days without work besides, counted from day 1 as 0; never day 1 itself
    """

    opens: int
    closes: int
    days_off: frozenset[int] = frozenset()
    first_weekday: int = 0
    closed: frozenset[int] = frozenset()


ROUND_THE_CLOCK = Calendar(opens=0, closes=DAY)


@dataclass(frozen=True, slots=True)
class Problem:
    """Tasks to be put in order for one worker, whom others may lend a hand.

    The order of `tasks` settles ties.

    walk      paid whenever the worker goes to another station than the one he stands at; the
              first task pays it too
    trials    tenths of each trial group
    workers   how many people there are for a task that takes more than one; they all work at
              that task alone, so that nothing is ever done beside it
    standing  (station, axis, value) of what is set at the start, a number as a point. All other
              axes are not set
    choices   work that can be done in several ways
    """

    stations: tuple[Station, ...]
    tasks: tuple[Task, ...]
    precedences: tuple[Precedence, ...] = ()
    resources: tuple[Resource, ...] = ()
    calendar: Calendar = ROUND_THE_CLOCK
    walk: int = 0
    trials: Mapping[str, int] = field(default_factory=dict)
    workers: int = 1
    standing: tuple[tuple[str, str, Value], ...] = ()
    choices: tuple[Choice, ...] = ()


class Unsolvable(ValueError):  # noqa: N818 - it reads as what it says of the problem
    """The problem has no schedule, or is not well formed.

    names  the tasks, resources or stations at fault, in order of declaration
    chain  where rules contradict one another: each one's `after` is the next one's `before`, and
           the last one leads back to the first; a together group in it appears as a precedence
           with the reason "one visit: NAME"
    needed, there  where something counted is short: how many pieces or people a task needs, how
                   many there are; both 0 otherwise
    """

    def __init__(
        self,
        message: str,
        names: tuple[str, ...] = (),
        chain: tuple[Precedence, ...] = (),
        counts: tuple[int, int] = (0, 0),
    ) -> None:
        super().__init__(message)
        self.names = names
        self.chain = chain
        self.needed, self.there = counts
