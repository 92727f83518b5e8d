"""What is said of the ways of cutting that were not taken; minutes added up by hand."""

import pytest

from dryfit.plan.operation import Alternative, Takes
from dryfit.plan.ways_as_text import weighed_ways


def way(method: str, takes: Takes | None, *, chosen: bool = False) -> Alternative:
    return Alternative("laps", method, ("rail / lap",), chosen, "its rule", takes=takes)


@pytest.mark.parametrize(
    ("other", "said"),
    [
        # 57 - 18 = 39: the figures of a sentence add up to its sum.
        (
            Takes(1090, 5225),
            "takes 57 min more work and 18 min less setting up: 39 min more in all",
        ),
        (Takes(1290, 4655), "takes 2 min more setting up"),
        (Takes(1255, 4655), "takes 1.5 min less setting up"),
        (Takes(1270, 4705), "takes 5 min more work"),
        (Takes(1260, 4665), "takes 1 min more work and 1 min less setting up: as long in all"),
        (Takes(1270, 4655), "takes as long"),
    ],
)
def test_another_way_is_told_by_what_it_takes_more(other: Takes, said: str) -> None:
    rows = (way("dado set", Takes(1270, 4655), chosen=True), way("single blade", other))
    assert weighed_ways(rows) == (f"laps: dado set; single blade {said}",)


def test_what_was_not_worked_out_is_told_with_the_rule() -> None:
    rows = (
        way("dado set", None, chosen=True),
        way("router table", None),
        way("single blade", None),
    )
    assert weighed_ways(rows) == ("laps: dado set, not router table or single blade (its rule)",)


def test_a_group_that_can_be_made_in_one_way_is_not_told() -> None:
    assert weighed_ways((way("by hand", None, chosen=True),)) == ()
