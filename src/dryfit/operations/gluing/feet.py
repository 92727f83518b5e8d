"""The feet of splayed legs: scribed and sawn level when the legs are glued in (common practice)."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from dryfit.geometry.lean import UP
from dryfit.operations.members import closed_joints, parts_of, work_inside
from dryfit.operations.minutes import tenths, worked
from dryfit.operations.words import all_of
from dryfit.placing.model import Assembly, Model, Part
from dryfit.placing.stages import copies_inside
from dryfit.plan.operation import Detail, Operation, Work
from dryfit.plan.setting import Pass
from dryfit.shop.shop import Shop

WHY_FEET_LAST = "legs that lean find their place in the glue; only then can their feet be scribed"
WHY_FEET_FIRST = "it is planed where it stands on its own feet, and does not rock"


def feet_levelled(assembly: Assembly, model: Model, shop: Shop) -> Operation | None:
    """Return the levelling of the feet of splayed legs that a glue-up takes in, or None."""
    parts = splayed_in(assembly, model)
    if not parts:
        return None
    work = tuple(
        _over(row, part)
        for row, part in zip(work_inside(assembly, parts, model), parts, strict=True)
    )
    details: list[Detail] = [
        (
            (
                "On a flat bench, wedge the legs until the seat is level both ways: its underside "
                "as high over the bench at all its corners, "
            ),
            _stands(assembly, parts, model),
            " by now",
        )
    ]
    for part in parts:
        assert part.sloped is not None
        details.append(
            (
                f"Scribe {all_of(part)} all round with a pencil or knife that lies on a block ",
                part.sloped.over,
                (
                    " high and is slid round on the bench: the line is level on all four sides, "
                    "and runs aslant over the leg"
                ),
            )
        )
    details.append(("Saw beside the line and plane to it, in from the edges of the foot",))
    return Operation(
        id=f"{assembly.name} / feet",
        kind="feet",
        station="bench",
        part=assembly.name,
        settings=(),
        work=work,
        tenths=tenths(worked(shop, "saw off foot", each=sum(len(row.copies) for row in work))),
        sentence=f"Level the feet of the {assembly.name}",
        check="it stands on all its feet without a rock, the seat level and at its height",
        details=tuple(details),
    )


def legs_last(order: tuple[str, ...], model: Model) -> tuple[str, ...]:
    """Return members in their order, legs that lean behind the others: no seat goes onto several.

    Each goes along its own slope, so that only one of them at a time is driven; legs that lean
    alike and are glued to a stretcher go in together.
    """
    leaning = {copy.name for part in model.parts if part.sloped for copy in part.copies}
    leaning |= {
        name for name, copies in copies_inside(model.assemblies).items() if leaning & copies
    }
    return tuple(sorted(order, key=lambda name: name in leaning))


def _stands(assembly: Assembly, parts: tuple[Part, ...], model: Model) -> Fraction:
    """Return how high the underside of the seat stands while the feet are still too long."""
    names = {copy.name for part in parts for copy in part.copies}
    joint = next(each for each in closed_joints(assembly, model) if each.guest in names)
    sloped = parts[0].sloped
    assert sloped is not None
    return joint.region.low[UP] + sloped.over


def splayed_in(assembly: Assembly, model: Model) -> tuple[Part, ...]:
    """Return the splayed parts that this glue-up joins to their seat."""
    entering = {joint.guest for joint in closed_joints(assembly, model)}
    return tuple(
        part for part in parts_of(tuple(sorted(entering)), model) if part.sloped is not None
    )


def _over(row: Work, part: Part) -> Work:
    assert part.sloped is not None
    return replace(row, passes=(Pass(spacer=part.sloped.over),))
