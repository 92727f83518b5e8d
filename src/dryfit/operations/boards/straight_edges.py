"""A raw edge made straight, so that it can run along a fence (TRADE A2.5, A2.6).

At the jointer; else sawn at the table saw with the board fast to a sled that runs in the slot of
its table, or with a saw that runs along a guide; else with a plane.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from dryfit.operations import setting_of, through_cuts
from dryfit.operations.machine_limits import JOINTER, Piece, why_not_jointed_edge
from dryfit.operations.minutes import METRE, worked
from dryfit.plan.operation import Detail, Operation
from dryfit.plan.setting import Setting
from dryfit.shop.shop import Shop

SLED = "straight-line sled"
"""The accessory of the table saw: a carrier board with clamps, as long as the boards it takes."""
TRACK_SAW = "track saw"
"""The accessory of the bench: a saw in the hand that runs along a guide."""
BENCH = "bench"
ON_SLED: Detail = (
    (
        "Clamp or screw the board to the sled, its raw edge over the sled's edge all along: the "
        "blade takes what stands over; push the sled, never the board"
    ),
)
ON_GUIDE: Detail = (
    "Lay the guide along the line and clamp it, the board on supports and the saw cut clear below",
)


@dataclass(frozen=True, slots=True)
class StraightEdges:
    """One edge each of some pieces made straight: where, how, and in what exact tenths.

    `manner` ends the sentence, `details` say how, and what keeps the jointer from it.
    """

    station: str
    settings: tuple[Setting, ...]
    exact: Fraction
    manner: str = ""
    details: tuple[Detail, ...] = ()

    def of(self, row: Operation) -> Operation:
        """Return the deed as it is done so."""
        return replace(
            row,
            station=self.station,
            settings=self.settings,
            sentence=f"{row.sentence}{self.manner}",
            details=(*row.details, *self.details),
        )


def straight_edges(pieces: Sequence[Piece], count: int, shop: Shop) -> StraightEdges:
    """Return how one edge each of the pieces is made straight, `count` of each."""
    metres = sum((piece.length for piece in pieces), Fraction(0)) * count / METRE
    each = len(pieces) * count
    jointed = worked(shop, "joint edge", each=each, per_metre=metres)
    refused = (why_not_jointed_edge(piece, shop) for piece in pieces)
    why_not = next((why for why in refused if why is not None), None)
    if why_not is None:
        pass_of = setting_of.plain("depth", shop.allowances["facing"] / 2)
        square = setting_of.angle("fence", Fraction(90))
        known = setting_of.known_to(shop, JOINTER, (pass_of, square))
        return StraightEdges(JOINTER, known, jointed)
    why = (why_not,) if why_not else ()
    if all(goes_on_sled(piece, shop) for piece in pieces):
        thickest = max(piece.thickness for piece in pieces)
        settings = through_cuts.through_settings(thickest, SLED, shop)
        known = setting_of.known_to(shop, through_cuts.SAW, settings)
        exact = worked(shop, "straight-line rip", each=each, per_metre=metres)
        details = (*why, ON_SLED)
        return StraightEdges(through_cuts.SAW, known, exact, f", on the {SLED}", details)
    if shop.accessory(TRACK_SAW) is not None:
        exact = worked(shop, "straight-line rip", each=each, per_metre=metres)
        return StraightEdges(BENCH, (), exact, f", with the {TRACK_SAW}", (*why, ON_GUIDE))
    return StraightEdges(BENCH, (), jointed * shop.by_hand, ", with a plane", why)


def goes_on_sled(piece: Piece, shop: Shop) -> bool:
    """Return whether the shop has the sled, and it takes a piece so long and thick."""
    sled = shop.accessory(SLED)
    if sled is None or not through_cuts.has_saw(SLED, shop):
        return False
    long_enough = sled.longest is None or piece.length <= sled.longest
    return long_enough and piece.thickness <= through_cuts.deepest(SLED, shop)
