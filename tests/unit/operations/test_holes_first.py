"""Holes for what is screwed on from behind are bored before the finish (TRADE D12, H64)."""

from tests.pieces.reading import changed, model_of, text_of
from tests.unit.operations.worked import listed


def bored(text: str) -> dict[str, str]:
    """What is said of holes, by the operation that says it."""
    work, _ = listed(model_of(text))
    return {
        each.id: str(detail[0])
        for each in work.operations
        for detail in each.details
        if "bore the holes" in str(detail[0])
    }


def test_the_holes_for_knobs_are_bored_before_the_first_coat_of_the_doors() -> None:
    (told,) = bored(text_of("wall_case")).items()
    assert told[0] == "door / coat 1"
    assert told[1].startswith("Before it, bore the holes for the knobs in the doors, ")


def test_nothing_is_bored_without_knobs_or_without_a_finish() -> None:
    text = text_of("wall_case")
    assert bored(changed(text, ("bought 2 knobs, 25 dia, for doors\n", ""))) == {}
