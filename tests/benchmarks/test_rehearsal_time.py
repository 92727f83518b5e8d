"""Measured by hand: `pytest -m benchmark -s tests/benchmarks/test_rehearsal_time.py`.

How long a plan is played beside how long it is made, side by side in one run; processor time.
"""

import time

import pytest
from tests.pieces.reading import FILES, checked, text_of

from dryfit import workshop
from dryfit.rehearsal.rehearse import rehearse
from dryfit.rehearsing import goal_of


def row_of(name: str, text: str) -> tuple[str, int, int, float, float]:
    """Name, steps, operations, and the seconds to plan and to play."""
    found = checked(text)
    begun = time.process_time()
    plan, _ = workshop.plan(found, lambda _: None)
    planned = time.process_time() - begun
    assert plan is not None
    assert found.model is not None
    assert found.shop is not None
    goal = goal_of(found.model)
    begun = time.process_time()
    assert rehearse(plan, goal, found.shop) == ()
    played = time.process_time() - begun
    operations = sum(len(step.operations) for step in plan.steps)
    return name, len(plan.steps), operations, planned, played


@pytest.mark.benchmark
def test_playing_beside_planning() -> None:
    print(f"\n{'piece':18} steps  ops   plan s   play s   play/plan")  # noqa: T201
    for name in sorted(FILES):
        title, steps, operations, planned, played = row_of(name, text_of(name))
        print(  # noqa: T201
            f"{title:18} {steps:5} {operations:4}   {planned:6.3f}   {played:6.3f}   "
            f"{played / planned:6.2f}"
        )
