"""Small cutting jobs by lot, with everything that a job can have."""

import random

from dryfit.cutting import Area, Board, Job, Part, Rule, Rules

MM = 100


def lot(seed: int) -> Job:
    """Up to four boards with zones, up to six parts of which some belong together."""
    rng = random.Random(seed)  # noqa: S311 - lots, not secrets
    return Job(
        tuple(_part(rng, f"part {number}") for number in range(rng.randint(1, 5))),
        tuple(_board(rng, f"board {number}") for number in range(rng.randint(1, 5))),
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
        rng.choice((2_000, 2_700, 2_700, 5_200)),
        rng.choice(("oak", "oak", "oak", "ash")),
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
    rules: dict[str, Rule] = {"": "", "kept together": "same board", "run": "in sequence"}
    width = 7_000 if group == "run" else rng.randint(20, 120) * MM
    return Part(
        name,
        rng.randint(50, 900) * MM,
        width,
        rng.choice((1_800, 2_500)),
        quantity=rng.randint(1, 3),
        turns=group != "run" and rng.random() < 0.3,
        material="oak" if group or rng.random() < 0.9 else "ash",
        group=group,
        rule=rules[group],
        boards=rng.choice((None, None, None, frozenset(("board 0", "board 2")))),
    )


def planted(seed: int) -> Job:
    """A job that can be cut, because its parts were cut from its boards by lot."""
    rng = random.Random(seed)  # noqa: S311 - as above
    kerfs = rng.choice((0, 3, 4)), rng.choice((0, 3))
    trim = rng.choice((0, 5))
    boards: list[Board] = []
    sizes: list[tuple[int, int]] = []
    for number in range(rng.randint(1, 4)):
        board = Board(
            f"board {number}",
            rng.randint(60, 240),
            rng.randint(30, 160),
            10,
            count=rng.choice((1, 1, 2)),
        )
        for _ in range(board.count):
            _sawn(rng, (board.length - 2 * trim, board.width), kerfs, rng.randint(1, 4), sizes)
        boards.append(board)
    kept = [size for size in sizes if rng.random() < 0.95 and min(size) > 0]
    parts = []
    for number, (length, width) in enumerate(kept):
        turns = rng.random() < 0.3
        size = (width, length) if turns and rng.random() < 0.5 else (length, width)
        parts.append(Part(f"part {number}", *size, 10, turns=turns))
    return Job(tuple(parts), tuple(boards), Rules(*kerfs, end_trim=trim, stages=9))


def _sawn(
    rng: random.Random,
    size: tuple[int, int],
    kerfs: tuple[int, int],
    depth: int,
    out: list[tuple[int, int]],
) -> None:
    length, width = size
    crosscut = rng.random() < length / (length + width)
    run, kerf = (length, kerfs[0]) if crosscut else (width, kerfs[1])
    if depth == 0 or rng.random() < 0.15 or run < 20 + kerf:
        out.append(size)
        return
    at = rng.randint(5, run - kerf - 5)
    for part in (at, run - at - kerf):
        smaller = (part, width) if crosscut else (length, part)
        _sawn(rng, smaller, kerfs, depth - 1, out)
