"""Sizes that may come to several amounts: on a part's line, and as a line of their own."""

from __future__ import annotations

from lark import Token, Tree

from dryfit.diagnostics import Hint, Span
from dryfit.notes.building.draft import Draft, ends, text_of, tokens, trees
from dryfit.notes.building.references import references
from dryfit.notes.building.sums import sums_in
from dryfit.notes.mistake import Repair
from dryfit.notes.tree import LimitLine, SizeRange, Sum

Parsed = Tree[Token]


def size_range(node: Parsed, draft: Draft) -> SizeRange:
    """Return ``480 to 500 wide``, ``at most 620 high`` and ``width at least 480``."""
    inner = trees(node.children, "range", "within")[0]
    least, most = _bounds(inner, draft)
    words = tokens(node.children, "DIM") or tokens(inner.children, "DIMADJ", "CUTADJ")
    if not words:
        end = ends(inner)[1]
        place = draft.line.span(end, end)
        draft.error(
            "limit-of-what",
            f"`{draft.span(inner).text()}`: is that the length, the width or the thickness?",
            draft.span(inner),
            *(Repair(f"write `{word}` behind it", place, f" {word}") for word in _ADJECTIVES),
        )
    return SizeRange(least, most, text_of(words[0]) if words else "length", draft.span(node))


def limit_line(tree: Parsed, draft: Draft) -> LimitLine:
    """Return the statement of ``at most 620 high, the sill`` and ``seat top at most 460``."""
    nodes = tree.children
    inner = trees(nodes, "within")[0]
    least, most = _bounds(inner, draft)
    subjects = references(trees(nodes, "wishes")[0], draft) if trees(nodes, "wishes") else ()
    if len(subjects) > 1:
        draft.error(
            "limit-of-several",
            "a limit is for one part, one opening or the whole piece",
            subjects[1].span,
            Hint("give each a line of its own"),
        )
    text = tokens(nodes, "TEXT")
    return LimitLine(
        subjects[0] if subjects else None,
        _dimension(tree, inner, draft),
        least,
        most,
        text_of(text[0]).strip() or None if text else None,
        draft.line.whole(),
    )


def _dimension(tree: Parsed, inner: Parsed, draft: Draft) -> str:
    """Return which size is limited: the word before, or the adjective behind."""
    before = tokens(tree.children, "DIM", "PLACE")
    behind = tokens(inner.children, "DIMADJ")
    if before and before[0].type == "PLACE" and text_of(before[0]) != "top":
        draft.error(
            "limit-of-what",
            f"the {text_of(before[0])} of a part has no height that can be limited",
            draft.span(before[0]),
            Hint("say the top, or a size: `seat top at most {460}`, `seat at most {400} wide`"),
        )
    if before:
        return text_of(before[0])
    if not behind:
        draft.error(
            "limit-of-what",
            f"`{draft.span(inner).text()}`: which size is that?",
            draft.span(inner),
            *(
                Repair(f"write `{word}` behind it", _end(inner, draft), f" {word}")
                for word in ("high", "wide", "deep")
            ),
        )
    return text_of(behind[0]) if behind else "height"


def _end(node: Parsed, draft: Draft) -> Span:
    end = ends(node)[1]
    return draft.line.span(end, end)


def _bounds(node: Parsed, draft: Draft) -> tuple[Sum | None, Sum | None]:
    amounts = sums_in(node, draft)
    if len(amounts) == 2:
        return amounts[0], amounts[1]
    return (None, amounts[0]) if tokens(node.children, "_ATMOST") else (amounts[0], None)


_ADJECTIVES = ("long", "wide", "thick")
