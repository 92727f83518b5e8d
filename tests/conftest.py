"""Settings of every test: property tests draw the same examples each time, and time nothing."""

from pathlib import Path

import pytest
from hypothesis import HealthCheck, settings

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


def _piece_of(item: pytest.Item) -> str:
    callspec = getattr(item, "callspec", None)
    for value in callspec.params.values() if callspec is not None else ():
        first = value[0] if isinstance(value, tuple) and value else value
        name = first.stem if isinstance(first, Path) else first
        if isinstance(name, str) and name in _PIECES:
            return name
    return _AFTER_ALL_PIECES
