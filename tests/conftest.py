"""Settings of every test: property tests draw the same examples each time, and time nothing."""

import gc
from collections.abc import Iterator
from dataclasses import replace
from functools import wraps
from importlib import import_module
from pathlib import Path

import pytest
from hypothesis import HealthCheck, settings

from dryfit.order import Problem, Result, Schedule, Totals, violations

_TESTS = Path(__file__).resolve().parent
_PIECES = frozenset(
    path.stem
    for folder in (_TESTS / "pieces", _TESTS.parent / "examples")
    for path in folder.glob("*.dryfit")
)

_AFTER_ALL_PIECES = "~"

settings.register_profile(
    "dryfit",
    database=None,
    deadline=None,
    derandomize=True,
    max_examples=60,
    print_blob=False,
    suppress_health_check=[HealthCheck.too_slow],
)
settings.load_profile("dryfit")


@pytest.fixture(scope="session", autouse=True)
def _every_plan_is_checked() -> Iterator[None]:
    """Hold the schedule behind every plan that a test makes against the checker of `order`.

    The order and its sums, as they are after ties are settled: the checker shares no code with
    what made them.
    """
    module = import_module("dryfit.planning.make_plan")
    unchecked = module.ordered

    @wraps(unchecked)
    def checked(problem: Problem, *others: object) -> tuple[Result, Schedule, Totals]:
        result, schedule, totals = unchecked(problem, *others)
        order = tuple(entry.task for entry in schedule.entries)
        printed = replace(result, order=order, schedule=schedule, totals=totals)
        # Waiting may be worth a little set-up: what is proved is told of the engine's order.
        proved = totals.changeover == result.lower_bound
        assert violations(problem, replace(printed, proven=proved)) == ()
        return result, schedule, totals

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(module, "ordered", checked)
        yield


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption(
        "--update-golden", action="store_true", help="rewrite tests/golden from what is made now"
    )


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Put all tests of one piece in a row, pieces first.

    Tests are handed out to the processes in stretches, so that most pieces are placed and planned
    in one process, once.
    """
    items.sort(key=_piece_of)


def pytest_collection_finish() -> None:
    """Look for rubbish seldom: plans and models are kept to the end, and there are many of them."""
    gc.freeze()
    gc.set_threshold(100_000, 20, 100)


def _piece_of(item: pytest.Item) -> str:
    callspec = getattr(item, "callspec", None)
    for value in callspec.params.values() if callspec is not None else ():
        first = value[0] if isinstance(value, tuple) and value else value
        name = first.stem if isinstance(first, Path) else first
        if isinstance(name, str) and name in _PIECES:
            return name
    return _AFTER_ALL_PIECES
