"""Patterns that nothing is called, settings that they do not know, names inside of them."""

from __future__ import annotations

import re

from dryfit.diagnostics import Hint
from dryfit.notes.mistake import Mistake, Repair
from dryfit.notes.mistakes.stumble import Stumble
from dryfit.notes.names import canonical, plural
from dryfit.notes.reading.near import nearest


def unknown_pattern(stumble: Stumble) -> Mistake | None:
    """``as leg bsae``: no pattern of that name."""
    last = stumble.previous
    if last is None or last.type != "_AS" or "PATTERNNAME" not in stumble.takes:
        return None
    first = stumble.word_at(stumble.at)
    end = stumble.name_end(first) if first is not None else stumble.failure.end
    written = stumble.text[stumble.at : end].strip()
    place = stumble.span(stumble.at, end)
    known = sorted(stumble.vocabulary.patterns)
    near = [
        Repair(f"did you mean `{name}`?", stumble.span(start, stop), name)
        for run, start, stop in stumble.runs()
        for name in nearest(run, known)
    ]
    listed = ", ".join(f"`{name}`" for name in known[:6])
    hint = Hint(f"the patterns are: {listed}") if known else Hint(_NO_PATTERNS)
    advice: tuple[Repair | Hint, ...] = (*near[:2],) if near else (hint,)
    if not written:
        return Mistake(
            "line-unfinished", "as what? the name of a pattern is missing", place, (hint,)
        )
    return Mistake("unknown-pattern", f"no pattern is called `{written}`", place, advice)


def pattern_without_as(stumble: Stumble) -> Mistake | None:
    """``1 bench, leg base, 900 wide``: a pattern is used by as."""
    if "_AS" not in stumble.takes:
        return None
    for written, start, end in stumble.runs():
        if canonical(written) in stumble.vocabulary.patterns:
            place = stumble.span(start, end)
            repair = stumble.inserting("write `as`", start, "as ")
            message = f"`{written}` is a pattern, and a part is made `as` it"
            return Mistake("as-missing", message, place, (repair,))
    return None


def pattern_header(stumble: Stumble) -> Mistake | None:
    """``pattern with width``, ``pattern drawer with width, 12``: no name, a number of nothing."""
    last = stumble.previous
    if stumble.opener != "PATTERN" or last is None:
        return None
    if last.value == "with" or (last.type == "PATTERN" and stumble.written in (":", ",")):
        place = stumble.span(0, stumble.failure.end)
        return Mistake("name-missing", "a pattern needs a name", place, (Hint(_NO_PATTERNS),))
    if stumble.takes == {"_TO"} and last.start_pos is not None and last.end_pos is not None:
        written = stumble.text[last.start_pos : last.end_pos]
        return Mistake(
            "range-of-what",
            f"what is {written}? a default stands behind `=`, a range has a `to`",
            stumble.span(last.start_pos, last.end_pos),
            (Hint("for example `board = 18 mm, 12 mm to 30 mm`"),),
        )
    return None


def unknown_parameter(stumble: Stumble) -> Mistake | None:
    """``as leg base, aporn 80``: nothing of that name can be set."""
    used = next(
        (str(token.value) for token in stumble.failure.tokens if token.type == "PATTERNNAME"), None
    )
    if used is None or "PARAMETER" not in stumble.takes:
        return None
    first = stumble.word_at(stumble.at)
    if first is None:
        return None
    for written, start, end in stumble.runs():
        if not re.match(r"\s*(?:=|:|[0-9½¼¾(])", stumble.text[end:]):
            continue
        known = stumble.vocabulary.patterns.get(used, ())
        place = stumble.span(start, end)
        near = nearest(written, known)
        repairs = tuple(Repair(f"did you mean `{name}`?", place, name) for name in near)
        listed = ", ".join(known)
        return Mistake(
            "parameter-unknown",
            f"`{used}` knows no {written}",
            place,
            (*repairs, Hint(f"it knows: {listed}")),
        )
    return None


def unknown_inside(stumble: Stumble) -> Mistake | None:
    """``boxes' botom``: nothing inside is called so."""
    last = stumble.previous
    if "INNER" not in stumble.takes or last is None or last.type not in ("_POSS", "PLACE"):
        return None
    if not stumble.written or len(stumble.failure.tokens) < 2:
        return None
    owner = next(
        (str(token.value) for token in reversed(stumble.failure.tokens) if token.type == "NAME"), ""
    )
    inner = sorted(stumble.vocabulary.inner)
    spellings = [spelling for name in inner for spelling in (name, plural(name))]
    for written, start, end in stumble.runs():
        # `drawer's sides` are its drawer sides.
        ending = tuple(name for name in spellings if name.endswith(f" {canonical(written)}"))
        near = nearest(written, spellings) or ending
        if near:
            place = stumble.span(start, end)
            repairs = tuple(Repair(f"did you mean `{name}`?", place, name) for name in near)
            message = f"nothing in `{owner}` is called `{written}`"
            return Mistake("unknown-name", message, place, repairs)
    listed = ", ".join(f"`{name}`" for name in inner[:_LISTED])
    hint = Hint(f"inside of patterns there are: {listed}") if inner else Hint(_NOTHING_INSIDE)
    message = f"nothing in `{owner}` is called `{canonical(stumble.written)}`"
    return Mistake("unknown-name", message, stumble.place, (hint,))


_LISTED = 20
_NO_PATTERNS = "a pattern begins with a line such as `pattern box with width, depth, height`"
_NOTHING_INSIDE = "only what is made as a pattern has parts of its own"
CASES = (
    unknown_pattern,
    pattern_without_as,
    pattern_header,
    unknown_parameter,
    unknown_inside,
)
