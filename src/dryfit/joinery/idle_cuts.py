"""Shoulders that need no cut of their own, since other cuts of the part take all their wood.

A groove for a panel that is as wide as the tenon and as deep as its edge shoulder leaves nothing
there once the cheeks are off.
"""

from __future__ import annotations

from collections.abc import Sequence

from dryfit.geometry.solid import Solid
from dryfit.joinery.cut import Cut


def without_idle_shoulders(cuts: Sequence[Cut]) -> list[Cut]:
    """Return the cuts of one copy without the edge shoulders that would be cut in the air."""
    whole = [cut for cut in cuts if cut.form is None and cut.after is None]
    return [cut for cut in cuts if cut.role != "tenon shoulder" or not _is_idle(cut, whole)]


def _is_idle(shoulder: Cut, whole: Sequence[Cut]) -> bool:
    # Two shoulders never share wood, so that neither can stand for the other.
    others = (cut.box for cut in whole if cut.role != "tenon shoulder")
    near = tuple(box for box in others if box.overlap(shoulder.box) is not None)
    return not Solid(shoulder.box, near).cells()
