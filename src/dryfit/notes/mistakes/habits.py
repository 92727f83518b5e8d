"""What makers are used to write, where the language wants another word or sign."""

from __future__ import annotations

from dryfit.notes.mistake import Mistake, Repair
from dryfit.notes.mistakes.stumble import Stumble
from dryfit.notes.names import canonical
from dryfit.notes.reading.word_kinds import PLACE_WORDS

_MEANT_PREPOSITIONS = {
    "in": ("into", "inside"),
    "to": ("onto", "into"),
    "at": ("onto", "into"),
    "over": ("onto",),
    "through": ("into",),
    "across": ("crossing",),
}


def stock_without_of(stumble: Stumble) -> Mistake | None:
    """``have 2 boards ash``: the timber stands behind of."""
    last = stumble.previous
    if last is None or last.type != "STOCK" or stumble.word_at(stumble.at) is None:
        return None
    repair = stumble.inserting("write `of`", stumble.at, "of ")
    return Mistake(
        "of-missing", "the timber stands behind `of`", stumble.place, (repair,), guess=True
    )


def square(stumble: Stumble) -> Mistake | None:
    """``40 square``: both sizes are written."""
    last = stumble.previous
    if stumble.written.lower() != "square" or last is None or last.start_pos is None:
        return None
    written = stumble.text[last.start_pos : last.end_pos]
    place = stumble.span(last.start_pos, stumble.failure.end)
    repair = Repair(f"write `{written} x {written}`", place, f"{written} x {written}")
    return Mistake("unknown-word", "a square has two sizes here", place, (repair,), guess=True)


def comma_between_places(stumble: Stumble) -> Mistake | None:
    """``at left, right``: places are joined by and."""
    tokens = stumble.failure.tokens
    if canonical(stumble.written) in PLACE_WORDS and len(tokens) >= 2:
        place, comma = tokens[-2:]
        start, end = stumble.at, stumble.failure.end
    elif len(tokens) >= 3 and tokens[-1].type == "PLACE":
        # The second place was taken for the beginning of what is named next: "right post".
        place, comma, second = tokens[-3:]
        assert second.start_pos is not None
        assert second.end_pos is not None
        start, end = second.start_pos, second.end_pos
    else:
        return None
    if place.type != "PLACE" or comma.type != "_COMMA" or comma.start_pos is None:
        return None
    repair = Repair("write `and`", stumble.span(comma.start_pos, start), " and ")
    return Mistake(
        "and-missing", "two places are joined by and", stumble.span(start, end), (repair,)
    )


def other_preposition(stumble: Stumble) -> Mistake | None:
    """``in legs``, ``to legs``: words that leave open how parts meet."""
    word = stumble.written.lower()
    meant = _MEANT_PREPOSITIONS.get(word)
    if meant is None or "PREP" not in stumble.takes:
        return None
    repairs = (stumble.replacing(f"write `{other}`", other) for other in meant)
    message = f"`{word}` does not say how the parts meet"
    return Mistake("unknown-word", message, stumble.place, tuple(repairs), guess=True)


CASES = (stock_without_of, square, other_preposition)
