"""Wood lies on stickers before it is planed true: of which much was planed off, or that is resawn.

TRADE A3.7 and A8.3.
"""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.rehearsal.at_machines.milling import DEEDS
from dryfit.rehearsal.fault import Fault, Reason
from dryfit.rehearsal.times.deeds import Deed
from dryfit.shop.resting import in_words
from dryfit.shop.shop import Shop


def rests(deeds: tuple[Deed, ...], shop: Shop) -> Iterator[Fault]:
    """Yield what is planed true too soon after it was planed close to it, and leaves too fresh."""
    for at, first in enumerate(deeds):
        if first.kind == "rough thickness":
            yield from _too_soon(first, deeds[at + 1 :], frozenset({"thickness"}), shop.rest)
        elif first.kind == "resaw":
            yield from _too_soon(first, deeds[at + 1 :], DEEDS, shop.stickered)


def _too_soon(
    first: Deed, later: tuple[Deed, ...], kinds: frozenset[str], rest: int
) -> Iterator[Fault]:
    for deed in later:
        if deed.kind in kinds and deed.touched & first.touched and deed.begins < first.ends + rest:
            yield Fault(
                Reason.WAIT,
                f"{deed.operation.id} begins too soon after {first.operation.id}",
                f"{in_words(rest)} between them",
                deed.step.number,
                deed.operation.id,
            )
