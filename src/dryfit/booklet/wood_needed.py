"""The wood of a piece as it is sold: solid wood by volume, sheets by area."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from dryfit.booklet.text import Say, Text
from dryfit.placing.model import Model, Part
from dryfit.placing.strips import FLUSH, milled_parts
from dryfit.quantities.units import INCH
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.blank import blank_of
from dryfit.wood.sawn import cut_of

_SQUARE_METRE = 1_000_000
_SQUARE_FOOT = (12 * INCH) ** 2

BOARDS = Fraction(3, 2)
"""How many times the rough blanks boards with faults are to hold, so that they are enough.

Own trials with generated boards (issue 8): 1.5 times was enough in all of 15, 1.35 in 12; sheets
of 1.35 times the parts were enough in all of 12.
"""
SHEETS = Fraction(27, 20)


@dataclass(frozen=True, slots=True)
class WoodNeeded:
    """The finished parts, or the wood for them, of one timber or of one thickness of a sheet.

    `amount` is exact: mm3 of solid wood, mm2 of a sheet.  `metric` and `customary` say it in cubic
    metres and board feet, or in square metres and square feet.
    """

    timber: Text
    amount: Fraction
    metric: str
    customary: str


def wood_needed(model: Model, say: Say) -> tuple[WoodNeeded, ...]:
    """Return the wood in the finished parts, in the order of the notes."""
    milled = milled_parts(model.parts, FLUSH)
    return _by_timber(((part, _finished(part)) for part in milled), say)


def boards_to_have(model: Model, shop: Shop, say: Say) -> tuple[WoodNeeded, ...]:
    """Return about how much wood in boards and sheets is enough, in the order of the notes."""
    milled = milled_parts(model.parts, shop.allowances)
    bought = (part for part in milled if not part.made)
    return _by_timber(((part, _in_boards(part, model, shop)) for part in bought), say)


def _finished(part: Part) -> Fraction:
    one = part.length * part.width * (1 if part.stock == "sheet" else part.thickness)
    return one * len(part.copies)


def _in_boards(part: Part, model: Model, shop: Shop) -> Fraction:
    if part.stock == "sheet":
        return _finished(part) * SHEETS
    blank = blank_of(part, model, shop)
    return blank.length * blank.width * blank.thickness * blank.count * BOARDS


def _by_timber(amounts: Iterable[tuple[Part, Fraction]], say: Say) -> tuple[WoodNeeded, ...]:
    totals: dict[tuple[str, Fraction | None], Fraction] = {}
    for part, amount in amounts:
        sheet = part.stock == "sheet"
        timber = part.timber or "timber not named"
        if part.cut is not None and not sheet and cut_of(timber) is None:
            timber = f"{part.cut} {timber}"
        key = (timber, part.thickness if sheet else None)
        totals[key] = totals.get(key, Fraction(0)) + amount
    return tuple(
        _solid(timber, amount) if thickness is None else _sheet(timber, thickness, amount, say)
        for (timber, thickness), amount in totals.items()
    )


def _solid(timber: str, volume: Fraction) -> WoodNeeded:
    return WoodNeeded((timber,), volume, *volume_as_sold(volume))


def _sheet(timber: str, thickness: Fraction, area: Fraction, say: Say) -> WoodNeeded:
    words = f"{timber}, ", say.setting_with_unit(thickness), " thick"
    return WoodNeeded(words, area, *area_as_sold(area))


def volume_as_sold(volume: Fraction) -> tuple[str, str]:
    """Return mm3 of solid wood in cubic metres and in board feet."""
    from dryfit.quantities import border

    cubic_metres, board_feet = border.cubic_metres_and_board_feet(volume)
    return f"{float(cubic_metres):.4f} m³", f"{float(board_feet):.1f} board feet"


def area_as_sold(area: Fraction) -> tuple[str, str]:
    """Return mm2 of a sheet in square metres and in square feet."""
    square_feet = f"{float(area / _SQUARE_FOOT):.1f} square feet"
    return f"{float(area / _SQUARE_METRE):.2f} m²", square_feet
