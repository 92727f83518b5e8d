"""Sticks: boards that are one row of blanks. Counts worked by hand, and lots of several stocks."""

import random
from dataclasses import replace

import pytest

from dryfit.cutting import Board, Job, Part, Rules, lay_out, violations
from dryfit.cutting.instance import compiled
from dryfit.cutting.sticks import filled, one_row

RULES = Rules(3, 3)
STICK = Board("stick", 200, 20, 10, count=9)


def sticks(*lengths: int, board: Board = STICK, rules: Rules = RULES) -> Job:
    parts = tuple(Part(f"part {n}", length, 20, 10) for n, length in enumerate(lengths))
    return Job(parts, (board,), rules)


@pytest.mark.parametrize(
    ("job", "sure"),
    [
        (sticks(90, 50), True),
        (sticks(90, 50, board=replace(STICK, width=42)), True),
        (sticks(90, 50, board=replace(STICK, width=43)), False),
        # A blank that is narrower than the board is ripped, which a short one must not be.
        (sticks(90, 50, board=replace(STICK, width=30), rules=Rules(3, 3, least_rip=60)), False),
        (sticks(90, 80, board=replace(STICK, width=30), rules=Rules(3, 3, least_rip=60)), True),
        (sticks(90, 15, board=replace(STICK, grain=False, width=30)), False),
    ],
)
def test_what_is_a_row(job: Job, sure: bool) -> None:
    assert one_row(compiled(job)) == sure


def test_a_stick_is_filled_to_the_last_kerf() -> None:
    # 120 + 3 + 77 is 200, and so is 98 + 3 + 99; the longest first, each with what fills best.
    job = sticks(120, 99, 98, 77)
    answer = lay_out(job)
    assert len(answer.layouts) == 2
    assert answer.least
    assert all(layout.leftovers == () for layout in answer.layouts)


def test_what_no_stick_holds_is_left() -> None:
    instance = compiled(sticks(120, 99, 98, 77, board=replace(STICK, count=1)))
    found, left = filled(instance)
    assert len(found) == 1
    assert sorted([*found[0].blanks, *left]) == [0, 1, 2, 3]


@pytest.mark.parametrize("seed", range(3))
def test_sticks_of_several_lengths(seed: int) -> None:
    rng = random.Random(seed)  # noqa: S311 - lots, not secrets
    parts = tuple(
        Part(f"part {n}", rng.randint(20, 90), rng.randint(11, 20), 10, rng.randint(1, 3))
        for n in range(8)
    )
    boards = (
        Board("short", 130, 20, 10, count=rng.randint(1, 4), value=13),
        Board("long", 210, 20, 10, count=2, value=25),
        Board("yard", 240, 21, 10, count=9, price=24),
    )
    job = Job(parts, boards, Rules(3, 3, end_trim=2))
    assert one_row(compiled(job))
    answer = lay_out(job)
    assert answer.verdict == "enough"
    assert violations(job, answer.layouts) == ()
