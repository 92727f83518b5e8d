"""Sheets and panels sawn to width: at the table saw, or along a line where they are too large."""

from __future__ import annotations

from dryfit.operations import setting_of
from dryfit.operations.machine_limits import Piece, why_not_ripped
from dryfit.operations.minutes import METRE, tenths, worked
from dryfit.operations.through_cuts import rip_settings
from dryfit.placing.model import Part
from dryfit.plan.operation import Detail, Operation, Work
from dryfit.plan.setting import Hold
from dryfit.shop.shop import Shop


def width_of(part: Part) -> str:
    """Return what the width is called in a sentence: ``measured width`` where it waits for one."""
    return "width" if part.waits_for("width") is None else "measured width"


def to_width(
    part: Part,
    piece: Piece,
    shop: Shop,
    ripped: str,
    by_hand: str,
    details: tuple[Detail, ...] = (),
) -> Operation:
    """Return the deed that brings every copy to width out of such a piece.

    `ripped` is the sentence for the table saw, `by_hand` that for what it does not take.
    """
    names = tuple(copy.name for copy in part.copies)
    waits, why_not = part.waits_for("width"), why_not_ripped(piece, part.width, shop)
    if why_not is not None:
        return Operation(
            id=f"{part.name} / width",
            kind="width",
            station="bench",
            part=part.name,
            settings=(),
            work=(Work(part.name, names, (), None, ()),),
            tenths=tenths(worked(shop, "hand crosscut", each=2 * len(names))),
            sentence=by_hand,
            details=(*((why_not,) if why_not else ()), *details, *setting_of.by_formula(waits)),
        )
    metres = piece.length * len(names) / METRE
    settings = rip_settings(part.thickness, part.width, "E", shop)
    return Operation(
        id=f"{part.name} / width",
        kind="width",
        station="table saw",
        part=part.name,
        settings=setting_of.waiting(settings, "fence", waits),
        work=(Work(part.name, names, (), Hold("F", "E", None), ()),),
        tenths=tenths(worked(shop, "rip at table saw", each=len(names), per_metre=metres)),
        sentence=ripped,
        details=details,
    )
