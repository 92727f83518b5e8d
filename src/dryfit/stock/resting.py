"""Whether boards on hand, or to be bought, are so thick that what is made of them rests (A3.7)."""

from __future__ import annotations

from dryfit.placing.model import Model
from dryfit.placing.strips import milled_parts
from dryfit.shop.resting import rests
from dryfit.shop.shop import Shop
from dryfit.stock.boards import serves, wanted

PLANER = "planer"


def may_rest(model: Model, shop: Shop) -> bool:
    """Return whether a part out of some board loses so much at the planer that it rests.

    Which board each part comes out of shows only when they are laid out.
    """
    if PLANER not in shop.stations:
        return False
    milled = milled_parts(model.parts, shop.allowances)
    parts = [wanted(part, shop) for part in milled if not part.made]
    return any(
        line.sizes[2] is not None and rests(line.sizes[2], each.thickness, shop)
        for line in (*model.stock, *model.yard)
        if line.kind != "sheet"
        for each in parts
        if serves(line, each.part)
    )
