"""The builders of joints and of features, which name parts and say how they are cut."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from lark import Token, Tree

from dryfit.diagnostics import Hint
from dryfit.notes.building.clauses import join
from dryfit.notes.building.draft import Draft, only, text_of, tokens, trees
from dryfit.notes.building.joining import with_glue_only
from dryfit.notes.building.joint_words import (
    BUILDERS,
    Said,
    counted_together,
    joint_spec,
    said,
    with_said,
    with_sizes,
)
from dryfit.notes.building.places import offset_of
from dryfit.notes.building.references import references
from dryfit.notes.building.sums import size_words
from dryfit.notes.tree import (
    Join,
    JointDetail,
    JointLine,
    JointSpec,
    Reference,
    SizeWord,
)

Parsed = Tree[Token]


ON_PINS = "shelf pins"


def joint_line(tree: Parsed, draft: Draft) -> JointLine:
    """Return the statement of ``posts crossing end rails: half lap``."""
    nodes = tree.children
    guests = _guests(trees(nodes, "wishes")[0], draft)
    joined = join(tree, draft)
    hosts = joined.hosts + references(tree, draft)
    joined = _with_spec(replace(joined, hosts=hosts), tree, draft)
    check_hosts(guests, hosts, draft)
    whole = replace(joined, span=draft.line.whole())
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


def _with_spec(joined: Join, tree: Parsed, draft: Draft) -> Join:
    """Return how the parts meet with the joint of the line; sizes go to what they stand behind."""
    specs = trees(tree.children, "jointspec")
    screws = _screws_besides(specs, draft)
    counted = _counted(specs, draft)
    named = only(specs[:1] if screws or counted else specs, "a joint", draft)
    where = only(trees(tree.children, "fromside"), "where the joint is", draft)
    spec = counted or (joint_spec(named, draft) if named else None)
    if spec is None and joined.preposition == "crossing":
        spec = JointSpec("half lap", None, (), None, joined.span)
    words = _said_with_sizes(tree, draft)
    sizes = _sizes(tree, draft, stop=bool(words))
    if spec is None:
        if sizes or where:
            draft.error(
                "size-without-joint",
                "a measure stands here, but no joint that it could belong to",
                draft.span(trees(tree.children, "dims", "fromside")[0]),
                Hint("name the joint in front of it: `tenon {20} long`"),
            )
        return with_glue_only(joined, words, draft)
    place = offset_of(where, draft) if where else None
    spec = replace(spec, sizes=spec.sizes + sizes, place=place)
    whole = with_said(spec, words)
    if whole.kind == ON_PINS and joined.preposition != "between":
        # Where a shelf on pins stands is said on its own line.
        joined = replace(joined, preposition="on pins")
    return replace(joined, spec=whole, fastened=screws)


def _screws_besides(specs: Sequence[Parsed], draft: Draft) -> JointSpec | None:
    """Return the screws that hold a rabbet joint besides its glue: ``rabbet 12, screws``."""
    if len(specs) != 2:
        return None
    joint, besides = (joint_spec(each, draft) for each in specs)
    return besides if (joint.kind, besides.kind) == ("rabbet", "screws") else None


def _counted(specs: Sequence[Parsed], draft: Draft) -> JointSpec | None:
    """Return the one joint of ``tenon 20 long, 2 tenons``."""
    if len(specs) != 2:
        return None
    first, second = (joint_spec(each, draft) for each in specs)
    return counted_together(first, second)


def _sizes(tree: Parsed, draft: Draft, *, stop: bool) -> tuple[SizeWord, ...]:
    """Return the sizes of the joint; with `stop` only those before its first detail."""
    sizes: list[SizeWord] = []
    for node in tree.children:
        if isinstance(node, Token):
            continue
        if stop and node.data in BUILDERS:
            break
        if node.data == "dims":
            sizes.extend(size_words(node, draft))
    return tuple(sizes)


def _said_with_sizes(tree: Parsed, draft: Draft) -> list[Said]:
    words: list[Said] = []
    for node in tree.children:
        if isinstance(node, Token):
            continue
        if node.data in BUILDERS:
            words.extend(said(node, draft))
        elif node.data == "dims" and words:
            last = words[-1]
            if isinstance(last, JointDetail):
                words[-1] = with_sizes(last, size_words(node, draft), draft.span(node))
            else:
                draft.error("measure-of-what", "a measure stands alone here", draft.span(node))
    return words


def check_hosts(guests: tuple[Reference, ...], hosts: tuple[Reference, ...], draft: Draft) -> None:
    """Check that no part is joined to itself; two copies of one part may be."""
    own = {(guest.name, guest.places) for guest in guests}
    for host in hosts:
        if (host.name, host.places) in own:
            draft.error("joined-to-itself", f"{host.name} cannot be joined to itself", host.span)
            return
