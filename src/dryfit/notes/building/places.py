"""The phrases that say where a part goes: places, distances, gaps."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from lark import Token, Tree

from dryfit.diagnostics import Hint, Span
from dryfit.notes.building.draft import Draft, ends, text_of, tokens, trees, union
from dryfit.notes.building.references import reference, references
from dryfit.notes.building.sums import sum_in
from dryfit.notes.tree import (
    Apart,
    At,
    Down,
    Flush,
    From,
    Gap,
    Offset,
    Reference,
    SetIn,
    Spread,
    Sum,
    Up,
)

Parsed = Tree[Token]
Amounts = tuple[tuple[Sum, str | None], ...]

_SEPARATORS = frozenset({",", ";", "and", "&", ", and", ", &"})
_LISTING = ("up", "down", "fromside")


@dataclass(frozen=True, slots=True)
class Listed:
    """A phrase with the lone numbers that belong to it: ``up 78, 262 and 446``."""

    node: Parsed
    before: tuple[Parsed, ...] = ()
    after: tuple[Parsed, ...] = ()


def listed(nodes: Sequence[Parsed], draft: Draft) -> list[Listed]:
    """Return the phrases with the lone numbers round a distance put to it."""
    done: list[Listed] = []
    at = 0
    while at < len(nodes):
        end = at
        while end < len(nodes) and _is_lone(nodes[end]):
            end += 1
        run = tuple(nodes[at:end])
        if not run:
            done.append(Listed(nodes[at]))
            at += 1
            continue
        behind = done[-1].node if done and done[-1].node.data in _LISTING else None
        goes_on = behind is not None and _is_list((behind, *run), draft)
        before = end < len(nodes) and _ends_a_list(nodes[end])
        begins = before and _is_list((*run, nodes[end]), draft)
        if goes_on and begins and behind is not None and not _by_and((*run, nodes[end]), draft):
            # "up 40 and 220, 111 from front": the first list is closed by its "and".
            begins = False
            if not _by_and((behind, *run), draft):
                _unclear((behind, *run, nodes[end]), draft)
        if begins:
            done.append(Listed(nodes[end], before=run))
            at = end + 1
        elif goes_on:
            done[-1] = replace(done[-1], after=run)
            at = end
        else:
            done.extend(Listed(node) for node in run)
            at = end
    return done


def offset_of(node: Parsed, draft: Draft) -> Offset:
    """Return the offset of ``120 from left``, ``15 below the top`` or ``20 above shelves``."""
    nodes = node.children
    amount, span = sum_in(node, draft), draft.span(node)
    places = [text_of(place) for place in tokens(nodes, "PLACE")]
    from_side = bool(tokens(nodes, "_FROM"))
    if tokens(nodes, "NAME"):
        side = "bottom" if tokens(nodes, "_BELOW") else "top"
        return Offset(amount, side, span, of=(reference(node, draft),), on_host=True)
    if len(places) > 1:
        draft.error("place-missing", "from one side only is a distance measured", span)
    hosts = trees(nodes, "refs")
    of = references(hosts[0], draft) if hosts else ()
    outwards = {"top": "_ABOVE", "bottom": "_BELOW"}.get(places[0])
    beyond = outwards is not None and bool(tokens(nodes, outwards))
    return Offset(amount, places[0], span, of, on_host=not of and not from_side, beyond=beyond)


def from_side(group: Listed, draft: Draft) -> From:
    """Return ``120 from left`` and ``78, 262 and 446 above the bottom``."""
    offset = offset_of(group.node, draft)
    before = tuple(_lone_sum(node, draft) for node in group.before)
    after = tuple(_lone_sum(node, draft) for node in group.after)
    amounts: tuple[Sum, ...] = (*before, offset.amount, *after)
    return From(replace(offset, amount=amounts[0]), _span(group, draft), amounts[1:])


def up(group: Listed, draft: Draft) -> Up:
    """Return ``up 80``, ``up 78, 262, 446`` and ``80 and 262 above the floor``."""
    return Up(_amounts(group, draft), _span(group, draft))


def down(group: Listed, draft: Draft) -> Down:
    """Return ``down 20`` and ``down 20, 60``."""
    return Down(_amounts(group, draft), _span(group, draft))


def at_places(node: Parsed, draft: Draft) -> At:
    """Return ``at corners`` and ``at left and right``."""
    words = tokens(node.children, "CORNERS", "PLACE")
    return At(tuple(text_of(word) for word in words), draft.span(node))


def set_in(node: Parsed, draft: Draft) -> SetIn:
    """Return ``set in 30 at ends``; the words of one amount give an entry each."""
    return SetIn(_with_words(node, draft), draft.span(node))


def from_end(node: Parsed, draft: Draft) -> SetIn:
    """Return ``30 in from the ends``, which is to be set in there."""
    return SetIn(((sum_in(node, draft), "ends"),), draft.span(node))


def gap(node: Parsed, draft: Draft) -> Gap | Apart:
    """Return ``gap 8``, ``gap 2 up and down``, and ``gap 3 between`` as what it is."""
    if tokens(node.children, "_BETWEENTHEM"):
        return Apart(sum_in(node, draft), draft.span(node))
    return Gap(_with_words(node, draft), draft.span(node))


def merged_along(before: SetIn | Gap, more: SetIn) -> SetIn | Gap:
    """Return ``set in 30 at ends`` with its ``20 at front and back``."""
    return replace(
        before, amounts=before.amounts + more.amounts, span=union(before.span, more.span)
    )


def merged_ends(before: Spread, word: Token, draft: Draft) -> Spread:
    """Return ``spread`` with its ``same gap at ends``."""
    return replace(before, ends=text_of(word), span=union(before.span, draft.span(word)))


def direction(node: Parsed) -> str | None:
    """Return the direction word of a phrase, or None."""
    # "Spread upright" is how some say up and down.
    words = tokens(node.children, "DIRECTION", "RUN")
    return text_of(words[0]) if words else None


def flush(node: Parsed, draft: Draft) -> Flush:
    """Return ``flush with top of posts`` and ``flush top``."""
    hosts = trees(node.children, "refs")
    named: tuple[Reference, ...] = references(hosts[0], draft) if hosts else ()
    return Flush(text_of(tokens(node.children, "PLACE")[0]), named, draft.span(node))


def _with_words(node: Parsed, draft: Draft) -> Amounts:
    amount = sum_in(node, draft)
    words = [
        text_of(word) for word in tokens(node.children, "DIRECTION", "CORNERS", "ENDS", "PLACE")
    ]
    # All round is every direction, which is what no word means.
    return tuple((amount, None if word == "all round" else word) for word in words or (None,))


def _amounts(group: Listed, draft: Draft) -> tuple[Sum, ...]:
    return (
        *(_lone_sum(node, draft) for node in group.before),
        sum_in(group.node, draft),
        *(_lone_sum(node, draft) for node in group.after),
    )


def _lone_sum(node: Parsed, draft: Draft) -> Sum:
    return sum_in(trees(node.children, "dim")[0], draft)


def _span(group: Listed, draft: Draft) -> Span:
    whole = (*group.before, group.node, *group.after)
    return union(draft.span(whole[0]), draft.span(whole[-1]))


def _is_lone(node: Parsed) -> bool:
    """Return whether the phrase is one number without a word: "262.6"."""
    dims = trees(node.children, "dim") if node.data == "dims" else []
    return len(dims) == 1 and len(dims[0].children) == 1 and isinstance(dims[0].children[0], Tree)


def _ends_a_list(node: Parsed) -> bool:
    """Return whether numbers may stand before it: ``78 and 262 above the floor``, "from left"."""
    return node.data == "fromside" or (node.data == "up" and bool(tokens(node.children, "FLOOR")))


def _is_list(nodes: Sequence[Parsed], draft: Draft) -> bool:
    """Return whether commas or "and" stand between all of the phrases."""
    return all(sign in _SEPARATORS for sign in _between(nodes, draft))


def _by_and(nodes: Sequence[Parsed], draft: Draft) -> bool:
    """Return whether the last of the phrases is put to the others by "and"."""
    return _between(nodes, draft)[-1].lstrip(", ") in {"and", "&"}


def _between(nodes: Sequence[Parsed], draft: Draft) -> list[str]:
    text = draft.line.text
    return [text[ends(one)[1] : ends(other)[0]].strip().lower() for one, other in pairwise(nodes)]


def _unclear(nodes: Sequence[Parsed], draft: Draft) -> None:
    """Ask to which of two lists the numbers between them belong: ``up 40, 220, 111 from front``."""
    first, *run, last = nodes
    lone = union(draft.span(run[0]), draft.span(run[-1]))
    draft.error(
        "list-unclear",
        f"`{lone.text()}`: does that go with `{draft.span(first).text()}`, or with "
        f"`{draft.span(last).text()}`?",
        lone,
        Hint("end a list with `and`: `up {40} and {220}, {111} from front`"),
    )
