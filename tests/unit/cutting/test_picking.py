"""Things that can be made in several ways, picked together with the boards."""

from collections.abc import Sequence
from dataclasses import replace

import pytest

from dryfit.cutting import Board, Job, Part, Picked, Rules, Ways, picked, violations

# Boards 100 wide. A leg is 600 long, or 2 of 300 that are 60 wide; two rails are 400 long, or 700
# and narrow. Saw cuts take nothing.
PARTS = (
    Part("leg whole", 600, 100, 1),
    Part("leg halves", 300, 60, 1, quantity=2),
    Part("rail short", 400, 100, 1, quantity=2),
    Part("rail narrow", 700, 40, 1, quantity=2),
)
THINGS = (
    (frozenset({"leg whole"}), frozenset({"leg halves"})),
    (frozenset({"rail short"}), frozenset({"rail narrow"})),
)


def job(*lengths: int) -> Job:
    boards = tuple(Board(f"B{n}", length, 100, 1, value=1) for n, length in enumerate(lengths))
    return Job(PARTS, boards, Rules(0, 0))


def only(job: Job, things: Sequence[Ways], ways: Sequence[int]) -> Job:
    """Return the job with no more than the parts that are cut where these ways are picked."""
    taken = {name for thing, way in zip(things, ways, strict=True) for name in thing[way]}
    of_things = {name for thing in things for way in thing for name in way}
    parts = tuple(part for part in job.parts if part.id in taken or part.id not in of_things)
    return replace(job, parts=parts)


@pytest.mark.parametrize(
    ("lengths", "leg", "rail"),
    [
        ((600, 400, 400), {0, 1}, {0}),
        # Both rails side by side take 700 x 80, which leaves 600 for either leg.
        ((700, 600), {0, 1}, {1}),
        ((800, 300, 300), {1}, {0, 1}),
        ((700, 300, 300), {1}, {1}),
    ],
)
def test_the_ways_are_those_that_the_boards_hold(
    lengths: tuple[int, ...], leg: set[int], rail: set[int]
) -> None:
    asked = job(*lengths)
    found = picked(asked, THINGS, 1)
    assert found.lost == 0
    assert found.ways[0] in leg
    assert found.ways[1] in rail
    assert violations(only(asked, THINGS, found.ways), found.layouts) == ()


def test_what_cannot_all_be_cut_is_counted_and_what_is_cut_is_sound() -> None:
    asked = job(500, 500)
    found = picked(asked, THINGS, 1)
    assert found.lost > 0
    faults = violations(only(asked, THINGS, found.ways), found.layouts, ())
    assert all("missing" in fault or "lack" in fault for fault in faults), faults


def test_the_cheapest_boards_decide_on_the_ways_too() -> None:
    boards = (
        Board("dear", 1400, 100, 1, price=900),
        Board("cheap", 700, 100, 1, price=100, count=2),
    )
    asked = Job(PARTS, boards, Rules(0, 0))
    found = picked(asked, THINGS, 1, cheapest=True)
    assert {layout.board for layout in found.layouts} == {"cheap"}
    assert found.ways[1] == 1


def test_the_same_comes_out_every_time() -> None:
    def once() -> Picked:
        return picked(job(700, 300, 300), THINGS, 1)

    assert once() == once()
