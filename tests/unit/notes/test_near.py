from hypothesis import given
from hypothesis import strategies as st

from dryfit.notes.reading.near import distance, nearest

words = st.text(alphabet="abx", max_size=6)


def slow_distance(first: str, second: str) -> int:
    """Optimal string alignment by its definition."""
    if not first or not second:
        return len(first) + len(second)
    best = min(
        slow_distance(first[:-1], second) + 1,
        slow_distance(first, second[:-1]) + 1,
        slow_distance(first[:-1], second[:-1]) + (first[-1] != second[-1]),
    )
    if first[-2:] == second[-2:][::-1] and len(first) > 1 < len(second):
        best = min(best, slow_distance(first[:-2], second[:-2]) + 1)
    return best


@given(words, words)
def test_distance_is_that_of_the_definition_up_to_its_limit(first: str, second: str) -> None:
    assert distance(first, second, 2) == min(slow_distance(first, second), 3)
    assert distance(first, second) == distance(second, first)


def test_swapped_letters_come_first_and_then_what_looks_alike() -> None:
    assert nearest("lges", ["lugs", "legs", "lags"]) == ("legs",)
    assert nearest("rial", ["trial", "rail", "rill"])[0] == "rail"
    assert nearest("mn", ["m", "in", "mm", "ft"]) == ("mm", "m", "in")


def test_of_one_name_the_likelier_number_is_offered() -> None:
    assert nearest("side frams", ["side frame", "side frames"]) == ("side frames",)
    assert nearest("side fram", ["side frames", "side frame"]) == ("side frame",)


def test_what_is_not_near_is_not_offered() -> None:
    assert nearest("plinth", ["legs", "seat"]) == ()
    assert nearest("legs", ["legs", "left"]) == ()
    assert nearest("x", ["y", "xs"]) == ()
