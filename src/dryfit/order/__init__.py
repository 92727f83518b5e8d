"""Build order: tasks at stations, ordered for little set-up and little waiting.

A library of its own on plain integers and names. Whole tenths of a minute are the only unit of
cost and time, whether a task's work, a cure, or a change of cutter.

A `Problem` is tasks at stations. A station has axes, such as cutter, height, fence; a task demands
values of some, and leaves the others as they stand. To change a value costs set-up: one cost for
the axis, or a matrix. A demanded `Range` is met by any number in it, so that one setting serves
several tasks; `standing` tells what is set at the start. Beside it there are walks between
stations, test cuts that the first task of a group pays for, and groups done in one visit.
Precedences have reasons and lags, which run by night; tasks hold counted resources for a while;
the worker keeps a calendar. Work that can be done in several ways is a `Choice` of `Option`s.

`solve` looks for the order that costs least: `k` * (set-up + work) + waiting, so that a minute of
set-up is worth `k` minutes of waiting. It is deterministic: effort is counted, no clock is read,
ties are settled by the order of the tasks. The `Result` has the order, its schedule and sums, and
a bound that the changeover of no order goes below, with what it holds over.

>>> saw = Station("saw", (Axis("blade", 30), Axis("height", 10)))
>>> problem = Problem(
...     stations=(saw, Station("bench")),
...     tasks=(
...         Task("rip rails", "saw", (("blade", "rip"), ("height", Range(36, None))), 40),
...         Task("laps", "saw", (("blade", "dado"), ("height", Range(27, 27))), 90),
...         Task("rip legs", "saw", (("blade", "rip"), ("height", Range(48, None))), 50),
...         Task("glue", "bench", (), 200, splittable=False),
...         Task("level", "bench", (), 60),
...     ),
...     precedences=(
...         Precedence("rip rails", "laps", 0, "cut to width first"),
...         Precedence("laps", "glue", 0, "laps before glue"),
...         Precedence("glue", "level", 7200, "the glue is dry"),
...     ),
...     calendar=Calendar(opens=4800, closes=9600),
...     walk=10,
... )
>>> result = solve(problem)
>>> result.order
('rip rails', 'rip legs', 'laps', 'glue', 'level')
>>> result.schedule.entries[0].values
(('blade', 'rip'), ('height', Range(low=Fraction(48, 1), high=Fraction(48, 1), of='')))
>>> result.totals.changeover, result.lower_bound, result.proven
(80, 80, True)
>>> violations(problem, result)
()

Other questions:

`evaluate`         schedule and sums of an order that is given
`violations`       what is wrong with an order or a result, found without any code of the search
`changeover_bound` how little changeover is possible
`cycle`            the shortest circle of precedences
`picked`           the problem that remains when options are picked
`laid`, `room`, `moved`  why a stretch of an order stands where it stands: what holds it, and what
                   another place would cost

Whoever passes a `watch` to `solve` is told how far it is. All raise `Unsolvable` for a problem
without a schedule, or one that is not well formed: it names the tasks, resources or stations at
fault, and the chain of precedences where rules contradict one another.
"""

from dryfit.order.checker import violations
from dryfit.order.engine import changeover_bound, evaluate, solve
from dryfit.order.moving import Laid, Move, Room, laid, moved, room, schedule_of
from dryfit.order.picks import picked
from dryfit.order.precedence import cycle
from dryfit.order.problem import (
    ROUND_THE_CLOCK,
    Axis,
    Calendar,
    Choice,
    Hold,
    Option,
    Precedence,
    Problem,
    Range,
    Resource,
    Station,
    Task,
    Unsolvable,
    Value,
)
from dryfit.order.result import Entry, Result, Schedule, Totals
from dryfit.order.settling import Cut, settled
from dryfit.order.watching import Glimpse, Watch

__all__ = [
    "ROUND_THE_CLOCK",
    "Axis",
    "Calendar",
    "Choice",
    "Cut",
    "Entry",
    "Glimpse",
    "Hold",
    "Laid",
    "Move",
    "Option",
    "Precedence",
    "Problem",
    "Range",
    "Resource",
    "Result",
    "Room",
    "Schedule",
    "Station",
    "Task",
    "Totals",
    "Unsolvable",
    "Value",
    "Watch",
    "changeover_bound",
    "cycle",
    "evaluate",
    "laid",
    "moved",
    "picked",
    "room",
    "schedule_of",
    "settled",
    "solve",
    "violations",
]
