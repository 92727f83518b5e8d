"""Which wood rests while it is milled, and what is taken for granted of it (TRADE A3.7, A8.3)."""

from __future__ import annotations

from dryfit.piece.declared import Have
from dryfit.placing.model import Model
from dryfit.placing.staying_straight import staying_straight
from dryfit.placing.strips import milled_parts
from dryfit.shop.resting import LEFT, MUCH
from dryfit.shop.shop import Shop
from dryfit.shop.taken_for_granted import Resting
from dryfit.stock.boards import serves, to_be_resawn, wanted


def resting(model: Model, shop: Shop) -> Resting:
    """Return what may rest: out of some board that a part may come out of, before that is chosen.

    Parts whose line says how long they rest are not counted.
    """
    milled = milled_parts(model.parts, shop.allowances)
    by_rule = [part for part in milled if not part.made and part.rested is None]
    straight = staying_straight(model)
    much, unknown, kinds = False, False, dict[str, None]()
    for part in by_rule:
        to = wanted(part, shop).thickness
        for line in (*model.stock, *model.yard):
            thick = line.sizes[2]
            if line.kind == "sheet" or thick is None or not serves(line, part):
                continue
            off = thick - to
            if off <= 2 * LEFT:
                continue
            much = much or off > MUCH * thick
            unknown = unknown or not moisture_known(line, model)
            if part.name in straight:
                kinds[straight[part.name]] = None
    return Resting(
        much=much,
        straight=tuple(kinds),
        unknown=unknown,
        resawn=any(part.bookmatched or to_be_resawn(part) for part in by_rule),
    )


def moisture_known(line: Have, model: Model) -> bool:
    """Return whether the notes tell the moisture of a line's boards, or of all wood."""
    return line.moisture is not None or model.air.wood is not None
