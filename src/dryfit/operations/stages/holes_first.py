"""Holes for knobs, handles and pulls are bored before the finish (TRADE D10, D12, H64)."""

from __future__ import annotations

from dryfit.notes.names import plural
from dryfit.piece.declared import thing_of
from dryfit.placing.model import Bought, Coating, Model
from dryfit.plan.operation import Detail

SCREWED_THROUGH = frozenset({"knob", "handle", "pull"})


def holes_before(coating: Coating, model: Model) -> tuple[Detail, ...]:
    """Return what is bored before the first coat of a subject, once for each bought thing."""
    return tuple(
        (
            (
                f"Before it, bore the holes for the {thing.written} in the {thing.purpose}, a "
                "scrap of wood held behind: a drill that comes out through a finish tears it"
            ),
        )
        for thing in model.bought
        if thing.name.rpartition(" ")[2] in SCREWED_THROUGH
        and next((each for each in model.coatings if _carries(each, thing, model)), None) is coating
    )


def _carries(coating: Coating, thing: Bought, model: Model) -> bool:
    """Return whether the thing goes on what is coated; a pattern is named by its first word."""
    names = {thing_of(model.part_of(name).name) for name in coating.copies}
    return any(thing.purpose in {name, plural(name)} for name in names)
