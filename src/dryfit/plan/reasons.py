"""Why a step stands where it stands, as plain data: what holds it there, what moving it costs."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal


@dataclass(frozen=True, slots=True)
class Shared:
    """The step before, or the one after, at the same station, and the axes that stay for both."""

    step: int
    axes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Bar:
    """A step that this one cannot pass: of two operations one must be done first, and why."""

    step: int
    operation: str
    reasons: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class OneVisit:
    """Steps that belong into one visit with this one."""

    steps: tuple[int, ...]
    reason: str


@dataclass(frozen=True, slots=True)
class Elsewhere:
    """Another place, all other steps in their order, and what it adds, in tenths of a minute.

    `step` is the neighbour there, `side` says on which side of it: an earlier place lies before a
    step, a later one after one.  `changes` names what is then set oftener, and `walk` as often as
    there are further walks.
    """

    step: int
    side: Literal["before", "after"]
    setup: int
    waiting: int
    elapsed: int
    changes: tuple[str, ...]

    @property
    def same(self) -> bool:
        """Whether it makes no difference."""
        return self.setup == self.waiting == self.elapsed == 0


@dataclass(frozen=True, slots=True)
class StepReasons:
    """Why a step stands where it stands.

    before, after    the neighbours at its station with the axes that it shares with them
    held, until      the nearest step that has to be done before it, and the one that waits for it
    visit            what it has to be done in one visit with
    fills            a later step that waits for the clock anyway: this one lies in that time
    ties_before      earlier steps before which it would take the same time in sum
    ties_after       later steps after which it would
    earlier, later   the cheapest other place on either side, None where it can stand nowhere
    """

    step: int
    before: Shared | None
    after: Shared | None
    held: Bar | None
    until: Bar | None
    visit: OneVisit | None
    fills: int | None
    ties_before: tuple[int, ...]
    ties_after: tuple[int, ...]
    earlier: Elsewhere | None
    later: Elsewhere | None
