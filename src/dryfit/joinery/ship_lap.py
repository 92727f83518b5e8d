"""Boards lapped edge to edge by half of their thickness, dry, with room to move (TRADE B24)."""

from __future__ import annotations

from fractions import Fraction

from dryfit.diagnostics import Span
from dryfit.joinery.cut import Cut, Placed, bounded, from_side


def ship_lap(guest: Placed, host: Placed, length: Fraction, span: Span | None) -> tuple[Cut, Cut]:
    """Return a rabbet in the guest's high edge and one in the host's low edge, on opposite faces.

    Each is as wide as the lap is long, mm, and half as deep as its board is thick.
    """
    return _rabbet(guest, host, length, 1, span), _rabbet(host, guest, length, -1, span)


def _rabbet(board: Placed, mate: Placed, length: Fraction, side: int, span: Span | None) -> Cut:
    _, wide, thick = board.axes
    strip = from_side(board.box, wide, side, length)
    middle = (strip.low[thick] + strip.high[thick]) / 2
    bounds = (middle, strip.high[thick]) if side > 0 else (strip.low[thick], middle)
    box = bounded(strip, thick, *bounds)
    return Cut(board.name, box, "rabbet", "rabbet", thick, side, "slip", mate.part, span)
