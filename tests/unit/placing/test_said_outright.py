"""The line that an assumption offers says what was assumed: written so, nothing moves."""

from __future__ import annotations

from collections.abc import Iterator
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.pieces.reading import checked
from tests.unit.placing import test_on_faces as faces
from tests.unit.placing import test_rows_and_lists as rows

from dryfit.geometry.box import Box
from dryfit.workshop import Checked

HALL_BENCH = """piece Hall bench
units mm
overall 1000 wide, 400 deep, 900 high
timber ash
4 posts, upright, 45 x 45, at corners
4 long rails, across, on edge, 60 x 20, into posts, tenon 25, at front and back and top and bottom
2 side rails, front to back, on edge, 60 x 20, into posts, tenon 25, up 400
6 boards, upright, 80 x 12, behind back long rails: glue, spread, no gap at ends
3 hooks, front to back, 60 x 20 x 20, on the front of back top long rail, 100, 450, 800 from left
2 battens, 30 x 18, on the inside of front long rails: screws
2 blocks, 40 long, 30 x 15, on the inside of left side rail, at front and back: glue
1 strip, 30 x 15, against right side rail, 10 below the top: glue
"""
TEXTS = {
    "hall bench": HALL_BENCH,
    "bed": faces.BED,
    "bed without a height": faces.BED.replace(", 15 below the top", ""),
    "case": faces.CASE,
    "headboard": faces.HEADBOARD,
    "stand": faces.STAND,
    "ladder": rows.LADDER,
    "shelves": rows.SHELVES,
    "bench": rows.FRAME,
}


def boxes(found: Checked) -> dict[str, Box]:
    """The box of every copy by its name."""
    assert found.model is not None, [finding.message for finding in found.findings]
    return {copy.name: copy.box for part in found.model.parts for copy in part.copies}


def offered(text: str) -> Iterator[tuple[str, str]]:
    """The notes with one offered line in the place of its own, and what was assumed."""
    found = checked(text)
    assert found.model is not None
    for assumption in found.model.assumptions:
        if assumption.instead and assumption.span:
            lines = text.splitlines()
            lines[assumption.span.line - 1] = assumption.instead
            yield "\n".join(lines) + "\n", assumption.text


@pytest.mark.parametrize("name", TEXTS)
def test_what_is_offered_says_the_same(name: str) -> None:
    before = boxes(checked(TEXTS[name]))
    several = list(offered(TEXTS[name]))
    assert several
    for text, assumed in several:
        if "where they are lapped" not in assumed:
            assert boxes(checked(text)) == before, assumed


HEADS = ("piece", "units", "overall", "timber")
FACES = [text for name, text in TEXTS.items() if name not in {"ladder", "shelves", "bench"}]


@settings(max_examples=25)
@given(st.sampled_from(FACES), st.randoms(use_true_random=False))
def test_the_order_of_the_lines_moves_nothing(text: str, order: Random) -> None:
    lines = text.splitlines()
    heads = [line for line in lines if line.startswith(HEADS)]
    others = [line for line in lines if line not in heads]
    order.shuffle(others)
    assert boxes(checked("\n".join((*heads, *others)) + "\n")) == boxes(checked(text))
