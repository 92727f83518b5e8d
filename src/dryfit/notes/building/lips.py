"""The builder of ``lipped 6 thick of oak at front`` and ``edge banded all round``."""

from __future__ import annotations

import re

from lark import Token, Tree

from dryfit.diagnostics import Hint
from dryfit.notes.building.draft import Draft, ends, only, text_of, text_or_none, tokens
from dryfit.notes.building.sums import sums_in
from dryfit.notes.mistake import Repair
from dryfit.notes.tree import Lipped

_WORDS = ("LIPPED", "LIPPEDWITH", "LIPPING")
_WHICH = {"end": "ends", "short edge": "ends", "edge": "all", "face": "all", "all round": "all"}
"""What covers which edges: a noun alone means all that are called so."""

_BEHIND_COMMAS = re.compile(
    r" ?[,:] ?([0-9][0-9./ ]*\"?(?: ?(?:mm|cm|in))?(?: thick)?)? ?(of [a-z ]+?)? ?,? ?"
    r"(at [a-z ]+|on [a-z ]+|all round)",
    re.IGNORECASE,
)
_PLACE_BEHIND = re.compile(
    r" (?=(?:front|back|left|right|top|bottom)(?: and [a-z]+)?$)", re.IGNORECASE
)


def lipped(node: Tree[Token], draft: Draft) -> Lipped:
    """Return which edges of a sheet are covered, and with what."""
    banded = text_of(tokens(node.children, *_WORDS)[0]) == "banded"
    timber = only(tokens(node.children, "PHRASE"), "the timber that covers the edges", draft)
    thick = sums_in(node, draft)
    if len(thick) > 1:
        draft.error(
            "said-twice",
            "said twice: how thick it is on the edge; it is as wide as the sheet is thick",
            draft.span(node),
            Hint("keep the one by which the sheet grows at that edge"),
        )
    sides = _sides(node, draft)
    if not sides:
        _ask_where(node, draft, banded=banded)
    for side in sides:
        if side.type == "DIRECTION" and text_of(side) not in _WHICH:
            draft.error(
                "unknown-place",
                f"`{draft.span(side).text()}` is a way, and no edge",
                draft.span(side),
                Hint("edges are at the front, back, left, right, top or bottom, or `all round`"),
            )
    return Lipped(
        banded,
        thick[0] if thick else None,
        text_or_none(timber),
        tuple((_WHICH.get(text_of(each), text_of(each)), draft.span(each)) for each in sides),
        draft.span(node),
    )


def _sides(node: Tree[Token], draft: Draft) -> list[Token]:
    """Return the words that name edges: in "right end" the second only says what the right is."""
    found = tokens(node.children, "PLACE", "ENDS", "NOUN", "DIRECTION", "LIPSIDE")
    return [
        word
        for before, word in zip([None, *found], found, strict=False)
        if word.type != "ENDS"
        or before is None
        or before.type != "PLACE"
        or draft.line.text[slice(ends(before)[1], ends(word)[0])].strip()
    ]


def _ask_where(node: Tree[Token], draft: Draft, *, banded: bool) -> None:
    start, end = ends(node)
    done = "banded" if banded else "lipped"
    advice = [
        Repair("along its front edge", draft.line.span(end, end), " at front"),
        Repair("along all four", draft.line.span(end, end), " all round"),
    ]
    behind = _BEHIND_COMMAS.match(draft.line.text[end:])
    if behind:
        # "lipped 6 thick, of oak, at front": the commas make a place of the part of it.
        said = " ".join(words for words in behind.groups() if words)
        place = draft.line.span(end, end + behind.end())
        advice.insert(0, Repair("what is said of it stands together", place, f" {said}"))
    timber = _PLACE_BEHIND.search(draft.line.text[start:end])
    if timber:
        # "lipped 6 of oak front": the place is read as a word of the wood.
        gap = draft.line.span(start + timber.start(), start + timber.start() + 1)
        advice = [Repair("`at` parts the place from the wood", gap, " at ")]
    message = f"which edges of it are {done}?"
    draft.error("lip-place-missing", message, draft.line.span(start, end), *advice)
