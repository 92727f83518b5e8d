"""What is screwed under a lid or top and goes with it: battens through slotted holes (B17, B22)."""

from __future__ import annotations

from collections.abc import Collection

from dryfit.operations.fitting.loose_units import LooseUnit
from dryfit.operations.ways.top_fixing_words import fixed_with
from dryfit.placing.model import Joint, Model
from dryfit.plan.operation import Detail

WHY_FROM_BELOW = "it is screwed on from below while the way to it is free"


def screwed_under(unit: LooseUnit, fixings: Collection[Joint]) -> str:
    """Return the sentence that fixes a unit to what it goes under, before that goes on."""
    kind = next(iter(fixings)).kind
    fixed = fixed_with(kind, unit.words, len(fixings))
    how = fixed.replace("in its place, even all round", "on it by the figures below")
    return f"Turn the {unit.under} face down on a blanket at the bench. {how}"


def under_details(unit: LooseUnit, model: Model) -> tuple[Detail, ...]:
    """Return where each copy stands, from the left and the front of what it goes under."""
    tops = {joint.host: joint.guest for joint in unit.joints}
    rows: list[Detail] = []
    for name in unit.copies:
        own, top = model.copy(name).box, model.copy(tops[name]).box
        across, back = (own.low[axis] - top.low[axis] for axis in (0, 1))
        rows.append(
            (
                f"{name}: ",
                across,
                f" from the left end of the {unit.under} and ",
                back,
                " from its front, left and front as it lies when it is in its place",
            )
        )
    return tuple(rows)
