"""Room for what cannot be moved: glue-ups in their clamps, coats that dry (TRADE C2.5).

A place is room for one glue-up in its clamps, or for what one coat goes on.  They are counted
where the shop file says how many there are.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from dryfit.order import Hold, Resource
from dryfit.plan.operation import Operation
from dryfit.shop.shop import Shop

STATIONS: Mapping[str, str] = {"glue up": "glue bench", "coat": "finish bench"}
"""Where what was done by a kind of operation lies until it is out of its clamps, or dry."""
WHY_PLACES: Mapping[str, str] = {
    "glue up": "every place at the glue bench is taken until then",
    "coat": "every place for drying is taken until then",
}


def places_of(operations: Iterable[Operation], shop: Shop) -> tuple[Resource, ...]:
    """Return the counted places of the stations at which there is anything to lay down."""
    kinds = {operation.kind for operation in operations}
    return tuple(
        Resource(_name(station), places)
        for kind, station in STATIONS.items()
        if kind in kinds and (places := shop.stations[station].places) is not None
    )


def place_held(operation: Operation, shop: Shop) -> tuple[Hold, ...]:
    """Return the place that an operation takes until what was done can be moved."""
    if counted(operation.kind, shop) is None:
        return ()
    return (Hold(_name(STATIONS[operation.kind]), 1, operation.after_tenths),)


def counted(kind: str, shop: Shop) -> int | None:
    """Return how many places there are for a kind of operation; None where nothing is counted."""
    station = STATIONS.get(kind)
    return None if station is None else shop.stations[station].places


def _name(station: str) -> str:
    return f"places at the {station}"
