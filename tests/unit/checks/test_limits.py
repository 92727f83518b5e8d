"""Limits on the height of what lies flat: how high it stands, not how thick it is."""

from __future__ import annotations

import pytest
from tests.pieces.reading import checked

from dryfit.diagnostics import Diagnostic

# The top lies 500 to 520 up, the aprons stand on edge, 60 high.
TABLE = """piece Table
overall 600 wide, 400 deep, 520 high
timber oak
4 legs, upright, 40 x 40, at corners
2 aprons, across, 60 x 20, tenon 20 long 6 thick into legs
1 top, flat, 20 thick, onto legs: screws
glue up base: legs, aprons
{limit}
"""


def limits(words: str) -> list[Diagnostic]:
    """What is told of the limit."""
    findings = checked(TABLE.format(limit=words)).findings
    return [each for each in findings if each.code.startswith("limit-")]


@pytest.mark.parametrize(
    "words", ["top between 500 and 525 high", "top.height at most 525", "height of top at most 525"]
)
def test_the_height_of_a_part_that_lies_flat_is_how_high_it_stands(words: str) -> None:
    told = limits(words)
    assert {each.code for each in told} == {"limit-kept"}
    assert told[0].message == (
        "top: the height of its upper side comes to 520 mm, 5 mm below the limit of 525 mm"
    )


def test_a_top_that_stands_too_high_is_told_with_the_word_for_its_own_size() -> None:
    (told,) = limits("top at most 510 high")
    assert told.code == "limit-broken"
    assert told.message.endswith("comes to 520 mm, 10 mm above the limit of 510 mm")
    assert "`thick`" in told.hints[0].message


@pytest.mark.parametrize(
    ("words", "message"),
    [
        ("top at most 25 thick", "top: thickness comes to 20 mm, 5 mm below the limit of 25 mm"),
        ("aprons at most 65 high", "apron: height comes to 60 mm, 5 mm below the limit of 65 mm"),
        ("at most 530 high", "the piece: height comes to 520 mm, 10 mm below the limit of 530 mm"),
    ],
)
def test_other_sizes_are_those_of_the_part_and_of_the_piece(words: str, message: str) -> None:
    assert [each.message for each in limits(words)] == [message]
