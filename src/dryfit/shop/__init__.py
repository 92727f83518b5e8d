"""The shop that the piece is built in: machines, cutters, clamps, glues, finishes, minutes."""

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
    "shop_assumptions",
]
