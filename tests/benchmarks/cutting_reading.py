"""Readers of the cutting instances in `instances/cutting`; its README says what they hold."""

import json
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from dryfit.cutting import Board, Job, Part, Rules

INSTANCES = Path(__file__).parent / "instances" / "cutting"
FREELY = 99
"""Stages enough for any way to cut right through."""


@dataclass(frozen=True, slots=True)
class Bins:
    """How few equal boards hold all parts: none turned, no kerf. `best` is the least known."""

    name: str
    job: Job
    bound: int
    best: int


def bins_in_the_plane() -> tuple[Bins, ...]:
    """Berkey and Wang's classes 1 to 5. `bound` and `best` are of cutting in any way."""
    return tuple(
        Bins(
            case["name"],
            _bins([(w, h) for w, h, n in case["items"] for _ in range(n)], (case["W"], case["H"])),
            case["lb_free"],
            case["ub_free"],
        )
        for case in _read("bp2d")
    )


def bins_on_the_line() -> tuple[Bins, ...]:
    """Falkenauer's one-dimensional instances."""
    return tuple(
        Bins(
            case["name"],
            _bins([(size, 1) for size in case["items"]], (case["cap"], 1)),
            case["best"],
            case["best"],
        )
        for case in _read("bp1d")
    )


@dataclass(frozen=True, slots=True)
class Knapsack:
    """Pieces and values: the most that one board can be worth, cut right through, none turned.

    best       with any number of each
    best_once  with one of each at most
    """

    name: str
    board: tuple[int, int]
    pieces: tuple[tuple[int, int], ...]
    values: tuple[int, ...]
    best: int
    best_once: int


def knapsacks() -> tuple[Knapsack, ...]:
    """Beasley's instances; the optima are from memory."""
    return tuple(
        Knapsack(
            case["name"],
            (case["L"], case["W"]),
            tuple((length, width) for length, width, _ in case["items"]),
            tuple(value for _, _, value in case["items"]),
            case["best_unconstrained_memory"],
            case["best_01_memory"],
        )
        for case in _read("gcut")
    )


def enough_or_not() -> tuple[tuple[str, Job], ...]:
    """Is the wood on hand enough? Whole millimetres there, hundredths here."""
    return tuple(
        (
            case["name"],
            Job(
                tuple(
                    Part(f"part {n}", length * 100, width * 100, thickness * 100, count, turns)
                    for n, (length, width, thickness, count, turns) in enumerate(case["parts"])
                ),
                tuple(
                    Board(
                        f"board {n}",
                        length * 100,
                        width * 100,
                        thickness * 100,
                        value=value,
                        count=count,
                    )
                    for n, (length, width, thickness, value, count) in enumerate(case["boards"])
                ),
                Rules(case["kerf"] * 100, case["kerf"] * 100),
            ),
        )
        for case in _read("enough")
    )


def _bins(sizes: list[tuple[int, int]], board: tuple[int, int]) -> Job:
    parts = tuple(Part(f"part {n}", *size, 1) for n, size in enumerate(sizes))
    stock = Board("bin", *board, 1, count=len(sizes), value=1)
    return Job(parts, (stock,), Rules(0, 0, stages=FREELY))


def _read(name: str) -> list[dict[str, Any]]:
    found: list[dict[str, Any]] = json.loads(
        (INSTANCES / f"{name}.json").read_text(encoding="utf-8")
    )
    return found
