"""Heights of cuts right through: one common value an accessory, high enough for every part."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from dryfit.operations import setting_of
from dryfit.plan.setting import Setting
from dryfit.shop.shop import Shop

SAW = "table saw"
RIP_FENCE = "rip fence"


def least_height(thickness: Fraction, accessory: str, shop: Shop) -> Fraction:
    """Return how high the blade stands above the table at least: work, base and a little more."""
    known = shop.accessory(accessory)
    base = known.base if known else Fraction(0)
    return thickness + base + shop.allowances["through_cut"]


def common_height(thicknesses: Iterable[Fraction], accessory: str, shop: Shop) -> Fraction:
    """Return the least height that cuts through every thickness on that accessory."""
    return max(least_height(thickness, accessory, shop) for thickness in thicknesses)


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


def can_saw_through(thickness: Fraction, accessory: str, shop: Shop) -> bool:
    """Return whether the table saw, with that accessory, cuts right through the thickness."""
    return has_saw(accessory, shop) and thickness <= deepest(accessory, shop)


def through_settings(
    thickness: Fraction, common: Fraction, accessory: str, shop: Shop
) -> tuple[Setting, ...]:
    """Return cutter, accessory, tilt and height of a cut right through; fence or stop to come."""
    blade, _ = saw_blade(shop)
    return (
        setting_of.named("cutter", blade),
        setting_of.named("accessory", accessory),
        setting_of.angle("tilt"),
        setting_of.height(common, least_height(thickness, accessory, shop)),
    )


def rip_settings(
    thickness: Fraction, common: Fraction, width: Fraction, origin: str | None, shop: Shop
) -> tuple[Setting, ...]:
    """Return the table saw set to rip right through to a width, `origin` at the fence."""
    _, kerf = saw_blade(shop)
    settings = (
        *through_settings(thickness, common, RIP_FENCE, shop),
        setting_of.distance("fence", width, kerf, origin),
    )
    return setting_of.known_to(shop, SAW, settings)
