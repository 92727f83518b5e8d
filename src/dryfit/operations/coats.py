"""The coats of a subject: product, how often, how long each rests (TRADE D5)."""

from __future__ import annotations

from dataclasses import dataclass

from dryfit.piece.declared import Coats
from dryfit.placing.model import Coating
from dryfit.shop.finishes import finish_named
from dryfit.shop.shop import Shop

MINUTE = 10


@dataclass(frozen=True, slots=True)
class Coat:
    """One coat: its product, and the tenths until the next or until it has hardened."""

    product: str
    recoat: int


def coats_of(coating: Coating, shop: Shop) -> tuple[Coat, ...]:
    """Return the coats of a subject in their order, one product after the other."""
    return tuple(coat for words in coating.products for coat in _product(words, shop))


def _product(words: Coats, shop: Shop) -> tuple[Coat, ...]:
    finish = finish_named(shop, words.product)
    recoat = finish.recoat if words.apart is None else words.apart * MINUTE
    return (Coat(words.product, recoat),) * (words.coats or finish.coats)


def coat_id(coating: Coating, number: int) -> str:
    """Return the id of a coat, counted from 1: ``seat / coat 2``."""
    surfaces = coating.surfaces.replace("the ", "")
    return f"{coating.subject} / coat {number}" + (f" / {surfaces}" if surfaces else "")
