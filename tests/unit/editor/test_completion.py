"""What is offered at a place: what the parser can really take there."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.unit.editor.notes import STOOL, asked

from dryfit.editor.completion import Completion, completions
from dryfit.editor.places import Place


def offered(marked: str) -> tuple[Completion, ...]:
    text, line, character = asked(marked)
    return completions("stool.dryfit", text, line, character, "utf-16", {})


def texts(marked: str) -> list[str]:
    return [each.text for each in offered(marked)]


def test_a_line_can_begin_with_an_opener_or_a_name() -> None:
    found = texts(f"{STOOL}|")
    assert {"piece", "overall", "glue up", "legs", "base"} <= set(found)
    assert "into" not in found
    assert found.index("legs") < found.index("piece")


@pytest.mark.parametrize(
    ("begun", "found"),
    [
        ("2 pegs, upr|", ["upright"]),
        ("2 pegs, at co|", ["corners"]),
        ("2 pegs into long r|", ["long rails"]),
        ("2 pegs into lo|", ["long rails"]),
        ("2 pegs, stan|", ["standing"]),
        ("rise = seat.|", ["length", "width", "thickness", "depth", "height"]),
        ("rise = ov|", ["overhang", "overall", "overall size"]),
        (
            "2 pegs,\n    fac|",
            ["facing front", "facing the front", "facing side", "facing the side"],
        ),
        (
            "2 pegs,\n# of the old gate\n    fac|",
            ["facing front", "facing the front", "facing side", "facing the side"],
        ),
        ("sand seat before fin|", ["finish", "finishing"]),
        ("timber white o|", ["white oak"]),
        ("units |", ["mm", "cm", "in"]),
        ("have 1 board of ash, 2400 x 160 x 34, kn|", ["knot"]),
        ("have 1 board of ash, 2400 x 160 x 34, sapwood 20 from fa|", ["far end", "far edge"]),
        ("have 1 sheet of birch ply, 2440 x 1220 x 18, no gr|", ["no grain"]),
        ("buy bo|", ["board"]),
        ("stock f|", ["stock from"]),
    ],
)
def test_what_is_begun_is_gone_on_with(begun: str, found: list[str]) -> None:
    assert texts(f"{STOOL}{begun}\n") == found


@pytest.mark.parametrize(
    "begun",
    [
        "2 peg|",
        "note the leg|",
        "2 pegs # at co|",
        "foo bar at co|",
        "2 pegs, at at le|",
    ],
)
def test_nothing_is_offered_where_nothing_of_the_language_can_stand(begun: str) -> None:
    assert texts(f"{STOOL}{begun}\n") == []


def test_a_pattern_has_its_own_names() -> None:
    block = "pattern trestle with width, depth, height, foot = 60 mm\n2 feet, upright\n"
    inside = texts(f"{STOOL}{block}1 beam, across, onto |\nend\n")
    assert "feet" in inside
    assert "legs" not in inside
    outside = texts(f"{STOOL}{block}end\n1 beam, across, onto |\n")
    assert "legs" in outside
    assert "feet" not in outside


def test_patterns_and_what_can_be_set_of_them_are_offered() -> None:
    assert "apron base" in texts(f"{STOOL}1 base, as |\n")
    assert "reveal" in texts(f"{STOOL}1 stand, as apron base, re|\n")


def test_a_part_is_not_offered_to_itself() -> None:
    assert "pegs" not in texts(f"{STOOL}2 pegs, between |\n")
    assert "legs" in texts(f"{STOOL}2 pegs, between |\n")


def test_what_is_begun_is_replaced() -> None:
    (found,) = offered(f"{STOOL}2 😀 pegs into long r|\n") or offered(
        f"{STOOL}2 pegs into long r|\n"
    )
    assert found.place == Place(14, 12, 18)
    assert (found.declared, found.kind) == (True, "part, opening or glue-up")


@given(
    text=st.text(st.sampled_from("4 legs,\n x:#=()½😀+*into at.\ud800"), max_size=40),
    line=st.integers(0, 5),
    character=st.integers(0, 50),
)
def test_any_place_of_any_text_can_be_asked(text: str, line: int, character: int) -> None:
    for found in completions("n", text, line, character, "utf-16", {}):
        assert found.place.start <= found.place.end
        assert found.place.line == line
