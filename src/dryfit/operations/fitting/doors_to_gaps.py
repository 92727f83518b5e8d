"""Doors and lids are fitted to their gaps before the leaves of their hinges are marked (B23).

What is sawn to its opening is planed to it as `plane_to_fit` says; everything else on hinges that
stands off its carrier by a gap, such as a framed door, is fitted here once it is glued.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from dryfit.kinds.roles import HINGE_RECESS
from dryfit.operations.cuts.cutting import Joinery
from dryfit.operations.fitting.loose_units import box_of, called
from dryfit.operations.members import all_copies, outermost
from dryfit.operations.minutes import METRE, tenths, worked
from dryfit.operations.words import all_of
from dryfit.placing.model import Joint, Model
from dryfit.plan.operation import Detail, Operation, Rule, Work
from dryfit.shop.shop import Shop

WHY_FITTED_FIRST = "leaves are marked on what stands to its gaps"
WHY_CUT_FIRST = "it is fitted when it has its size"
PLANED = " / plane to fit"


@dataclass(frozen=True, slots=True)
class Fitted:
    """The fitting of doors and its rules; `stages` are the glue-ups that each of them waits for."""

    operations: tuple[Operation, ...]
    rules: tuple[Rule, ...]
    stages: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class _Door:
    name: str
    words: str
    copies: tuple[str, ...]


def doors_fitted(
    model: Model, joinery: Joinery, late: Mapping[str, str], lengths: Mapping[str, str], shop: Shop
) -> Fitted:
    """Return the fitting of all that hangs on hinges with a gap beside it.

    `late` are cuts with the stage that they wait for, `lengths` what gives a part its length.
    """
    operations: dict[str, Operation] = {}
    rules: list[Rule] = []
    stages: list[tuple[str, str]] = []
    made = set(lengths.values())
    for joint in (each for each in model.joints if each.kind == "hinges"):
        parts = [model.part_of(name).name for name in (joint.guest, joint.host)]
        recesses = _recesses(parts, joinery)
        fit = f"{parts[0]}{PLANED}"
        if fit not in made:
            gap = _gap(joint, model)
            if gap == 0:
                continue
            door = _door(joint, model)
            fit = f"{door.name} / fit to gap"
            operations.setdefault(fit, _fitting(fit, door, joint, gap, model, shop))
            rules += [Rule(lengths[part], fit, WHY_CUT_FIRST) for part in parts if part in lengths]
            stages += [(fit, late[name]) for name in recesses if name in late]
        rules += [Rule(fit, name, WHY_FITTED_FIRST) for name in recesses]
    return Fitted(tuple(operations.values()), tuple(rules), tuple(dict.fromkeys(stages)))


def _recesses(parts: list[str], joinery: Joinery) -> tuple[str, ...]:
    return tuple(
        operation.id
        for operation, cuts in zip(joinery.operations, joinery.cuts, strict=True)
        if operation.part in parts
        and any(
            cut.site.feature.role == HINGE_RECESS and cut.site.feature.mate in parts for cut in cuts
        )
    )


def _gap(joint: Joint, model: Model) -> Fraction:
    door, carrier = model.copy(joint.guest).box, model.copy(joint.host).box
    return max(
        max(door.low[axis] - carrier.high[axis], carrier.low[axis] - door.high[axis])
        for axis in range(3)
    )


def _door(joint: Joint, model: Model) -> _Door:
    """Return what hangs: the glued whole that the copy with the leaves is in, else its part."""
    for assembly in outermost(model):
        copies = all_copies(assembly, model)
        if joint.guest in copies and joint.host not in copies:
            return _Door(assembly.name, called(assembly, model), copies)
    part = model.part_of(joint.guest)
    return _Door(part.name, all_of(part), tuple(copy.name for copy in part.copies))


def _fitting(
    name: str, door: _Door, joint: Joint, gap: Fraction, model: Model, shop: Shop
) -> Operation:
    box = box_of(door.copies, model)
    _, wide, high = sorted(box.extent(axis) for axis in range(3))
    beside: Detail = (f"Beside the {model.part_of(joint.host).name} the gap is ", gap)
    metres = 2 * (wide + high) / METRE
    return Operation(
        id=name,
        kind="fit to gap",
        station="bench",
        part=door.name,
        settings=(),
        work=(Work(door.name, door.copies, (), None, ()),),
        tenths=tenths(worked(shop, "plane to fit", each=1, per_metre=metres)),
        sentence=f"Hold {door.words} in its place on shims, mark where it binds or comes too near, "
        "and plane its edges a little at a time until it stands off equally all round",
        check="the spacers for its gaps go in all round; across end grain plane from both corners",
        details=(beside,),
    )
