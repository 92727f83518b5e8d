"""The builders of patterns' first lines, and of what uses a pattern."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from lark import Token, Tree

from dryfit.diagnostics import Hint, Severity, Span
from dryfit.notes.building.draft import Draft, text_of, tokens, union
from dryfit.notes.building.new_names import check_name, written_name
from dryfit.notes.building.sums import sum_in, sums_in
from dryfit.notes.mistake import Mistake, Repair
from dryfit.notes.reading.near import nearest
from dryfit.notes.reading.word_kinds import RESERVED
from dryfit.notes.tree import AsPattern, Number, Parameter, PartClause, Sum

Parsed = Tree[Token]

_OF_THE_WHOLE = ("width", "depth", "height")


@dataclass(frozen=True, slots=True)
class PatternHeader:
    """``pattern leg base with width, depth, height, leg = 45 mm, 30 mm to 90 mm``."""

    name: str
    written: str
    name_span: Span
    parameters: tuple[Parameter, ...]


@dataclass(frozen=True, slots=True)
class EndOfPattern:
    """``end``."""

    span: Span


@dataclass(frozen=True, slots=True)
class Setting:
    """``rail = 80`` on the line of an instance."""

    name: str
    amount: Sum
    span: Span


def pattern_header(tree: Parsed, draft: Draft) -> PatternHeader:
    """Return what the first line of a pattern says."""
    name, *_ = tokens(tree.children, "PHRASE")
    check_name(name, draft)
    return PatternHeader(
        text_of(name), written_name(name, draft), draft.span(name), _parameters(tree, draft)
    )


def end_of_pattern(tree: Parsed, draft: Draft) -> EndOfPattern:
    """Return the line that ends a pattern."""
    del tree
    return EndOfPattern(draft.line.whole())


def as_pattern(node: Parsed, draft: Draft) -> AsPattern:
    """Return ``as leg base``, its settings still to come."""
    return AsPattern(text_of(tokens(node.children, "PATTERNNAME")[0]), (), draft.span(node))


def setting(node: Parsed, draft: Draft) -> Setting:
    """Return ``rail = 80`` and ``leg 50``."""
    word = tokens(node.children, "PARAMETER")[0]
    return Setting(text_of(word), sum_in(node, draft), draft.span(node))


def with_settings(clauses: Sequence[PartClause], settings: Sequence[Setting]) -> list[PartClause]:
    """Return the clauses with the settings at the pattern that they are for.

    The lexer takes a word for a setting only on a line that uses a pattern.
    """
    return [
        _with_settings(each, settings) if isinstance(each, AsPattern) else each for each in clauses
    ]


def _with_settings(used: AsPattern, settings: Sequence[Setting]) -> AsPattern:
    span = used.span
    for each in settings:
        span = union(span, each.span)
    pairs = tuple((each.name, each.amount) for each in settings)
    return replace(used, settings=pairs, span=span)


def _parameters(tree: Parsed, draft: Draft) -> tuple[Parameter, ...]:
    found: list[Parameter] = []
    for node in tree.children[2:]:
        if isinstance(node, Token):
            if node.type in ("PHRASE", "DIM"):
                found.append(Parameter(text_of(node), None, None, None, draft.span(node)))
            continue
        if node.data == "default":
            word = tokens(node.children, "PHRASE", "DIM")[0]
            amount = sum_in(node, draft)
            found.append(Parameter(text_of(word), amount, None, None, draft.span(word)))
        elif not found:
            draft.error("range-of-what", "a range stands here, but no name", draft.span(node))
        else:
            least, most = sums_in(node, draft)
            found[-1] = replace(found[-1], least=least, most=most)
    _check_parameters(found, draft)
    return tuple(found)


def _check_parameters(found: Sequence[Parameter], draft: Draft) -> None:
    seen: set[str] = set()
    for each in found:
        _check_parameter_name(each, draft)
        _check_default(each, draft)
        if each.name in seen:
            draft.error("name-twice", f"`{each.span.text()}` is listed twice", each.span)
            return
        seen.add(each.name)


def _check_default(each: Parameter, draft: Draft) -> None:
    """Check that a parameter lies in its own range where nobody sets it."""
    sums = (each.least, each.default, each.most)
    numbers = [amount for amount in sums if isinstance(amount, Number)]
    quantities = [number.quantity for number in numbers]
    if len(numbers) < len(sums):
        return
    measures = [each.value for each in quantities if each is not None]
    values = measures if any(quantities) else [number.value for number in numbers]
    if len(values) < len(sums) or values[0] <= values[1] <= values[2]:
        return
    least, default, most = (number.span.text() for number in numbers)
    draft.error(
        "default-out-of-range",
        f"`{each.span.text()}` is {default} where nobody sets it, and may be {least} to {most}",
        numbers[1].span,
        Repair("a figure within the range", numbers[1].span, least),
        Hint("or widen the range"),
    )


def _check_parameter_name(each: Parameter, draft: Draft) -> None:
    """Check that no size of the whole is mistyped, and no word of the language is a name."""
    if each.name in _OF_THE_WHOLE:
        return
    near = nearest(each.name, _OF_THE_WHOLE)
    if each.name in RESERVED:
        draft.error(
            "trade-word",
            f"`{each.name}` is a word of the language and cannot be set",
            each.span,
            *(Repair(f"did you mean `{word}`?", each.span, word) for word in near),
            Repair("add a word that tells it apart", each.span, f"board {each.name}"),
        )
    elif near and each.default is None:
        repairs = tuple(Repair(f"did you mean `{word}`?", each.span, word) for word in near)
        message = f"is `{each.name}` a size of the whole?"
        draft.mistakes.append(
            Mistake("near-a-size", message, each.span, repairs, Severity.QUESTION)
        )
