"""The builders of joints and of features, which name parts and say how they are cut."""

from __future__ import annotations

from dataclasses import replace

from lark import Token, Tree

from dryfit.diagnostics import Hint
from dryfit.notes.building.clauses import join, joint_spec
from dryfit.notes.building.draft import Draft, only, text_of, tokens, trees
from dryfit.notes.building.places import offset_of
from dryfit.notes.building.references import references
from dryfit.notes.building.sums import all_sizes
from dryfit.notes.tree import (
    Join,
    JointLine,
    JointSpec,
    Reference,
)

Parsed = Tree[Token]


def joint_line(tree: Parsed, draft: Draft) -> JointLine:
    """Return the statement of ``posts crossing end rails: half lap``."""
    nodes = tree.children
    guests = _guests(trees(nodes, "wishes")[0], draft)
    joined = join(tree, draft)
    hosts = joined.hosts + references(tree, draft)
    spec = _joint_line_spec(tree, draft, joined)
    check_hosts(guests, hosts, draft)
    whole = replace(joined, hosts=hosts, spec=spec, span=draft.line.whole())
    return JointLine(guests, whole, bool(tokens(nodes, "GLUED")), draft.line.whole())


def _guests(tree: Parsed, draft: Draft) -> tuple[Reference, ...]:
    for deed in trees(tree.children, "deed"):
        word = tokens(deed.children, "ACTION")[0]
        draft.error(
            "deed-without-moment",
            f"`{text_of(word)}` is a deed: it goes before or after another, not into a part",
            draft.span(deed),
        )
    return references(tree, draft)


def _joint_line_spec(tree: Parsed, draft: Draft, joined: Join) -> JointSpec | None:
    said = only(trees(tree.children, "jointspec"), "a joint", draft)
    sizes = all_sizes(tree, draft)
    where = only(trees(tree.children, "fromside"), "where the joint is", draft)
    place = offset_of(where, draft) if where else None
    if said:
        spec = joint_spec(said, draft)
    elif joined.preposition == "crossing":
        spec = JointSpec("half lap", None, (), None, joined.span)
    else:
        if sizes or place:
            draft.error(
                "size-without-joint",
                "a measure stands here, but no joint that it could belong to",
                draft.span(trees(tree.children, "dims", "fromside")[0]),
                Hint("name the joint in front of it: `tenon 20 long`"),
            )
        return None
    return replace(spec, sizes=spec.sizes + sizes, place=place)


def check_hosts(guests: tuple[Reference, ...], hosts: tuple[Reference, ...], draft: Draft) -> None:
    """Check that no part is joined to itself; two copies of one part may be."""
    own = {(guest.name, guest.places) for guest in guests}
    for host in hosts:
        if (host.name, host.places) in own:
            draft.error("joined-to-itself", f"{host.name} cannot be joined to itself", host.span)
            return
