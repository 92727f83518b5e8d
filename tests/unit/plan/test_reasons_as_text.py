"""Reasons in words: nothing is said that does not hold, and costs are told with savings."""

from dataclasses import replace

import pytest

from dryfit.plan.reasons import Elsewhere, StepReasons
from dryfit.plan.reasons_as_text import cost, out_of_visit, ties_in_words


def tied(step: int, before: tuple[int, ...], after: tuple[int, ...]) -> StepReasons:
    return StepReasons(step, None, None, None, None, None, None, before, after, None, None)


@pytest.mark.parametrize(
    ("before", "after", "words"),
    [
        ((), (), ""),
        ((9,), (), "before step 9"),
        ((), (11,), "after step 11"),
        ((8, 9), (), "anywhere back to before step 8"),
        ((8, 9), (11,), "anywhere from before step 8 to after step 11"),
        ((), (11, 12, 13), "anywhere up to after step 13"),
        # Only the outermost places, where those between take longer.
        ((3, 9), (11, 20), "before step 3 or after step 20"),
        ((2, 4, 5, 6), (), "before step 2"),
        ((), (12,), "after step 12"),
    ],
)
def test_places_of_the_same_time(
    before: tuple[int, ...], after: tuple[int, ...], words: str
) -> None:
    assert ties_in_words(tied(10, before, after)) == words


@pytest.mark.parametrize(
    ("place", "words"),
    [
        (
            Elsewhere(9, "before", 35, 0, 35, ("cutter", "height")),
            "3.5 min more setting up (cutter and height), done 3.5 min later",
        ),
        (
            Elsewhere(9, "before", 10, -10, 0, ("walk",)),
            "1 min more setting up (a walk) for 1 min less waiting, done at the same time",
        ),
        (
            Elsewhere(9, "before", 30, 0, 30, ("fence", "walk", "walk")),
            "3 min more setting up (fence and 2 walks), done 3 min later",
        ),
        (
            Elsewhere(9, "before", -20, 4200, 42580, ()),
            "7 h 00 min more waiting for 2 min less setting up, done 2 days and 22 h 58 min later",
        ),
        (Elsewhere(9, "before", 0, 0, 0, ()), "the same time in sum"),
        (Elsewhere(9, "before", 0, 0, -30, ()), "done 3 min sooner"),
    ],
)
def test_what_a_place_costs(place: Elsewhere, words: str) -> None:
    assert cost(place) == words


def test_what_stays_in_the_visit_is_not_told_on_its_page() -> None:
    walked = Elsewhere(7, "before", 10, -10, 0, ("walk",))
    near = Elsewhere(9, "before", 0, 0, 0, ())
    assert out_of_visit(tied(10, (9,), (11,)), (9, 10, 11)) == ""
    assert out_of_visit(tied(10, (4, 9), (11, 20)), (9, 10, 11)) == (
        "Could as well be done before step 4 or after step 20"
    )
    assert out_of_visit(replace(tied(10, (9,), ()), earlier=near), (9, 10)) == ""
    assert out_of_visit(replace(tied(10, (), ()), earlier=walked), (9, 10)) == ""
    dear = replace(walked, changes=("walk", "height"), setup=25)
    assert out_of_visit(replace(tied(10, (), ()), earlier=dear), (9, 10)) == (
        "2.5 min more setting up (height and a walk) for 1 min less waiting if done before step 7"
    )
