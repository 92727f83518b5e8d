"""Heights of cuts right through: high enough for the part, and no teeth far above it."""

from __future__ import annotations

from fractions import Fraction

from dryfit.joinery.slopes import DIAGONAL
from dryfit.operations import setting_of
from dryfit.plan.setting import Setting
from dryfit.shop.shop import Shop

SAW = "table saw"
RIP_FENCE = "rip fence"
HIGH = Fraction(12)
"""Teeth more than 15 mm out of the work are too high, 3 of them being usual (common practice)."""


def least_height(thickness: Fraction, accessory: str, shop: Shop) -> Fraction:
    """Return how high the blade stands above the table at least: work, base and a little more."""
    known = shop.accessory(accessory)
    base = known.base if known else Fraction(0)
    return thickness + base + shop.allowances["through_cut"]


def highest(shop: Shop, *, tilted: bool = False) -> Fraction:
    """Return how high the table saw's blade rises; tilted by 45 it does so along its own slope."""
    depth = shop.stations[SAW].limits["depth"]
    return depth / DIAGONAL if tilted else depth


def through_height(
    thickness: Fraction, accessory: str, shop: Shop, *, tilted: bool = False
) -> Setting:
    """Return the height of a cut right through: the order picks one that serves several cuts."""
    least = least_height(thickness, accessory, shop)
    # Whoever chose the saw has made sure that the blade rises so far.
    most = max(least, min(least + HIGH, highest(shop, tilted=tilted)))
    return setting_of.high_enough(least, most)


def saw_blade(shop: Shop) -> tuple[str, Fraction]:
    """Return the name and the kerf of the table saw's blade for cuts right through."""
    blade = next(cutter for cutter in shop.cutters_at(SAW) if cutter.kind == "blade")
    return blade.name, blade.widest


def has_saw(accessory: str, shop: Shop) -> bool:
    """Return whether the shop has the table saw with a plain blade and that accessory."""
    if SAW not in shop.stations or shop.accessory(accessory) is None:
        return False
    return any(cutter.kind == "blade" for cutter in shop.cutters_at(SAW))


def deepest(accessory: str, shop: Shop) -> Fraction:
    """Return the greatest thickness that the table saw cuts right through on that accessory."""
    return shop.stations[SAW].limits["depth"] - least_height(Fraction(0), accessory, shop)


def through_settings(thickness: Fraction, accessory: str, shop: Shop) -> tuple[Setting, ...]:
    """Return cutter, accessory, tilt and height of a cut right through; fence or stop to come."""
    blade, _ = saw_blade(shop)
    return (
        setting_of.named("cutter", blade),
        setting_of.named("accessory", accessory),
        setting_of.angle("tilt"),
        through_height(thickness, accessory, shop),
    )


def rip_settings(
    thickness: Fraction, width: Fraction, origin: str | None, shop: Shop
) -> tuple[Setting, ...]:
    """Return the table saw set to rip right through to a width, `origin` at the fence."""
    _, kerf = saw_blade(shop)
    settings = (
        *through_settings(thickness, RIP_FENCE, shop),
        setting_of.distance("fence", width, kerf, origin),
    )
    return setting_of.known_to(shop, SAW, settings)
