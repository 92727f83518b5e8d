"""The guillotine knapsack: boards worked by hand, and every way to cut small ones tried."""

import random
from functools import cache

import pytest

from dryfit.cutting.dual import Size
from dryfit.cutting.knapsack import Filled, best_filling


def test_a_kerf_counts_between_two_pieces_only() -> None:
    assert best_filling((41, 41), [(20, 20)], [1], (1, 1)) == Filled(4, (4,))
    assert best_filling((41, 40), [(20, 20)], [1], (1, 1)) == Filled(2, (2,))
    assert best_filling((40, 40), [(20, 20)], [1]) == Filled(4, (4,))


def test_a_pinwheel_cannot_be_cut_right_through() -> None:
    # Five pieces fill 7 by 7 without a gap, but no cut goes through from edge to edge.
    pieces = [(4, 3), (3, 4), (1, 1)]
    assert best_filling((7, 7), pieces, [12, 12, 1]).value == 49
    assert best_filling((7, 7), pieces[:2], [12, 12]).value < 48


def test_nothing_fits() -> None:
    assert best_filling((10, 10), [(11, 1)], [5]) == Filled(0, (0,))


@pytest.mark.parametrize("seed", range(20))
def test_small_boards_by_every_cut_there_is(seed: int) -> None:
    rng = random.Random(seed)  # noqa: S311 - lots, not secrets
    pieces = [(rng.randint(2, 7), rng.randint(2, 7)) for _ in range(3)]
    values = [rng.randint(1, 30) for _ in pieces]
    board: Size = rng.randint(8, 14), rng.randint(8, 14)

    @cache
    def most(along: int, across: int) -> int:
        fit = [v for (a, c), v in zip(pieces, values, strict=True) if a <= along and c <= across]
        crosscut = [most(at, across) + most(along - at, across) for at in range(1, along)]
        ripped = [most(along, at) + most(along, across - at) for at in range(1, across)]
        return max([0, *fit, *crosscut, *ripped])

    found = best_filling(board, pieces, values)
    assert found.value == most(*board)
    assert sum(n * v for n, v in zip(found.counts, values, strict=True)) == found.value
