"""The plan: numbered steps with settings and times, visits, and the totals."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.plan.operation import Alternative, Operation
from dryfit.plan.sawing import SawnBoard
from dryfit.plan.setting import Setting


@dataclass(frozen=True, slots=True)
class Moment:
    """Elapsed tenths of a minute since day 1's first work minute, nights counted.

    `day` counts calendar days from 1, `clock` is ``11:41``.  `name` is what the day is called,
    ``Wed 9 Dec``; empty where nobody told when day 1 is.
    """

    tenths: int
    day: int
    clock: str
    name: str = ""

    @property
    def on(self) -> str:
        """Return the day as it is printed: ``day 3``, ``day 3 (Wed 9 Dec)``."""
        return f"day {self.day} ({self.name})" if self.name else f"day {self.day}"


@dataclass(frozen=True, slots=True)
class Waits:
    """An operation that this step had to wait for, and why."""

    step: int
    operation: str
    reason: str
    lag: int


@dataclass(frozen=True, slots=True)
class Release:
    """What a step has to wait for longest, and when that is over.

    `over` is the end of the step it names plus `lag` tenths of a minute; `opens` the first moment
    from then on at which the shop is open.
    """

    step: int
    operation: str
    reason: str
    lag: int
    over: Moment
    opens: Moment


@dataclass(frozen=True, slots=True)
class StepMinutes:
    """Tenths of a minute: walking here, changing axes, test cuts, work, and unattended after."""

    walk: int
    changeover: int
    tests: int
    work: int
    after: int


@dataclass(frozen=True, slots=True)
class Step:
    """A longest run of operations at one station with no axis changed inside.

    `settings` holds every axis that the station has as it stands (None: never set); `changed` the
    axes whose value differs from the step before at that station.  `release` is what it has to
    wait for until the latest moment, None where nothing needs time.
    """

    number: int
    visit: int
    station: str
    settings: tuple[tuple[str, Setting | None], ...]
    changed: tuple[str, ...]
    operations: tuple[Operation, ...]
    minutes: StepMinutes
    tests: int
    starts: Moment
    ends: Moment
    waits_for: tuple[Waits, ...]
    meanwhile: tuple[int, ...] = ()
    release: Release | None = None

    @property
    def id(self) -> str:
        """Return the id of the first operation, by which the step is known."""
        return self.operations[0].id


@dataclass(frozen=True, slots=True)
class Visit:
    """A longest run of steps at one station."""

    number: int
    station: str
    steps: tuple[Step, ...]


@dataclass(frozen=True, slots=True)
class PartByPart:
    """The same work part after part, in tenths of a minute.

    `ends` is when the last work is done, `done` when all is over, drying with it.  `by_axis`
    counts the changeovers by station and axis, both in the order of the shop file.
    """

    changeovers: int
    changeover: int
    setup: int
    attended: int
    walk: int = 0
    tests: int = 0
    waiting: int = 0
    ends: Moment | None = None
    done: Moment | None = None
    by_axis: tuple[tuple[str, str, int], ...] = ()


@dataclass(frozen=True, slots=True)
class Totals:
    """CONTRACTS' words; tenths of a minute. `fewest` is the lower bound on changeover.

    `fewest_found` is the changeover of the best order for changeover alone that was come across,
    None where none was looked for.
    """

    changeovers: int
    changeover: int
    walk: int
    tests: int
    setup: int
    work: int
    attended: int
    waiting: int
    elapsed: int
    fewest: int
    over: str
    proven: bool
    gap_percent: Fraction
    part_by_part: PartByPart
    fewest_found: int | None = None


@dataclass(frozen=True, slots=True)
class Plan:
    """The whole build in order.

    `cutters` and `accessories` are those used: name, and width or thickness of the base in mm.
    `done` is when all is over, drying with it; `done_on` its day in words, ``Thursday of the
    second week``.  `workers` are the people of the shop.  A search that was `ended_early`, by
    hand, may come to another order in another run.  `boards` are those that its cuts part.
    `lacking` are the copies and staves for which there is no wood yet.
    """

    shop: str
    shop_sha256: str
    favour: str
    steps: tuple[Step, ...]
    totals: Totals
    alternatives: tuple[Alternative, ...]
    cutters: tuple[tuple[str, Fraction], ...] = ()
    accessories: tuple[tuple[str, Fraction], ...] = ()
    done: Moment | None = None
    done_on: str = ""
    workers: int = 1
    ended_early: bool = False
    boards: tuple[SawnBoard, ...] = ()
    lacking: tuple[str, ...] = ()

    def visits(self) -> tuple[Visit, ...]:
        """Return the steps grouped by visit, in order."""
        numbers = sorted({step.visit for step in self.steps})
        grouped = [tuple(s for s in self.steps if s.visit == number) for number in numbers]
        return tuple(Visit(steps[0].visit, steps[0].station, steps) for steps in grouped)

    def step_of(self, operation: str) -> Step:
        """Return the step that performs the operation; KeyError when none does."""
        for step in self.steps:
            if any(op.id == operation for op in step.operations):
                return step
        raise KeyError(operation)
