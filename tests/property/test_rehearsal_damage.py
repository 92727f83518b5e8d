"""The rehearsal is judged by what it catches: damaged plans, kind by kind, and sound ones."""

import pytest
from tests.pieces.reading import FILES
from tests.rehearsal_damage import KINDS, Kind
from tests.rehearsal_damage.judging import faults_of_the_sound, judged, table

FEW = 2
"""Plans of each kind in every run."""
MANY = 15
"""Plans of each kind with ``-m many``: more than a thousand in all."""
IN_EACH_KIND, IN_ALL, WITH_THE_RIGHT_REASON = 95, 98, 90
"""Least shares in per cent (issue 4)."""


def share_caught(kind: Kind, count: int) -> float:
    """The plans of a kind in which anything is found, in per cent."""
    verdicts = judged(kind, count)
    return 100 * sum(verdict.caught for verdict in verdicts) / len(verdicts)


def missed(kind: Kind, count: int) -> list[str]:
    """The pieces whose damaged plans pass."""
    return [verdict.piece for verdict in judged(kind, count) if not verdict.caught]


@pytest.mark.parametrize("name", sorted(FILES))
def test_a_sound_plan_is_never_refused(name: str) -> None:
    assert faults_of_the_sound(name) == ()


def test_the_kinds_are_told_apart() -> None:
    assert len(KINDS) == len({kind.name for kind in KINDS}) >= 24


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)
def test_a_damage_has_its_place_in_the_pieces_and_is_caught_for_the_right_reason(
    kind: Kind,
) -> None:
    verdicts = judged(kind, FEW)
    assert len(verdicts) == FEW
    assert all(verdict.caught for verdict in verdicts), missed(kind, FEW)
    assert all(verdict.rightly for verdict in verdicts)


@pytest.mark.many
@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)
def test_a_damage_is_caught_in_many_plans(kind: Kind) -> None:
    assert share_caught(kind, MANY) >= IN_EACH_KIND, missed(kind, MANY)


@pytest.mark.many
def test_many_damages_are_caught_for_the_right_reason() -> None:
    assert_judged_well(MANY)
    assert sum(len(judged(kind, MANY)) for kind in KINDS) >= 1000


def assert_judged_well(count: int) -> None:
    """The shares over all kinds; the table is printed with ``pytest -s``."""
    print(f"\n{table(count)}")  # noqa: T201 - for whoever judges the rehearsal
    everything = [verdict for kind in KINDS for verdict in judged(kind, count)]
    caught = sum(verdict.caught for verdict in everything)
    right = sum(verdict.rightly for verdict in everything)
    assert 100 * caught >= IN_ALL * len(everything)
    assert 100 * right >= WITH_THE_RIGHT_REASON * len(everything)
    wrong = [
        kind.name for kind in KINDS if not any(verdict.rightly for verdict in judged(kind, count))
    ]
    assert not wrong
