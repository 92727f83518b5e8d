"""Published orders of jobs with a cost for each pair: sop/README.md names source and optima."""

import pytest
from tests.benchmarks.reading import length, raised, read_ordering

from dryfit.order import changeover_bound, solve, violations

OPTIMA = {
    "ESC07": 2125,
    "ESC11": 2075,
    "ESC12": 1675,
    "ESC25": 1681,
    "br17.10": 55,
    "br17.12": 55,
}

EFFORT = dict.fromkeys(OPTIMA, 100) | {"ESC25": 200}


@pytest.mark.parametrize("name", OPTIMA)
def test_published_optima_are_reached(name: str) -> None:
    problem = read_ordering(name)
    result = solve(problem, k=100, effort=EFFORT[name])
    assert violations(problem, result) == ()
    assert length(name, result.order) == OPTIMA[name]
    assert result.totals.changeover == OPTIMA[name] + raised(name)
    assert result.lower_bound <= result.totals.changeover


@pytest.mark.parametrize("name", OPTIMA)
def test_no_bound_is_above_a_published_optimum(name: str) -> None:
    assert 0 < changeover_bound(read_ordering(name)) <= OPTIMA[name] + raised(name)
