"""Horns of stiles: sawn off when the frame is glued, the ends made level (TRADE B3.3, C4.4)."""

from __future__ import annotations

from fractions import Fraction

from dryfit.operations.members import horned_parts, work_inside
from dryfit.operations.minutes import tenths, worked
from dryfit.operations.words import all_of
from dryfit.placing.model import Assembly, Model
from dryfit.plan.operation import Detail, Operation
from dryfit.shop.shop import Shop

WHY_HORNS_LAST = "the horns keep the ends of the mortises whole until the glue holds"
WHY_HORNS_OFF = "the ends are planed level when they are sawn off close to it"


def horns_off(assembly: Assembly, model: Model, shop: Shop) -> Operation | None:
    """Return the sawing off of all horns of a glued frame, or None where it has none."""
    parts = horned_parts(assembly, model)
    if not parts:
        return None
    work = work_inside(assembly, parts, model)
    details: list[Detail] = [
        (
            f"Knife the finished ends of {all_of(part)} all round, ",
            part.length,
            " apart and ",
            part.horns,
            " in from each end, saw beside the line and leave a hair to plane",
        )
        for part in parts
    ]
    return Operation(
        id=f"{assembly.name} / horns",
        kind="horns",
        station="bench",
        part=assembly.name,
        settings=(),
        work=work,
        tenths=tenths(worked(shop, "saw off horn", each=2 * sum(len(w.copies) for w in work))),
        sentence=f"Saw the horns off the {assembly.name}",
        check="nothing sawn into the rails, the frame as long as it has to be at both sides",
        details=tuple(details),
    )


def horn_details(horn: Fraction) -> tuple[Detail, ...]:
    """Return what is said where a part with horns is cut to length, or marked out."""
    if not horn:
        return ()
    return (
        (
            "With a horn of ",
            horn,
            (
                " at each end, which is sawn off when the frame is glued: until then R and R2 are "
                "the ends of the horns, and all places are counted from there"
            ),
        ),
    )


def planed_level(assembly: Assembly, model: Model) -> tuple[Detail, ...]:
    """Return how the ends are levelled where the horns were."""
    return tuple(
        (
            (
                f"Plane the ends of {all_of(part)} level where the horns were, in from the outer "
                "edges: outwards the corner breaks off"
            ),
        )
        for part in horned_parts(assembly, model)
    )
