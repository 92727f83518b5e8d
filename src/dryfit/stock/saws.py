"""How the shop saws boards up: kerfs, what the ends lose, and the shortest piece that is ripped."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from dryfit.shop.shop import Shop

if TYPE_CHECKING:
    from dryfit.cutting import Rules

CENT = 100
"""Hundredths in a millimetre: what a layout counts in."""
LITRE = 10**6
"""Cubic mm: a litre of board is worth 1."""
MINUTE = Fraction(3, 10)
"""What a minute at the saw may cost in litres of a board (our guess)."""
HAND_KERF = Fraction(1)
"""Of a hand saw (TRADE A5.3, common practice)."""
ROUGH_EDGE = Fraction(3)
"""How much narrower than it measures a board with a rough edge counts (TRADE A2.6)."""
WANEY_ROOM = 2 * ROUGH_EDGE
"""What of the width two raw edges take: bark is left on them, or they are jointed (TRADE A2.6)."""
KEEP = (Fraction(400), Fraction(60))
"""The least leftover that is worth keeping, long and wide (our own trials of layouts)."""
SLIVER = (Fraction(120), Fraction(30))
"""Sound wood beside a bad place that is shorter or narrower is no use (our own trials)."""


def up(size: Fraction) -> int:
    """Return a need in hundredths of a millimetre, rounded up."""
    return -(-size * CENT).__floor__()


def down(size: Fraction) -> int:
    """Return a size of stock in hundredths of a millimetre, rounded down."""
    return (size * CENT).__floor__()


def exact(hundredths: int) -> Fraction:
    """Return mm."""
    return Fraction(hundredths, CENT)


def rules_for(shop: Shop, *, sheet: bool) -> Rules:
    """Return how boards, or sheets, are cut in the shop.

    A sheet is sawn at the table saw, both ways, and keeps its factory edges (TRADE A5, A10).
    """
    from dryfit.cutting import Rules  # the layout library: checking boards on hand needs none

    across, along = crosscut_at_boards(shop), rip_at_boards(shop)
    if sheet:
        blade = crosscut_kerf(shop) or HAND_KERF
        return Rules(up(blade), up(blade), keep_length=up(KEEP[1] * 4), keep_width=up(KEEP[1] * 2))
    return Rules(
        up(across),
        up(along),
        end_trim=up(shop.allowances["end_trim"]),
        least_rip=up(shortest_rip(shop)),
        keep_length=up(KEEP[0]),
        keep_width=up(KEEP[1]),
        sliver_length=up(SLIVER[0]),
        sliver_width=up(SLIVER[1]),
        crosscut_cost=_cost(shop.minutes["rough crosscut"].get("each", Fraction(0))),
        rip_cost=_cost(shop.minutes["rip at band saw"].get("per_metre", Fraction(0))),
        fence_cost=_cost(Fraction(_fence_at_boards(shop))),
    )


def _cost(tenths: Fraction) -> int:
    """Return what so many tenths of a minute cost, as the boards of a layout are valued."""
    return up(tenths / 10 * MINUTE)


def _fence_at_boards(shop: Shop) -> int:
    """Return the tenths of a minute for another setting of the fence that boards are ripped at."""
    for station in ("band saw", "table saw"):
        if station in shop.stations:
            axes = shop.stations[station].axes
            return next((axis.change for axis in axes if axis.name == "fence"), 0)
    return 0


def crosscut_at_boards(shop: Shop) -> Fraction:
    """Return the kerf of the saw that crosscuts boards: the mitre saw's, else a hand saw's."""
    if "mitre saw" not in shop.stations:
        return HAND_KERF
    return max((cut.widest for cut in shop.cutters_at("mitre saw")), default=HAND_KERF)


def rip_at_boards(shop: Shop) -> Fraction:
    """Return the kerf of a rough rip: with the wander of a band saw or a hand saw (TRADE A5.3).

    Where boards may be too thick for the band saw, it is enough for the table saw as well.
    """
    rough = shop.allowances["rough_kerf"]
    blade = table_saw_kerf(shop)
    if blade is None:
        return rough
    if "band saw" not in shop.stations:
        return blade
    return rough if _takes_all(shop) else max(rough, blade)


def _takes_all(shop: Shop) -> bool:
    """Return whether the band saw rips whatever board the table saw would."""
    most, thick = (shop.stations[name].limits.get("depth") for name in ("band saw", "table saw"))
    return most is None or (thick is not None and thick <= most)


def table_saw_kerf(shop: Shop) -> Fraction | None:
    """Return the kerf of the table saw's widest plain blade, None where it rips nothing."""
    if "table saw" not in shop.stations:
        return None
    blades = (cut.widest for cut in shop.cutters_at("table saw") if cut.kind == "blade")
    return max(blades, default=None)


def crosscut_kerf(shop: Shop) -> Fraction:
    """Return the widest kerf that may separate the pieces of a gang."""
    blades = [
        cutter.widest
        for cutter in shop.cutters
        if cutter.kind == "blade" and cutter.station in {"table saw", "mitre saw"}
    ]
    return max(blades, default=Fraction(0))


def shortest_rip(shop: Shop) -> Fraction:
    """Return the shortest piece that the saw rips which rips boards (TRADE A6); 0 by hand.

    Where boards may be too thick for the band saw, it is long enough for the table saw as well.
    """
    own = [
        shop.stations[station].limits.get(limit, Fraction(0))
        for station, limit in (("band saw", "shortest"), ("table saw", "shortest_rip"))
        if station in shop.stations
    ]
    if len(own) == 2 and not _takes_all(shop):
        return max(own)
    return own[0] if own else Fraction(0)
