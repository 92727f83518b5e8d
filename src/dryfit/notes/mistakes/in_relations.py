"""A place said of another part in words that the language reads otherwise."""

from __future__ import annotations

import re

from dryfit.diagnostics import Hint
from dryfit.notes.mistake import Mistake, Repair
from dryfit.notes.mistakes.stumble import Stumble
from dryfit.notes.names import canonical
from dryfit.notes.reading.word_kinds import PLACE_WORDS

_SET_BACK = re.compile(r"(set back) [^,;:]*$", re.IGNORECASE)
_FROM_PLACE = re.compile(r"from (?:the )?[^\W\d]+", re.IGNORECASE)
_TWO_PLACES = re.compile(r"between (?:the )?([^\W\d_]+) and (?:the )?([^\W\d_]+) *(?=[,;:]|$)")


def edge_of_a_host(stumble: Stumble) -> Mistake | None:
    """``30 above the bottom edge of sides``, ``flush with back end of sides``: a side is enough."""
    last = stumble.previous
    if last is None or last.type != "EDGE" or stumble.written.lower() != "of":
        return None
    assert last.start_pos is not None
    assert last.end_pos is not None
    start = len(stumble.text[: last.start_pos].rstrip())
    written = stumble.text[last.start_pos : last.end_pos]
    repair = Repair("name the side alone", stumble.span(start, last.end_pos), "")
    message = f"a side of a part is named without `{written}`"
    place = stumble.span(last.start_pos, stumble.failure.end)
    return Mistake("unknown-word", message, place, (repair,), guess=True)


def set_back_from(stumble: Stumble) -> Mistake | None:
    """``set back 30 from front of sides``: set back is from what it joins, and names nothing."""
    last = stumble.previous
    at = stumble.at
    if last is not None and last.type == "_FROM" and last.start_pos is not None:
        at = last.start_pos
    found = _SET_BACK.search(stumble.text[:at])
    if not found or not _FROM_PLACE.match(stumble.text, at):
        return None
    start, end = found.span(1)
    drop = Repair("a distance from a side is written so", stumble.span(start, end + 1), "")
    message = "`set back` is measured from the face of what the part joins, and names no other"
    return Mistake("unknown-word", message, stumble.span(start, stumble.failure.end), (drop,))


def how_far_from(stumble: Stumble) -> Mistake | None:
    """``from the front``: it does not say how far."""
    last = stumble.previous
    if last is None or last.type != "_FROM" or canonical(stumble.written) not in PLACE_WORDS:
        return None
    if "PLACE" in stumble.takes or last.start_pos is None:
        return None
    place = stumble.span(last.start_pos, stumble.failure.end)
    said = stumble.written.lower()
    return Mistake(
        "measure-missing",
        f"how far from the {said}?",
        place,
        (Hint(f"write `{{20}} from {said}`"),),
    )


def between_places(stumble: Stumble) -> Mistake | None:
    """``between front and back``: a part is between parts; a place is none."""
    found = _TWO_PLACES.search(stumble.text)
    if not found or found.start() > stumble.at or found.end() < stumble.at:
        return None
    places = found.groups()
    if any(canonical(place) not in PLACE_WORDS for place in places):
        return None
    named = [_parts_at(stumble, place) for place in places]
    repairs: tuple[Repair | Hint, ...] = ()
    if all(len(names) == 1 for names in named):
        said = f"between {named[0][0]} and {named[1][0]}"
        repairs = (Repair(f"did you mean `{said}`?", stumble.span(*found.span()), said),)
    return Mistake(
        "unknown-name",
        f"`{places[0]}` and `{places[1]}` are places: no part is called so",
        stumble.span(*found.span()),
        (
            *repairs,
            Hint("name the two parts; between front and back of the piece nothing need be said"),
        ),
    )


def _parts_at(stumble: Stumble, place: str) -> list[str]:
    words = stumble.vocabulary
    names = [name for name in sorted(words.parts) if name.split(" ")[-1] == canonical(place)]
    return [words.written.get(name, name) for name in names]


def glue_up_without_opener(stumble: Stumble) -> Mistake | None:
    """``2 end panels: legs and rails``: a glue-up that does not say so."""
    types = [token.type for token in stumble.failure.tokens]
    parts = stumble.vocabulary.parts
    if types[:3] != ["INT", "PHRASE", "_COLON"] or types[3:] not in ([], ["NAME"]):
        return None
    colon = stumble.failure.tokens[2].end_pos or 0
    listed = re.split(r",|;|&|\band\b", stumble.text[colon:])
    if not all(canonical(item.strip()) in parts for item in listed):
        return None
    start = stumble.failure.tokens[0].start_pos or 0
    opener = stumble.inserting("is it glued up of these?", start, "glue up ")
    message = "parts stand behind the colon, and nothing says how they are met"
    place = stumble.span(colon, len(stumble.text.rstrip()))
    return Mistake("preposition-missing", message, place, (opener,), guess=True)


CASES = (
    edge_of_a_host,
    set_back_from,
    how_far_from,
    between_places,
    glue_up_without_opener,
)
