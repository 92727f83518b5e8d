"""Words of the language mistyped, and words that it does not have."""

from __future__ import annotations

from dryfit.diagnostics import Hint
from dryfit.kinds.joints import joint_kinds
from dryfit.notes.mistake import Mistake, Repair
from dryfit.notes.mistakes.expected import expected_words
from dryfit.notes.mistakes.stumble import Stumble
from dryfit.notes.names import canonical
from dryfit.notes.reading.near import nearest
from dryfit.notes.reading.presumed import glue_name_length
from dryfit.notes.reading.word_kinds import UNKNOWN_JOINTS
from dryfit.notes.reading.words import PHRASES, SPELLINGS

_SORTS = (
    ("PLACE", "unknown-place", "a place"),
    ("CORNERS", "unknown-place", "a place"),
    ("JOINT", "unknown-joint", "a joint"),
    ("FASTENER", "unknown-joint", "a joint"),
    ("RUN", "unknown-direction", "a direction"),
    ("DIRECTION", "unknown-direction", "a direction"),
    ("LIE", "unknown-direction", "a way for a part to lie"),
    ("UNIT", "unknown-file-unit", "a unit for a piece"),
    ("STOCK", "unknown-stock", "a kind of stock"),
)
_OF_SEVERAL_WORDS = tuple(
    phrase for phrases in SPELLINGS.values() for phrase in phrases if " " in phrase
)
_JOINTS = ", ".join(kind.written for kind in joint_kinds() if kind.written is not None)


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
                (Hint(f"the joints are {_JOINTS} and glue"),),
            )
    return None


def mistyped(stumble: Stumble) -> Mistake | None:
    """``into lges``, ``acros``, ``at fornt``: nearly a name or a word that would fit."""
    names = tuple(stumble.takeable_names())
    words = tuple(stumble.takeable_spellings())
    for written, start, end in stumble.runs():
        near = nearest(written, (*names, *words))
        if near:
            place = stumble.span(start, end)
            code, message = _unknown(written, near[0], names, stumble.takes)
            repairs = (Repair(f"did you mean `{word}`?", place, word) for word in near)
            return Mistake(code, message, place, tuple(repairs), guess=True)
    return None


def mistyped_phrase(stumble: Stumble) -> Mistake | None:
    """``on egde``, ``half alp``: the first word of a phrase was taken for another word."""
    last = stumble.previous
    if last is None or last.start_pos is None:
        return None
    for written, start, end in stumble.runs_from(last.start_pos, shortest=2):
        if canonical(written) in PHRASES:
            continue
        near = nearest(written, _OF_SEVERAL_WORDS)
        if near:
            place = stumble.span(start, end)
            repairs = (Repair(f"did you mean `{word}`?", place, word) for word in near)
            kinds = frozenset(kind for kind, _ in PHRASES[canonical(near[0])])
            code, message = _unknown(written, near[0], (), kinds)
            return Mistake(code, message, place, tuple(repairs), guess=True)
    return None


def mistyped_order(stumble: Stumble) -> Mistake | None:
    """``finish seat befor glue up``: the wish is taken for the name of a finish."""
    if stumble.opener != "FINISH":
        return None
    for word in stumble.words[1:]:
        written = stumble.text[word.start : word.end]
        near = nearest(written, SPELLINGS["ORDER"])
        if near:
            place = stumble.span(word.start, word.end)
            repairs = (Repair(f"did you mean `{other}`?", place, other) for other in near)
            message = f"`{written}` is not a word that fits here"
            return Mistake("unknown-word", message, place, tuple(repairs), guess=True)
    return None


def together_wished(stumble: Stumble) -> Mistake | None:
    """``finish top together with finish shelf``: a wish says before or after, nothing else."""
    words = [stumble.text[word.start : word.end].lower() for word in stumble.words]
    # A line with sizes, or with what goes into a glue-up, is no wish.
    if "together" not in words or any(sign in ":0123456789" for sign in stumble.text):
        return None
    word = stumble.words[words.index("together")]
    return Mistake(
        "not-understood",
        "a wish says what comes before or after, not what is done together",
        stumble.span(word.start, word.end),
        (
            Hint(
                "take the line out: what has the same finish gets each coat in one visit anyway, "
                "and cuts that share a setting are drawn together where it saves time"
            ),
        ),
    )


def place_expected(stumble: Stumble) -> Mistake | None:
    """``at hall``, ``flush with legs``: after at, from and flush stands a place."""
    last = stumble.previous
    if last is None or last.type not in ("_AT", "_FROM", "_FLUSH", "_WITH"):
        return None
    if not stumble.written or "PLACE" not in stumble.takes:
        return None
    if last.type in ("_FLUSH", "_WITH") and canonical(stumble.written) in stumble.vocabulary.parts:
        repair = stumble.inserting("for example with the top", stumble.at, "top of ")
        message = f"flush with which side of `{stumble.written}`?"
        return Mistake("place-missing", message, stumble.place, (repair,))
    return Mistake(
        "unknown-place",
        f"`{stumble.written}` is not a place",
        stumble.place,
        (Hint("places are front, back, left, right, top and bottom"),),
    )


def stage_expected(stumble: Stumble) -> Mistake | None:
    """``cut after base``: what is waited for is a glue-up."""
    if stumble.takes != {"STAGE"}:
        return None
    return Mistake(
        "stage-missing",
        "what is waited for here is a glue-up",
        stumble.place if stumble.written else stumble.span(0, len(stumble.text)),
        (
            stumble.inserting("say so", stumble.at, "glue up "),
            Hint("for example `after glue up base`"),
        ),
    )


def preposition_expected(stumble: Stumble) -> Mistake | None:
    """``seat legs: buttons``: two parts, and nothing says how they meet."""
    if len(stumble.failure.tokens) != 1 or not {"PREP", "ORDER"} <= stumble.takes:
        return None
    if not any(canonical(run) in stumble.vocabulary.parts for run, _, _ in stumble.runs()):
        return None
    return Mistake(
        "preposition-missing",
        "nothing says how these parts meet",
        stumble.place,
        tuple(
            stumble.inserting(f"write `{word}`", stumble.at, f"{word} ")
            for word in ("onto", "into", "under")
        ),
    )


def no_glue_colon(stumble: Stumble) -> Mistake | None:
    """``glue up base side frames``: no colon between the name and what goes into it."""
    last = stumble.previous
    if stumble.opener != "GLUEUP" or last is None or last.type != "PHRASE":
        return None
    assert last.start_pos is not None
    assert last.end_pos is not None
    first = stumble.word_at(last.start_pos)
    assert first is not None
    length = glue_name_length(stumble.words, first, stumble.vocabulary.parts)
    end = stumble.words[first + length - 1].end if length else last.end_pos
    advice = "put a colon between the name and the parts"
    repair = Repair(advice, stumble.span(end, end), ":")
    name = stumble.text[last.start_pos : end]
    if not length and canonical(name) in stumble.vocabulary.parts:
        return _glue_up_of_a_part(stumble, name, last.start_pos)
    if not length and stumble.written in (",", ";"):
        repair = Repair(advice, stumble.span(end, stumble.failure.end), ":")
    return Mistake(
        "colon-missing",
        "the parts of a glue-up stand behind a colon",
        stumble.span(end, max(end, len(stumble.text.rstrip()))),
        (repair, Hint("for example `glue up base: side frames, long rails`")),
    )


def _glue_up_of_a_part(stumble: Stumble, name: str, start: int) -> Mistake:
    return Mistake(
        "glue-up-of-a-part",
        f"`{name}` is one part: a glue-up joins several",
        stumble.span(start, start + len(name)),
        (
            Hint(
                "take the line out; a panel of staves is glued by its own line, with `glued from`, "
                "and a cure of its own cannot be written for it"
            ),
        ),
    )


def cure_without_glue_up(stumble: Stumble) -> Mistake | None:
    """``glued from 4, cure 4 h``: only a glue-up has a cure."""
    if stumble.written.lower() != "cure" or stumble.opener == "GLUEUP":
        return None
    return Mistake(
        "not-understood",
        "`cure` stands in the line of a glue-up only",
        stumble.place,
        (Hint("take it out; the staves of a panel cure as long as the shop's glue asks"),),
    )


def does_not_fit(stumble: Stumble) -> Mistake | None:
    """Whatever else does not fit, with what would."""
    return Mistake(
        "not-understood",
        f"`{stumble.written}` does not fit here{expected_words(stumble.takes)}",
        stumble.place,
        (stumble.replacing("the line can be read without it", ""),),
    )


def _unknown(
    written: str, spelling: str, names: tuple[str, ...], takes: frozenset[str]
) -> tuple[str, str]:
    """Return the code and the message for a word, by what it is nearest to."""
    if spelling in names:
        return "unknown-name", f"nothing here is called `{written}`"
    kinds = {kind for kind, _ in PHRASES.get(canonical(spelling), ()) if kind in takes}
    for kind, code, sort in _SORTS:
        if kind in kinds:
            return code, f"`{written}` is not {sort}"
    return "unknown-word", f"`{written}` is not a word that fits here"


SIGN_CASES = (together_wished, no_glue_colon, mistyped_order)
BEFORE_NEAR_CASES = (unit_of_file, joint_not_in_language)
NEAR_CASES = (mistyped, mistyped_phrase)
CASES = (place_expected, stage_expected, preposition_expected)
LAST_CASES = (cure_without_glue_up, does_not_fit)
