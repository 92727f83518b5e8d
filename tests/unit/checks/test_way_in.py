"""The way in (M19): what is told of what does not go through, and what mends it."""

from __future__ import annotations

from tests.pieces.reading import checked

CASE = """piece Case
overall 1200 wide, 300 deep, {high} high
timber pine
fixed to the wall
{way}
2 sides, upright, 300 x 18, facing side, at left and right
2 shelves, flat, 300 x 18, into sides, housing 6, up 0 and {top}
glue up case: sides, shelves
"""


def told(way: str, high: int = 800) -> list[tuple[str, str, str]]:
    text = CASE.format(way=way, high=high, top=high - 18)
    return [
        (each.code, each.message, each.hints[0].message)
        for each in checked(text).findings
        if each.rule == "M19"
    ]


def test_what_goes_through_is_not_told() -> None:
    assert told("way in 720 wide, 1980 high") == []
    assert told("way in 720 wide, 1980 high, turn 900") == []


def test_too_large_for_the_door_names_the_side_that_is() -> None:
    ((code, message, remedy),) = told("way in 250 wide, 700 high")
    assert code == "way-too-narrow"
    assert "its smallest side, 300 mm x 800 mm, is larger than the opening" in message
    assert "2 x side, 2 x shelf get in one by one" in remedy


def test_where_even_a_board_does_not_go_through_nothing_is_promised() -> None:
    ((_, _, remedy),) = told("way in 15 wide, 700 high")
    assert "make it smaller" in remedy


def test_too_long_for_the_corner_says_how_long_would_do() -> None:
    ((_, message, remedy),) = told("way in 400 wide, 1980 high, turn 500", high=900)
    assert "goes round the corner, from 400 mm into 500 mm, up to" in message
    assert "2 x side, 2 x shelf get in one by one" in remedy
    assert "make the housing of `case` knock-down" in remedy
    assert "`built in place`" in remedy


def test_built_in_place_tells_in_what_it_goes_in() -> None:
    ((code, message, _),) = told("built in place\nway in 400 wide, 1980 high, turn 500", high=900)
    assert code == "goes-in-apart"
    assert message == (
        "the piece goes in as 2 x side, 2 x shelf; what was left apart is glued there"
    )


def test_of_two_ways_both_must_be_passed() -> None:
    both = "way in 720 wide, 1980 high\nway in 250 wide, 700 high"
    assert [code for code, _, _ in told(both)] == ["way-too-narrow"]
