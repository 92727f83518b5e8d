"""What a line asks of its wood is heeded in each spelling of the words, capitals and all."""

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
    "words", ["bookmatched", "Book matched", "book-matched", "Bookmatched from the slab"]
)
def test_every_spelling_is_bookmatched(words: str) -> None:
    assert reading.model_of(BOX.format(words)).part("lid").bookmatched
    assert not reading.model_of(BOX.format("grain across")).part("lid").bookmatched


@pytest.mark.parametrize(
    ("words", "wish"),
    [
        ("Resawn", "resawn"),
        ("Sawn in two from a thicker board", "resawn"),
        ("In Sequence", "in sequence"),
        ("From the same Board", "one board"),
        ("bookmatched from one board", "one board"),
        ("Live edge at front", "waney"),
    ],
)
def test_each_other_wish_is_read_whatever_its_spelling(words: str, wish: str) -> None:
    text = BOX.replace("1 lid", "2 lids, at front and back").replace("240 deep", "480 deep")
    assert wish in reading.model_of(text.format(f"{words}, 240 wide")).part("lid").wishes
