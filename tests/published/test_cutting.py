"""Published bin packing instances: as few boards as anybody has found, and checked cut by cut.

J. O. Berkey and P. Y. Wang, Two-dimensional finite bin-packing algorithms, Journal of the
Operational Research Society 38 (1987), classes 1, 3 and 5; E. Falkenauer, A hybrid grouping genetic
algorithm for bin packing, Journal of Heuristics 2 (1996). The figures were read in public
collections of the instances; those of two dimensions are proved for cutting in any way, so that
cutting right through cannot do with fewer. J. E. Beasley, Algorithms for unconstrained
two-dimensional guillotine cutting, Journal of the Operational Research Society 36 (1985): the
optima of his knapsacks are from memory.
"""

from dataclasses import replace

import pytest
from tests.benchmarks.cutting_reading import bins_in_the_plane, bins_on_the_line, knapsacks

from dryfit.cutting import Board, Job, Part, Rules, violations
from dryfit.cutting.boxes import Steps
from dryfit.cutting.instance import compiled
from dryfit.cutting.knapsack import best_filling
from dryfit.cutting.layouts import layouts_of
from dryfit.cutting.proof import shared_out, short_of
from dryfit.cutting.search import Search
from dryfit.cutting.sticks import filled

IN_THE_PLANE = {bins.name: bins for bins in bins_in_the_plane()}
ON_THE_LINE = {bins.name: bins for bins in bins_on_the_line()}

BEST = [
    ("cl01_020_01", 8),
    ("cl01_020_02", 5),
    ("cl01_020_03", 9),
    ("cl01_020_04", 6),
    ("cl03_020_01", 6),
    ("cl03_020_03", 6),
    ("cl03_040_02", 8),
    ("cl05_020_01", 8),
    ("cl05_020_02", 5),
    ("cl05_020_03", 7),
]


def bins_of(job: Job, rounds: int, enough: int) -> int:
    search = Search(compiled(job))
    search.run(rounds, least=enough * search.instance.stocks[0].worth)
    layouts = layouts_of(search.instance, search.best.boards)
    assert violations(job, layouts) == ()
    return len(layouts)


@pytest.mark.parametrize(("name", "best"), BEST)
def test_boards_are_as_few_as_the_best_known(name: str, best: int) -> None:
    bins = IN_THE_PLANE[name]
    assert bins.best == best
    assert bins_of(bins.job, 3_000, best) == best


@pytest.mark.parametrize("name", ["t120_00", "t120_02", "t60_00", "t60_02", "u250_00", "u250_02"])
def test_sticks_are_within_one_of_the_best(name: str) -> None:
    bins = ON_THE_LINE[name]
    found, left = filled(compiled(bins.job))
    assert left == []
    assert bins.best <= len(found) <= bins.best + 1


def with_boards(job: Job, count: int) -> Job:
    return replace(job, boards=(replace(job.boards[0], count=count),))


@pytest.mark.parametrize(("name", "best"), BEST[:2])
def test_one_board_fewer_is_proved_too_few(name: str, best: int) -> None:
    job = with_boards(IN_THE_PLANE[name].job, best - 1)
    assert short_of(compiled(job), Steps(1_000_000)) is not None


@pytest.mark.parametrize(("name", "best"), BEST[2:])
def test_the_best_known_is_never_said_to_be_too_little(name: str, best: int) -> None:
    instance = compiled(with_boards(IN_THE_PLANE[name].job, best))
    assert short_of(instance, Steps(20_000)) is None


KNAPSACKS = {one.name: one for one in knapsacks()}


@pytest.mark.parametrize(
    ("name", "best"),
    [("gcut1", 56_460), ("gcut3", 61_036), ("gcut5", 246_000), ("gcut7", 242_567)],
)
def test_one_board_is_worth_the_most_it_can_be(name: str, best: int) -> None:
    one = KNAPSACKS[name]
    assert one.best == best
    assert best_filling(one.board, one.pieces, one.values).value == best


@pytest.mark.parametrize(("name", "best"), [("gcut1", 48_368), ("gcut5", 195_582)])
def test_one_board_is_worth_the_most_with_one_of_each(name: str, best: int) -> None:
    one = KNAPSACKS[name]
    parts = tuple(Part(f"part {n}", *size, 1) for n, size in enumerate(one.pieces))
    job = Job(parts, (Board("A", *one.board, 1),), Rules(0, 0, stages=99))
    shared = shared_out(compiled(job), range(len(parts)), Steps(100_000))
    (sets,) = shared.sets[0]
    assert one.best_once == best
    assert best == max(
        sum(face * count for face, count in zip(shared.faces, counts, strict=True))
        for counts in sets
    )
    # The values are the faces: the search, which leaves the least face uncut, finds as much.
    search = Search(compiled(job))
    search.run(3_000)
    (layout,) = layouts_of(search.instance, search.best.boards)
    assert sum(piece.area.size for piece in layout.pieces) == best
