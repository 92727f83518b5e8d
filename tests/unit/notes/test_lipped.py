"""What each spelling of a lipping reads to: banded or not, how thick, of what, at which edges."""

import pytest
from tests.unit.notes.nowhere import said

from dryfit.notes.tree import Lipped, Number, PartsLine

Read = tuple[bool, int | None, str | None, str]


def read(text: str) -> Read:
    line = said(f"2 bars, {text}, 20 from left", "leg")
    assert isinstance(line, PartsLine)
    (lip,) = [clause for clause in line.clauses if isinstance(clause, Lipped)]
    thick = lip.thickness.value if isinstance(lip.thickness, Number) else None
    places = " ".join(place for place, _ in lip.places)
    return lip.banded, None if thick is None else int(thick), lip.timber, places


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("lipped 6 thick of oak at front", (False, 6, "oak", "front")),
        ("lipped 6 of oak at front and back", (False, 6, "oak", "front back")),
        ("lipped at front 6 thick of white oak", (False, 6, "white oak", "front")),
        ("lipped with oak at the rear edge", (False, None, "oak", "back")),
        ("lipped with 6 thick of oak at left end", (False, 6, "oak", "left")),
        ("edged in ash all around", (False, None, "ash", "all")),
        ("with a lipping of oak on the front edge", (False, None, "oak", "front")),
        ("solid edging 8 of ash along both long edges", (False, 8, "ash", "long edge")),
        ("lipped front and both ends", (False, None, None, "front ends")),
        ("edge-banded at front", (True, None, None, "front")),
        ("edgebanded 1 thick of oak at all four edges", (True, 1, "oak", "all")),
        ("iron-on edging on all edges", (True, None, None, "all")),
        ("banding on the front edge and the back", (True, None, None, "front back")),
    ],
)
def test_every_spelling_is_read(text: str, wanted: Read) -> None:
    assert read(text) == wanted


@pytest.mark.parametrize("name", ["front lip", "lip", "edging", "long edging", "banding strip"])
def test_parts_may_be_called_so(name: str) -> None:
    line = said(f"1 {name}, across, 30 x 6", "leg")
    assert isinstance(line, PartsLine)
    assert line.name == name
