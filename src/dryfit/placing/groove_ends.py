"""Where the grooves of a floating panel end: open into one another, through where nothing is lost.

A groove in a stile is stopped a little beyond the panel's corner, by the gap that the panel has
there.  A groove in a rail runs through, since beyond the shoulders the tenon clears it (B3.3).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.geometry.solid import Solid
from dryfit.joinery.cut import Cut, Placed, bounded
from dryfit.placing.found import Found

_GROOVED = frozenset({"groove", "slid panel", "back rabbet"})


def with_groove_ends(found: Sequence[Found], placed: Mapping[str, Placed]) -> tuple[Found, ...]:
    """Return the joints with each panel groove as long as it is cut."""
    gaps: dict[tuple[str, tuple[int, int] | None], Fraction] = {
        (joint.guest, joint.end): joint.clearance
        for joint in found
        if joint.kind in _GROOVED and joint.end
    }
    cuts: dict[str, list[Box]] = {}
    for cut in (cut for joint in found if joint.kind not in _GROOVED for cut in joint.cuts):
        cuts.setdefault(cut.copy, []).append(cut.box)
    return tuple(
        replace(
            joint, cuts=tuple(_ended(cut, joint.guest, gaps, placed, cuts) for cut in joint.cuts)
        )
        if joint.kind in _GROOVED
        else joint
        for joint in found
    )


def _ended(
    cut: Cut,
    panel: str,
    gaps: Mapping[tuple[str, tuple[int, int] | None], Fraction],
    placed: Mapping[str, Placed],
    cuts: Mapping[str, Sequence[Box]],
) -> Cut:
    host = placed[cut.copy]
    axis, outer = host.axes[0], host.box
    none = Fraction(0)
    low = max(cut.box.low[axis] - gaps.get((panel, (axis, -1)), none), outer.low[axis])
    high = min(cut.box.high[axis] + gaps.get((panel, (axis, 1)), none), outer.high[axis])
    removed = tuple(cuts.get(cut.copy, ()))
    if _is_gone(bounded(cut.box, axis, outer.low[axis], low), axis, removed):
        low = outer.low[axis]
    if _is_gone(bounded(cut.box, axis, high, outer.high[axis]), axis, removed):
        high = outer.high[axis]
    return replace(cut, box=bounded(cut.box, axis, low, high))


def _is_gone(beyond: Box, axis: int, removed: tuple[Box, ...]) -> bool:
    return beyond.extent(axis) > 0 and not Solid(beyond, removed).cells()
