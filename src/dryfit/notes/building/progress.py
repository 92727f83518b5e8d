"""The builders of what was measured, done and spoiled at the bench."""

from __future__ import annotations

import re
from collections.abc import Iterator

from lark import Token, Tree

from dryfit.diagnostics import Hint, Span
from dryfit.notes.building.draft import Draft, ends, text_of, tokens, trees
from dryfit.notes.building.references import reference
from dryfit.notes.building.sums import number_of, sums_in
from dryfit.notes.building.work import glue_items
from dryfit.notes.mistake import Repair
from dryfit.notes.names import canonical, plural
from dryfit.notes.reading.near import nearest
from dryfit.notes.tree import DeedDone, DoneLine, MeasuredLine, SpoiledLine

Parsed = Tree[Token]

_DEED = re.compile(r"[^,;]+")
_COUNT = re.compile(r"([0-9]{1,3})\s+of\s+")
_MOMENT = re.compile(
    r"(?:on\s+)?([0-9]{4}-[0-9]{2}-[0-9]{2})(?:\s*(?:at|T)?\s*([0-9]{1,2}:[0-9]{2}))?"
)
_BEFORE_A_DATE = re.compile(r"(?<=[^\s,;]) (?=on\s+[0-9]{4}-)", re.IGNORECASE)
_LIKE_A_MOMENT = re.compile(r"(?:on|at)\s+[0-9]|[0-9]{1,4}[-./][0-9]{1,2}[-./]", re.IGNORECASE)
_PARTED = re.compile(r"\s*/\s*")
_HOURS, _MINUTES = 24, 60
_DIMENSIONS = ("length", "width", "thickness", "depth", "height")
_PLACES = ("front", "back", "left", "right", "top", "bottom")


def measured_line(tree: Parsed, draft: Draft) -> MeasuredLine:
    """Return the statement of ``measured post.thickness = 29.6``."""
    nodes = tree.children
    amounts = sums_in(tree, draft)
    refs, phrase = trees(nodes, "measuredpart"), tokens(nodes, "PHRASE")
    value = tokens(nodes, "VALUE")
    nominal = trees(nodes, "number")[:1] if phrase and _nominal_first(tree) else []
    if nominal:
        amounts = amounts[1:]
    name = text_of(phrase[0]) if phrase else ""
    if name in draft.vocabulary.parts and not nominal:
        _which_size(phrase[0], name, draft)
    elif phrase and not nominal:
        _check_spelling(phrase[0], draft)
    return MeasuredLine(
        part=reference(refs[0], draft) if refs else None,
        dimension=text_of(tokens(refs[0].children, "DIM")[0]) if refs else None,
        value=text_of(value[0]) if value else None,
        timber=name if nominal else None,
        nominal=number_of(nominal[0], draft) if nominal else None,
        phrase=name if phrase and not nominal else None,
        amounts=amounts,
        span=draft.line.whole(),
    )


def done_line(tree: Parsed, draft: Draft) -> DoneLine:
    """Return the statement of ``done: 3 of post / end lap, on 2026-12-05 at 14:10``."""
    text = tokens(tree.children, "TEXT")[0]
    start = ends(text)[0]
    deeds: list[DeedDone] = []
    moment: tuple[str, str | None] | None = None
    for first, written in _items(_with_comma(text_of(text))):
        place = draft.line.span(start + first, start + first + len(written))
        said = _MOMENT.fullmatch(written)
        if said and _is_moment(said[1], said[2]):
            moment = (said[1], said[2])
        elif said or _LIKE_A_MOMENT.match(written):
            draft.error(
                "moment-unreadable",
                f"`{written}` is no moment that can be read",
                place,
                Hint("write year, month and day, and the clock: `on 2026-12-05 at 14:10`"),
            )
        else:
            deeds.append(_deed(written, place))
    if not deeds:
        draft.error(
            "nothing-done",
            "the line does not say what was done",
            draft.line.whole(),
            Hint("for example `done: post / end lap`, as the step in the booklet names it"),
        )
    return DoneLine(tuple(deeds), moment, draft.line.whole())


def spoiled_line(tree: Parsed, draft: Draft) -> SpoiledLine:
    """Return the statement of ``spoiled: 1 long rail``."""
    return SpoiledLine(glue_items(tree, draft), draft.line.whole())


def _with_comma(text: str) -> str:
    """Return the text with a comma before its moment: "post / rip on 2026-12-05"."""
    return _BEFORE_A_DATE.sub(",", text, count=1)


def _items(text: str) -> Iterator[tuple[int, str]]:
    for found in _DEED.finditer(text):
        written = found.group().strip()
        if written:
            yield found.start() + found.group().index(written), written


def _deed(written: str, place: Span) -> DeedDone:
    counted = _COUNT.match(written)
    name = written[counted.end() :] if counted else written
    operation = " / ".join(" ".join(part.split()) for part in _PARTED.split(name.strip()))
    return DeedDone(int(counted[1]) if counted else None, operation, place)


def _is_moment(date: str, clock: str | None) -> bool:
    _, month, day = (int(part) for part in date.split("-"))
    hour, minute = (int(part) for part in (clock or "0:0").split(":"))
    return 1 <= month <= 12 and 1 <= day <= 31 and hour < _HOURS and minute < _MINUTES


def _nominal_first(tree: Parsed) -> bool:
    """Return whether a thickness stands before the sign: ``birch ply 18 = 17.8``."""
    for node in tree.children:
        if isinstance(node, Tree) and node.data == "number":
            after = tree.children.index(node) + 1
            sign = tree.children[after] if after < len(tree.children) else None
            return isinstance(sign, Token) and sign.type in ("_EQ", "_IS", "_COLON", "PHRASE")
        if isinstance(node, Token) and node.type in ("_EQ", "_IS", "_COLON"):
            return False
    return False


def _check_spelling(word: Token, draft: Draft) -> None:
    """Check that no size of a part or an opening is meant: "bay witdh", "psot thickness"."""
    start, end = ends(word)
    rest, _, last = draft.line.text[start:end].rpartition(" ")
    if not rest:
        return
    place = draft.line.span(end - len(last), end)
    dimensions = nearest(last, _DIMENSIONS)
    if dimensions:
        draft.error(
            "unknown-dimension",
            f"`{last}` is not a dimension",
            place,
            *(Repair(f"did you mean `{word}`?", place, word) for word in dimensions),
        )
    if last not in _DIMENSIONS or canonical(rest) in draft.vocabulary.parts:
        return
    names = sorted(draft.vocabulary.parts)
    spellings = [*names, *map(plural, names)]
    words = rest.split(" ")
    for first in range(len(words)):
        written = " ".join(words[first:])
        if canonical(written) in names:
            # A place word before the name: "letf side".
            written, near = words[first - 1], nearest(words[first - 1], _PLACES)
        else:
            near = nearest(written, spellings)
        if near:
            at = start + rest.index(written)
            place = draft.line.span(at, at + len(written))
            draft.error(
                "unknown-name",
                f"nothing here is called `{written}`",
                place,
                *(Repair(f"did you mean `{name}`?", place, name) for name in near),
            )
            return


def _which_size(word: Token, name: str, draft: Draft) -> None:
    space = name in draft.vocabulary.spaces
    sizes = ("width", "depth", "height") if space else ("thickness", "width", "length")
    end = ends(word)[1]
    draft.error(
        "part-as-measure",
        f"`{draft.span(word).text()}`: which size of it was measured?",
        draft.span(word),
        *(Repair(f"the {size}", draft.line.span(end, end), f".{size}") for size in sizes),
    )
