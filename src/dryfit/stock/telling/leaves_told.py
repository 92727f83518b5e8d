"""That leaves lie on stickers, where the notes do not ask that a part is resawn (TRADE A8.3)."""

from __future__ import annotations

from dataclasses import replace

from dryfit.placing.model import Model
from dryfit.shop.shop import Shop
from dryfit.shop.taken_for_granted import rest_of_leaves
from dryfit.stock.laid_out import LaidOut


def with_leaves_told(model: Model, laid: LaidOut, shop: Shop) -> Model:
    """Return the model with that assumption, if some blank is resawn and nobody told it yet."""
    told = rest_of_leaves(shop)
    if told in model.assumptions or not any(blank.leaves > 1 for blank in laid.blanks):
        return model
    return replace(model, assumptions=(*model.assumptions, told))
