"""The cutters and accessories that a plan uses, held against those that the shop has."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.plan.plan import Plan
from dryfit.rehearsal.fault import Fault, Reason
from dryfit.shop.shop import Accessory, Cutter, Shop


@dataclass(frozen=True, slots=True)
class Mounted:
    """A cutter as it is used: the shop's own, and the width of its cut in mm."""

    cutter: Cutter
    width: Fraction


@dataclass(frozen=True, slots=True)
class Toolbox:
    """All cutters and accessories of a plan that the shop has, by the names that the plan uses."""

    cutters: dict[str, Mounted]
    accessories: dict[str, Accessory]


def toolbox(plan: Plan, shop: Shop) -> tuple[Toolbox, tuple[Fault, ...]]:
    """Return what can be mounted, and a fault for all that the shop has not or has otherwise."""
    faults: list[Fault] = []
    cutters: dict[str, Mounted] = {}
    for name, width in plan.cutters:
        own = _own_cutter(name, shop)
        if own is None or not own.narrowest <= width <= own.widest:
            had = "no such cutter" if own is None else _widths(own)
            faults.append(
                Fault(Reason.MACHINE, f"{name}, {float(width):g} wide: the shop has {had}", had)
            )
        else:
            cutters[name] = Mounted(own, width)
    accessories: dict[str, Accessory] = {}
    for name, base in plan.accessories:
        accessory = shop.accessory(name)
        if accessory is None or accessory.base != base:
            faults.append(
                Fault(
                    Reason.MACHINE,
                    f"{name} with a base of {float(base):g}: the shop has another or none",
                    "an accessory as the shop file states it",
                )
            )
        else:
            accessories[name] = accessory
    return Toolbox(cutters, accessories), tuple(faults)


def _own_cutter(name: str, shop: Shop) -> Cutter | None:
    # A set that is built to a width is named with that width: ``dado 20``.
    fitting = [
        cutter
        for cutter in shop.cutters
        if name == cutter.name or (cutter.step and name.startswith(f"{cutter.name} "))
    ]
    return max(fitting, key=lambda cutter: len(cutter.name), default=None)


def _widths(cutter: Cutter) -> str:
    if cutter.narrowest == cutter.widest:
        return f"{cutter.name}, {float(cutter.widest):g} wide"
    return f"{cutter.name}, {float(cutter.narrowest):g} to {float(cutter.widest):g} wide"
