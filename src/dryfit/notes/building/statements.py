"""One builder for each kind of statement."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

from lark import Token, Tree

from dryfit.notes.building.air import moist_line, shop_air_line, stands_at_line
from dryfit.notes.building.cuts import feature_line
from dryfit.notes.building.draft import (
    Draft,
    only,
    spelled,
    text_of,
    text_or_none,
    tokens,
    trees,
)
from dryfit.notes.building.joint_lines import joint_line
from dryfit.notes.building.limits import limit_line
from dryfit.notes.building.new_names import check_length
from dryfit.notes.building.parts import parts_line
from dryfit.notes.building.pattern_lines import (
    EndOfPattern,
    PatternHeader,
    end_of_pattern,
    pattern_header,
)
from dryfit.notes.building.progress import done_line, measured_line, spoiled_line
from dryfit.notes.building.references import reference, references
from dryfit.notes.building.site import room_line, scribe_line, wall_line, way_line
from dryfit.notes.building.size_checks import check_overall, check_written
from dryfit.notes.building.stock import have_line, inventory_line
from dryfit.notes.building.sums import all_sizes, sum_in
from dryfit.notes.building.work import bare_line, finish_line, glue_line
from dryfit.notes.reading.lexer import Reading
from dryfit.notes.tree import (
    Act,
    NoteLine,
    OpeningLine,
    OrderLine,
    OverallLine,
    PieceLine,
    PlaceLine,
    Statement,
    TimberLine,
    UnitsLine,
    ValueLine,
)
from dryfit.quantities import LENGTH, UNITS

Parsed = Tree[Token]
Built = Statement | PatternHeader | EndOfPattern


def build(reading: Reading, draft: Draft) -> Built:
    """Return what a line that was read says; `draft` collects what is wrong with it."""
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
    sawn = tokens(tree.children, "SAWN")
    name = text_of(tokens(tree.children, "PHRASE")[0])
    return TimberLine(name, draft.line.whole(), text_of(sawn[0]) if sawn else None)


def _value(tree: Parsed, draft: Draft) -> ValueLine:
    name = tokens(tree.children, "VALUE")[0]
    check_length(name, draft)
    amount = sum_in(tree, draft)
    return ValueLine(text_of(name), draft.span(name), amount, draft.line.whole())


def _stands(tree: Parsed, draft: Draft) -> PlaceLine:
    return PlaceLine(text_of(tokens(tree.children, "STANDS")[0]), draft.line.whole())


def _opening(tree: Parsed, draft: Draft) -> OpeningLine:
    name = tokens(tree.children, "NAME")[0]
    check_length(name, draft)
    between = references(trees(tree.children, "refs")[0], draft)
    return OpeningLine(text_of(name), draft.span(name), between, draft.line.whole())


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


_BUILDERS: dict[str, Callable[[Parsed, Draft], Built]] = {
    "piece": _piece,
    "note": _note,
    "units": _units,
    "overall": _overall,
    "timber": _timber,
    "have": have_line,
    "buy": have_line,
    "inventory": inventory_line,
    "value": _value,
    "parts": parts_line,
    "bought": parts_line,
    "opening": _opening,
    "joint": joint_line,
    "feature": feature_line,
    "glue": glue_line,
    "finish": finish_line,
    "bare": bare_line,
    "stands": _stands,
    "room": room_line,
    "scribe": scribe_line,
    "wayin": way_line,
    "onwall": wall_line,
    "standsat": stands_at_line,
    "moist": moist_line,
    "shopair": shop_air_line,
    "pattern": pattern_header,
    "endblock": end_of_pattern,
    "measured": measured_line,
    "done": done_line,
    "spoiled": spoiled_line,
    "limit": limit_line,
    "order": _order,
}
