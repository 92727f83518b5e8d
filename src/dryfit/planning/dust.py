"""In a one-room shop no dust is made while a coat is wet (TRADE D7, H68).

The air is a counted thing: each coat holds one share of it until dust no longer sticks, and
whatever makes dust takes all shares while it runs.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from dryfit.order import Entry, Hold, Resource
from dryfit.plan.operation import Operation
from dryfit.shop.finishes import dust_free
from dryfit.shop.shop import Shop

AIR = "air without dust"
WHY_DUST = "dust would settle in the wet coat"
DUSTY_STATIONS = frozenset(
    {"mitre saw", "band saw", "jointer", "planer", "table saw", "router table", "sander"}
)


def makes_dust(operation: Operation) -> bool:
    """Return whether an operation fills the room with dust: machines and all sanding."""
    return operation.station in DUSTY_STATIONS or operation.kind == "sand"


def wet_for(operation: Operation, shop: Shop) -> int:
    """Return the tenths for which a coat takes up dust after it is laid; 0 for anything else."""
    if operation.kind != "coat" or not shop.one_room:
        return 0
    names = [str(setting.value) for setting in operation.settings if setting.axis == "product"]
    return max((dust_free(shop, name, operation.after_tenths) for name in names), default=0)


def air_of(operations: tuple[Operation, ...], shop: Shop) -> Resource | None:
    """Return the air of the room as a resource, or None where nothing has to be kept apart."""
    coats = sum(wet_for(operation, shop) > 0 for operation in operations)
    dusty = any(makes_dust(operation) for operation in operations)
    return Resource(AIR, coats) if coats and dusty else None


def air_held(operation: Operation, air: Resource | None, shop: Shop) -> tuple[Hold, ...]:
    """Return what an operation takes of the air."""
    if air is None:
        return ()
    if makes_dust(operation):
        return (Hold(AIR, air.capacity, 0),)
    wet = wet_for(operation, shop)
    return (Hold(AIR, 1, wet),) if wet else ()


def clean_from(
    entries: Iterable[Entry], operations: Mapping[str, Operation], shop: Shop
) -> dict[str, int]:
    """Return, by operation that makes dust, the clock tenths from which no coat before is wet."""
    clean = 0
    found: dict[str, int] = {}
    for entry in entries:
        operation = operations[entry.task]
        wet = wet_for(operation, shop)
        if wet:
            clean = max(clean, entry.end + wet)
        elif makes_dust(operation):
            found[operation.id] = clean
    return found
