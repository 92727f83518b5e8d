"""How far a cut runs along its part: through, stopped, from one place to another."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.piece.declared import PlacedAmount, Stretch
from dryfit.placing.features.task import ENDS, Misfit, Task, hosts_of, position
from dryfit.placing.site import SIDE_WORDS

_REMEDY = "name sides along which it runs, such as `from {60} from left to {60} from right`"


@dataclass(frozen=True, slots=True)
class Run:
    """Where a cut runs on an axis of the piece; `toward` is the side to which it was told."""

    low: Fraction
    high: Fraction
    toward: int


def runs(task: Task, axis: int) -> tuple[Run, ...] | Misfit:
    """Return the stretches of the copy that the cut takes along an axis: all of it if not said."""
    box, extent = task.box, task.feature.extent
    if extent is None or extent.kind == "through":
        return (Run(box.low[axis], box.high[axis], 1),)
    if extent.kind == "stopped":
        found = _stopped(task, axis, extent)
    elif extent.start is not None and extent.start.place == ENDS:
        found = _to_both_ends(task, axis, extent.start)
    else:
        found = _between(task, axis, extent)
    if isinstance(found, Misfit):
        return found
    if not found or any(
        run.low >= run.high or run.low < box.low[axis] or run.high > box.high[axis] for run in found
    ):
        return Misfit("it begins or ends beyond the part, or ends before it begins", _REMEDY)
    return found


def is_said(task: Task) -> bool:
    """Return whether the line says how far the cut runs."""
    return task.feature.extent is not None


def _stopped(task: Task, axis: int, extent: Stretch) -> tuple[Run, ...] | Misfit:
    low, high = task.box.low[axis], task.box.high[axis]
    for amount in (extent.start, extent.end):
        if amount is None:
            continue
        if amount.place == ENDS:
            low, high = low + amount.value, high - amount.value
            continue
        found = _on_axis(task, axis, amount)
        if isinstance(found, Misfit):
            return found
        at, way = found
        low, high = (max(low, at), high) if way > 0 else (low, min(high, at))
    return (Run(low, high, 1),)


def _between(task: Task, axis: int, extent: Stretch) -> tuple[Run, ...] | Misfit:
    if extent.start is None:
        return Misfit("no word says where it begins", _REMEDY)
    first = _on_axis(task, axis, extent.start)
    if isinstance(first, Misfit):
        return first
    start, way = first
    if extent.end is None:
        end = task.box.high[axis] if way > 0 else task.box.low[axis]
    else:
        second = _on_axis(task, axis, extent.end)
        if isinstance(second, Misfit):
            return second
        end, way = second[0], 1 if second[0] > start else -1
    return (Run(min(start, end), max(start, end), way),)


def _to_both_ends(task: Task, axis: int, amount: PlacedAmount) -> tuple[Run, ...]:
    # `from 1 beyond posts to the ends`: out from the outermost posts on either side.
    box, value = task.box, amount.value
    hosts = hosts_of(task, amount)
    if not hosts:
        return (Run(box.low[axis] + value, box.high[axis] - value, 1),)
    out = value if amount.beyond else -value
    low = min(host.low[axis] for host in hosts) - out
    high = max(host.high[axis] for host in hosts) + out
    found = (Run(box.low[axis], low, -1), Run(high, box.high[axis], 1))
    return tuple(run for run in found if run.low < run.high)


def _on_axis(task: Task, axis: int, amount: PlacedAmount) -> tuple[Fraction, int] | Misfit:
    found = position(task, amount)
    if isinstance(found, Misfit):
        return found
    told, at, way = found
    if told != axis:
        words = " or ".join(f"`{SIDE_WORDS[axis, side]}`" for side in (-1, 1))
        return Misfit(f"it does not run to the {amount.place}", f"measure from {words}")
    return at, way
