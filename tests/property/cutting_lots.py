"""Small cutting jobs by lot, with everything that a job can have."""

import random

from dryfit.cutting import Area, Board, Job, Part, Rules

MM = 100


def lot(seed: int) -> Job:
    """Up to four boards with zones, up to six parts of which some belong together."""
    rng = random.Random(seed)  # noqa: S311 - lots, not secrets
    return Job(
        tuple(_part(rng, f"part {number}") for number in range(rng.randint(1, 6))),
        tuple(_board(rng, f"board {number}") for number in range(rng.randint(1, 4))),
        Rules(
            crosscut_kerf=rng.choice((0, 300, 320)),
            rip_kerf=rng.choice((0, 300)),
            end_trim=rng.choice((0, 100, 1_500)),
            least_rip=rng.choice((0, 25_000)),
            stages=rng.randint(1, 4),
            keep_length=rng.choice((0, 40_000)),
            keep_width=6_000,
            sliver_length=rng.choice((0, 12_000)),
            sliver_width=3_000,
        ),
    )


def _board(rng: random.Random, name: str) -> Board:
    length, width = rng.randint(400, 2400) * MM, rng.randint(60, 300) * MM
    return Board(
        name,
        length,
        width,
        rng.choice((2_000, 2_700, 5_200)),
        rng.choice(("oak", "oak", "ash")),
        tuple(_zone(rng, length, width) for _ in range(rng.choice((0, 0, 1, 2, 3)))),
        grain=rng.random() < 0.8,
        count=rng.randint(1, 2),
        value=rng.randint(0, 99),
        price=rng.choice((None, None, 500)),
        last=rng.random() < 0.2,
    )


def _zone(rng: random.Random, length: int, width: int) -> Area:
    start, low = rng.randrange(length), rng.randrange(width)
    end, high = start + rng.randint(1, 20_000), low + rng.randint(1, 9_000)
    return Area(start, min(length, end), low, min(width, high))


def _part(rng: random.Random, name: str) -> Part:
    group = rng.choice(("", "", "", "kept together", "run"))
    width = 7_000 if group == "run" else rng.randint(20, 200) * MM
    return Part(
        name,
        rng.randint(50, 1200) * MM,
        width,
        rng.choice((1_800, 2_500)),
        quantity=rng.randint(1, 4),
        turns=group != "run" and rng.random() < 0.3,
        material="oak" if group or rng.random() < 0.8 else "ash",
        group=group,
        rule="in sequence" if group == "run" else "same board" if group else "",
    )
