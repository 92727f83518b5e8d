"""What the notes set for the piece as a whole: its place, its limits, what was measured, orders."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.booklet.text import capital, closed
from dryfit.diagnostics import Findings
from dryfit.piece.declared import Measured
from dryfit.placing.model import Model
from dryfit.wood import Moisture, percent_words

_TOLD = frozenset(
    {
        "limit-kept",
        "opening-tapers",
        "helper-needed",
        "screws-outdoors",
        "place-kept",
        "wall-load",
        "knee-room",
    }
)
"""Notices about the piece, not about how a line was read."""


def circumstances(model: Model, findings: Findings) -> tuple[str, ...]:
    """Return one sentence for each thing that the maker has to keep in mind while working.

    Limits with their margins and what outdoors asks for are notices of the run.
    """
    return tuple(dict.fromkeys(closed(capital(words)) for words in _all(model, findings)))


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
