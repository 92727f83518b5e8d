"""The place, the way in and the wall, from the parse trees of their lines."""

from __future__ import annotations

from dataclasses import replace

from lark import Token, Tree

from dryfit.diagnostics import Hint
from dryfit.notes.building.draft import Draft, only, text_of, tokens, trees
from dryfit.notes.building.sums import all_sizes, size_words, sum_in, sums_in
from dryfit.notes.tree import RoomLine, ScribeLine, SizeWord, Sum, WallLine, WayInLine

Parsed = Tree[Token]

_OF_A_WAY = ("width", "height")
_SIDES_CUT = ("left", "right", "bottom", "top", "back")


def room_line(tree: Parsed, draft: Draft) -> RoomLine:
    """Return the statement of ``place 2398 to 2404 wide, ceiling 2400, skirting 60 x 15``."""
    nodes = tree.children
    ceiling = only(trees(nodes, "ceiling"), "the ceiling", draft)
    skirting = only(trees(nodes, "skirting"), "the skirting", draft)
    out = only(trees(nodes, "out"), "the floor", draft)
    heights = sums_in(ceiling, draft) if ceiling else ()
    return RoomLine(
        _room_sizes(nodes, draft),
        (heights[0], heights[-1]) if heights else None,
        _skirting(skirting, draft),
        sum_in(out, draft) if out else None,
        draft.line.whole(),
    )


def _room_sizes(nodes: list[Parsed | Token], draft: Draft) -> tuple[tuple[str, Sum, Sum], ...]:
    found: dict[str, tuple[str, Sum, Sum]] = {}
    for node in trees(nodes, "dims", "range"):
        if node.data == "range":
            amounts = sums_in(node, draft)
            words = tokens(node.children, "DIMADJ", "CUTADJ")
            sizes = [(text_of(words[0]) if words else None, amounts[0], amounts[1])]
        else:
            pairs = _named(size_words(node, draft), ("width", "depth"))
            sizes = [(name, each.amount, each.amount) for name, each in pairs]
        for dimension, least, most in sizes:
            if dimension not in ("width", "depth"):
                draft.error(
                    "place-size",
                    "of a place say how wide and how deep it is",
                    draft.span(node),
                    Hint(
                        "for example `place {2398} to {2404} wide`; its height is `ceiling {2400}`"
                    ),
                )
            elif dimension in found:
                draft.error("said-twice", f"said twice: the {dimension}", draft.span(node))
            else:
                found[dimension] = (dimension, least, most)
    return tuple(found.values())


def _named(
    sizes: tuple[SizeWord, ...], order: tuple[str, str]
) -> tuple[tuple[str | None, SizeWord], ...]:
    """Return sizes with what they are: of two bare ones the first and the second of the order."""
    bare = len(sizes) == 2 and all(size.dimension is None for size in sizes)
    names = order if bare else tuple(size.dimension for size in sizes)
    return tuple(zip(names, sizes, strict=True))


def _skirting(node: Parsed | None, draft: Draft) -> tuple[SizeWord, ...]:
    if node is None:
        return ()
    sizes = all_sizes(node, draft)
    if len(sizes) != 2:
        draft.error(
            "skirting-sizes",
            "a skirting has two sizes: how high it is and how thick",
            draft.span(node),
            Hint("for example `skirting {60} x {15}`"),
        )
    return sizes


def scribe_line(tree: Parsed, draft: Draft) -> ScribeLine:
    """Return the statement of ``scribe 30 at left and right``."""
    places = tokens(tree.children, "PLACE")
    for place in places:
        if text_of(place) not in _SIDES_CUT:
            draft.error(
                "scribe-where",
                f"nothing is scribed at the {text_of(place)} of a piece",
                draft.span(place),
                Hint("say at left, right, top, bottom or back"),
            )
    if not places:
        draft.error(
            "scribe-where",
            "on which sides is it scribed?",
            draft.line.whole(),
            Hint("for example `scribe {30} at left and right`"),
        )
    names = tuple(dict.fromkeys(text_of(place) for place in places))
    return ScribeLine(sum_in(tree, draft), names, draft.line.whole())


def way_line(tree: Parsed, draft: Draft) -> WayInLine:
    """Return the statement of ``way in 720 wide, 1980 high, turn 900``."""
    sizes = all_sizes(tree, draft)
    turn = only(trees(tree.children, "turn"), "the turn", draft)
    if sorted(name or "" for name, _ in _named(sizes, _OF_A_WAY)) != ["height", "width"]:
        draft.error(
            "way-sizes",
            "a way in has a width and a height",
            draft.line.whole(),
            Hint("for example `way in {720} wide, {1980} high`, of the clear opening"),
        )
    named = tuple(replace(size, dimension=name) for name, size in _named(sizes, _OF_A_WAY))
    return WayInLine(named, sum_in(turn, draft) if turn else None, draft.line.whole())


def wall_line(tree: Parsed, draft: Draft) -> WallLine:
    """Return the statement of ``hangs on a stud wall, 1400 up`` and ``fixed to the wall``."""
    nodes = tree.children
    word = tokens(nodes, "HANGS", "FIXED")[0]
    up = trees(nodes, "hangingat")
    hangs, kind = word.type == "HANGS", text_of(word)
    height = sum_in(up[0], draft) if up else None
    if up and not hangs:
        draft.error(
            "not-hanging",
            "what is fixed to the wall stands on the floor, and has no height above it",
            draft.span(up[0]),
            Hint("write `hangs on the wall` if it does not stand"),
        )
    return WallLine(hangs, kind if kind != "wall" else None, height, draft.line.whole())
