"""Words of the language mistyped, and words that it does not have."""

from __future__ import annotations

from dryfit.diagnostics import Hint
from dryfit.notes.mistake import Mistake, Repair
from dryfit.notes.mistakes.expected import expected_words
from dryfit.notes.reading.near import nearest
from dryfit.notes.mistakes.stumble import Stumble
from dryfit.notes.names import canonical
from dryfit.notes.reading.words import PHRASES, UNKNOWN_JOINTS

_SORTS = (
    ("PLACE", "unknown-place", "a place"),
    ("CORNERS", "unknown-place", "a place"),
    ("JOINT", "unknown-joint", "a joint"),
    ("FASTENER", "unknown-joint", "a joint"),
    ("RUN", "unknown-direction", "a direction"),
    ("DIRECTION", "unknown-direction", "a direction"),
    ("UNIT", "unknown-file-unit", "a unit for a piece"),
    ("STOCK", "unknown-stock", "a kind of stock"),
)
_JOINTS = "half lap, tenon, housing, groove, glue, screws and buttons"


def unit_of_file(stumble: Stumble) -> Mistake | None:
    """``units furlongs``."""
    if stumble.opener != "UNITS" or "UNIT" not in stumble.takes or not stumble.written:
        return None
    near = nearest(stumble.written, ("mm", "cm", "m", "inches"))
    return Mistake(
        "unknown-file-unit",
        f"`{stumble.written}` is not a unit for a piece",
        stumble.place,
        (
            *(stumble.replacing(f"did you mean `{unit}`?", unit) for unit in near),
            Hint("write `units mm`, `units cm`, `units m` or `units inches`"),
        ),
    )


def joint_not_in_language(stumble: Stumble) -> Mistake | None:
    """``dovetail``: a joint of the trade that cannot be written here."""
    if not {"JOINT", "FASTENER"} & stumble.takes:
        return None
    for written, start, end in stumble.runs():
        if canonical(written) in UNKNOWN_JOINTS:
            return Mistake(
                "unknown-joint",
                f"`{written}` is not a joint that these notes can say",
                stumble.span(start, end),
                (Hint(f"the joints are {_JOINTS}"),),
            )
    return None


def mistyped_word(stumble: Stumble) -> Mistake | None:
    """``acros``, ``tennon``, ``at fornt``: nearly a word that would fit."""
    spellings = tuple(stumble.takeable_spellings())
    for written, start, end in stumble.runs():
        near = nearest(written, spellings)
        if near:
            place = stumble.span(start, end)
            code, sort = _sort_of(near[0], stumble.takes)
            return Mistake(
                code,
                f"`{written}` is not {sort}",
                place,
                tuple(Repair(f"did you mean `{word}`?", place, word) for word in near),
            )
    return None


def place_expected(stumble: Stumble) -> Mistake | None:
    """``at hall``: after at, from and flush stands a place."""
    last = stumble.previous
    if last is None or last.type not in ("_AT", "_FROM", "_FLUSH") or not stumble.written:
        return None
    return Mistake(
        "unknown-place",
        f"`{stumble.written}` is not a place",
        stumble.place,
        (Hint("places are front, back, left, right, top and bottom"),),
    )


def no_glue_colon(stumble: Stumble) -> Mistake | None:
    """``glue up base side frames``: no colon between the name and what goes into it."""
    last = stumble.previous
    if stumble.opener != "GLUEUP" or last is None or last.type != "PHRASE":
        return None
    assert last.end_pos is not None
    at = last.end_pos
    advice = "put a colon between the name and the parts: `glue up base: legs, rails`"
    comma = Repair(advice, stumble.span(at, at + 1), ":")
    return Mistake(
        "colon-missing",
        "the parts of a glue-up stand behind a colon",
        stumble.span(at, max(at, len(stumble.text.rstrip()))),
        (comma, Hint(advice)) if stumble.written == "," else (Hint(advice),),
    )


def does_not_fit(stumble: Stumble) -> Mistake | None:
    """Whatever else does not fit, with what would."""
    return Mistake(
        "not-understood",
        f"`{stumble.written}` does not fit here{expected_words(stumble.takes)}",
        stumble.place,
        (stumble.replacing("the line can be read without it", ""),),
    )


def _sort_of(spelling: str, takes: frozenset[str]) -> tuple[str, str]:
    kinds = {kind for kind, _ in PHRASES.get(canonical(spelling), ()) if kind in takes}
    for kind, code, sort in _SORTS:
        if kind in kinds:
            return code, sort
    return "unknown-word", "a word that fits here"


NEAR_CASES = (unit_of_file, joint_not_in_language, mistyped_word)
CASES = (place_expected, no_glue_colon)
LAST_CASES = (does_not_fit,)
