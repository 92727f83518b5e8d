"""Leaves that are opened like a book are so in each spelling of the word."""

import pytest
from tests.pieces import reading

BOX = """piece Lid
units mm
overall 360 wide, 240 deep, 12 high
timber maple
1 lid, flat, 12 thick, from 2 staves, {}, across
finish oil, 2 coats
"""


@pytest.mark.parametrize(
    "words", ["bookmatched", "book matched", "book-matched", "bookmatched from the slab"]
)
def test_every_spelling_is_bookmatched(words: str) -> None:
    assert reading.model_of(BOX.format(words)).part("lid").bookmatched
    assert not reading.model_of(BOX.format("grain across")).part("lid").bookmatched
