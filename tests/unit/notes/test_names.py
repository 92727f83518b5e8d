import pytest
from hypothesis import given
from hypothesis import strategies as st

from dryfit.notes import canonical
from dryfit.notes.names import plural
from dryfit.notes.reading.words import PHRASES

# Plurals of English, from memory.
PLURALS = [
    ("leg", "legs"),
    ("box", "boxes"),
    ("glass", "glasses"),
    ("shelf", "shelves"),
    ("half", "halves"),
    ("leaf", "leaves"),
    ("knife", "knives"),
    ("stave", "staves"),
    ("sleeve", "sleeves"),
    ("groove", "grooves"),
    ("foot", "feet"),
    ("body", "bodies"),
    ("tray", "trays"),
    ("tie", "ties"),
    ("bench", "benches"),
    ("niche", "niches"),
    ("brush", "brushes"),
    ("case", "cases"),
    ("base", "bases"),
    ("size", "sizes"),
    ("edge", "edges"),
    ("rail", "rails"),
    ("truss", "trusses"),
    ("chassis", "chassis"),
    ("series", "series"),
    ("axe", "axes"),
]


@pytest.mark.parametrize(("one", "many"), PLURALS)
def test_singular_and_plural_are_one_name(one: str, many: str) -> None:
    assert canonical(one) == one
    assert canonical(many) == one


@pytest.mark.parametrize(("one", "many"), PLURALS[:5] + PLURALS[10:16])
def test_plural_is_written_as_a_maker_writes_it(one: str, many: str) -> None:
    assert plural(f"long {one}") == f"long {many}"


@pytest.mark.parametrize("word", ["across", "glass", "bus", "radius", "is", "gas", "ash"])
def test_words_that_only_look_plural_stay(word: str) -> None:
    assert canonical(word) == word


def test_case_blanks_hyphens_and_every_word_s_plural_make_no_difference() -> None:
    spellings = ["Long Rails", "long-rail", "LONG_RAILS", "  long   rail ", "longs rail"]
    assert {canonical(spelling) for spelling in spellings} == {"long rail"}


@given(st.text(alphabet="abcdefghilorsuvxyz -_", max_size=24))
def test_a_canonical_name_is_its_own_canonical_name(text: str) -> None:
    assert canonical(canonical(text)) == canonical(text)


def test_phrases_of_the_language_are_kept_in_their_canonical_form() -> None:
    assert all(canonical(phrase) == phrase for phrase in PHRASES)
