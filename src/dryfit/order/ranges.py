"""Ranges of numbers: which values are worth setting, and which one serves a stretch of an order.

*Only lower ends are set.* Whatever number is set, the tasks done at it have ranges that all hold
it, so they all hold the highest of their lower ends too. To set that instead costs the same, as
every change of an axis with ranges does, wherever it comes from. So of all numbers only the lower
ends count (those of points among them), and the number that stands at the start.

*Along an order a value is kept as long as it serves, and chosen late.* Between two changes every
value that serves all tasks since the first of them is as good as any other, so their set is
carried along; where it would become empty, a change is needed. No choice leads to fewer changes:
a stretch that one value serves is also served by it where the stretch begins later, so to change
as late as possible is never behind.
"""

from collections.abc import Sequence
from fractions import Fraction

from dryfit.order.problem import Range, Value
from dryfit.order.sets import members

Key = str | tuple[str, Fraction]
"""A value to set: a name, or what a number is set for and the number."""

Choices = tuple[tuple[int, int], ...]
"""(axis, values that will do as bits) pairs."""


def lowest(demanded: Value) -> Key:
    """The value to set for a demand where nothing else counts."""
    if isinstance(demanded, str):
        return demanded
    return demanded.of, Fraction(demanded.low)


def serves(key: Key, demanded: Value) -> bool:
    """Whether a value that is set meets a demand."""
    if isinstance(key, str) or isinstance(demanded, str):
        return key == demanded
    of, number = key
    low_enough = demanded.high is None or number <= demanded.high
    return of == demanded.of and demanded.low <= number and low_enough


def as_value(key: Key) -> Value:
    """A value to set as problems have it: a number is a point."""
    if isinstance(key, str):
        return key
    of, number = key
    return Range(number, number, of)


def worthwhile(served: Sequence[int], acceptable: int, undone: int) -> list[int]:
    """The acceptable values (bits) but those that another one makes pointless, ascending.

    A value is pointless if another acceptable one serves the same unfinished tasks, or more.
    `served` has per value the tasks (bits) that it serves.
    """
    kept: list[int] = []
    for value in members(acceptable):
        mine = served[value] & undone
        if all(mine & ~served[other] for other in kept):
            kept = [other for other in kept if served[other] & undone & ~mine]
            kept.append(value)
    return kept


def stretches(order: Sequence[Choices], standing: Sequence[int]) -> list[dict[int, int]]:
    """Per task of an order: by axis the values (bits) that serve from one change to the next.

    order     per task, in order: what will do on each axis
    standing  per axis: the value at the start (bits)
    """
    current = list(standing)
    rows: list[dict[int, int]] = []
    begun: list[set[int]] = []
    for choices in order:
        row, new = {}, set()
        for axis, acceptable in choices:
            common = current[axis] & acceptable
            if not common:
                new.add(axis)
            row[axis] = current[axis] = common or acceptable
        rows.append(row)
        begun.append(new)
    later: dict[int, int] = {}
    for row, new in zip(reversed(rows), reversed(begun), strict=True):
        for axis in row:
            row[axis] = later.setdefault(axis, row[axis])
            if axis in new:
                del later[axis]
    return rows
