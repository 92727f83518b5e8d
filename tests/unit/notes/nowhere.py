"""Statements compared without their places."""

from dataclasses import fields, is_dataclass, replace
from fractions import Fraction
from typing import Any, TypeVar

from dryfit.diagnostics import Source, Span
from dryfit.notes import Statement, parse
from dryfit.notes.tree import Number, Reference, SizeWord, Sum
from dryfit.quantities import Quantity

NOWHERE = Span(Source("", ""), 1, 1, 1)
Tree = TypeVar("Tree")


def said(text: str, declared: str = "") -> Statement:
    """The statement of a line, with every place set to `NOWHERE`; the line must be flawless.

    `declared` are names of parts that the line may use.
    """
    parts = "".join(f"1 {name}, flat\n" for name in declared.split(", ") if name)
    notes, findings = parse(Source("a", f"{parts}overall 1 x 1 x 1\n{text}"))
    assert findings == (), findings
    return without_places(notes.statements[-1])


def without_places(tree: Tree) -> Tree:
    """The tree with every place set to `NOWHERE`."""
    if isinstance(tree, tuple):
        items: Any = tuple(without_places(item) for item in tree)
        return items  # type: ignore[no-any-return]
    if isinstance(tree, Span):
        place: Any = NOWHERE
        return place  # type: ignore[no-any-return]
    if not is_dataclass(tree) or isinstance(tree, Quantity | type):
        return tree
    changed = {field.name: without_places(getattr(tree, field.name)) for field in fields(tree)}
    return replace(tree, **changed)


def number(value: int | Fraction, quantity: Quantity | None = None) -> Number:
    return Number(Fraction(value), quantity, NOWHERE)


def size(amount: int | Sum, dimension: str | None = None) -> SizeWord:
    return SizeWord(number(amount) if isinstance(amount, int) else amount, dimension, NOWHERE)


def part(name: str, *places: str) -> Reference:
    return Reference(name, places, NOWHERE)
