"""Marking out: face, edge, end and hand of every part, and the lines that cuts stand on."""

from __future__ import annotations

from fractions import Fraction

from dryfit.joinery.feature import Range
from dryfit.kinds.roles import CORNER_ROLES, PIN_HOLE
from dryfit.operations.cut import Cut
from dryfit.operations.milling.horns import horn_details
from dryfit.operations.minutes import tenths, worked
from dryfit.operations.words import all_of
from dryfit.placing.model import Part
from dryfit.plan.operation import Detail, Operation, Work
from dryfit.shop.shop import Shop

WHY_MARK_FIRST = "a part whose face, edge, end and hand are marked is not turned the wrong way"
WHY_MARK_AFTER_LENGTH = "marks are measured from the finished ends"


def laid_out(part: Part, cuts: tuple[Cut, ...], shop: Shop) -> Operation | None:
    """Return the marking of a part, or None when it carries no joint; one mark a joint (F4)."""
    marked = [cut for cut in cuts if not cut.by_a_fence and not _placed_at_stop(cut)]
    if not marked:
        return None
    marks = sum(
        len({place_of(cut) for cut in marked if copy_has(cut, name)})
        for name in (copy.name for copy in part.copies)
    )
    details: list[Detail] = [
        ("Mark true face, true edge and reference end on every copy, waste with an X",)
    ]
    details += horn_details(part.horns)
    if len(part.hands()) > 1:
        details.append(("Left and right versions are mirror images: lay them out as pairs",))
    return Operation(
        id=f"{part.name} / lay out",
        kind="lay out",
        station="bench",
        part=part.name,
        settings=(),
        work=(Work(part.name, tuple(copy.name for copy in part.copies), (), None, ()),),
        tenths=tenths(worked(shop, "layout", each=marks)),
        sentence=f"Mark out {all_of(part)}",
        check="the copies side by side show their lines in one row",
        details=tuple(details),
    )


def _placed_at_stop(cut: Cut) -> bool:
    # A drill at its stop, and a jig whose pin takes the last socket, need no lines.
    return cut.kind in {"hole", "fingers"} and cut.hold is not None and cut.hold.at_stop is not None


def place_of(cut: Cut) -> tuple[str, Range]:
    """Return what one mark is for: a mate, and where along the part."""
    feature = cut.site.feature
    if feature.role == PIN_HOLE:
        # A template makes the holes of a row from one line.
        return feature.surface, feature.across
    if feature.role in CORNER_ROLES:
        # All sockets of an end are stepped off from one shoulder line.
        return feature.surface, (Fraction(0), feature.depth)
    return feature.mate or feature.id, feature.along


def copy_has(cut: Cut, name: str) -> bool:
    """Return whether the cut is made on the copy of that name."""
    return any(copy.name == name for copy in cut.site.copies)
