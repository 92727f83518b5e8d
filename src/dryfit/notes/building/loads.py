"""The builders of ``carries 30 kg a metre`` and ``weighs 6 kg``."""

from __future__ import annotations

from fractions import Fraction

from lark import Token, Tree

from dryfit.diagnostics import Hint
from dryfit.notes.building.draft import Draft, spelled, text_of, tokens, trees
from dryfit.notes.tree import Carries, Weighs
from dryfit.quantities import UNITS
from dryfit.quantities.units import POUND

_KILOGRAMS = {"kg": Fraction(1), "g": Fraction(1, 1000), "lb": POUND}


def carries(node: Tree[Token], draft: Draft) -> Carries:
    """Return what a part is to carry."""
    word = tokens(node.children, "LOAD")
    if word:
        return Carries(text_of(word[0]), None, None, draft.span(node))
    every = tokens(node.children, "PER")
    return Carries(
        None,
        _kilograms(node, draft),
        UNITS[text_of(every[0])].size if every else None,
        draft.span(node),
    )


def weighs(node: Tree[Token], draft: Draft) -> Weighs:
    """Return what a bought thing weighs."""
    return Weighs(_kilograms(node, draft), draft.span(node))


def _kilograms(node: Tree[Token], draft: Draft) -> Fraction:
    number = tokens(trees(node.children, "number")[0].children, "INT", "NUMBER", "MEASURE")[0]
    written = spelled(number)
    value = written.value or Fraction(0)
    if value <= 0 or written.quantity is not None:
        draft.error(
            "no-weight",
            f"`{draft.span(node).text()}` is no weight",
            draft.span(node),
            Hint("write a figure above nothing and its unit: `30 kg`, `20 lb`"),
        )
    return value * _KILOGRAMS[text_of(tokens(node.children, "MASS")[0])]
