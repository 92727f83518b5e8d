"""What is taken for granted can be said outright: the offered line is read, and changes nothing."""

from __future__ import annotations

import re

import pytest
from tests.pieces.reading import (
    FILES,
    checked,
    checked_piece,
    errors,
    model_of,
    model_of_piece,
    text_of,
)

from dryfit.diagnostics import Assumption
from dryfit.notes.reading.lines import sense_lines
from dryfit.placing.model import Model
from dryfit.workshop import Checked


def offered() -> list[tuple[str, int]]:
    return [
        (name, number)
        for name in FILES
        for number, assumption in enumerate(model_of_piece(name).assumptions)
        if assumption.instead
        and assumption.belongs_to == "notes"
        # Lines of the air are the same in every piece: test_air writes them out once.
        and not assumption.instead.startswith(("wood at", "stands"))
    ]


def rewritten(text: str, found: Checked, assumption: Assumption) -> str:
    """The notes with the offered line in the place of the one that was read."""
    line = assumption.instead or ""
    first_word = line.split(" ", 1)[0]
    coats_a_part = re.match(r"finish [a-z ]+ with |no finish on ", line) is not None
    if first_word in {"groove", "measured"} or coats_a_part:
        # A line of its own, beside the one that it speaks of.
        return f"{text}{line}\n"
    for statement in sense_lines(found.source):
        lines = {stretch.line for stretch in statement.stretches}
        same_opener = assumption.span is None and statement.text.startswith(first_word)
        if same_opener or (assumption.span and assumption.span.line in lines):
            kept = text.split("\n")
            kept[min(lines) - 1 : max(lines)] = [line]
            return "\n".join(kept)
    raise AssertionError(assumption)


def sizes(model: Model) -> dict[str, tuple[object, ...]]:
    return {
        part.name: (
            part.length,
            part.width,
            part.thickness,
            sorted((copy.name, copy.box.low, copy.box.high) for copy in part.copies),
        )
        for part in model.parts
        if not part.made
    }


@pytest.mark.parametrize(("name", "number"), offered())
def test_the_offered_line_is_read_and_says_what_was_assumed(name: str, number: int) -> None:
    _is_read(text_of(name), checked_piece(name), number)


FRAME = """piece Frame
overall 400 wide, 30 deep, 500 high
timber oak
2 stiles, upright, 60 x 30, at left and right, facing front
1 rail, across, on edge, 60 x 30, up 20, {joint}
1 top rail, across, on edge, 60 x 30, down 20, tenon 30 long 10 thick 36 wide into stiles
glue up frame: stiles, rail, top rail
"""
JOINTS = (
    "through tenon 10 thick into stiles, pegs 8",
    "tenon 30 long into stiles, 2 pegs 8",
    "tenon into stiles, pegs 8",
    "tenon 30 long, 10 thick, 5 from top, into stiles, drawbored",
    "2 tenons 30 long into stiles, pegs 8",
    "wedged through tenon into stiles",
    "haunched tenon 30 long, 10 thick, into stiles",
)


@pytest.mark.parametrize("joint", JOINTS)
def test_a_size_of_a_tenon_is_offered_where_the_tenon_stands_not_behind_its_pegs(
    joint: str,
) -> None:
    text = FRAME.format(joint=joint)
    found = checked(text)
    assert found.model is not None
    offers = [
        number
        for number, each in enumerate(found.model.assumptions)
        if each.instead and each.text.startswith(("the tenons of rail", "the haunches of the rail"))
    ]
    assert offers
    for number in offers:
        _is_read(text, found, number)


def _is_read(text: str, found: Checked, number: int) -> None:
    assert found.model is not None
    assumption = found.model.assumptions[number]
    again = checked(rewritten(text, found, assumption))
    assert [finding.message for finding in errors(again)] == []
    assert again.model is not None
    assert sizes(again.model) == sizes(found.model), assumption.text
    assert assumption.text not in [each.text for each in again.model.assumptions]


@pytest.mark.parametrize("name", FILES)
def test_an_assumption_is_a_sentence_said_once(name: str) -> None:
    # Two joints of one part may be sized alike: each is told at its own line.
    said = [(each.text, each.span) for each in model_of_piece(name).assumptions]
    assert len(said) == len(set(said))
    assert all(text and not text.endswith(".") for text, _ in said)


def test_parts_lapped_at_unequal_thickness_are_listed_flush() -> None:
    """H82: 30 meets 20; which faces are flush is taken for granted, with the words that say so."""
    model = model_of(
        """piece Frame
overall 500 wide, 400 deep, 30 high
timber oak
2 rails, across, flat, 60 x 30, 500 long, at front and back
2 ends, front to back, flat, 60 x 20, 400 long, at left and right
rails crossing ends: half lap
glue up frame: rails, ends
"""
    )
    (flush,) = [each for each in model.assumptions if "flush" in each.text]
    assert flush.text == "the rails are flush with the top of the ends that they are lapped with"
    assert (flush.instead or "").endswith("flush with top of ends")
