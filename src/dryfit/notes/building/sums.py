"""Sums, sizes and offsets from their parse trees; nothing is worked out here."""

from __future__ import annotations

from fractions import Fraction

from lark import Token, Tree

from dryfit.diagnostics import Hint, Severity
from dryfit.notes.building.draft import Draft, Node, ends, spelled, text_of, tokens, trees
from dryfit.notes.mistake import Mistake
from dryfit.notes.tree import (
    LeftOut,
    Number,
    Operation,
    OverallSize,
    PartSize,
    SizeWord,
    Sum,
    ValueName,
)

_SIGNS = {"add": "+", "subtract": "-", "multiply": "*", "divide": "/"}
_SUMS = frozenset(
    [
        *_SIGNS,
        "number",
        "half",
        "partsize",
        "sizeof",
        "overallsize",
        "wholesize",
        "valuename",
        "bracketed",
        "negative",
    ]
)
_OF_A_PART = ("length", "width", "thickness")
_OF_THE_WHOLE = ("width", "depth", "height")


def sum_of(node: Node, draft: Draft) -> Sum:
    """Return the sum that the node stands for, unevaluated."""
    assert isinstance(node, Tree)
    sign = _SIGNS.get(node.data)
    if sign:
        left, right = _terms(node)
        return Operation(sign, sum_of(left, draft), sum_of(right, draft), draft.span(node))
    if node.data == "number":
        return number_of(node.children[0], draft)
    if node.data == "valuename":
        return ValueName(text_of(_token(node, 0)), draft.span(node))
    if node.data == "bracketed":
        return sum_in(node, draft)
    if node.data in ("half", "negative"):
        factor = Fraction(1, 2) if node.data == "half" else Fraction(-1)
        span = draft.span(node)
        return Operation("*", Number(factor, None, span), sum_in(node, draft), span)
    return _dimension(node, draft)


def sum_in(node: Tree[Token], draft: Draft) -> Sum:
    """Return the one sum of a phrase, such as that of ``set back 6``."""
    return sum_of(_terms(node)[0], draft)


def sums_in(node: Tree[Token], draft: Draft) -> tuple[Sum, ...]:
    """Return the sums of a phrase in order, such as the two of ``40 to 25``."""
    return tuple(sum_of(term, draft) for term in _terms(node))


def size_word(node: Tree[Token], draft: Draft) -> SizeWord:
    """Return one size, such as ``22 thick``."""
    word = tokens(node.children, "DIMADJ", "CUTADJ")
    amount = _amount(node, draft)
    return SizeWord(amount, text_of(word[0]) if word else None, draft.span(node))


def size_words(node: Tree[Token], draft: Draft) -> tuple[SizeWord, ...]:
    """Return the sizes of a run such as ``45 x 30``."""
    return tuple(size_word(dim, draft) for dim in trees(node.children, "dim"))


def all_sizes(node: Tree[Token], draft: Draft) -> tuple[SizeWord, ...]:
    """Return the sizes of all runs of a line in order."""
    sizes: list[SizeWord] = []
    for run in trees(node.children, "dims", "dimset"):
        sizes.extend([said_size(run, draft)] if run.data == "dimset" else size_words(run, draft))
    return tuple(sizes)


def said_size(node: Tree[Token], draft: Draft) -> SizeWord:
    """Return the size of ``width 300`` or ``width = 300``."""
    dimension = text_of(tokens(node.children, "DIM", "DIMADJ", "CUTADJ")[0])
    return SizeWord(_amount(node, draft), dimension, draft.span(node))


def _amount(node: Tree[Token], draft: Draft) -> Sum:
    left_out = tokens(node.children, "LEFTOUT")
    return LeftOut(draft.span(left_out[0])) if left_out else sum_in(node, draft)


def _terms(node: Tree[Token]) -> list[Tree[Token]]:
    return [child for child in node.children if isinstance(child, Tree) and child.data in _SUMS]


def number_of(node: Node, draft: Draft) -> Number:
    """Return the number of a number's token or tree."""
    node = node.children[0] if isinstance(node, Tree) else node
    assert isinstance(node, Token)
    number = spelled(node)
    assert number.value is not None
    if number.hyphenated and draft.vocabulary.unit != "in" and number.quantity is None:
        draft.mistakes.append(_read_as_mixed(node, draft))
    return Number(number.value, number.quantity, draft.span(node))


def _read_as_mixed(node: Token, draft: Draft) -> Mistake:
    start, end = ends(node)
    written = draft.line.text[start:end]
    whole, part = written.split("-")
    return Mistake(
        "mixed-fraction",
        f"`{written}` is read as {whole} and {part}",
        draft.span(node),
        (Hint(f"for a subtraction write blanks round the sign: `{whole} - {part}`"),),
        Severity.NOTICE,
    )


def _dimension(node: Tree[Token], draft: Draft) -> PartSize | OverallSize:
    word = tokens(node.children, "DIM")[0]
    dimension, span = text_of(word), draft.span(node)
    names = tokens(node.children, "NAME")
    if names:
        space = text_of(names[0]) in draft.vocabulary.spaces
        if space and dimension not in _OF_THE_WHOLE:
            draft.error(
                "not-a-dimension",
                f"an opening has a width, a depth and a height, but no {dimension}",
                draft.span(word),
            )
        elif not space and dimension not in _OF_A_PART:
            draft.error(
                "not-a-dimension",
                f"a part has a length, a width and a thickness, but no {dimension}",
                draft.span(word),
                Hint("an upright part's height is its length"),
            )
        return PartSize(text_of(names[0]), dimension, span)
    if dimension not in _OF_THE_WHOLE:
        draft.error(
            "dimension-of-what",
            f"{dimension} of what? the whole piece has a width, a depth and a height",
            span,
            Hint(f"name the part: `leg.{dimension}`"),
        )
    return OverallSize(dimension, span)


def _token(node: Tree[Token], index: int) -> Token:
    token = node.children[index]
    assert isinstance(token, Token)
    return token
