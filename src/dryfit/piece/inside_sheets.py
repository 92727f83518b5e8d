"""Parts of sheets inside a pattern: as thick as the sheet on hand that they are made of."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

from dryfit.piece.declared import Declared, DeclaredPart, Have, Measured
from dryfit.quantities import Display

SAME_SHEET = Fraction(1)
"""A sheet measures up to this less or more than it is called, mm (TRADE A5.5, common practice)."""


def sheets_for(
    declared: Declared, timber: str | None, stock: Sequence[Have]
) -> tuple[Measured, ...]:
    """Return what the sheets on hand measure that parts are made of, where that is not planned."""
    found: dict[tuple[str, Fraction], Measured] = {}
    for part in declared.parts:
        wood, size = part.timber or declared.timber or timber, part.sizes[2]
        thick = None if size is None else size.value
        if wood is None or thick is None:
            continue
        there = {
            have: have.sizes[2] if have.measured is None else have.measured
            for have in stock
            if have.kind == "sheet" and have.timber == wood
        }
        near = [
            (abs(called - thick), have, taken)
            for have, taken in there.items()
            if (called := have.sizes[2]) is not None and taken is not None
        ]
        if not near or thick in there.values():
            continue
        off, have, taken = min(near, key=lambda each: each[0])
        if off <= SAME_SHEET:
            measured = Measured("sheet", wood, None, thick, (taken,), taken, have.span)
            found.setdefault((wood, thick), measured)
    return tuple(found.values())


def told_of_sheets(declared: Declared, sheets: Sequence[Measured], display: Display) -> Declared:
    """Return the piece with a word on each part that is of a sheet on hand."""
    of = {(sheet.name, sheet.taken): sheet for sheet in sheets}
    return replace(
        declared, parts=tuple(_told(part, declared, of, display) for part in declared.parts)
    )


def _told(
    part: DeclaredPart,
    declared: Declared,
    of: Mapping[tuple[str, Fraction], Measured],
    display: Display,
) -> DeclaredPart:
    size = part.sizes[2]
    if size is None or size.value is None:
        return part
    sheet = of.get((part.timber or declared.timber or "", size.value))
    if sheet is None or sheet.planned is None:
        return part
    taken, planned = (display.with_unit(each, fitted=True) for each in (sheet.taken, sheet.planned))
    # The pattern says it in millimetres, and may mean the same.
    instead = "" if taken == planned else f" and not {planned}"
    text = f"{part.name}: it is of the {sheet.name} on hand, {taken} thick{instead}"
    return replace(part, assumed=(*part.assumed, (text, "")))
