"""Measured by hand: `pytest -m benchmark -s tests/benchmarks/test_cutting_compared.py`.

All ways of cutting side by side, in one run. The general packer needs the extra `benchmark`.
Seconds are processor time.
"""

import time
from collections import Counter
from dataclasses import dataclass
from itertools import product
from typing import Any

import pytest
from tests.benchmarks.cutting_reading import (
    Bins,
    bins_in_the_plane,
    bins_on_the_line,
    enough_or_not,
    knapsacks,
)

from dryfit.cutting import Board, Job, Part, Rules, best_filling, lay_out, violations
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
    best = len(job.parts)
    for rule, order in _rules_and_orders():
        packer = rectpack.newPacker(pack_algo=rule, sort_algo=order, rotation=False)
        packer.add_bin(board.length, board.width, count=len(job.parts))
        for part in job.parts:
            packer.add_rect(part.length, part.width)
        packer.pack()
        assert len(packer.rect_list()) == len(job.parts)
        best = min(best, len(packer))
    return best


def _rules_and_orders() -> list[tuple[Any, Any]]:
    rectpack = pytest.importorskip("rectpack")
    rules = [
        getattr(rectpack, f"Guillotine{fit}{split}")
        for fit, split in product(("Bssf", "Blsf", "Baf"), ("Sas", "Las", "Slas", "Llas"))
    ]
    orders = (rectpack.SORT_AREA, rectpack.SORT_LSIDE, rectpack.SORT_SSIDE, rectpack.SORT_PERI)
    return list(product(rules, orders))


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
        print("\nsticks    best known  ours  proved  general packer  first fit decreasing  seconds")  # noqa: T201
        for bins in bins_on_the_line():
            begun = time.process_time()
            answer = lay_out(bins.job)
            spent = time.process_time() - begun
            assert violations(bins.job, answer.layouts) == ()
            ours, proved = len(answer.layouts), "yes" if answer.least else "no"
            others = f"{general_packer(bins.job):14}  {_on_the_line(bins.job):20}"
            print(f"{bins.name:8}  {bins.best:10}  {ours:4}  {proved:6}  {others}  {spent:7.1f}")  # noqa: T201
            assert answer.verdict == "enough"
            assert ours <= bins.best + 1


@pytest.mark.benchmark
def test_knapsacks_side_by_side(capsys: pytest.CaptureFixture[str]) -> None:
    with capsys.disabled():
        print("\nknapsack  best known   exact  seconds  once: best known  ours  general packer")  # noqa: T201
        for one in knapsacks():
            begun = time.process_time()
            exact = best_filling(one.board, one.pieces, one.values).value
            spent = time.process_time() - begun
            parts = tuple(Part(f"part {n}", *size, 1) for n, size in enumerate(one.pieces))
            job = Job(parts, (Board("A", *one.board, 1),), Rules(0, 0, stages=99))
            once = f"{one.best_once:16}  {_once(job):6}  {_packed_once(job):12}"
            print(f"{one.name:8}  {one.best:10}  {exact:6}  {spent:7.2f}  {once}")  # noqa: T201
            assert exact == one.best


def _once(job: Job) -> int:
    """The face that the search gets out of one board."""
    search = Search(compiled(job))
    search.run(3_000)
    return sum(
        piece.area.size
        for layout in layouts_of(search.instance, search.best.boards)
        for piece in layout.pieces
    )


def _packed_once(job: Job) -> int:
    """The most that a rule and an order of the general packer get out of one board."""
    rectpack = pytest.importorskip("rectpack")
    board = job.boards[0]
    best = 0
    for rule, order in _rules_and_orders():
        packer = rectpack.newPacker(pack_algo=rule, sort_algo=order, rotation=False)
        packer.add_bin(board.length, board.width)
        for part in job.parts:
            packer.add_rect(part.length, part.width)
        packer.pack()
        best = max(best, sum(rect[3] * rect[4] for rect in packer.rect_list()))
    return best


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
    """Shelves by falling height and the general packer beside it: how often they find enough."""
    verdicts: Counter[str] = Counter()
    found: Counter[str] = Counter()
    slowest = 0.0
    with capsys.disabled():
        for name, job in enough_or_not():
            begun = time.process_time()
            answer = lay_out(job)
            seconds = time.process_time() - begun
            slowest = max(slowest, seconds)
            verdicts[answer.verdict] += 1
            found["shelves"] += _on_shelves(job)
            found["general packer"] += _packed_whole(job)
            assert violations(job, answer.layouts, answer.missing) == ()
            print(f"{name:20} {answer.verdict:10} {seconds:6.2f}")  # noqa: T201
        print(dict(verdicts), dict(found), f"slowest {slowest:.1f} s")  # noqa: T201
    assert verdicts["enough"] + verdicts["not enough"] >= 43


def _on_shelves(job: Job) -> bool:
    """Whether shelves by falling width, board after board in the order of value, hold all parts."""
    left = sorted(
        (
            (part.width, part.length, part.thickness)
            for part in job.parts
            for _ in range(part.quantity)
        ),
        reverse=True,
    )
    kerfs = job.rules.crosscut_kerf, job.rules.rip_kerf
    kinds = sorted(job.boards, key=lambda board: (board.thickness, board.value))
    for board in [kind for kind in kinds for _ in range(kind.count)]:
        shelves: list[list[int]] = []  # height, length left
        high = board.width + kerfs[1]
        rest = []
        for width, length, thickness in left:
            shelf = next((s for s in shelves if width <= s[0] and length <= s[1] - kerfs[0]), None)
            if thickness > board.thickness:
                rest.append((width, length, thickness))
            elif shelf is not None:
                shelf[1] -= length + kerfs[0]
            elif width + kerfs[1] <= high and length <= board.length:
                high -= width + kerfs[1]
                shelves.append([width, board.length - length])
            else:
                rest.append((width, length, thickness))
        left = rest
    return not left


def _packed_whole(job: Job) -> bool:
    """Whether a rule and order of the general packer hold all parts, a kerf added to all sizes."""
    rectpack = pytest.importorskip("rectpack")
    kerf = job.rules.rip_kerf
    for rule, order in _rules_and_orders():
        packer = rectpack.newPacker(pack_algo=rule, sort_algo=order, rotation=False)
        for board in job.boards:
            packer.add_bin(board.length + kerf, board.width + kerf, count=board.count)
        for part in job.parts:
            for _ in range(part.quantity):
                packer.add_rect(part.length + kerf, part.width + kerf)
        packer.pack()
        if len(packer.rect_list()) == sum(part.quantity for part in job.parts):
            return True
    return False
