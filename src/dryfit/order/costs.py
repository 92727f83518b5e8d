"""What an axis change costs, from every value to every other."""

from operator import sub

from dryfit.order.problem import Axis
from dryfit.order.ranges import Key

Matrix = tuple[tuple[int, ...], ...]


def closed_costs(axis: Axis, values: tuple[Key, ...]) -> Matrix:
    """Cost matrix of an axis over (not set, *values), closed under the triangle inequality.

    Row: value left, column: value entered, both 0 for "not set". Nothing enters "not set"; its
    column is 0. `values` must name every value of `axis.between`.
    """
    index: dict[Key | None, int] = {None: 0}
    index.update((value, i) for i, value in enumerate(values, start=1))
    size = len(index)
    costs = [[0 if i in (j, 0) else axis.change for i in range(size)] for j in range(size)]
    for old, new, cost in axis.between:
        costs[index[old]][index[new]] = cost
    if axis.between:
        _close(costs)
    return tuple(tuple(row) for row in costs)


def entry_costs(matrix: Matrix) -> tuple[int, ...]:
    """Cheapest cost into each value from any other; 0 for "not set"."""
    size = len(matrix)
    entered = (min(matrix[i][j] for i in range(size) if i != j) for j in range(1, size))
    return (0, *entered)


def depends_on_entry_only(matrix: Matrix) -> bool:
    """Whether each value costs the same to enter from wherever the axis stands."""
    size = len(matrix)
    return all(matrix[i][j] == matrix[0][j] for j in range(1, size) for i in range(size) if i != j)


def regrets(matrix: Matrix) -> Matrix:
    """How much dearer the future may be from value i than from value j, at most: [i][j]."""
    size = len(matrix)
    if depends_on_entry_only(matrix):
        entry = entry_costs(matrix)
        return tuple(tuple(entry[j] if i != j else 0 for j in range(size)) for i in range(size))
    return tuple(
        tuple(max(0, *map(sub, matrix[i], matrix[j])) if i != j else 0 for j in range(size))
        for i in range(size)
    )


def _close(costs: list[list[int]]) -> None:
    """Floyd and Warshall's shortest paths; "not set" (0) is no way station."""
    for via in range(1, len(costs)):
        onward = costs[via]
        for i, row in enumerate(costs):
            toll = row[via]
            costs[i] = [min(direct, toll + rest) for direct, rest in zip(row, onward, strict=True)]
            costs[i][0] = 0
