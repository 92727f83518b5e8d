"""Sanding by grits, finest last, and easing of edges (TRADE D1, D3, D4)."""

from __future__ import annotations

from fractions import Fraction

from dryfit.operations import setting_of
from dryfit.operations.batch import chained
from dryfit.operations.minutes import METRE, SQUARE_METRE, tenths, worked
from dryfit.plan.operation import Operation, Rule, Work
from dryfit.shop.shop import Shop

WHY_GRITS = "the finer grit takes out the scratches of the coarser one"
SANDER = "sander"


def sanded(
    subject: str, what: tuple[str, str], copies: tuple[str, ...], area: Fraction, shop: Shop
) -> tuple[Operation, ...]:
    """Return one operation a grit; `what` is the deed in the id and the sentence, `area` in mm2."""
    deed, sentence = what
    station = SANDER if SANDER in shop.stations else "bench"
    rate = "sand" if station == SANDER else "hand sand"
    exact = worked(shop, rate, each=len(copies), per_square_metre=area / SQUARE_METRE)
    return tuple(
        Operation(
            id=f"{subject} / {deed} {grit}",
            kind="sand",
            station=station,
            part=subject,
            settings=setting_of.known_to(shop, station, (setting_of.named("grit", grit),)),
            work=(Work(subject, copies, (), None, ()),),
            tenths=tenths(exact),
            sentence=f"{sentence}, grit {grit}",
        )
        for grit in shop.sanding.grits
    )


def grit_rules(rows: tuple[Operation, ...]) -> tuple[Rule, ...]:
    """Return the rules that put finer grits after coarser ones."""
    return chained(rows, [WHY_GRITS] * max(0, len(rows) - 1))


def eased(subject: str, copies: tuple[str, ...], length: Fraction, shop: Shop) -> Operation:
    """Return the easing of edges; `length` is that of all edges in mm."""
    return Operation(
        id=f"{subject} / ease edges",
        kind="ease edges",
        station="bench",
        part=subject,
        settings=(),
        work=(Work(subject, copies, (), None, ()),),
        tenths=tenths(worked(shop, "ease edges", per_metre=length / METRE)),
        sentence=f"Take the sharpness off the edges of the {subject} with fine paper on a block",
        check="no edge catches on a cloth",
    )
