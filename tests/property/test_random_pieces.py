"""Random pieces in random shops: what is planned passes both judges, and little is refused.

A failing seed is looked at with `python -m tests.generator.trial SEED SEED+1`.
"""

from functools import cache

import pytest
from tests.generator import random_notes, random_shop
from tests.generator.trial import Outcome, tried

FEW, MANY = 30, 500
REFUSED = 10
"""Most of a hundred pieces that may be refused with an error: sizes drawn by chance may clash."""


@cache
def outcome_of(seed: int) -> Outcome:
    """What becomes of a piece, tried once in each run."""
    return tried(seed)


def judged(seed: int) -> tuple[str, ...]:
    """What the oracle of the tests and the rehearsal say of the plan of a seed."""
    outcome = outcome_of(seed)
    assert outcome.planned or outcome.errors, "neither planned nor refused with a reason"
    return (*outcome.oracle, *outcome.rehearsal)


@pytest.mark.parametrize("seed", range(FEW))
def test_what_is_planned_passes(seed: int) -> None:
    assert judged(seed) == ()


@pytest.mark.many
@pytest.mark.parametrize("seed", range(FEW, FEW + MANY))
def test_what_is_planned_passes_for_many(seed: int) -> None:
    assert judged(seed) == ()


@pytest.mark.many
def test_most_pieces_are_planned() -> None:
    refused = [seed for seed in range(FEW + MANY) if not outcome_of(seed).planned]
    assert len(refused) * 100 <= REFUSED * (FEW + MANY), refused


def test_a_number_always_gives_the_same_piece_and_shop() -> None:
    assert [random_notes(seed) for seed in range(20)] == [random_notes(seed) for seed in range(20)]
    assert [random_shop(seed) for seed in range(20)] == [random_shop(seed) for seed in range(20)]


def test_pieces_and_shops_differ() -> None:
    assert len({random_notes(seed) for seed in range(FEW)}) == FEW
    shops = [random_shop(seed) for seed in range(FEW)]
    assert None in shops, "the shipped shop is never drawn"
    assert len(set(shops)) > FEW // 3
