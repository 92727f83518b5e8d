"""Recesses for hinges, and hanging what they carry: sentences with their figures (TRADE B23)."""

from __future__ import annotations

from fractions import Fraction

from dryfit.operations.cut import Site
from dryfit.plan.operation import Detail

_HELD = (
    "Hold the two together as they will hang, with shims in the gap, and mark the ends of each "
    "leaf across both at once; then knife round the leaf itself"
)
_SQUARED = (
    " deep, stopped short of the knife lines; square the corners with a chisel. Prove it on an "
    "offcut: a leaf pressed in lies flush"
)
_PILOTS = "Pilot holes in the middle of the leaf's holes; the hinge comes off again for the finish"


def recess_details(site: Site, *, chiselled: bool) -> tuple[Detail, ...]:
    """Return where a recess stands, how big it is, and how both leaves come to agree."""
    feature = site.feature
    (start, end), (near, far) = feature.along, feature.across
    lying = end - start >= far - near
    middle, origin = ((start + end) / 2, "R") if lying else ((near + far) / 2, "E")
    long, wide = max(end - start, far - near), min(end - start, far - near)
    return (
        (_HELD,),
        (f"{feature.id}: middle ", middle, f" from {origin}, ", long, " long, ", wide, " wide"),
        _by_chisel(feature.depth) if chiselled else _by_router(feature.depth),
        (_PILOTS,),
    )


def _by_router(depth: Fraction) -> Detail:
    return ("Trim router set once for all leaves, ", _tenth(depth), _SQUARED)


def _by_chisel(depth: Fraction) -> Detail:
    return (
        "Gauge the depth of ",
        _tenth(depth),
        " from the leaf itself, deepen the knife lines, chop across the waste and pare it level",
    )


def _tenth(size: Fraction) -> Fraction:
    return Fraction(round(size * 10), 10)


def hung(words: str, many: int) -> str:
    """Return the sentence that hangs a door or lid; `many` hinges."""
    return (
        f"Hang {words}: screw the {many} hinges into their recesses, first with one screw in each "
        "leaf, try the gap, then drive the rest"
    )
