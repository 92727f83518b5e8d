"""Build order: tasks at stations, ordered for little set-up and little waiting.

A library of its own on plain integers and names. All costs and durations are whole tenths of a
minute. `solve` searches, `evaluate` schedules a given order, `violations` checks either without
sharing any code with them, `cycle` shows why precedences cannot be kept, `changeover_bound` says
how little changeover is possible. Whoever passes a `watch` to `solve` is told how far it is.
`laid`, `room` and `moved` tell why a stretch of an order stands where it stands: what holds it, and
what another place would cost.
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
from dryfit.order.watching import Glimpse, Watch

__all__ = [
    "ROUND_THE_CLOCK",
    "Axis",
    "Calendar",
    "Choice",
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
    "solve",
    "violations",
]
