"""Wood of which much is planed off lies on stickers before it is planed true (TRADE A3.7)."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.rehearsal.fault import Fault, Reason
from dryfit.rehearsal.times.deeds import Deed
from dryfit.shop.resting import rest_in_words
from dryfit.shop.shop import Shop


def rests(deeds: tuple[Deed, ...], shop: Shop) -> Iterator[Fault]:
    """Yield what is planed to its thickness too soon after it was planed close to it."""
    for first in deeds:
        if first.kind != "rough thickness":
            continue
        for deed in deeds:
            resting = deed.kind == "thickness" and deed.touched & first.touched
            if resting and deed.begins < first.ends + shop.rest:
                yield Fault(
                    Reason.WAIT,
                    f"{deed.operation.id} begins too soon after {first.operation.id}",
                    f"{rest_in_words(shop)} between them",
                    deed.step.number,
                    deed.operation.id,
                )
