"""Names of parts, copies, openings and glue-ups from their parse trees."""

from __future__ import annotations

from lark import Token, Tree

from dryfit.notes.building.draft import Draft, text_of, tokens, trees
from dryfit.notes.tree import Reference, StageName


def reference(node: Tree[Token], draft: Draft) -> Reference:
    """Return the part or copy that is named: ``front left leg``."""
    name = tokens(node.children, "NAME")[0]
    places = tuple(text_of(place) for place in tokens(node.children, "PLACE"))
    return Reference(text_of(name), places, draft.span(node))


def references(node: Tree[Token], draft: Draft) -> tuple[Reference, ...]:
    """Return all parts named one after the other in the node."""
    return tuple(reference(ref, draft) for ref in trees(node.children, "ref"))


def stage(node: Tree[Token], draft: Draft) -> StageName:
    """Return the glue-up named as a moment."""
    return StageName(text_of(tokens(node.children, "NAME")[0]), draft.span(node))
