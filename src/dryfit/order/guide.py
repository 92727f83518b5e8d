"""The chain bound of states, remembered by station and lifted by what is known of a station.

What a station still needs depends on nothing but its own unfinished tasks and its own axes: a
chain that begins at another station needs nothing before its first task at this one. A move
changes one station, seldom two; for all others the answer is known from the state before.

Where a station has been searched by itself, its answers are lifted: from a state that was reached
there for some changeover, the rest needs what the whole station needs without it.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Protocol

from dryfit.order.bound import Bound, bound_of
from dryfit.order.instance import Instance

REMEMBERED = 60_000
"""Answers kept for one station; then all are forgotten, so that memory stays small."""

StateKey = tuple[int, tuple[int, ...]]
"""Unfinished tasks (bits) and the value of every axis."""


class Guide(Protocol):
    """What a search is guided by."""

    def remaining(self, undone: int, available: int, current: tuple[int, ...]) -> int:
        """Least changeover for the undone tasks (bits), of which some are available (bits)."""
        ...


@dataclass(frozen=True, slots=True)
class Lift:
    """What a search of one station by itself has found.

    least       changeover that the station needs at least
    reached     per state of that search: changeover up to there
    renumbered  from tasks of the instance (bits) to those of that search
    """

    least: int
    reached: Mapping[StateKey, int]
    renumbered: Callable[[int], int]

    def remaining(self, key: StateKey) -> int:
        """Least changeover from a state of the station, 0 if nothing is known of it."""
        spent = self.reached.get((self.renumbered(key[0]), key[1]))
        return 0 if spent is None else self.least - spent


@dataclass(frozen=True, slots=True)
class Span:
    """A station's tasks (bits), its first axis and the one after its last."""

    tasks: int
    first: int
    last: int
    lift: Lift | None = None


class Remembering:
    """The chain bound of one instance, with a memory."""

    def __init__(self, bound: Bound, spans: list[Span]) -> None:
        self._rows = [(span, _of_axes(bound, span)) for span in spans]
        self._known: list[dict[StateKey, int]] = [{} for _ in spans]

    def remaining(self, undone: int, available: int, current: tuple[int, ...]) -> int:
        """As `Bound.remaining`, or more where a station is lifted: a sum over the stations."""
        total = 0
        for (span, bound), known in zip(self._rows, self._known, strict=True):
            left = undone & span.tasks
            if not left:
                continue
            key = left, current[span.first : span.last]
            answer = known.get(key)
            if answer is None:
                if len(known) >= REMEMBERED:
                    known.clear()
                heads = available if left == undone else left  # no chain from others is dearer
                answer = bound.remaining(left, heads, key[1])
                if span.lift is not None:
                    answer = max(answer, span.lift.remaining(key))
                known[key] = answer
            total += answer
        return total


def spans_of(instance: Instance) -> list[Span]:
    """The stations of an instance that have both tasks and axes."""
    return [
        Span(tasks, axes.start, axes.stop)
        for tasks, axes in zip(instance.at_station, instance.axes_at, strict=True)
        if tasks and axes
    ]


def guide_of_one(instance: Instance) -> Remembering:
    """The chain bound of one station by itself, as `projected` makes it."""
    return Remembering(bound_of(instance), [Span(instance.at_station[0], 0, len(instance.axes))])


def _of_axes(bound: Bound, span: Span) -> Bound:
    axes = slice(span.first, span.last)
    return Bound(bound.blocks[axes], bound.classes[axes], bound.chains[axes])
