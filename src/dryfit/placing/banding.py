"""Edge banding on the shopping list: by the metre, with what each piece of it loses."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from math import ceil

from dryfit.placing.lip import Lip
from dryfit.placing.model import Hardware, Part
from dryfit.placing.site import Site
from dryfit.placing.strips import covers
from dryfit.quantities import Display
from dryfit.quantities.units import INCH

WASTE = Fraction(11, 10)
"""So many times what is glued on is bought: banding splits, and a roll ends (common practice)."""
_METRE = 1000
_FOOT = 12 * INCH
Kind = tuple[str | None, Fraction, Fraction]
"""What makes banding alike: its wood, its thickness, and that of the sheet, in mm."""


def banding(parts: Sequence[Part], site: Site) -> tuple[Hardware, ...]:
    """Return the banding to buy, rounded up to half a metre, or a foot.

    Each edge takes its length and the shop's `lip_over` at either end, those of spares too; the
    banding is wider than the sheet is thick by `lip_proud` on either face.
    """
    allowances, display = site.shop.allowances, site.declared.display
    found: dict[Kind, list[tuple[Part, Lip]]] = {}
    for part in parts:
        for lip in part.lips:
            if lip.banded:
                kind = (lip.timber, lip.thickness, part.thickness)
                found.setdefault(kind, []).append((part, lip))
    rows = []
    for (timber, thick, sheet), edges in found.items():
        run = sum(
            (
                (covers(part, lip) + 2 * allowances["lip_over"]) * (len(part.copies) + part.spare)
                for part, lip in edges
            ),
            Fraction(0),
        )
        wide = display.with_unit(sheet + 2 * allowances["lip_proud"], fitted=True)
        size = f"at least {wide} wide, {display.with_unit(thick, fitted=True)} thick"
        names = dict.fromkeys(part.written for part, _ in edges)
        item = f"edge banding of {timber}" if timber else "edge banding"
        amount = _bought(run * WASTE, display)
        rows.append(Hardware(item, f"{size}, {amount}", 1, ", ".join(names)))
    return tuple(rows)


def _bought(run: Fraction, display: Display) -> str:
    if display.unit == "in":
        return f"about {ceil(run / _FOOT)} ft"
    halves = ceil(run * 2 / _METRE)
    return f"about {halves // 2}{'.5' if halves % 2 else ''} m"
