"""Lines whose first words say nothing: openers mistyped, counts missing, prose."""

from __future__ import annotations

import re

from dryfit.diagnostics import Hint
from dryfit.notes.mistake import Mistake, Repair
from dryfit.notes.mistakes.stumble import Stumble, parts_hint
from dryfit.notes.names import canonical
from dryfit.notes.reading.free_names import free_name
from dryfit.notes.reading.near import nearest
from dryfit.notes.reading.presumed import list_mark, presumed
from dryfit.notes.reading.runs import phrase_at
from dryfit.notes.reading.word_kinds import RESERVED
from dryfit.notes.reading.words import OPENERS, PHRASES, SPELLINGS

_EQUATION = re.compile(r"\s*(?:let\s+)?([^\W\d][^=,:;#()+*/×]*?)(=|\b(?:is|be)\b)", re.IGNORECASE)
_BROKEN_COUNT = re.compile(r" *([0-9]{1,4})( ?[½¼¾]|[.,][0-9]+| [0-9]+/[0-9]+) +[^\W\d]")
_LIMIT = re.compile(
    r" *([^\W\d][^,:=0-9]*?)(?:[ .](?:top|bottom|width|depth|height|length|thickness))?"
    r" (?:between|at most|at least) [0-9½¼¾]",
    re.IGNORECASE,
)
_ALSO_BEGIN = ("mask", "outdoors", "at most", "at least", "let")
_BEGINNINGS = (*OPENERS, "FEATURE", "_LET", "STANDS", "_ATMOST", "_ATLEAST")
# How many a piece mostly has of a part, to offer a line that can be tried; common practice.
_USUAL_COUNTS = {"leg": 4, "post": 4, "foot": 4, "rail": 2, "apron": 2, "side": 2, "stile": 2}


def marked_as_list(stumble: Stumble) -> Mistake | None:
    """``- 4 legs``, ``1) 4 legs``: the mark of a list in front of a line."""
    end = list_mark(stumble.text)
    if not end or len(stumble.failure.tokens) > 1:
        return None
    place = stumble.span(stumble.failure.line.text.index(stumble.text[:end].strip()), end)
    repair = Repair("take it out", place, "")
    message = f"a line needs no mark of a list such as `{stumble.text[:end].strip()}`"
    return Mistake("list-mark", message, place, (repair,), guess=True)


def trade_word_as_value(stumble: Stumble) -> Mistake | None:
    """``depth = 300``: a word of the language cannot be a value's name."""
    found = _EQUATION.match(stumble.text)
    if not found or len(stumble.failure.tokens) > 1:
        return None
    written = found.group(1).rstrip()
    name = canonical(written)
    if name not in RESERVED:
        return None
    of_whole = name in ("width", "depth", "height")
    place = stumble.span(found.start(1), found.start(1) + len(written))
    free = free_name(name, stumble.vocabulary)
    advice = Repair(f"a name that is free: `{free}`", place, free)
    whole = Hint("the sizes of the whole piece belong on the `overall` line")
    return Mistake(
        "trade-word",
        f"`{written}` is a word of the language and cannot name a value",
        place,
        (whole,) if of_whole else (advice,),
    )


def part_without_name(stumble: Stumble) -> Mistake | None:
    """``4 225 x 40``: a count and no name."""
    if len(stumble.failure.tokens) != 1 or stumble.opener != "INT":
        return None
    if "PHRASE" not in stumble.takes or stumble.word_at(stumble.at) is not None:
        return None
    return Mistake(
        "name-missing",
        "a count needs the name of a part after it",
        stumble.span(stumble.at, stumble.at),
        (
            Hint(
                f"for example `{stumble.text[: stumble.at].strip()} legs, upright, {{40}} x {{40}}`"
            ),
        ),
    )


def count_no_whole_number(stumble: Stumble) -> Mistake | None:
    """``2.5 slats``: nothing is made by halves."""
    found = _BROKEN_COUNT.match(stumble.text)
    if not found or stumble.at > found.end(2) or len(stumble.failure.tokens) > 1:
        return None
    whole = int(found.group(1))
    place = stumble.span(found.start(1), found.end(2))
    counts = [str(count) for count in (whole, whole + 1) if count]
    return Mistake(
        "count-not-whole",
        f"a count is a whole number: {' or '.join(counts)}",
        place,
        tuple(Repair(f"write `{count}`", place, count) for count in counts),
    )


def limit_of_nothing(stumble: Stumble) -> Mistake | None:
    """``seat top between 230 and 250``: a limit of a part that is not there."""
    found = _LIMIT.match(stumble.text)
    if stumble.failure.tokens or not found or not stumble.vocabulary.parts:
        return None
    start, end = found.span(1)
    near = nearest(found.group(1), stumble.name_spellings(stumble.vocabulary.parts))
    place = stumble.span(start, end)
    return Mistake(
        "unknown-name",
        f"no part is called `{found.group(1)}`",
        place,
        (
            *(Repair(f"did you mean `{name}`?", place, name) for name in near),
            *parts_hint(stumble),
        ),
    )


def mistyped_opener(stumble: Stumble) -> Mistake | None:
    """``ovreall 420 wide``: the first word is nearly one that opens a line."""
    if stumble.failure.tokens or not stumble.words:
        return None
    for written, start, end in stumble.runs():
        for opener in nearest(
            written, [spelling for kind in _BEGINNINGS for spelling in SPELLINGS[kind]]
        ):
            span = stumble.span(start, end)
            return Mistake(
                "unknown-opener",
                f"no line begins with `{written}`",
                span,
                (Repair(f"did you mean `{opener}`?", span, opener, stands_alone=True),),
            )
    return None


def mistyped_name_first(stumble: Stumble) -> Mistake | None:
    """``long rial ends into legs``: a line about a part that is not there."""
    if stumble.failure.tokens or not _is_about_parts(stumble):
        return None
    first = stumble.word_at(stumble.at)
    if first is None:
        return None
    for written, start, end in stumble.runs():
        near = nearest(written, stumble.name_spellings(stumble.vocabulary.parts))
        if near:
            span = stumble.span(start, end)
            return Mistake(
                "unknown-name",
                f"no part is called `{written}`",
                span,
                tuple(Repair(f"did you mean `{name}`?", span, name) for name in near),
            )
    end = stumble.name_end(first)
    written = stumble.text[stumble.at : end]
    hints = parts_hint(stumble)
    return Mistake(
        "unknown-name",
        f"no part is called `{written}`",
        stumble.span(stumble.at, end),
        hints,
    )


def value_without_equals(stumble: Stumble) -> Mistake | None:
    """``overhang 15``: a name and a measure, and nothing between them."""
    meant = presumed(stumble.failure.line, stumble.vocabulary.parts)
    if meant is None or meant.kind != "value" or stumble.opener not in ("", "VALUE"):
        return None
    start = stumble.words[0].start
    end = start + len(meant.written)
    colon = stumble.text[end : end + 1] == ":"
    return Mistake(
        "value-sign-missing",
        f"no `=` stands between `{meant.written}` and its measure",
        stumble.span(start, end),
        (Repair("for a value put `=` between them", stumble.span(end, end + colon), " ="),),
    )


def part_without_count(stumble: Stumble) -> Mistake | None:
    """``legs 225 x 40 x 40`` or ``legs, upright``: a part's line without its count."""
    meant = presumed(stumble.failure.line, stumble.vocabulary.parts)
    if meant is None or meant.kind != "part" or stumble.opener not in ("", "NAME"):
        return None
    start = stumble.words[0].start
    end = start + len(meant.written)
    several = meant.written.lower() != meant.name
    count = _USUAL_COUNTS.get(meant.name.rpartition(" ")[2], 1) if several else 1
    advice = f"say how many there are: `{count} {meant.written}`"
    repair = Repair(advice, stumble.span(start, start), f"{count} ", stands_alone=True)
    return Mistake(
        "count-missing", "a part needs its count in front", stumble.span(start, end), (repair,)
    )


def prose(stumble: Stumble) -> Mistake | None:
    """Any other line that begins with nothing known."""
    if stumble.failure.tokens:
        return None
    return Mistake(
        "not-a-statement",
        "this line is neither about a part nor begins with a word that opens a line",
        stumble.span(stumble.at, len(stumble.text)),
        (
            Repair(
                "if it is a remark, begin it with #", stumble.span(stumble.at, stumble.at), "# "
            ),
            Hint(
                "lines begin with a count, a part, or one of: "
                f"{', '.join((*OPENERS.values(), *_ALSO_BEGIN))}"
            ),
        ),
    )


def _is_about_parts(stumble: Stumble) -> bool:
    """Return whether a preposition or before/after stands somewhere behind the first words."""
    kinds: set[str] = set()
    for index in range(1, len(stumble.words)):
        phrase = phrase_at(stumble.words, index)
        if phrase:
            kinds |= {kind for kind, _ in PHRASES[phrase[0]]}
    before_comma = stumble.text.split(",")[0]
    return bool(kinds & {"PREP", "ORDER"}) and not re.search(r"[0-9=]", before_comma.split(":")[0])


CASES = (
    count_no_whole_number,
    part_without_name,
    limit_of_nothing,
    mistyped_opener,
    mistyped_name_first,
    part_without_count,
    prose,
)
