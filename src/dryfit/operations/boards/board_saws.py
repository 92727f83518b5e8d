"""Which saw makes a cut of a board, and how it is set (TRADE A2.5, A2.6, A6, A10).

Across, a board goes to the mitre saw, to chalk marks.  Along, a rough board is ripped at the band
saw, which does not throw it back; at the table saw only with a straight edge at the fence.  A raw
edge runs along no fence: it is sawn off along a line.  Sheets are broken down where they lie, a
little large, and come to the table saw to be sawn to size.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from dryfit.operations import setting_of, through_cuts
from dryfit.operations.boards.layout_cuts import LayoutCut
from dryfit.operations.boards.straight_edges import ON_SLED, SLED, goes_on_sled
from dryfit.operations.machine_limits import (
    BAND_SAW,
    Piece,
    why_not_at_band_saw,
    why_not_at_mitre_saw,
    why_not_ripped,
)
from dryfit.operations.minutes import METRE, worked
from dryfit.plan.operation import Detail
from dryfit.plan.setting import Setting
from dryfit.shop.shop import Shop
from dryfit.stock.boards import unplaned
from dryfit.stock.saws import table_saw_kerf

MITRE_SAW = "mitre saw"
BENCH = "bench"
NO_EDGE_AT_FENCE: Detail = (
    (
        "Wider than the mitre saw cuts in one go, and turned over it has no straight edge for the "
        "fence: square a line across, and saw along it with a hand saw or a circular saw"
    ),
)


@dataclass(frozen=True, slots=True)
class SawWay:
    """How a cut of a board is made.

    `fence` is where it stands, None where the cut follows a line.  `straight` is whether a raw edge
    has to be made straight for it; `why` says what keeps a machine from it, or what to do at it.
    With `on_sled` the board is fast to a sled, its line at the sled's edge.
    """

    station: str
    fence: Fraction | None = None
    straight: bool = False
    why: Detail = ()
    on_sled: bool = False

    @property
    def key(self) -> tuple[str, Fraction | None, bool]:
        """Return what cuts of one operation have in common."""
        return self.station, self.fence, self.on_sled


def saw_way(cut: LayoutCut, shop: Shop) -> SawWay:
    """Return how the shop makes a cut."""
    if cut.board.line.kind == "sheet":
        return SawWay(BENCH)
    return _across(cut, shop) if cut.cut.saw == "crosscut" else _along(cut, shop)


def piece_of(cut: LayoutCut) -> Piece:
    """Return the piece in hand as machines are asked about it."""
    return Piece(cut.length, cut.width, cut.board.sizes[2])


def _across(cut: LayoutCut, shop: Shop) -> SawWay:
    piece = piece_of(cut)
    # Half the width at a time: a wide board is turned over, and its rough end may be uneven
    # (common practice).
    half = replace(piece, width=piece.width / 2)
    why_not = why_not_at_mitre_saw(half, shop)
    if why_not is not None:
        return SawWay(BENCH, why=why_not)
    if why_not_at_mitre_saw(piece, shop) is None:
        return SawWay(MITRE_SAW)
    if cut.has_bark:
        return SawWay(BENCH, why=NO_EDGE_AT_FENCE)
    return SawWay(
        MITRE_SAW,
        why=("Wider than the saw cuts: turn the board over, and meet the cut from its other side",),
    )


def _along(cut: LayoutCut, shop: Shop) -> SawWay:
    piece, at = piece_of(cut), cut.cut.at
    not_at_band_saw = why_not_at_band_saw(piece, shop)
    if not_at_band_saw is None:
        throat = shop.stations[BAND_SAW].limits.get("throat")
        at_fence = not (cut.trims or cut.along_bark) and (throat is None or at <= throat)
        return SawWay(BAND_SAW, at if at_fence else None)
    not_at_table_saw = why_not_ripped(piece, at, shop)
    if not_at_table_saw is None:
        not_at_table_saw = _wide_kerf(cut, shop)
    raw = cut.trims or cut.along_bark
    if not_at_table_saw is None and not raw:
        return SawWay(through_cuts.SAW, at, straight=unplaned(cut.board.line))
    if raw and goes_on_sled(piece, shop) and _wide_kerf(cut, shop) is None:
        return SawWay(through_cuts.SAW, why=ON_SLED, on_sled=True)
    return SawWay(BENCH, why=not_at_band_saw or not_at_table_saw or ())


def _wide_kerf(cut: LayoutCut, shop: Shop) -> Detail | None:
    """Return why the table saw takes too much: laid out were the cuts of another saw."""
    kerf = table_saw_kerf(shop)
    if kerf is None or cut.cut.kerf >= kerf or cut.cut.at + cut.cut.kerf == cut.width:
        return None
    return ("By hand: the table saw takes ", kerf, ", and the boards are laid out for less")


def settings_of(way: SawWay, cuts: Sequence[LayoutCut], shop: Shop) -> tuple[Setting, ...]:
    """Return how the saw stands for the cuts, which all have that way."""
    if way.station == MITRE_SAW:
        return setting_of.known_to(shop, MITRE_SAW, (setting_of.angle("angle"),))
    thickest = max(cut.board.sizes[2] for cut in cuts)
    if way.on_sled:
        known = through_cuts.through_settings(thickest, SLED, shop)
        return setting_of.known_to(shop, through_cuts.SAW, known)
    if way.station == through_cuts.SAW:
        assert way.fence is not None
        return through_cuts.rip_settings(thickest, way.fence, None, shop)
    if way.station == BAND_SAW:
        blade = next(iter(shop.cutters_at(BAND_SAW)), None)
        rows: list[Setting] = []
        if blade is not None:
            rows.append(setting_of.named("cutter", blade.name))
        if way.fence is not None:
            kerf = blade.widest if blade is not None else Fraction(0)
            rows.append(setting_of.distance("fence", way.fence, kerf, None))
        return setting_of.known_to(shop, BAND_SAW, rows)
    return ()


def sawing_minutes(way: SawWay, cuts: Sequence[LayoutCut], shop: Shop) -> Fraction:
    """Return the exact tenths of a minute that the cuts take (TRADE F1)."""
    metres = sum((cut.length for cut in cuts), Fraction(0)) / METRE
    sheet = cuts[0].board.line.kind == "sheet"
    if cuts[0].cut.saw == "crosscut" or sheet:
        by_hand = way.station == BENCH
        return worked(shop, "hand crosscut" if by_hand else "rough crosscut", each=len(cuts))
    if way.station == BAND_SAW:
        return worked(shop, "rip at band saw", per_metre=metres)
    if way.on_sled:
        return worked(shop, "straight-line rip", each=len(cuts), per_metre=metres)
    exact = worked(shop, "rip at table saw", each=len(cuts), per_metre=metres)
    return exact if way.station == through_cuts.SAW else exact * shop.by_hand
