"""The wood in the finished parts as it is sold: solid wood by volume, sheets by area."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.booklet.text import Say, Text
from dryfit.placing.model import Model
from dryfit.quantities.units import INCH
from dryfit.wood.sawn import cut_of

_SQUARE_METRE = 1_000_000
_SQUARE_FOOT = (12 * INCH) ** 2


@dataclass(frozen=True, slots=True)
class WoodNeeded:
    """The finished parts of one timber, or of one thickness of a sheet.

    `amount` is exact: mm3 of solid wood, mm2 of a sheet.  `metric` and `customary` say it in cubic
    metres and board feet, or in square metres and square feet.
    """

    timber: Text
    amount: Fraction
    metric: str
    customary: str


def wood_needed(model: Model, say: Say) -> tuple[WoodNeeded, ...]:
    """Return the wood in the finished parts, in the order of the notes."""
    totals: dict[tuple[str, Fraction | None], Fraction] = {}
    for part in model.parts:
        sheet = part.stock == "sheet"
        timber = part.timber or "timber not named"
        if part.cut is not None and not sheet and cut_of(timber) is None:
            timber = f"{part.cut} {timber}"
        one = part.length * part.width * (1 if sheet else part.thickness)
        key = (timber, part.thickness if sheet else None)
        totals[key] = totals.get(key, Fraction(0)) + one * len(part.copies)
    return tuple(
        _solid(timber, amount) if thickness is None else _sheet(timber, thickness, amount, say)
        for (timber, thickness), amount in totals.items()
    )


def _solid(timber: str, volume: Fraction) -> WoodNeeded:
    from dryfit.quantities import border

    cubic_metres, board_feet = border.cubic_metres_and_board_feet(volume)
    return WoodNeeded(
        (timber,), volume, f"{float(cubic_metres):.4f} m³", f"{float(board_feet):.1f} board feet"
    )


def _sheet(timber: str, thickness: Fraction, area: Fraction, say: Say) -> WoodNeeded:
    return WoodNeeded(
        (f"{timber}, ", say.setting_with_unit(thickness), " thick"),
        area,
        f"{float(area / _SQUARE_METRE):.2f} m²",
        f"{float(area / _SQUARE_FOOT):.1f} square feet",
    )
