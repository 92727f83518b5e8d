"""The builder of cuts with no mate: ``rabbet in stiles: back inner edge, 10 wide, 12 deep``."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from lark import Token, Tree

from dryfit.diagnostics import Hint, Span
from dryfit.notes.building.counts import checked_count
from dryfit.notes.building.draft import Draft, only, text_of, text_or_none, tokens, trees
from dryfit.notes.building.places import offset_of
from dryfit.notes.building.references import references, stage
from dryfit.notes.building.sums import all_sizes, sums_in
from dryfit.notes.tree import (
    Extent,
    FeatureLine,
    Number,
    Offset,
    Row,
    SizeWord,
    Sum,
    Surface,
)
from dryfit.quantities import ANGLE

Parsed = Tree[Token]

_SURFACE_WORDS = ("EVERY", "SURFACE", "NOUN", "_AND")


def feature_line(tree: Parsed, draft: Draft) -> FeatureLine:
    """Return the statement of ``groove in aprons: inside, 6 wide, 9 deep, 12 from top``."""
    nodes = tree.children
    each = only(trees(nodes, "each"), "how many there are of it", draft)
    after = only(trees(nodes, "afterstage"), "what it waits for", draft)
    extents = [extent for node in trees(nodes, "extent") for extent in _extents(node, draft)]
    if len(extents) > 1:
        draft.error("said-twice", "said twice: how far it runs", extents[1].span)
    pitched = tuple(_pitched(node, tree, draft) for node in trees(nodes, "pitch"))
    named = trees(nodes, "surfaces")
    for more in named[1:]:
        surfaces(more, draft)
    said = only(named, "where on the part it is", draft)
    kind = tokens(nodes, "FEATURE")[0]
    return FeatureLine(
        kind=text_of(kind),
        parts=references(trees(nodes, "refs")[0], draft),
        surfaces=surfaces(said, draft) if said else (),
        sizes=tuple(_with_angle(size) for size in all_sizes(tree, draft)),
        ranges=_ranges(tree, draft),
        places=_places(tree, draft),
        extent=extents[0] if extents else None,
        rows=(*(_row(node, draft) for node in trees(nodes, "row")), *pitched),
        count=None if pitched else _count(tree, each, draft),
        each=_each(each) if each else None,
        profile=text_or_none(only(tokens(nodes, "PROFILE"), "the profile", draft)),
        after=stage(trees(after.children, "stage")[0], draft) if after else None,
        span=draft.line.whole(),
    )


def _each(node: Parsed) -> str:
    words = tokens(node.children, "EACH")
    return text_of(words[0]) if words else "corner"


def surfaces(node: Parsed, draft: Draft) -> tuple[Surface, ...]:
    """Return the faces and edges that are named: "top and bottom edges" are two.

    What is shared stands behind the last: "front and end top edges" are front top edges and end top
    edges.
    """
    parts: list[list[Token]] = [[]]
    for word in tokens(node.children, *_SURFACE_WORDS):
        if word.type == "_AND":
            parts.append([])
        else:
            parts[-1].append(word)
    whole = [_surface(part, draft) for part in parts if part]
    last = whole[-1]
    return tuple(
        surface if surface.noun or surface is last else _completed(surface, last)
        for surface in whole
    )


def _surface(words: list[Token], draft: Draft) -> Surface:
    every = any(word.type == "EVERY" for word in words)
    named = [word for word in words if word.type != "EVERY"]
    *long, noun = text_of(named[-1]).split(" ") if named and named[-1].type == "NOUN" else [None]
    sides = named[:-1] if noun else named
    if not named:
        draft.error(
            "surface-missing",
            f"{words[-1].value} of what? an edge, a face or an end",
            draft.over(words[0], words[-1]),
            Hint("of equal cuts in a row say how many: `12 at {32} from {250}`"),
        )
    return Surface(
        (*(text_of(word) for word in sides), *long), noun, every, draft.over(words[0], words[-1])
    )


def _completed(surface: Surface, last: Surface) -> Surface:
    if surface.words in (("inside",), ("outside",)) and last.noun != "face":
        return surface  # "inside and bottom edges": all of the inside
    words = surface.words + last.words[len(surface.words) :]
    return replace(surface, words=words, noun=last.noun)


def _with_angle(size: SizeWord) -> SizeWord:
    amount = size.amount
    angle = isinstance(amount, Number) and amount.quantity and amount.quantity.kind == ANGLE
    return replace(size, dimension="angle") if angle and size.dimension is None else size


def _ranges(tree: Parsed, draft: Draft) -> tuple[tuple[Sum, Sum], ...]:
    pairs = (sums_in(node, draft) for node in trees(tree.children, "range"))
    return tuple((start, end) for start, end in pairs)


def _places(tree: Parsed, draft: Draft) -> tuple[Offset, ...]:
    """Return the distances of the cut, in order; "at left" is none from the left."""
    found: list[Offset] = []
    for node in tree.children:
        if isinstance(node, Token):
            if node.type == "MIDDLE":
                found.append(_none_from("middle", draft.span(node)))
        elif node.data == "fromside":
            found.append(offset_of(node, draft))
        elif node.data == "fromend":
            found.append(_from_end(node, draft))
        elif node.data == "rows":
            found.extend(offset_of(each, draft) for each in trees(node.children, "fromside"))
        elif node.data == "at":
            words = tokens(node.children, "PLACE", "CORNERS")
            found.extend(_none_from(text_of(word), draft.span(node)) for word in words)
    return tuple(found)


def _extents(node: Parsed, draft: Draft) -> list[Extent]:
    span = draft.span(node)
    if tokens(node.children, "THROUGH"):
        return [Extent("through", None, None, span)]
    points = trees(node.children, "fromside", "fromend", "beyond", "endpoint")
    offsets = [_point(point, draft) for point in points]
    start = offsets[0] if offsets else None
    if tokens(node.children, "STOPPED"):
        return [Extent("stopped", start, None, span)]
    end = offsets[1] if len(offsets) > 1 else None
    return [Extent("stretch", start, end, span)]


def _point(node: Parsed, draft: Draft) -> Offset | None:
    """Return one end of a stretch, or None for the end of the part."""
    if node.data == "fromside":
        return offset_of(node, draft)
    if node.data == "fromend":
        return _from_end(node, draft)
    if node.data == "beyond":
        of = references(trees(node.children, "refs")[0], draft)
        amount = sums_in(node, draft)[0]
        return Offset(amount, "end", draft.span(node), of=of, on_host=True)
    place = tokens(node.children, "PLACE")
    return _none_from(text_of(place[0]), draft.span(node)) if place else None


def _from_end(node: Parsed, draft: Draft) -> Offset:
    return Offset(sums_in(node, draft)[0], "end", draft.span(node), on_host=True)


def _none_from(place: str, span: Span) -> Offset:
    return Offset(Number(Fraction(0), None, span), place, span, on_host=True)


def _row(node: Parsed, draft: Draft) -> Row:
    amounts = sums_in(node, draft)
    place = tokens(node.children, "PLACE")
    return Row(
        checked_count(node.children, draft) or 1,
        amounts[0],
        amounts[1] if len(amounts) > 1 else None,
        text_of(place[0]) if place else None,
        draft.span(node),
    )


def _pitched(node: Parsed, tree: Parsed, draft: Draft) -> Row:
    """Return the row of "12 holes in ...: 32 apart", whose count stands in front."""
    count = checked_count(tree.children, draft)
    if count is None:
        draft.error(
            "count-missing",
            "how many stand so far apart?",
            draft.span(node),
            Hint("say how many there are: `12 at {32}`, or `12 holes in ...`"),
        )
    return Row(count or 1, sums_in(node, draft)[0], None, None, draft.span(node))


def _count(tree: Parsed, each: Parsed | None, draft: Draft) -> int | None:
    ahead = checked_count(tree.children, draft)
    behind = checked_count(each.children, draft) if each else None
    if ahead and behind:
        assert each is not None
        draft.error(
            "said-twice",
            "said twice: how many there are of it",
            draft.span(each),
            Hint("keep one of the two counts"),
        )
    return ahead or behind
