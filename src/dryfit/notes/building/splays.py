"""The builder of ``splayed 1 in 8 to the sides and 1 in 12 front and back``."""

from __future__ import annotations

from lark import Token, Tree

from dryfit.diagnostics import Hint
from dryfit.notes.building.draft import Draft, text_of, tokens, trees
from dryfit.notes.building.sums import number_of
from dryfit.notes.tree import Slope, Splayed
from dryfit.quantities import ANGLE, LENGTH


def splayed(node: Tree[Token], draft: Draft) -> Splayed:
    """Return how legs lean outwards: a slope, or one for each way."""
    slopes = tuple(_slope(each, draft) for each in trees(node.children, "splaying"))
    return Splayed(slopes, draft.span(node))


def _slope(node: Tree[Token], draft: Draft) -> Slope:
    """Return a slope: of ``1 in 8`` the reader takes ``1 in`` for an inch, and 8 for the run."""
    first = number_of(trees(node.children, "number")[0], draft)
    run = tokens(node.children, "INT", "NUMBER")
    kind = None if first.quantity is None else first.quantity.kind
    if kind not in {None, ANGLE} and not (run and kind == LENGTH):
        draft.error(
            "splay-too-steep",
            f"`{first.span.text()}` is no slope of a leg",
            first.span,
            Hint("write how far it leans on so much height, `1 in 8`, or an angle, `7 degrees`"),
        )
    return Slope(
        first.value,
        number_of(run[0], draft).value if run else None,
        _way(node, draft),
        draft.span(node),
    )


def _way(node: Tree[Token], draft: Draft) -> str | None:
    said = tokens(node.children, "SPLAYWAY")
    if said:
        return text_of(said[0])
    places = frozenset(text_of(word) for word in tokens(node.children, "PLACE"))
    if not places:
        return None
    if places not in _WAYS:
        draft.error(
            "splay-way-unclear",
            "legs are splayed to two sides that lie opposite",
            draft.span(node),
            Hint("write `to the sides`, `front and back`, or a slope for each"),
        )
    return _WAYS.get(places, "both")


_WAYS = {frozenset({"left", "right"}): "sides", frozenset({"front", "back"}): "front and back"}
