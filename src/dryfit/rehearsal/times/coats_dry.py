"""A coat is dry before the next coat, before anything is done with it, and before fitting (D5)."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from dryfit.rehearsal.fault import Fault, Reason
from dryfit.rehearsal.goal import Goal, WantedCoats
from dryfit.rehearsal.times.deeds import Deed
from dryfit.rehearsal.times.working_hours import HOUR, Hours, moment_in_words, spoken
from dryfit.shop.shop import Shop

COATS_UNKNOWN = 2
"""Coats of a finish that neither notes nor shop file describe (common practice, TRADE D5)."""
A_DAY = 24 * HOUR
"""Between coats of a finish that neither notes nor shop file describe (common practice, D5)."""


@dataclass(frozen=True, slots=True)
class Coat:
    """One coat: its product, and the tenths until the next coat or anything else."""

    product: str
    recoat: int


def coats_wanted(goal: Goal, shop: Shop) -> dict[str, Coat]:
    """Return every coat by the id of its operation (CONTRACTS: ``seat / coat 1``)."""
    return {
        _coat_id(row, number): coat
        for row in goal.coats
        for number, coat in enumerate(_in_order(row, shop), start=1)
    }


def _coat_id(row: WantedCoats, number: int) -> str:
    surfaces = row.surfaces.replace("the ", "")
    return f"{row.subject} / coat {number}" + (f" / {surfaces}" if surfaces else "")


def _in_order(row: WantedCoats, shop: Shop) -> Iterator[Coat]:
    for product, coats, apart in row.products:
        known = shop.finishes.get(product)
        usual, usual_apart = (known.coats, known.recoat) if known else (COATS_UNKNOWN, A_DAY)
        recoat = usual_apart if apart is None else apart
        for _ in range(usual if coats is None else coats):
            yield Coat(product, recoat)


def coats_dry(deeds: tuple[Deed, ...], goal: Goal, hours: Hours, shop: Shop) -> Iterator[Fault]:
    """Yield what is done with a copy whose coat is not dry, and coats that print another rest."""
    wanted = coats_wanted(goal, shop)
    wet: list[tuple[Deed, int]] = []
    for deed in deeds:
        for coat, dry in wet:
            # What is fitted is turned over, pressed and screwed: then all has to be dry (D10).
            in_hand = deed.kind == "fit" or coat.touched & deed.touched
            if in_hand and deed.step.starts.tenths < dry:
                yield _still_wet(deed, coat, dry, hours)
        if deed.kind != "coat":
            continue
        recoat = deed.operation.after_tenths
        known = wanted.get(deed.operation.id)
        if known is not None and known.recoat != recoat:
            yield Fault(
                Reason.WAIT,
                f"{deed.operation.id} rests {spoken(recoat)}",
                f"{spoken(known.recoat)}, as {known.product} needs it or the notes say",
                deed.step.number,
                deed.operation.id,
            )
        wet.append((deed, deed.ends + (recoat if known is None else known.recoat)))


def _still_wet(deed: Deed, coat: Deed, dry: int, hours: Hours) -> Fault:
    waited = max(0, deed.step.starts.tenths - coat.ends)
    return Fault(
        Reason.WAIT,
        f"{deed.operation.id} begins {spoken(waited)} after {coat.operation.id}, which needs "
        f"{spoken(dry - coat.ends)} to dry",
        f"not before {moment_in_words(dry, hours)}: {spoken(dry - coat.ends)} after "
        f"step {coat.step.number}",
        deed.step.number,
        deed.operation.id,
    )
