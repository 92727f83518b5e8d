"""The phrases of a line one by one: references, joints, places."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence

from lark import Token, Tree

from dryfit.diagnostics import Hint
from dryfit.kinds.joints import is_beside
from dryfit.notes.building.counts import checked_count
from dryfit.notes.building.draft import Draft, text_of, tokens, trees
from dryfit.notes.building.joint_words import BUILDERS as SAID_OF_JOINTS
from dryfit.notes.building.joint_words import Said, joint_spec, said
from dryfit.notes.building.limits import size_range
from dryfit.notes.building.lips import lipped
from dryfit.notes.building.loads import carries, weighs
from dryfit.notes.building.pattern_lines import as_pattern
from dryfit.notes.building.places import (
    Listed,
    at_places,
    direction,
    down,
    flush,
    from_end,
    from_side,
    gap,
    merged_along,
    merged_ends,
    set_in,
    up,
)
from dryfit.notes.building.references import references, stage
from dryfit.notes.building.splays import splayed
from dryfit.notes.building.sums import said_size, size_words, sum_in
from dryfit.notes.tree import (
    Apart,
    CutAfter,
    Fitted,
    For,
    Gap,
    GluedFrom,
    Handed,
    Horns,
    Join,
    JointSpec,
    Lapping,
    Lie,
    OfTimber,
    OrderWhen,
    PartClause,
    Rests,
    Ripped,
    Run,
    SetBack,
    SetIn,
    Sizes,
    Spare,
    Spread,
    WoodWords,
)


def join(node: Tree[Token], draft: Draft) -> Join:
    """Return a preposition with its hosts, its joint still open."""
    preposition, _, face = text_of(tokens(node.children, "PREP")[0]).partition(" face ")
    hosts = references(trees(node.children, "refs")[0], draft)
    if preposition == "inside" and all(host.name in draft.vocabulary.spaces for host in hosts):
        preposition = "in"
    return Join(
        f"{preposition} face" if face else preposition,
        hosts,
        None,
        draft.span(node),
        edge=entering_edge(node),
        face=face or None,
    )


def entering_edge(node: Tree[Token]) -> str | None:
    """Return the words of ``ends into`` and ``back edge into``, or None."""
    edges = trees(node.children, "entering")
    words = [text_of(word) for edge in edges for word in tokens(edge.children, "PLACE", "EDGE")]
    return " ".join(words) or None


def clauses(groups: Iterable[Listed], draft: Draft) -> list[PartClause | Said]:
    """Return the phrases of a part's line; "10 front to back" goes to the "set in" before it."""
    done: list[PartClause | Said] = []
    for group in groups:
        node, before = group.node, done[-1] if done else None
        if node.data in _LISTED:
            done.append(_LISTED[node.data](group, draft))
        elif node.data == "along":
            if isinstance(before, SetIn | Gap):
                done[-1] = merged_along(before, set_in(node, draft))
            else:
                draft.error(
                    "measure-of-what",
                    "a measure and a direction stand alone here",
                    draft.span(node),
                    Hint("put a comma between a size and the way it runs, or `set in` before it"),
                )
        elif node.data == "endgap":
            _put_to_spread(done, tokens(node.children, "ENDGAP")[0], draft)
        elif node.data in SAID_OF_JOINTS:
            done.extend(said(node, draft))
        else:
            done.append(_BUILDERS[node.data](node, draft))
    _ripped_of_what(done, draft)
    return done


def _ripped_of_what(done: Sequence[PartClause | Said], draft: Draft) -> None:
    ripped = next((each for each in done if isinstance(each, Ripped)), None)
    rows = (each for each in done if isinstance(each, JointSpec) and is_beside(each.kind))
    if ripped is not None and not any(rows):
        draft.error(
            "ripped-of-what",
            "nothing is left to be ripped: the boards of this line are not joined edge to edge",
            ripped.span,
            Hint("write how they are joined: `tongue and groove`, or `ship lap`"),
        )


def _put_to_spread(done: list[PartClause | Said], word: Token, draft: Draft) -> None:
    for at, clause in enumerate(done):
        if isinstance(clause, Spread):
            done[at] = merged_ends(clause, word, draft)
            return
    draft.error(
        "spread-missing",
        "the gap at the ends of what? nothing before it is spread",
        draft.span(word),
        Hint("write `spread` first: `spread front to back, no gap at ends`"),
    )


def _word(node: Tree[Token]) -> str:
    return text_of(tokens(node.children, *_WORD_TYPES)[0])


def _dimset(node: Tree[Token], draft: Draft) -> Sizes:
    return Sizes((said_size(node, draft),), draft.span(node))


def _wood(node: Tree[Token], draft: Draft) -> WoodWords:
    sawn = tokens(node.children, "SAWN")
    if sawn:
        return WoodWords("sawn", (text_of(sawn[0]),), draft.span(node))
    kinds = tokens(node.children, "WOOD", "WANEY")
    words = tokens(node.children, "PLACE", "RUN", "DIRECTION")
    kind, *besides = text_of(kinds[0]).split(", ") if kinds else ("grain",)
    return WoodWords(kind, (*besides, *(text_of(word) for word in words)), draft.span(node))


def _rests(node: Tree[Token], draft: Draft) -> Rests:
    time = None if tokens(node.children, "UNRESTED") else sum_in(node, draft)
    return Rests(time, draft.span(node))


def _glued_from(node: Tree[Token], draft: Draft) -> GluedFrom:
    count = checked_count(node.children, draft)
    assert count is not None
    return GluedFrom(count, draft.span(node))


_LISTED: dict[str, Callable[[Listed, Draft], PartClause]] = {
    "up": up,
    "down": down,
    "fromside": from_side,
}
_WORD_TYPES = ("RUN", "LIE", "DIM", "PLACE", "PHRASE", "FITTED", "RIPPED")
_BUILDERS: dict[str, Callable[[Tree[Token], Draft], PartClause]] = {
    "run": lambda node, draft: Run(_word(node), draft.span(node)),
    "lie": lambda node, draft: Lie(_word(node), draft.span(node)),
    "dims": lambda node, draft: Sizes(size_words(node, draft), draft.span(node)),
    "dimset": _dimset,
    "at": at_places,
    "setin": set_in,
    "fromend": from_end,
    "setback": lambda node, draft: SetBack(sum_in(node, draft), draft.span(node)),
    "flush": flush,
    "spread": lambda node, draft: Spread(direction(node), draft.span(node)),
    "ripped": lambda node, draft: Ripped(_word(node), draft.span(node)),
    "gap": gap,
    "between": lambda node, draft: Apart(sum_in(node, draft), draft.span(node)),
    "lapping": lambda node, draft: Lapping(sum_in(node, draft), draft.span(node)),
    "horns": lambda node, draft: Horns(sum_in(node, draft), draft.span(node)),
    "splayed": splayed,
    "handed": lambda node, draft: Handed(draft.span(node)),
    "jointspec": joint_spec,
    "gluedhere": lambda node, draft: JointSpec("glue", None, (), None, draft.span(node)),
    "join": join,
    "goeswith": lambda node, draft: For(
        references(trees(node.children, "refs")[0], draft), draft.span(node)
    ),
    "ordered": lambda node, draft: OrderWhen(
        text_of(tokens(node.children, "CLAUSETEXT")[0]), draft.span(node)
    ),
    "sizerange": size_range,
    "wood": _wood,
    "spare": lambda node, draft: Spare(checked_count(node.children, draft) or 1, draft.span(node)),
    "rests": _rests,
    "aspattern": as_pattern,
    "gluedfrom": _glued_from,
    "oftimber": lambda node, draft: OfTimber(_word(node), draft.span(node)),
    "carries": carries,
    "weighs": weighs,
    "lipped": lipped,
    "fitted": lambda node, draft: Fitted(_word(node), draft.span(node)),
    "cutafter": lambda node, draft: CutAfter(
        stage(trees(node.children, "stage")[0], draft), draft.span(node)
    ),
}
