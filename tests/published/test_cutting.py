"""Published bin packing instances: as few boards as anybody has found, and checked cut by cut.

J. O. Berkey and P. Y. Wang, Two-dimensional finite bin-packing algorithms, Journal of the
Operational Research Society 38 (1987), classes 1, 3 and 5; E. Falkenauer, A hybrid grouping genetic
algorithm for bin packing, Journal of Heuristics 2 (1996). The figures were read in public
collections of the instances; those of two dimensions are proved for cutting in any way, so that
cutting right through cannot do with fewer.
"""

from dataclasses import replace

import pytest
from tests.benchmarks.cutting_reading import bins_in_the_plane, bins_on_the_line

from dryfit.cutting import Job, violations
from dryfit.cutting.boxes import Steps
from dryfit.cutting.instance import compiled
from dryfit.cutting.layouts import layouts_of
from dryfit.cutting.proof import short_of
from dryfit.cutting.search import Search

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


@pytest.mark.parametrize("name", ["t120_00", "t120_02", "t60_00", "t60_02", "u250_00"])
def test_sticks_are_within_one_of_the_best(name: str) -> None:
    bins = ON_THE_LINE[name]
    assert bins.best <= bins_of(bins.job, 4_000, bins.best + 1) <= bins.best + 1


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
