"""Boards wider than the machines: planed by hand, and better glued from several (TRADE A7, H47)."""

from __future__ import annotations

from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.operations.minutes import SQUARE_METRE, worked
from dryfit.quantities import Display
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.blank import Blank


def hand_planed(blank: Blank, off: Fraction, shop: Shop) -> Fraction:
    """Return the exact tenths for planing `off` mm from one face of all blanks (TRADE A7.4)."""
    area = blank.length * blank.width * blank.count / SQUARE_METRE
    return worked(shop, "plane by hand", per_square_metre=area * max(off, Fraction(1)))


def wider_than(blank: Blank, station: str, shop: Shop) -> bool:
    """Return whether the blank is too wide for a machine, or the shop has none."""
    machine = shop.stations.get(station)
    return machine is None or blank.width > machine.limits["widest"]


def board_too_wide(blank: Blank, display: Display, shop: Shop) -> tuple[Diagnostic, ...]:
    """Return ``board-too-wide`` (H47): one solid board that no machine of the shop planes.

    Staves are as many as the widest of the shop allows, 6 mm for the joints (TRADE A9.1).
    """
    machines = [name for name in ("jointer", "planer") if name in shop.stations]
    if blank.staves or not machines:
        return ()
    if not all(wider_than(blank, name, shop) for name in machines):
        return ()
    part, room = blank.part, shop.allowances
    staves = (part.width + room["panel_width"]) / room["widest_stave"]
    count = max(2, -(-staves.numerator // staves.denominator))
    limits = {name: shop.stations[name].limits["widest"] for name in machines}
    reach = " and ".join(f"{name} {display.with_unit(limit)}" for name, limit in limits.items())
    return (
        Diagnostic(
            "board-too-wide",
            Severity.WARNING,
            f"{part.name} is one board {display.with_unit(part.width)} wide, more than the "
            f"machines take ({reach}): it is planned with hand planes",
            part.spans[0] if part.spans else None,
            rule="H47",
            figures={"rough width": blank.width, **{f"{n} takes": w for n, w in limits.items()}},
            hints=(Hint(f"write `glued from {count}` in its line"),),
        ),
    )
