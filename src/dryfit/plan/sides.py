"""The side of the cutter to which a distance is said, in the same words wherever it is said."""

from __future__ import annotations

from collections.abc import Mapping
from enum import Enum
from fractions import Fraction

from dryfit.plan.plan import Step
from dryfit.plan.setting import Setting


class Side(Enum):
    """A side of the cutter, seen from the stop or fence."""

    NEAR = "NEAR side"
    FAR = "FAR side"
    CENTRE = "CENTRE"


Sides = Mapping[int, Mapping[str, Side]]
"""By the number of a step and by the axis: the side that makes the joint."""


def distance(setting: Setting, side: Side) -> Fraction | str:
    """Return the distance in mm to the side of the cutter that counts; else the bare value."""
    if isinstance(setting.value, str) or setting.far is None or side is Side.NEAR:
        return setting.value
    return setting.far if side is Side.FAR else (setting.value + setting.far) / 2


def other_side(setting: Setting, side: Side) -> tuple[str, Fraction] | None:
    """Return words and distance in mm of the side that does not count; None where there is none."""
    if isinstance(setting.value, str) or setting.far is None:
        return None
    if side is Side.NEAR:
        return "far side then at ", setting.far
    return "near side then at ", setting.value


def cuts_through(step: Step) -> bool:
    """Return whether the cut severs the work, so that nothing lies beyond the cutter."""
    return not any(work.features for operation in step.operations for work in operation.work)
