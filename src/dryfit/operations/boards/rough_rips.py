"""Rough boards to rough width: at the band saw, or from an edge made straight (TRADE A2.5-6).

A rough board rocks on the table and wanders along a fence.  A band saw does not throw it back; a
table saw does, unless a straight edge runs along the fence.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from dryfit.operations import setting_of, through_cuts
from dryfit.operations.boards.blank_deeds import operation, pieces_of
from dryfit.operations.boards.straight_edges import straight_edges
from dryfit.operations.boards.waney import rough_width
from dryfit.operations.machine_limits import (
    BAND_SAW,
    Piece,
    why_not_at_band_saw,
    why_not_ripped,
)
from dryfit.operations.minutes import METRE, worked
from dryfit.plan.operation import Operation
from dryfit.plan.setting import Setting
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.blank import Blank

WHY_RIP_AFTER_CROSSCUT = "a shorter piece has less bow to lose, and is safer to rip"
WHY_STRAIGHT_AFTER_CROSSCUT = "a shorter piece has less bow to plane out of its edge"
WHY_STRAIGHT_FIRST = "a rough edge wanders along the fence, and the saw throws the board back"


def rough_ripped(blank: Blank, shop: Shop) -> tuple[tuple[Operation, ...], tuple[str, ...]]:
    """Return the rip to rough width with what it needs first, and why each comes after the last.

    The reasons are one for each operation; the first is after the cut to rough length.
    """
    piece = Piece(blank.length, blank.width, blank.thickness)
    if len(blank.part.waney) > 1:
        return (), ()
    not_at_band_saw = why_not_at_band_saw(piece, shop)
    if not_at_band_saw is None:
        return (_at_band_saw(blank, shop),), (WHY_RIP_AFTER_CROSSCUT,)
    not_at_table_saw = why_not_ripped(piece, blank.width, shop)
    if not_at_table_saw is None and not blank.part.waney:
        rows = (_straight_edge(blank, piece, shop), _at_table_saw(blank, shop))
        return rows, (WHY_STRAIGHT_AFTER_CROSSCUT, WHY_STRAIGHT_FIRST)
    sentence = f"Rip {pieces_of(blank)} to rough width with a hand saw"
    exact = _table_saw_minutes(blank, shop) * shop.by_hand
    why = not_at_band_saw or not_at_table_saw or ()
    by_hand = operation(blank, "rip", "bench", (), exact, sentence, why=why)
    return (_off_the_bark(by_hand, blank),), (WHY_RIP_AFTER_CROSSCUT,)


def _metres(blank: Blank) -> Fraction:
    return blank.length * blank.count / METRE


def _at_band_saw(blank: Blank, shop: Shop) -> Operation:
    exact = worked(shop, "rip at band saw", per_metre=_metres(blank))
    blade = next(iter(shop.cutters_at(BAND_SAW)), None)
    kerf = blade.widest if blade is not None else Fraction(0)
    settings: list[Setting] = []
    if blade is not None:
        settings.append(setting_of.named("cutter", blade.name))
    sentence = f"Rip {pieces_of(blank)} to rough width"
    throat = shop.stations[BAND_SAW].limits.get("throat")
    if blank.part.waney:
        sentence += " without the fence, along a chalk line"
    elif throat is None or blank.width <= throat:
        settings.append(setting_of.distance("fence", blank.width, kerf, None))
    else:
        sentence += " without the fence, along a chalk line, what is kept on the open side"
    known = setting_of.known_to(shop, BAND_SAW, settings)
    return _off_the_bark(operation(blank, "rip", BAND_SAW, known, exact, sentence), blank)


def _off_the_bark(row: Operation, blank: Blank) -> Operation:
    """Return the rip, of a board that keeps a waney edge with where its line is drawn."""
    if not blank.part.waney:
        return row
    return replace(row, details=(*row.details, rough_width(blank.width)))


def _table_saw_minutes(blank: Blank, shop: Shop) -> Fraction:
    return worked(shop, "rip at table saw", each=blank.count, per_metre=_metres(blank))


def _at_table_saw(blank: Blank, shop: Shop) -> Operation:
    settings = through_cuts.rip_settings(blank.thickness, blank.width, None, shop)
    sentence = f"Rip {pieces_of(blank)} to rough width, the straight edge at the fence"
    exact = _table_saw_minutes(blank, shop)
    return operation(blank, "rip", through_cuts.SAW, settings, exact, sentence)


def _straight_edge(blank: Blank, piece: Piece, shop: Shop) -> Operation:
    edges = straight_edges([piece], blank.count, shop)
    sentence = f"Make one edge of {pieces_of(blank)} straight for the saw's fence"
    return edges.of(operation(blank, "straight edge", "bench", (), edges.exact, sentence))
