"""The shop that the piece is built in: machines, cutters, clamps, glues, finishes, minutes."""

from dryfit.shop.in_inches import rips_marked_in
from dryfit.shop.read import ShopFileError, read_shop
from dryfit.shop.shop import (
    Accessory,
    AxisChange,
    Clamp,
    Cutter,
    FinishProduct,
    Glue,
    Shop,
    Station,
)
from dryfit.shop.taken_for_granted import shop_assumptions

__all__ = [
    "Accessory",
    "AxisChange",
    "Clamp",
    "Cutter",
    "FinishProduct",
    "Glue",
    "Shop",
    "ShopFileError",
    "Station",
    "read_shop",
    "rips_marked_in",
    "shop_assumptions",
]
