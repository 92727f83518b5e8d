"""Places, openings and faces of parts said in other words than the language has."""

from __future__ import annotations

import re

from dryfit.diagnostics import Hint
from dryfit.notes.mistake import Mistake, Repair
from dryfit.notes.mistakes.stumble import Stumble
from dryfit.notes.names import canonical
from dryfit.notes.reading.near import nearest
from dryfit.notes.reading.words import PHRASES

_OPENING = re.compile(r"\b(?:opening|space)\b", re.IGNORECASE)
_FACE_WORDS = ("inside", "outside", "front", "back", "left", "right", "top", "underside")
_ON_THE_FACE = re.compile(r"on (?:the )?faces? of\b", re.IGNORECASE)
_OVERHANGING = frozenset(
    canonical(word)
    for word in ("overhanging", "overhang", "overhangs", "projecting", "projects", "oversailing")
)
_AMOUNT = re.compile(r"(?: by)? *([0-9½¼¾][0-9 ./½¼¾'\"]*(?:mm|cm|in)?(?=[ ,;]|$))")
_BELOW = re.compile(r"\b(?:on|onto|on top of) (?:the )?([^\W\d][^,;:]*)", re.IGNORECASE)
_FLOOR = re.compile(r"(?:the )?(?:floor|ground)(?= *(?:[,;]|$))", re.IGNORECASE)
_OPENING_EXAMPLE = "for example `bay = opening between posts and top rail`"


def opening_line(stumble: Stumble) -> Mistake | None:
    """``bay = opening``, ``bay opening between posts``, ``opening between posts``."""
    found = _OPENING.search(stumble.text)
    types = [token.type for token in stumble.failure.tokens]
    if not found or "," in stumble.text[: found.start()]:
        return None
    before = stumble.text[: found.start()].strip()
    if types and types[0] in ("VALUE", "NAME") and before.endswith(("=", "is")):
        return _opening_of_what(stumble, found.end())
    if types or before[:1].isdigit() or "between" not in stumble.text[found.end() :]:
        return None
    if before:
        end = len(stumble.text[: found.start()].rstrip())
        sign = stumble.inserting("put `=` between the name and the opening", end, " =")
        message = "no `=` stands between the name and the opening"
        return Mistake("value-sign-missing", message, stumble.span(0, end), (sign,))
    start = found.start()
    name = stumble.inserting("give it one", start, "bay = ")
    place = stumble.span(start, found.end())
    return Mistake("name-missing", "an opening needs a name", place, (name,))


def _opening_of_what(stumble: Stumble, end: int) -> Mistake | None:
    rest = stumble.text[end:]
    word = re.match(r"\s*([^\W\d_]+)", rest)
    if word is None:
        place = stumble.span(end - len("opening"), end)
        return Mistake(
            "line-unfinished", "an opening between what?", place, (Hint(_OPENING_EXAMPLE),)
        )
    start, stop = end + word.start(1), end + word.end(1)
    repair = Repair("write `between`", stumble.span(start, stop), "between")
    message = "an opening is what lies between parts"
    return Mistake("unknown-word", message, stumble.span(start, stop), (repair,), guess=True)


def opening_mistyped(stumble: Stumble) -> Mistake | None:
    """``in bya``: nearly the name of an opening."""
    if stumble.written.lower() != "in" or "PREP" not in stumble.takes:
        return None
    first = stumble.word_at(stumble.at)
    if first is None or first + 1 >= len(stumble.words):
        return None
    spellings = tuple(stumble.name_spellings(stumble.vocabulary.spaces))
    for written, start, end in stumble.runs_from(stumble.words[first + 1].start):
        near = nearest(written, spellings)
        if near:
            place = stumble.span(start, end)
            repairs = tuple(Repair(f"did you mean `{name}`?", place, name) for name in near)
            message = f"no opening is called `{written}`"
            return Mistake("unknown-name", message, place, repairs, guess=True)
    return None


def face_without_of(stumble: Stumble) -> Mistake | None:
    """``on inside rails``, ``on the face of rails``: which face, and of what."""
    last = stumble.previous
    if _ON_THE_FACE.match(stumble.rest):
        return _which_face(stumble, stumble.at)
    if last is None or last.type != "PREP" or last.start_pos is None:
        return None
    if _ON_THE_FACE.match(stumble.text, last.start_pos):
        return _which_face(stumble, last.start_pos)
    word = stumble.written.lower()
    if last.value != "onto" or word not in _FACE_WORDS:
        return None
    start = last.start_pos
    place = stumble.span(start, stumble.failure.end)
    repair = Repair(f"write `on the {word} of`", place, f"on the {word} of")
    return Mistake("unknown-word", f"the {word} of which part?", place, (repair,), guess=True)


def _which_face(stumble: Stumble, start: int) -> Mistake:
    found = _ON_THE_FACE.match(stumble.text, start)
    assert found is not None
    place = stumble.span(start, found.end())
    repairs = tuple(
        Repair(f"the {side}", place, f"on the {side} of") for side in ("inside", "outside", "back")
    )
    return Mistake("which-face", "a part has several faces: on which of them?", place, repairs)


def on_for_at(stumble: Stumble) -> Mistake | None:
    """``set in 30 on the ends``, ``waney on front``: where is said with at."""
    last = stumble.previous
    if last is None or last.type != "PREP" or last.start_pos is None or last.end_pos is None:
        return None
    written = stumble.text[last.start_pos : last.end_pos].lower()
    kinds = {kind for kind, _ in PHRASES.get(canonical(stumble.written), ())}
    after_place = not stumble.written and _is_place_last(stumble)
    if written != "on" or not (kinds & {"ENDS", "PLACE", "CORNERS"} or after_place):
        return None
    place = stumble.span(last.start_pos, last.end_pos)
    repair = Repair("write `at`", place, "at")
    return Mistake("unknown-word", "where it is, is said with `at`", place, (repair,), guess=True)


def _is_place_last(stumble: Stumble) -> bool:
    return bool(stumble.failure.tokens) and stumble.failure.tokens[-1].type == "PLACE"


def place_alone(stumble: Stumble) -> Mistake | None:
    """``handed left, 6 thick``, ``waney on front``: a place, and nothing that says what is there.

    A place begins the name of a copy or of an edge; before a comma it is neither.
    """
    last = stumble.previous
    if last is None or last.type != "PLACE" or stumble.written not in ("", ",", ";"):
        return None
    if "NAME" not in stumble.takes and "EDGE" not in stumble.takes:
        return None
    assert last.start_pos is not None
    assert last.end_pos is not None
    before = stumble.failure.tokens[-2] if len(stumble.failure.tokens) > 1 else None
    written = stumble.text[last.start_pos : last.end_pos]
    place = stumble.span(last.start_pos, last.end_pos)
    if before is not None and before.type == "PREP" and before.start_pos is not None:
        on = stumble.span(before.start_pos, last.end_pos)
        repairs: tuple[Repair, ...] = (Repair("write `at`", on, f"at {written}"),)
    else:
        repairs = (
            Repair("is it where the part is?", place, f"at {written}"),
            Repair("take it out", place, ""),
        )
    return Mistake("place-alone", f"`{written}` of what?", place, repairs)


def up_for_up_and_down(stumble: Stumble) -> Mistake | None:
    """``gap 2 up, 1 at ends``: the direction has two words."""
    last = stumble.previous
    if last is None or last.type not in ("_UP", "_DOWN") or stumble.written not in ("", ",", ";"):
        return None
    assert last.start_pos is not None
    assert last.end_pos is not None
    place = stumble.span(last.start_pos, last.end_pos)
    repair = Repair("say it with both words", place, "up and down")
    written = stumble.text[last.start_pos : last.end_pos]
    message = f"after `{written}` stands how far"
    return Mistake("line-unfinished", message, place, (repair,), guess=True)


def overhanging(stumble: Stumble) -> Mistake | None:
    """``overhanging 20 all round``: what lies below is set in; nothing near it means this."""
    if canonical(stumble.written) not in _OVERHANGING or "_LAPPING" not in stumble.takes:
        return None
    amount = _AMOUNT.match(stumble.text, stumble.failure.end)
    below = _BELOW.search(stumble.text)
    name = below.group(1) if below else ""
    known = canonical(name) in stumble.vocabulary.parts
    what = f"the line of the {name}" if known else "the line of what lies below"
    inset = f"set in {amount.group(1)}" if amount else "set in 20"
    return Mistake(
        "overhang",
        f"`{stumble.written}` cannot be said of what lies on top",
        stumble.place,
        (
            Hint(
                f"take it out, and write `{inset}` on {what}: what lies on top reaches to the "
                "overall size, and so that much beyond"
            ),
            Hint("or write its length and width; at some sides only, say `set in {20} at front`"),
        ),
    )


def onto_floor(stumble: Stumble) -> Mistake | None:
    """``1 base, flat, onto floor``: what stands on the floor is so high above it."""
    last, found = stumble.previous, _FLOOR.match(stumble.rest)
    if found is None or last is None or last.type != "PREP" or last.value != "onto":
        return None
    place = stumble.span(last.start_pos or 0, stumble.at + found.end())
    repair = Repair("write `0 above the floor`", place, "0 above the floor")
    return Mistake("unknown-word", "the floor is no part of the piece", place, (repair,))


CASES = (
    overhanging,
    onto_floor,
    opening_line,
    opening_mistyped,
    face_without_of,
    on_for_at,
    place_alone,
    up_for_up_and_down,
)
