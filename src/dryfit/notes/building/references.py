"""Names of parts, copies, openings and glue-ups from their parse trees."""

from __future__ import annotations

from lark import Token, Tree

from dryfit.diagnostics import Hint
from dryfit.notes.building.draft import Draft, ends, text_of, tokens, trees
from dryfit.notes.tree import Reference, StageName


def reference(node: Tree[Token], draft: Draft) -> Reference:
    """Return the part or copy that is named: ``front left leg``."""
    name = tokens(node.children, "NAME")[0]
    inner = tokens(node.children, "INNER")
    places = tokens(node.children, "PLACE")
    if inner and places and ends(places[0])[0] < ends(name)[0]:
        draft.error(
            "copy-of-instance",
            f"one of several `{text_of(name)}` cannot be told apart here",
            draft.span(node),
            Hint("give it a line and a name of its own, or speak of all of them"),
        )
    words = tuple(text_of(place) for place in places)
    if inner:
        return Reference(text_of(inner[0]), words, draft.span(node), of=text_of(name))
    return Reference(text_of(name), words, draft.span(node))


def references(node: Tree[Token], draft: Draft) -> tuple[Reference, ...]:
    """Return all parts named one after the other in the node."""
    return tuple(reference(ref, draft) for ref in trees(node.children, "ref"))


def stage(node: Tree[Token], draft: Draft) -> StageName:
    """Return the glue-up named as a moment."""
    return StageName(text_of(tokens(node.children, "NAME")[0]), draft.span(node))
