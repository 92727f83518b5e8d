"""Settings of every test: property tests draw the same examples each time, and time nothing."""

import pytest
from hypothesis import HealthCheck, settings

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
