"""What the notes set for the piece as a whole: its place, its limits, what was measured, orders."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.booklet.text import capital, closed
from dryfit.booklet.wording import clock, roughly
from dryfit.diagnostics import Findings
from dryfit.piece.declared import Measured
from dryfit.placing.model import Model
from dryfit.plan.lending import lent_hands
from dryfit.plan.plan import Plan
from dryfit.wood import Moisture, percent_words

_TOLD = frozenset(
    {
        "limit-kept",
        "opening-tapers",
        "screws-outdoors",
        "place-kept",
        "wall-load",
        "knee-room",
    }
)
"""Notices about the piece, not about how a line was read."""


def circumstances(model: Model, findings: Findings, plan: Plan | None = None) -> tuple[str, ...]:
    """Return one sentence for each thing that the maker has to keep in mind while working.

    Limits with their margins and what outdoors asks for are notices of the run.
    """
    said = (*_all(model, findings), *(() if plan is None else _lent(plan)))
    return tuple(dict.fromkeys(closed(capital(words)) for words in said))


def _all(model: Model, findings: Findings) -> Iterator[str]:
    if model.outdoors is not None:
        yield "the piece stands outdoors"
    yield from _moisture(model)
    notices = [row for row in findings if row.code in _TOLD]
    yield from (row.message for row in sorted(notices, key=lambda row: row.sort_key()))
    yield from (_measured(each, model) for each in model.measured)
    for thing in model.bought:
        if thing.order is not None:
            size = f", {thing.size}," if thing.size else ""
            yield f"order {thing.count} {thing.written}{size} {_when(thing.order)}"


def _lent(plan: Plan) -> Iterator[str]:
    """Yield for which steps somebody has to be asked, and when."""
    for row in lent_hands(plan):
        deeds = "; ".join(deed.replace(" / ", ": ", 1) for deed in row.deeds)
        yield (
            f"ask somebody to lend a hand at {row.steps} ({deeds}), about {clock(row.starts)}, for "
            f"{roughly(row.tenths)}: that takes {row.people} people"
        )


def _moisture(model: Model) -> Iterator[str]:
    """Yield what the wood holds now and later, where the notes tell one of the two."""
    air, usual = model.moisture, Moisture()
    if air.now != usual.now or air.told:
        yield (
            f"the wood is worked at {percent_words(air.now)} of moisture, and comes to between "
            f"{percent_words(air.driest)} and {percent_words(air.dampest)} where the piece stands"
        )


def _measured(measured: Measured, model: Model) -> str:
    def shown(length: Fraction) -> str:
        return model.display.with_unit(length, fitted=True)

    several = len(measured.amounts) > 1
    lengths = " and ".join(shown(each) for each in dict.fromkeys(measured.amounts))
    taken = f"; {shown(measured.taken)} counts" if several else ""
    planned = measured.planned
    instead = "" if planned is None or planned == measured.taken else f", planned {shown(planned)}"
    return f"{measured.name}: measured {lengths}{taken}{instead}"


def _when(order: str) -> str:
    # The word of the notes, and what it asks for at the bench.
    return "when the place is measured" if "measured" in order.split() else order
