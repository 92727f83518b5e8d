"""The example in the documentation of the library runs, and comes to what it shows."""

import doctest

import dryfit.order


def test_the_example_is_true() -> None:
    result = doctest.testmod(dryfit.order)
    assert result.attempted >= 5
    assert result.failed == 0
