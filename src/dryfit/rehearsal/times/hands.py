"""Glue-ups for which the notes want more than one pair of hands (TRADE C2.2)."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.rehearsal.fault import Fault, Reason
from dryfit.rehearsal.goal import Goal
from dryfit.rehearsal.times.deeds import Deed
from dryfit.rehearsal.times.glue_lags import assembly_of


def hands(deeds: tuple[Deed, ...], goal: Goal) -> Iterator[Fault]:
    """Yield glue-ups that are planned for fewer people than the notes want."""
    for deed in deeds:
        wanted = assembly_of(deed.operation, goal) if deed.kind == "glue up" else None
        if wanted is not None and deed.operation.hands < wanted.people:
            yield Fault(
                Reason.RESOURCES,
                f"{deed.operation.id}: {deed.operation.hands} people are planned for it",
                f"{wanted.people} people, as the notes want",
                deed.step.number,
                deed.operation.id,
            )
