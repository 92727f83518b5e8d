"""What a move is said to come to is what the decoder says of the order that it leaves."""

import pytest
from tests.benchmarks.reading import read_shop
from tests.property.order_lots import lot
from tests.unit.order.shops import EIGHT_TO_FOUR, random_problem, seeded

from dryfit.order import Problem, Unsolvable
from dryfit.order.decoder import advance, elapsed, opening
from dryfit.order.improve import keeps_visits
from dryfit.order.instance import Instance, compiled
from dryfit.order.shifting import company_of, shift, tears_a_visit
from dryfit.order.track import Terms, Track, finish_of, terms_of, untried
from dryfit.order.trying import take, tried
from dryfit.order.validity import require_solvable

WORTH, NO_LIMIT = 4, 10**12


def played(terms: Terms, order: tuple[int, ...]) -> Track:
    track = untried(terms, order)
    whole = tried(terms, track, 0, list(order), WORTH, NO_LIMIT)
    assert whole is not None
    take(terms, track, whole)
    return track


def figures(instance: Instance, order: list[int]) -> tuple[int, ...]:
    shop = opening(instance)
    advance(instance, shop, order)
    cures = sum(instance.hours.work_at(shop.ends[task]) for task in instance.cured)
    return shop.setup, shop.waiting, shop.work, elapsed(instance, shop), cures


def moved(problem: Problem, seed: int, moves: int) -> None:
    """Try moves and take half of them; every order is compared with the decoder's figures."""
    instance = compiled(problem)
    terms, company = terms_of(instance), company_of(instance)
    track = played(terms, instance.topological)
    rng = seeded(seed)
    for _ in range(moves):
        move = shift(company, track, rng)
        if move is None:
            continue
        first, stretch = move
        order = [*track.order[:first], *stretch, *track.order[first + len(stretch) :]]
        torn = tears_a_visit(company, track, first, stretch)
        if keeps_visits(instance, tuple(track.order)):
            assert torn == (not keeps_visits(instance, tuple(order)))
        trial = tried(terms, track, first, stretch, WORTH, NO_LIMIT)
        assert trial is not None
        setup, waiting, *_ = figures(instance, order)
        assert (trial.setup, trial.waiting) == (setup, waiting)
        exact = WORTH * setup + waiting
        assert tried(terms, track, first, stretch, WORTH, exact) is not None
        assert tried(terms, track, first, stretch, WORTH, exact - 1) is None
        if rng.random() < 0.5:
            take(terms, track, trial)
            ours = (track.setup, track.waiting, track.works[-1], finish_of(terms, track))
            assert (*ours, track.cures) == figures(instance, track.order)
            assert [track.place[task] for task in track.order] == list(range(len(order)))


@pytest.mark.parametrize("start", range(0, 120, 30))
def test_tiny_problems_with_everything_in_them(start: int) -> None:
    for seed in range(start, start + 30):
        for problem in (random_problem(seed), lot(seed)):
            try:
                require_solvable(problem)
            except Unsolvable:
                continue
            if len(problem.tasks) > 1 and not problem.choices:
                moved(problem, seed, 25)


@pytest.mark.parametrize("name", ["s11_3", "s1_5"])
def test_workshops_round_the_clock_and_by_day(name: str) -> None:
    moved(read_shop(name), 1, 150)
    moved(read_shop(name, EIGHT_TO_FOUR, walk=10), 2, 150)
