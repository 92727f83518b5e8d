"""Measured by hand: `pytest -m benchmark -s tests/benchmarks/test_cutting_compared.py`.

All ways of cutting side by side, in one run. The general packer needs the extra `benchmark`.
Seconds are processor time.
"""

import time
from collections import Counter
from dataclasses import dataclass
from itertools import product

import pytest
from tests.benchmarks.cutting_reading import (
    Bins,
    bins_in_the_plane,
    bins_on_the_line,
    enough_or_not,
)

from dryfit.cutting import Job, lay_out, violations
from dryfit.cutting.instance import compiled
from dryfit.cutting.layouts import layouts_of
from dryfit.cutting.search import Search

SECONDS = 5.0
AT_A_TIME = 50


def searched(bins: Bins) -> tuple[int, float]:
    """Bins that the search comes to in `SECONDS`, and the time it took; checked cut by cut."""
    begun = time.process_time()
    search = Search(compiled(bins.job))
    while time.process_time() - begun < SECONDS and len(search.best.boards) > bins.bound:
        search.run(AT_A_TIME)
    spent = time.process_time() - begun
    layouts = layouts_of(search.instance, search.best.boards)
    assert violations(bins.job, layouts) == ()
    return len(layouts), spent


def first_fit_decreasing(job: Job) -> int:
    """Shelves by falling height, each on the first bin with room for it."""
    board = job.boards[0]
    rests: list[int] = []
    shelves: list[tuple[int, int]] = []  # height, width left
    for part in sorted(job.parts, key=lambda part: -part.width):
        for n, (height, left) in enumerate(shelves):
            if part.width <= height and part.length <= left:
                shelves[n] = (height, left - part.length)
                break
        else:
            shelves.append((part.width, board.length - part.length))
            for n, rest in enumerate(rests):
                if part.width <= rest:
                    rests[n] = rest - part.width
                    break
            else:
                rests.append(board.width - part.width)
    return len(rests)


def general_packer(job: Job) -> int:
    """The best of all guillotine rules and orders of a general rectangle packer."""
    rectpack = pytest.importorskip("rectpack")
    board = job.boards[0]
    rules = [
        f"Guillotine{fit}{split}"
        for fit, split in product(("Bssf", "Blsf", "Baf"), ("Sas", "Las", "Slas", "Llas"))
    ]
    orders = (rectpack.SORT_AREA, rectpack.SORT_LSIDE, rectpack.SORT_SSIDE, rectpack.SORT_PERI)
    best = len(job.parts)
    for rule, order in product(rules, orders):
        packer = rectpack.newPacker(
            pack_algo=getattr(rectpack, rule), sort_algo=order, rotation=False
        )
        packer.add_bin(board.length, board.width, count=len(job.parts))
        for part in job.parts:
            packer.add_rect(part.length, part.width)
        packer.pack()
        assert len(packer.rect_list()) == len(job.parts)
        best = min(best, len(packer))
    return best


@dataclass(slots=True)
class Sums:
    """Bins of some instances by each way, and the seconds of the search."""

    ours: int = 0
    best: int = 0
    decreasing: int = 0
    packer: int = 0
    seconds: float = 0.0


@pytest.mark.benchmark
def test_bins_side_by_side(capsys: pytest.CaptureFixture[str]) -> None:
    sums: dict[str, Sums] = {}
    for bins in bins_in_the_plane():
        row = sums.setdefault(bins.name[:4], Sums())
        ours, seconds = searched(bins)
        row.ours += ours
        row.seconds += seconds
        row.best += bins.best
        row.decreasing += first_fit_decreasing(bins.job)
        row.packer += general_packer(bins.job)
    with capsys.disabled():
        print("\nclass  best known  ours  general packer  first fit decreasing  seconds")  # noqa: T201
        for name, row in (*sums.items(), ("all", _total(sums))):
            figures = f"{row.best:10}  {row.ours:4}  {row.packer:14}  {row.decreasing:20}"
            print(f"{name:5}  {figures}  {row.seconds:7.1f}")  # noqa: T201
    total = _total(sums)
    assert total.ours * 1000 <= total.best * 1015


def _total(sums: dict[str, Sums]) -> Sums:
    total = Sums()
    for row in sums.values():
        for name in Sums.__slots__:
            setattr(total, name, getattr(total, name) + getattr(row, name))
    return total


@pytest.mark.benchmark
def test_sticks_side_by_side(capsys: pytest.CaptureFixture[str]) -> None:
    with capsys.disabled():
        print("\nsticks    best known  ours  first fit decreasing  seconds")  # noqa: T201
        for bins in bins_on_the_line():
            ours, seconds = searched(bins)
            least = _on_the_line(bins.job)
            print(f"{bins.name:8}  {bins.best:10}  {ours:4}  {least:20}  {seconds:7.1f}")  # noqa: T201
            assert ours <= bins.best + 1


def _on_the_line(job: Job) -> int:
    rests: list[int] = []
    for part in sorted(job.parts, key=lambda part: -part.length):
        for n, rest in enumerate(rests):
            if part.length <= rest:
                rests[n] = rest - part.length
                break
        else:
            rests.append(job.boards[0].length - part.length)
    return len(rests)


@pytest.mark.benchmark
def test_enough_or_not(capsys: pytest.CaptureFixture[str]) -> None:
    verdicts: Counter[str] = Counter()
    with capsys.disabled():
        for name, job in enough_or_not():
            begun = time.process_time()
            answer = lay_out(job)
            seconds = time.process_time() - begun
            verdicts[answer.verdict] += 1
            assert violations(job, answer.layouts, answer.missing) == ()
            print(f"{name:20} {answer.verdict:10} {seconds:6.2f}")  # noqa: T201
        print(dict(verdicts))  # noqa: T201
    assert verdicts["enough"] + verdicts["not enough"] >= 43
