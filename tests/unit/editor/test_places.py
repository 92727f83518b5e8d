"""Columns and the protocol's characters, in each way that a client may count them."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dryfit.diagnostics import Source, Span
from dryfit.editor.places import Encoding, Place, character_of, column_of, place_of

# A letter of one byte, a fraction of two bytes, a dash of three and a face of four; in UTF-16 the
# last is two units and every other one.
LINE = "a½–😀b"
ENCODINGS: tuple[Encoding, ...] = ("utf-8", "utf-16", "utf-32")


@pytest.mark.parametrize(
    ("encoding", "characters"),
    [
        ("utf-8", [0, 1, 3, 6, 10, 11]),
        ("utf-16", [0, 1, 2, 3, 5, 6]),
        ("utf-32", [0, 1, 2, 3, 4, 5]),
    ],
)
def test_characters_are_counted_in_code_units(encoding: Encoding, characters: list[int]) -> None:
    assert [character_of(LINE, column, encoding) for column in range(1, 7)] == characters
    assert [column_of(LINE, character, encoding) for character in characters] == list(range(1, 7))


def test_a_place_inside_a_character_is_before_it_and_one_beyond_the_line_its_end() -> None:
    assert column_of(LINE, 4, "utf-16") == 4
    assert column_of(LINE, 99, "utf-16") == 6


def test_a_span_is_counted_from_0() -> None:
    source = Source("notes", f"piece x\n{LINE}")
    assert place_of(Span(source, 2, 4, 6), "utf-16") == Place(1, 3, 6)


@given(line=st.text(st.characters(exclude_characters="\n\r")), encoding=st.sampled_from(ENCODINGS))
def test_every_column_comes_back(line: str, encoding: Encoding) -> None:
    for column in range(1, len(line) + 2):
        assert column_of(line, character_of(line, column, encoding), encoding) == column
    units = len(
        line.encode({"utf-8": "utf-8", "utf-16": "utf-16-le", "utf-32": "utf-32-le"}[encoding])
    )
    size = {"utf-8": 1, "utf-16": 2, "utf-32": 4}[encoding]
    assert character_of(line, len(line) + 1, encoding) == units // size
