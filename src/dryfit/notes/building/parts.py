"""The builder of a part's line, and of a bought thing's."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import pairwise

from lark import Token, Tree

from dryfit.diagnostics import Hint, Note, Span
from dryfit.notes.building.clauses import clauses
from dryfit.notes.building.counts import checked_count
from dryfit.notes.building.draft import Draft, ends, text_of, tokens, union
from dryfit.notes.building.joining import Phrase, combined
from dryfit.notes.building.joint_lines import check_hosts
from dryfit.notes.building.new_names import check_name, written_name
from dryfit.notes.building.pattern_lines import setting, with_settings
from dryfit.notes.building.places import listed
from dryfit.notes.building.size_checks import check_part_sizes, check_written
from dryfit.notes.mistake import Mistake, Repair
from dryfit.notes.names import plural
from dryfit.notes.reading.near import nearest
from dryfit.notes.tree import (
    At,
    Carries,
    CutAfter,
    Down,
    Fitted,
    For,
    Gap,
    GluedFrom,
    Horns,
    Join,
    Lie,
    OfTimber,
    OrderWhen,
    PartClause,
    PartsLine,
    Reference,
    Rests,
    Ripped,
    Run,
    SetBack,
    SetIn,
    Sizes,
    Spare,
    Splayed,
    Spread,
    Up,
    Weighs,
)

Parsed = Tree[Token]


def parts_line(tree: Parsed, draft: Draft) -> PartsLine:
    """Return the statement of ``4 legs, upright, 40 x 40`` and of ``bought 4 casters``."""
    name = tokens(tree.children, "PHRASE")[0]
    count = checked_count(tree.children, draft) or 1
    nodes = [node for node in tree.children if isinstance(node, Tree)]
    phrases = [node for node in nodes if node.data != "setting"]
    settings = [setting(node, draft) for node in nodes if node.data == "setting"]
    groups = listed(phrases, draft)
    said = _one_list(_set_in_places(clauses(groups, draft), count), count)
    joined = combined(said, draft)
    _check_place_of(nodes, draft)
    if settings:
        joined = tuple(with_settings(joined, settings))
    check_name(name, draft)
    _check_once(joined, draft)
    bought = tree.data == "bought"
    _check_bought(joined, draft, bought=bought)
    if check_written([group.node for group in groups if group.node.data == "dims"], draft):
        sizes = [phrase for phrase in joined if isinstance(phrase, Sizes)]
        check_part_sizes(sizes, draft, round_too=bought)
    for phrase in joined:
        if isinstance(phrase, Join):
            check_hosts((Reference(text_of(name), (), draft.span(name)),), phrase.hosts, draft)
    return PartsLine(
        count,
        text_of(name),
        written_name(name, draft),
        draft.span(name),
        joined,
        draft.line.whole(),
        bought=bought,
    )


def _one_list(phrases: list[Phrase], count: int) -> list[Phrase]:
    """Return the phrases with "up 78, up 262" as one list of heights, where there are several."""
    done: list[Phrase] = []
    for phrase in phrases:
        before = done[-1] if done else None
        if count > 1 and isinstance(before, Up) and isinstance(phrase, Up):
            span = union(before.span, phrase.span)
            done[-1] = Up(before.amounts + phrase.amounts, span)
        else:
            done.append(phrase)
    return done


def _set_in_places(phrases: list[Phrase], count: int) -> list[Phrase]:
    """Return the phrases with "set in 15 at left and right" taken for two when it names places.

    It does where nothing else says at which places the copies are, and there is a copy for each.
    """
    set_in = [phrase for phrase in phrases if isinstance(phrase, SetIn)]
    if len(set_in) != 1 or any(isinstance(phrase, At) for phrase in phrases):
        return phrases
    amounts, span = set_in[0].amounts, set_in[0].span
    words = [word for _, word in amounts if word is not None]
    one_amount = len({id(amount) for amount, _ in amounts}) == 1
    if words == ["corners"] or (one_amount and count == len(words) > 1 and {*words} <= _ALL_PLACES):
        at = phrases.index(set_in[0])
        return [
            *phrases[:at],
            At(tuple(words), span),
            SetIn(((amounts[0][0], None),), span),
            *phrases[at + 1 :],
        ]
    return phrases


def _check_place_of(nodes: Sequence[Parsed], draft: Draft) -> None:
    """Check that no part is meant in "at the back of rails", which reads as a timber."""
    for place, timber in pairwise(nodes):
        if place.data != "at" or timber.data != "oftimber":
            continue
        start, end = ends(place)[1], ends(timber)[0]
        if draft.line.text[start:end].strip():
            continue
        word = tokens(timber.children, "PHRASE")[0]
        if text_of(word) in draft.vocabulary.parts:
            _place_of_part(place, timber, text_of(word), draft)
            continue
        names = sorted(draft.vocabulary.parts)
        near = nearest(written_name(word, draft), [*names, *map(plural, names)])
        span = draft.span(word)
        comma = Repair(
            "if it is the timber, put a comma before it", draft.line.span(start, start), ","
        )
        draft.error(
            "unknown-name",
            f"no part is called `{written_name(word, draft)}`",
            span,
            *(Repair(f"did you mean `{name}`?", span, name) for name in near),
            comma,
        )


def _place_of_part(place: Parsed, timber: Parsed, name: str, draft: Draft) -> None:
    """Say how "at left and right of door" is written: how they meet first, then the place."""
    whole = draft.over(place, timber)
    said = draft.line.text[slice(*ends(place))]
    written = draft.vocabulary.written.get(name, name)
    space = name in draft.vocabulary.spaces
    advice: Hint | Repair = Repair(f"in it: `in {written}, {said}`", whole, f"in {written}, {said}")
    if not space:
        sides = [text_of(word) for word in tokens(place.children, "PLACE")] or ["back"]
        on = f"on the {sides[0]} of {written}"
        hint = Hint(f"say on which face of it the part lies: `{on}`, on a line for each place")
        advice = Repair(f"`{on}`", whole, on) if len(sides) == 1 else hint
    kind = "an opening" if space else "a part"
    message = f"a place alone is one of the whole piece, and `{written}` is {kind} of it"
    draft.error("place-of-part", message, whole, advice)


def _check_bought(phrases: Iterable[PartClause], draft: Draft, *, bought: bool) -> None:
    """Check that only a bought thing is ordered and goes with something, and only ours is spare."""
    for phrase in phrases:
        if isinstance(phrase, Rests) and bought:
            draft.error(
                "rests-bought",
                f"`{phrase.span.text()}` is said of wood that is milled, and this is bought",
                phrase.span,
                Hint("leave the words out"),
            )
            return
        if isinstance(phrase, Spare) and bought:
            draft.error(
                "spare-bought",
                "spare blanks are made of wood, and this is bought",
                phrase.span,
                Hint("write a line `bought` of its own, without a place, for what is kept spare"),
            )
            return
        if isinstance(phrase, For | OrderWhen | Weighs) and not bought:
            draft.error(
                "not-bought",
                f"`{phrase.span.text()}` is said of bought things only",
                phrase.span,
                Repair("is it bought?", draft.line.span(*[_first_word(draft)] * 2), "bought "),
            )
            return


def _first_word(draft: Draft) -> int:
    return len(draft.line.text) - len(draft.line.text.lstrip())


def _check_once(phrases: Iterable[PartClause], draft: Draft) -> None:
    """Check that nothing is said twice that can be only one thing."""
    seen: dict[type[PartClause], Span] = {}
    for phrase in phrases:
        what = _ONCE.get(type(phrase))
        if what and type(phrase) in seen:
            _said_twice(what, seen[type(phrase)], phrase.span, draft)
            return
        seen[type(phrase)] = phrase.span


def _said_twice(what: str, first: Span, second: Span, draft: Draft) -> None:
    drops = (_dropped(span, draft) for span in (second, first))
    draft.mistakes.append(
        Mistake(
            "said-twice",
            f"said twice: {what}",
            second,
            tuple(Repair("take one of them out", span, "") for span in drops),
            notes=(Note("said first here", first),),
        )
    )


def _dropped(span: Span, draft: Draft) -> Span:
    """Return the place of a phrase with the comma before it."""
    start, end = draft.line.offsets(span)
    before = draft.line.text[:start].rstrip(" ,;")
    return draft.line.span(len(before), end)


_ALL_PLACES = frozenset({"front", "back", "left", "right"})
_ONCE: dict[type[PartClause], str] = {
    Run: "which way the part runs",
    Lie: "how the part lies",
    At: "at which places the part is",
    SetIn: "how far the part is set in",
    SetBack: "how far the part is set back",
    Up: "how high up the part is",
    Down: "how far down the part is",
    Spread: "that the parts are spread",
    Ripped: "which boards are ripped",
    Gap: "the gap",
    GluedFrom: "from how many staves the part is glued",
    OfTimber: "the timber",
    CutAfter: "what the cut waits for",
    Fitted: "how it comes to fit",
    Horns: "how long the horns are",
    Spare: "how many are spare",
    Rests: "how long its wood rests",
    Splayed: "how the parts are splayed",
    Carries: "what it carries",
    Weighs: "what it weighs",
}
