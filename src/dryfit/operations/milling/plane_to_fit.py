"""Doors and lids that are sawn to their opening and planed to their gaps (TRADE C5.4).

Solid wood that closes an opening is sawn as large as that was measured.  Held in its place it shows
what has to go where the opening is out of square.
"""

from __future__ import annotations

from dryfit.operations.minutes import METRE, tenths, worked
from dryfit.operations.words import all_of
from dryfit.placing.model import Part
from dryfit.plan.operation import Detail, Operation, Work
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.as_sawn import trimmed

WHY_SAWN_FIRST = "it is tried in its opening when it is sawn to the size of that"
WHY_PLANED_FIRST = "what is marked from an edge is marked when nothing is planed off it any more"


def planed_to_fit(part: Part, shop: Shop) -> Operation | None:
    """Return the planing of a part in its opening, or None where it is sawn to its size."""
    trims = [(size, trimmed(part, size)) for size in ("length", "width")]
    if not any(trim for _, trim in trims):
        return None
    names = tuple(copy.name for copy in part.copies)
    metres = 2 * (part.length + part.width) * len(names) / METRE
    off: list[Detail] = [
        (f"Off its {size}, both edges together: about ", trim) for size, trim in trims if trim
    ]
    return Operation(
        id=f"{part.name} / plane to fit",
        kind="plane to fit",
        station="bench",
        part=part.name,
        settings=(),
        work=(Work(part.name, names, (), None, ()),),
        tenths=tenths(worked(shop, "plane to fit", each=len(names), per_metre=metres)),
        sentence=f"Hold {all_of(part)} in the {part.opening}, mark where it binds, and plane its "
        "edges a little at a time until it stands off equally all round",
        check="the spacers for its gaps go in all round; across end grain plane from both corners",
        details=tuple(off),
    )
