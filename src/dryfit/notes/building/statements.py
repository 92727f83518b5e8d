"""One builder for each kind of statement."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction

from lark import Token, Tree

from dryfit.diagnostics import Hint
from dryfit.notes.building.clauses import clauses, join, joint_spec, reference, references, stage
from dryfit.notes.building.counts import checked_count
from dryfit.notes.building.draft import Draft, ends, spelled, text_of, tokens, trees
from dryfit.notes.building.joining import combined
from dryfit.notes.building.size_checks import (
    check_overall,
    check_part_sizes,
    check_stock_sizes,
    check_written,
)
from dryfit.notes.building.sums import offset_of, size_words, sum_of
from dryfit.notes.reading.lexer import Reading
from dryfit.notes.reading.words import RESERVED
from dryfit.notes.tree import (
    Act,
    FeatureLine,
    FinishLine,
    GlueItem,
    GlueLine,
    HaveLine,
    Join,
    JointLine,
    JointSpec,
    NoteLine,
    OrderLine,
    OverallLine,
    PartsLine,
    PieceLine,
    Reference,
    Sizes,
    SizeWord,
    Statement,
    Sum,
    TimberLine,
    UnitsLine,
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
    unit = text_of(tokens(tree.children, "UNIT")[0])
    steps = trees(tree.children, "step")
    step = _step(steps[0], unit, draft) if steps else None
    first = [text_of(word) for word in tokens(tree.children, "FIRST")]
    comma = bool(tokens(tree.children, "DECIMALCOMMA"))
    return UnitsLine(unit, step, comma, first[0] if first else "length", draft.line.whole())


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
    line = OverallLine(_all_sizes(tree, draft), draft.line.whole())
    if check_written(trees(tree.children, "dims"), draft):
        check_overall(line, draft)
    return line


def _timber(tree: Parsed, draft: Draft) -> TimberLine:
    return TimberLine(text_of(tokens(tree.children, "PHRASE")[0]), draft.line.whole())


def _have(tree: Parsed, draft: Draft) -> HaveLine:
    nodes = tree.children
    timbers = [text_of(tokens(node.children, "PHRASE")[0]) for node in trees(nodes, "oftimber")]
    marks = tuple(
        (text_of(tokens(mark.children, "MARK")[0]), sum_of(mark.children[-1], draft))
        for mark in trees(nodes, "mark")
    )
    sizes = _all_sizes(tree, draft)
    if check_written(trees(nodes, "dims"), draft):
        check_stock_sizes(sizes, draft)
    return HaveLine(
        checked_count(nodes, draft) or 1,
        text_of(tokens(nodes, "STOCK")[0]),
        timbers[0] if timbers else None,
        sizes,
        bool(tokens(nodes, "ROUGH")),
        marks,
        draft.line.text.strip(),
        draft.line.whole(),
    )


def _value(tree: Parsed, draft: Draft) -> ValueLine:
    name = tokens(tree.children, "VALUE")[0]
    amount = sum_of(tree.children[-1], draft)
    return ValueLine(text_of(name), draft.span(name), amount, draft.line.whole())


def _parts(tree: Parsed, draft: Draft) -> PartsLine:
    name = tokens(tree.children, "PHRASE")[0]
    phrases = [node for node in tree.children if isinstance(node, Tree)]
    joined = combined(clauses(phrases, draft))
    _check_name(name, draft)
    if check_written(trees(tree.children, "dims"), draft):
        sizes = [phrase for phrase in joined if isinstance(phrase, Sizes)]
        check_part_sizes(sizes, draft)
    for phrase in joined:
        if isinstance(phrase, Join):
            _check_hosts((Reference(text_of(name), (), draft.span(name)),), phrase.hosts, draft)
    return PartsLine(
        checked_count(tree.children, draft) or 1,
        text_of(name),
        _written(name, draft),
        draft.span(name),
        joined,
        draft.line.whole(),
    )


def _joint(tree: Parsed, draft: Draft) -> JointLine:
    nodes = tree.children
    guests = _guests(trees(nodes, "wishes")[0], draft)
    joined = join(tree, draft)
    hosts = joined.hosts + references(tree, draft)
    spec = _joint_line_spec(tree, draft, joined)
    _check_hosts(guests, hosts, draft)
    edges = trees(nodes, "entering")
    words = [text_of(word) for edge in edges for word in tokens(edge.children, "PLACE", "EDGE")]
    edge = " ".join(words) or None
    whole = Join(joined.preposition, hosts, spec, draft.line.whole(), edge)
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
    specs = [joint_spec(node, draft) for node in trees(tree.children, "jointspec")]
    if len(specs) > 1:
        draft.error("second-joint", "one line makes one kind of joint", specs[1].span)
    sizes = _all_sizes(tree, draft)
    places = [offset_of(node, draft) for node in trees(tree.children, "fromside")]
    if specs:
        spec = specs[0]
    elif joined.preposition == "crossing":
        spec = JointSpec("half lap", None, (), None, joined.span)
    else:
        if sizes or places:
            draft.error(
                "size-without-joint",
                "a measure stands here, but no joint that it could belong to",
                sizes[0].span if sizes else places[0].span,
                Hint("name the joint in front of it: `tenon 20 long`"),
            )
        return None
    return replace(spec, sizes=spec.sizes + sizes, place=places[0] if places else None)


def _feature(tree: Parsed, draft: Draft) -> FeatureLine:
    nodes = tree.children
    faces = [text_of(face) for face in tokens(nodes, "FACE")]
    places = [offset_of(node, draft) for node in trees(nodes, "fromside")]
    stages = [stage(node, draft) for node in trees(nodes, "stage")]
    return FeatureLine(
        text_of(tokens(nodes, "FEATURE")[0]),
        references(trees(nodes, "refs")[0], draft),
        faces[0] if faces else None,
        _all_sizes(tree, draft),
        places[0] if places else None,
        bool(tokens(nodes, "THROUGH")),
        stages[0] if stages else None,
        draft.line.whole(),
    )


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
    cures = [sum_of(node.children[0], draft) for node in trees(tree.children, "cure")]
    _check_name(name, draft)
    return GlueLine(
        checked_count(tree.children, draft) or 1,
        text_of(name),
        _written(name, draft),
        draft.span(name),
        items,
        cures[0] if cures else None,
        draft.line.whole(),
    )


def _finish(tree: Parsed, draft: Draft) -> FinishLine:
    coats = [checked_count(node.children, draft) for node in trees(tree.children, "coats")]
    apart: list[Sum] = [
        sum_of(part, draft)
        for node in trees(tree.children, "apart")
        for part in node.children
        if isinstance(part, Tree)
    ]
    return FinishLine(
        text_of(tokens(tree.children, "PHRASE")[0]),
        coats[0] if coats else None,
        apart[0] if apart else None,
        draft.line.whole(),
    )


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


def _check_hosts(guests: tuple[Reference, ...], hosts: tuple[Reference, ...], draft: Draft) -> None:
    own = {(guest.name, guest.places) for guest in guests}
    for host in hosts:
        if (host.name, host.places) in own:
            draft.error("joined-to-itself", f"{host.name} cannot be joined to itself", host.span)
            return


def _all_sizes(tree: Parsed, draft: Draft) -> tuple[SizeWord, ...]:
    return tuple(size for dims in trees(tree.children, "dims") for size in size_words(dims, draft))


def _written(name: Token, draft: Draft) -> str:
    start, end = ends(name)
    return draft.line.text[start:end]


_BUILDERS: dict[str, Callable[[Parsed, Draft], Statement]] = {
    "piece": _piece,
    "note": _note,
    "units": _units,
    "overall": _overall,
    "timber": _timber,
    "have": _have,
    "value": _value,
    "parts": _parts,
    "joint": _joint,
    "feature": _feature,
    "glue": _glue,
    "finish": _finish,
    "order": _order,
}
