"""Cutters and accessories that a work list uses, as the contract lists them."""

from __future__ import annotations

from fractions import Fraction

from dryfit.plan.operation import WorkList
from dryfit.plan.setting import Setting
from dryfit.planning.problem_of import family_of
from dryfit.shop.shop import Shop

Named = tuple[tuple[str, Fraction], ...]


def cutters_of(work: WorkList, shop: Shop) -> Named:
    """Return each cutter by name with its width in mm, in the order of the shop file."""
    used: dict[str, Fraction | None] = {}
    for operation in work.operations:
        name = next((str(s.value) for s in operation.settings if s.axis == "cutter"), None)
        if name is not None:
            used[name] = used.get(name) or _kerf(operation.settings)
    order = {cutter.name: index for index, cutter in enumerate(shop.cutters)}
    rows = sorted(used, key=lambda name: (order.get(family_of(name, shop), len(order)), name))
    return tuple((name, used[name] or _catalogued(name, shop)) for name in rows)


def _kerf(settings: tuple[Setting, ...]) -> Fraction | None:
    """Return how far apart the near and the far face stand, as a stop or fence says it."""
    for setting in settings:
        if setting.to == "near" and setting.far is not None and isinstance(setting.value, Fraction):
            return setting.far - setting.value
    return None


def _catalogued(name: str, shop: Shop) -> Fraction:
    family = family_of(name, shop)
    return next((c.widest for c in shop.cutters if c.name == family), Fraction(0))


def accessories_of(work: WorkList, shop: Shop) -> Named:
    """Return each accessory used with the thickness of its base in mm."""
    used = {
        str(setting.value)
        for operation in work.operations
        for setting in operation.settings
        if setting.axis == "accessory"
    }
    return tuple((row.name, row.base) for row in shop.accessories if row.name in used)
