"""What has to stay straight when it is done: stiles of doors, drawers, long rails (TRADE A3.7)."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from dryfit.piece.declared import INSIDE
from dryfit.placing.model import Model, Part

LONG = Fraction(1000)
"""mm: so long a rail is called long (ours; TRADE gives no figure)."""
STILES, DRAWERS, RAILS = "stiles of doors", "parts of drawers", "long rails"
_OF_DRAWERS = frozenset({"side", "front", "back", "bottom"})


def staying_straight(model: Model) -> Mapping[str, str]:
    """Return the parts that have to stay straight by name, each with the kind that it is of.

    A part is known by its name, and by the names of what it belongs to: a pattern, a glue-up.
    """
    found: dict[str, str] = {}
    for part in model.parts:
        if part.stock == "sheet" or part.made:
            continue
        kind = _kind(part, _belongs_to(part, model))
        if kind:
            found[part.name] = kind
    return found


def _belongs_to(part: Part, model: Model) -> frozenset[str]:
    """Return the words of all that the copies of a part are put together to."""
    copies = {copy.name for copy in part.copies}
    names = [part.name.rpartition(INSIDE)[0], model.piece]
    wholes: set[str] = set()
    for each in model.assemblies:
        if copies & {*each.of} or wholes & {*each.of}:
            wholes.add(each.name)
            names.append(each.stage)
    return frozenset(word.rstrip("s") for name in names for word in name.lower().split())


def _kind(part: Part, wholes: frozenset[str]) -> str:
    words = part.name.rpartition(INSIDE)[2].split()
    if words[-1] == "stile" and "door" in wholes:
        return STILES
    own = words[-1] in _OF_DRAWERS
    if own and ("drawer" in words or "drawer" in wholes):
        return DRAWERS
    if words[-1] == "rail" and part.length >= LONG:
        return RAILS
    return ""
