"""The phrases of a line one by one: references, joints, places."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from lark import Token, Tree

from dryfit.diagnostics import Hint
from dryfit.notes.building.counts import checked_count
from dryfit.notes.building.draft import Draft, text_of, tokens, trees, union
from dryfit.notes.building.sums import offset_of, said_size, size_word, size_words, sum_in
from dryfit.notes.tree import (
    At,
    CutAfter,
    Down,
    Flush,
    From,
    Gap,
    GluedFrom,
    Join,
    JointSpec,
    Lie,
    OfTimber,
    PartClause,
    Reference,
    Run,
    SetBack,
    SetIn,
    Sizes,
    Spread,
    StageName,
    Up,
)


def reference(node: Tree[Token], draft: Draft) -> Reference:
    """Return the part or copy that is named: ``front left leg``."""
    name = tokens(node.children, "NAME")[0]
    places = tuple(text_of(place) for place in tokens(node.children, "PLACE"))
    return Reference(text_of(name), places, draft.span(node))


def references(node: Tree[Token], draft: Draft) -> tuple[Reference, ...]:
    """Return all parts named one after the other in the node."""
    return tuple(reference(ref, draft) for ref in trees(node.children, "ref"))


def joint_spec(node: Tree[Token], draft: Draft) -> JointSpec:
    """Return the joint named by kind, with its count and sizes."""
    kind = tokens(node.children, "JOINT", "FASTENER")[0]
    sizes = tuple(size_word(dim, draft) for dim in trees(node.children, "dim"))
    return JointSpec(
        text_of(kind), checked_count(node.children, draft), sizes, None, draft.span(node)
    )


def join(node: Tree[Token], draft: Draft) -> Join:
    """Return a preposition with its hosts, its joint still open."""
    preposition = text_of(tokens(node.children, "PREP")[0])
    hosts = references(trees(node.children, "refs")[0], draft)
    return Join(preposition, hosts, None, draft.span(node))


def stage(node: Tree[Token], draft: Draft) -> StageName:
    """Return the glue-up named as a moment."""
    return StageName(text_of(tokens(node.children, "NAME")[0]), draft.span(node))


def clauses(nodes: Iterable[Tree[Token]], draft: Draft) -> list[PartClause]:
    """Return the phrases of a part's line; "10 front to back" goes to the "set in" before it."""
    done: list[PartClause] = []
    for node in nodes:
        built = _BUILDERS[node.data](node, draft)
        before = done[-1] if done else None
        if node.data != "along":
            done.append(built)
        elif isinstance(before, SetIn) and isinstance(built, SetIn):
            done[-1] = SetIn(before.amounts + built.amounts, union(before.span, built.span))
        else:
            draft.error(
                "measure-of-what",
                "a measure and a direction stand alone here",
                built.span,
                Hint("put a comma between a size and the way it runs, or `set in` before it"),
            )
    return done


def _word(node: Tree[Token]) -> str:
    return text_of(tokens(node.children, *_WORD_TYPES)[0])


def _direction(node: Tree[Token]) -> str | None:
    # "Spread upright" is how some say up and down.
    words = tokens(node.children, "DIRECTION", "RUN")
    return text_of(words[0]) if words else None


def _dimset(node: Tree[Token], draft: Draft) -> Sizes:
    return Sizes((said_size(node, draft),), draft.span(node))


def _at(node: Tree[Token], draft: Draft) -> At:
    words = tokens(node.children, "CORNERS", "PLACE")
    return At(tuple(text_of(word) for word in words), draft.span(node))


def _set_in(node: Tree[Token], draft: Draft) -> SetIn:
    amount = sum_in(node, draft)
    return SetIn(((amount, _direction(node)),), draft.span(node))


def _flush(node: Tree[Token], draft: Draft) -> Flush:
    hosts = trees(node.children, "refs")
    named = references(hosts[0], draft) if hosts else ()
    return Flush(_word(node), named, draft.span(node))


def _glued_from(node: Tree[Token], draft: Draft) -> GluedFrom:
    count = checked_count(node.children, draft)
    assert count is not None
    return GluedFrom(count, draft.span(node))


_WORD_TYPES = ("RUN", "LIE", "DIM", "PLACE", "PHRASE")
_BUILDERS: dict[str, Callable[[Tree[Token], Draft], PartClause]] = {
    "run": lambda node, draft: Run(_word(node), draft.span(node)),
    "lie": lambda node, draft: Lie(_word(node), draft.span(node)),
    "dims": lambda node, draft: Sizes(size_words(node, draft), draft.span(node)),
    "dimset": _dimset,
    "at": _at,
    "setin": _set_in,
    "along": _set_in,
    "setback": lambda node, draft: SetBack(sum_in(node, draft), draft.span(node)),
    "up": lambda node, draft: Up((sum_in(node, draft),), draft.span(node)),
    "down": lambda node, draft: Down((sum_in(node, draft),), draft.span(node)),
    "fromside": lambda node, draft: From(offset_of(node, draft), draft.span(node)),
    "flush": _flush,
    "spread": lambda node, draft: Spread(_direction(node), draft.span(node)),
    "gap": lambda node, draft: Gap(((sum_in(node, draft), None),), draft.span(node)),
    "jointspec": joint_spec,
    "join": join,
    "gluedfrom": _glued_from,
    "oftimber": lambda node, draft: OfTimber(_word(node), draft.span(node)),
    "cutafter": lambda node, draft: CutAfter(
        stage(trees(node.children, "stage")[0], draft), draft.span(node)
    ),
}
