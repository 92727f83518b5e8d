"""One builder for each kind of statement."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from fractions import Fraction

from lark import Token, Tree

from dryfit.diagnostics import Hint
from dryfit.notes.building.clauses import clauses
from dryfit.notes.building.counts import checked_count
from dryfit.notes.building.cuts import feature_line
from dryfit.notes.building.draft import (
    Draft,
    ends,
    only,
    spelled,
    text_of,
    text_or_none,
    tokens,
    trees,
)
from dryfit.notes.building.joining import Phrase, combined
from dryfit.notes.building.joint_lines import check_hosts, joint_line
from dryfit.notes.building.places import listed
from dryfit.notes.building.references import reference, references
from dryfit.notes.building.size_checks import (
    check_overall,
    check_part_sizes,
    check_stock_sizes,
    check_written,
)
from dryfit.notes.building.sums import all_sizes, sum_in
from dryfit.notes.reading.lexer import Reading
from dryfit.notes.reading.word_kinds import RESERVED
from dryfit.notes.tree import (
    Act,
    At,
    CoatWords,
    CutAfter,
    Down,
    FinishLine,
    Gap,
    GluedFrom,
    GlueItem,
    GlueLine,
    HaveLine,
    Join,
    Lie,
    NoteLine,
    OfTimber,
    OpeningLine,
    OrderLine,
    OverallLine,
    PartClause,
    PartsLine,
    PieceLine,
    Reference,
    Run,
    SetBack,
    SetIn,
    Sizes,
    Spread,
    Statement,
    TimberLine,
    UnitsLine,
    Up,
    ValueLine,
)
from dryfit.quantities import LENGTH, UNITS

Parsed = Tree[Token]


def build(reading: Reading, draft: Draft) -> Statement:
    """Return the statement of a line that was read; `draft` collects what is wrong with it."""
    return _BUILDERS[reading.tree.data](reading.tree, draft)


def _piece(tree: Parsed, draft: Draft) -> PieceLine:
    return PieceLine(text_of(tokens(tree.children, "TEXT")[0]).strip(), draft.line.whole())


def _note(tree: Parsed, draft: Draft) -> NoteLine:
    return NoteLine(text_of(tokens(tree.children, "TEXT")[0]).strip(), draft.line.whole())


def _units(tree: Parsed, draft: Draft) -> UnitsLine:
    nodes = tree.children
    unit = text_of(tokens(nodes, "UNIT")[0])
    step = only(trees(nodes, "step"), "the step", draft)
    first = text_or_none(only(tokens(nodes, "FIRST"), "which size comes first", draft))
    return UnitsLine(
        unit,
        _step(step, unit, draft) if step else None,
        bool(tokens(nodes, "DECIMALCOMMA")),
        first or "length",
        draft.line.whole(),
    )


def _step(tree: Parsed, unit: str, draft: Draft) -> Fraction | None:
    number = trees(tree.children, "number")[0].children[0]
    assert isinstance(number, Token)
    written = spelled(number)
    step = written.value
    if written.quantity and written.quantity.kind == LENGTH:
        step = written.quantity.value / UNITS[unit].size
    elif written.quantity:
        step = None
    if not step:
        draft.error("no-step", "the step must be a length above nothing", draft.span(tree))
    return step or None


def _overall(tree: Parsed, draft: Draft) -> OverallLine:
    line = OverallLine(all_sizes(tree, draft), draft.line.whole())
    if check_written(trees(tree.children, "dims"), draft):
        check_overall(line, draft)
    return line


def _timber(tree: Parsed, draft: Draft) -> TimberLine:
    return TimberLine(text_of(tokens(tree.children, "PHRASE")[0]), draft.line.whole())


def _have(tree: Parsed, draft: Draft) -> HaveLine:
    nodes = tree.children
    timber = only(trees(nodes, "oftimber"), "the timber", draft)
    marks = tuple(
        (text_of(tokens(mark.children, "MARK")[0]), sum_in(mark, draft))
        for mark in trees(nodes, "mark")
    )
    sizes = all_sizes(tree, draft)
    if check_written(trees(nodes, "dims"), draft):
        check_stock_sizes(sizes, draft)
    return HaveLine(
        checked_count(nodes, draft) or 1,
        text_of(tokens(nodes, "STOCK")[0]),
        text_of(tokens(timber.children, "PHRASE")[0]) if timber else None,
        sizes,
        bool(tokens(nodes, "ROUGH")),
        marks,
        draft.line.text.strip(),
        draft.line.whole(),
    )


def _value(tree: Parsed, draft: Draft) -> ValueLine:
    name = tokens(tree.children, "VALUE")[0]
    amount = sum_in(tree, draft)
    return ValueLine(text_of(name), draft.span(name), amount, draft.line.whole())


def _parts(tree: Parsed, draft: Draft) -> PartsLine:
    name = tokens(tree.children, "PHRASE")[0]
    count = checked_count(tree.children, draft) or 1
    phrases = [node for node in tree.children if isinstance(node, Tree)]
    groups = listed(phrases, draft)
    joined = combined(_set_in_places(clauses(groups, draft), count), draft)
    _check_name(name, draft)
    _check_once(joined, draft)
    if check_written([group.node for group in groups if group.node.data == "dims"], draft):
        sizes = [phrase for phrase in joined if isinstance(phrase, Sizes)]
        check_part_sizes(sizes, draft)
    for phrase in joined:
        if isinstance(phrase, Join):
            check_hosts((Reference(text_of(name), (), draft.span(name)),), phrase.hosts, draft)
    return PartsLine(
        count,
        text_of(name),
        _written(name, draft),
        draft.span(name),
        joined,
        draft.line.whole(),
    )


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


def _check_once(phrases: Iterable[PartClause], draft: Draft) -> None:
    """Check that nothing is said twice that can be only one thing."""
    seen: set[type[PartClause]] = set()
    for phrase in phrases:
        what = _ONCE.get(type(phrase))
        if what and type(phrase) in seen:
            draft.error("said-twice", f"said twice: {what}", phrase.span)
            return
        seen.add(type(phrase))


def _opening(tree: Parsed, draft: Draft) -> OpeningLine:
    name = tokens(tree.children, "NAME")[0]
    between = references(trees(tree.children, "refs")[0], draft)
    return OpeningLine(text_of(name), draft.span(name), between, draft.line.whole())


def _glue(tree: Parsed, draft: Draft) -> GlueLine:
    name = tokens(tree.children, "PHRASE")[0]
    items = tuple(
        GlueItem(
            checked_count(item.children, draft),
            reference(trees(item.children, "ref")[0], draft),
            draft.span(item),
        )
        for item in trees(tree.children, "item")
    )
    cure = only(trees(tree.children, "cure"), "how long it cures", draft)
    _check_name(name, draft)
    return GlueLine(
        checked_count(tree.children, draft) or 1,
        text_of(name),
        _written(name, draft),
        draft.span(name),
        items,
        sum_in(cure, draft) if cure else None,
        draft.line.whole(),
    )


def _finish(tree: Parsed, draft: Draft) -> FinishLine:
    coats = only(trees(tree.children, "coats"), "how many coats", draft)
    apart = only(trees(tree.children, "apart"), "how long between coats", draft)
    product = CoatWords(
        text_of(tokens(tree.children, "PHRASE")[0]),
        checked_count(coats.children, draft) if coats else None,
        sum_in(apart, draft) if apart else None,
        draft.line.whole(),
    )
    return FinishLine((), (), (product,), draft.line.whole())


def _order(tree: Parsed, draft: Draft) -> OrderLine:
    first, then = (_acts(node, draft) for node in trees(tree.children, "wishes"))
    if text_of(tokens(tree.children, "ORDER")[0]) == "after":
        first, then = then, first
    return OrderLine(first, then, draft.line.whole())


def _acts(tree: Parsed, draft: Draft) -> tuple[Act, ...]:
    """Return the deeds of one side; in "cut legs and rails" the verb holds for both."""
    acts: list[Act] = []
    verb = None
    for node in trees(tree.children, "deed", "ref"):
        if node.data == "deed":
            verb = text_of(tokens(node.children, "ACTION")[0])
            refs = trees(node.children, "ref")
            named = reference(refs[0], draft) if refs else None
        else:
            named = reference(node, draft)
        acts.append(Act(verb, named, draft.span(node)))
    return tuple(acts)


def _check_name(name: Token, draft: Draft) -> None:
    if text_of(name) in RESERVED:
        draft.error(
            "trade-word",
            f"`{_written(name, draft)}` is a word of the language and cannot name a part",
            draft.span(name),
            Hint(f"add a word that tells it apart, such as `long {_written(name, draft)}`"),
        )


def _written(name: Token, draft: Draft) -> str:
    start, end = ends(name)
    return draft.line.text[start:end]


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
    Gap: "the gap",
    GluedFrom: "from how many staves the part is glued",
    OfTimber: "the timber",
    CutAfter: "what the cut waits for",
}
_BUILDERS: dict[str, Callable[[Parsed, Draft], Statement]] = {
    "piece": _piece,
    "note": _note,
    "units": _units,
    "overall": _overall,
    "timber": _timber,
    "have": _have,
    "value": _value,
    "parts": _parts,
    "opening": _opening,
    "joint": joint_line,
    "feature": feature_line,
    "glue": _glue,
    "finish": _finish,
    "order": _order,
}
