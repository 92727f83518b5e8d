"""Cuts that would be made in the air, since other cuts of the part take all their wood.

A groove for a panel that is as wide as the tenon and as deep as its edge shoulder leaves nothing
there once the cheeks are off.  Of `bottom edges` those at the ends of a tenoned rail are gone with
its shoulders.
"""

from __future__ import annotations

from collections.abc import Sequence

from dryfit.geometry.solid import Solid
from dryfit.joinery.cut import Cut


def without_idle_cuts(cuts: Sequence[Cut]) -> list[Cut]:
    """Return the cuts of one copy without shoulders and eased edges that are cut in the air."""
    whole = [cut for cut in cuts if cut.form is None and cut.after is None]
    return [cut for cut in cuts if not (_may_be_idle(cut) and _is_idle(cut, whole))]


def _may_be_idle(cut: Cut) -> bool:
    return cut.role == "tenon shoulder" or (cut.kind == "profile" and cut.mate is None)


def _is_idle(idle: Cut, whole: Sequence[Cut]) -> bool:
    # Two shoulders never share wood, so that neither can stand for the other.
    shoulder = idle.role == "tenon shoulder"
    others = (cut.box for cut in whole if not (shoulder and cut.role == "tenon shoulder"))
    near = tuple(box for box in others if box.overlap(idle.box) is not None)
    return not Solid(idle.box, near).cells()
