"""A pattern that is written in millimetres, in notes in inches: its wood as it is sold there."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction

from dryfit.notes.tree import Number
from dryfit.piece.declared import Declared, Instance
from dryfit.quantities import LENGTH, Display
from dryfit.quantities.units import INCH

SOLD = {
    Fraction(metric): INCH * Fraction(inches, 8)
    for metric, inches in ((6, 2), (9, 3), (12, 4), (15, 5), (18, 6), (25, 8))
}
"""Thicknesses that are sold in mm, and those sold in inches that take their place; both in mm.

Common practice: 6 mm and 1/4 in, 9 and 3/8, 12 and 1/2, 15 and 5/8, 18 and 3/4, 25 and 1."""


def in_inches(
    instance: Instance, settings: Mapping[str, Fraction], display: Display
) -> dict[str, Fraction]:
    """Return, in mm, the defaults that are others in notes in inches, within their ranges.

    A pattern that stands in the notes themselves has the figures that the maker wrote.
    """
    if display.unit != "in" or instance.units is not None:
        return {}
    found: dict[str, Fraction] = {}
    for parameter in instance.block.parameters:
        value = _length(parameter.default)
        if value is None or value not in SOLD or parameter.name in settings:
            continue
        least, most = _length(parameter.least), _length(parameter.most)
        if (least is None or least <= SOLD[value]) and (most is None or SOLD[value] <= most):
            found[parameter.name] = SOLD[value]
    return found


def told_in_inches(
    declared: Declared, instance: Instance, inches: Mapping[str, Fraction], display: Display
) -> Declared:
    """Return the piece with a word on its first part of what is taken in inches."""
    if not inches or not declared.parts:
        return declared
    planned = {each.name: _length(each.default) for each in instance.block.parameters}
    each = [
        f"{name} {display.shown(size)} for {Display().with_unit(planned[name] or size)}"
        for name, size in inches.items()
    ]
    first, *others = declared.parts
    text = f"`{instance.block.written}` is made as wood is sold in inches: {', '.join(each)}"
    first = replace(first, assumed=(*first.assumed, (text, "")))
    return replace(declared, parts=(first, *others))


def _length(amount: object) -> Fraction | None:
    if not isinstance(amount, Number) or amount.quantity is None:
        return None
    return amount.quantity.value if amount.quantity.kind == LENGTH else None
