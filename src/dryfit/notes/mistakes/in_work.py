"""Finishes, limits and measurements said in other words."""

from __future__ import annotations

import re

from dryfit.diagnostics import Hint
from dryfit.notes.mistake import Mistake, Repair
from dryfit.notes.mistakes.stumble import Stumble
from dryfit.notes.reading.grammar import END
from dryfit.notes.reading.near import nearest

_FINISHING = ("paint", "oil", "varnish", "wax", "stain", "lacquer", "coat", "prime")
_DIMENSION = re.compile(r"\s*(?:\.|'s)?\s*([^\W\d_]+)")


def finishing_verb(stumble: Stumble) -> Mistake | None:
    """``paint rails with milk paint``, ``oil the seat``: every finish begins with finish."""
    if stumble.failure.tokens or not stumble.words or len(stumble.words) < 2:
        return None
    first = stumble.words[0]
    written = stumble.text[first.start : first.end]
    if written.lower() not in _FINISHING:
        return None
    place = stumble.span(first.start, first.end)
    repair = Repair("write `finish`", place, "finish")
    what = stumble.text[first.end :].strip()
    hint = Hint(f"for example `finish {what} with {written.lower()}`")
    advice: tuple[Repair | Hint, ...] = (repair,) if " with " in stumble.text else (hint,)
    return Mistake("unknown-opener", f"no line begins with `{written}`", place, advice)


def finish_twice_on_a_line(stumble: Stumble) -> Mistake | None:
    """``finish posts with oil and rails with wax``: each has a line of its own."""
    if stumble.opener != "FINISH" or stumble.written.lower() != "with":
        return None
    if not any(token.type == "_WITH" for token in stumble.failure.tokens):
        return None
    return Mistake(
        "said-twice",
        "said twice: with what it is finished",
        stumble.place,
        (Hint("give each a line of its own; several coats of one are joined by `then`"),),
    )


def glue_without_with(stumble: Stumble) -> Mistake | None:
    """``glue up base: legs, polyurethane glue``: the glue is said with with."""
    if stumble.opener != "GLUEUP" or "NAME" not in stumble.takes or "_WITH" not in stumble.takes:
        return None
    found = re.match(r"[^,;:]*\bglue\b|epoxy\b|polyurethane\b", stumble.rest, re.IGNORECASE)
    if not found:
        return None
    repair = stumble.inserting("write `with` before it", stumble.at, "with ")
    place = stumble.span(stumble.at, stumble.at + found.end())
    message = "a glue is no part: it is said by `with`"
    return Mistake("with-missing", message, place, (repair,), guess=True)


def of_missing(stumble: Stumble) -> Mistake | None:
    """``finish inside boxes with oil``, ``mask inside``: it does not say of what."""
    last = stumble.previous
    if last is None or last.type not in ("SURFACE", "NOUN", "EVERY") or "_OF" not in stumble.takes:
        return None
    if stumble.opener not in ("FINISH", "BARE"):
        return None
    assert last.start_pos is not None
    assert last.end_pos is not None
    written = stumble.text[last.start_pos : last.end_pos]
    repair = stumble.inserting("write `of`", stumble.at, "of ")
    place = stumble.place if stumble.written else stumble.span(last.start_pos, last.end_pos)
    advice: tuple[Repair | Hint, ...] = (repair,) if stumble.written else (Hint("name the part"),)
    return Mistake("surface-of-what", f"the {written} of what?", place, advice)


def staves_missing(stumble: Stumble) -> Mistake | None:
    """``from 7``: seven staves."""
    tokens = stumble.failure.tokens
    if "_STAVES" not in stumble.takes or len(tokens) < 2 or END in stumble.takes:
        return None
    if tokens[-2].type != "_FROM" or tokens[-1].end_pos is None or tokens[-2].start_pos is None:
        return None
    start, end = tokens[-2].start_pos, tokens[-1].end_pos
    return Mistake(
        "line-unfinished",
        f"`{stumble.text[start:end]}` of what?",
        stumble.span(start, end),
        (Repair("of how many staves it is glued?", stumble.span(end, end), " staves"),),
    )


def between_and(stumble: Stumble) -> Mistake | None:
    """``between 480 to 500 wide``: between has an and."""
    if stumble.written.lower() not in ("to", "-") or "_AND" not in stumble.takes:
        return None
    if not any(token.type == "_BETWEENSIZES" for token in stumble.failure.tokens):
        return None
    repair = stumble.replacing("write `and`", "and")
    message = "`between` needs an `and` between its sizes"
    return Mistake("and-missing", message, stumble.place, (repair,))


def reason_without_comma(stumble: Stumble) -> Mistake | None:
    """``at most 620 high the sill``: the reason stands behind a comma."""
    if stumble.takes != {"_COMMA", END} or not stumble.written:
        return None
    if not any(token.type in ("_ATMOST", "_ATLEAST") for token in stumble.failure.tokens):
        return None
    last = stumble.previous
    assert last is not None
    assert last.end_pos is not None
    repair = stumble.inserting("put a comma before it", last.end_pos, ",")
    message = "the reason for a limit stands behind a comma"
    return Mistake("comma-missing", message, stumble.place, (repair,))


def measured_unknown(stumble: Stumble) -> Mistake | None:
    """``measured psot.thickness = 29.6``: a dimension of a part that is not there."""
    last = stumble.previous
    if stumble.opener != "MEASURED" or last is None or last.type != "PHRASE":
        return None
    if stumble.written not in (".", "'") or last.start_pos is None or last.end_pos is None:
        return None
    written = stumble.text[last.start_pos : last.end_pos]
    place = stumble.span(last.start_pos, last.end_pos)
    near = nearest(written, stumble.name_spellings(stumble.vocabulary.parts))
    repairs = tuple(Repair(f"did you mean `{name}`?", place, name) for name in near)
    return Mistake("unknown-name", f"no part is called `{written}`", place, repairs)


CASES = (
    finishing_verb,
    finish_twice_on_a_line,
    glue_without_with,
    of_missing,
    staves_missing,
    between_and,
    reason_without_comma,
    measured_unknown,
)
