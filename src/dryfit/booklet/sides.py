"""Which side of the cutter makes the joint: the one to which its distance is said."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from dryfit.geometry.frame import SURFACES
from dryfit.joinery.feature import Range
from dryfit.placing.horns import with_horns
from dryfit.placing.model import Model, Part
from dryfit.plan.operation import Work
from dryfit.plan.plan import Plan, Step
from dryfit.plan.setting import Setting
from dryfit.plan.sides import Side, Sides

DRILLED = "hole"


def sides_of(plan: Plan, model: Model) -> Sides:
    """Return for each step by its number the sides that count, by axis."""
    parts = {part.name: part for part in with_horns(model).parts}
    return {
        step.number: sides_that_count(
            step, {axis: each for axis, each in step.settings if each is not None}, parts
        )
        for step in plan.steps
    }


def sides_that_count(
    step: Step, values: Mapping[str, Setting], parts: Mapping[str, Part]
) -> Mapping[str, Side]:
    """Return by axis the side of the cutter that ends on a limit of what is cut.

    A cut right through ends on the near side.  Of a lap out to the end the far side makes the
    shoulder; of a slot it is the side that stands on one of its two limits.  A drill is set by its
    centre.
    """
    found: dict[str, Side] = {}
    for axis in ("stop", "fence"):
        setting = values.get(axis)
        if setting is not None and isinstance(setting.value, Fraction):
            found[axis] = _side(setting.value, setting.far, axis, step, parts)
    return found


def _side(
    near: Fraction, far: Fraction | None, axis: str, step: Step, parts: Mapping[str, Part]
) -> Side:
    works = [work for operation in step.operations for work in operation.work]
    cuts = [cut for work in works for cut in _cuts(work, axis, parts)]
    if cuts and all(drilled for _, drilled in cuts):
        return Side.CENTRE
    limits = {limit for region, _ in cuts for limit in region if limit > 0}
    return Side.FAR if near not in limits and far in limits else Side.NEAR


def _cuts(work: Work, axis: str, parts: Mapping[str, Part]) -> Iterator[tuple[Range, bool]]:
    """Yield the features' ranges from the surface that touches, and whether each is drilled."""
    part, hold = parts.get(work.part), work.hold
    mark = None if hold is None else hold.at_stop if axis == "stop" else hold.against_fence
    if part is None or mark is None:
        return
    direction, opposite = SURFACES[mark]
    sizes = part.length, part.width, part.thickness
    for feature in part.features:
        if feature.id in work.features:
            start, end = feature.ranges(sizes)[direction]
            size = sizes[direction]
            away = (size - end, size - start) if opposite else (start, end)
            yield away, feature.kind == DRILLED
