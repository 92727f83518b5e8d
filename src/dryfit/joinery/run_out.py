"""Housings that may run out at an edge, since other cuts take all the wood on their way there.

A shelf that ends before a back in a rabbet leaves its housing short of the edge.  Where the rabbet
is at least as deep, nothing is left to stop at, and a housing from edge to edge is cut on the saw
(common practice).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from dryfit.geometry.box import Box
from dryfit.geometry.solid import Solid
from dryfit.joinery.cut import Cut, Placed, bounded


def run_out(cuts: Sequence[Cut], placed: Mapping[str, Placed]) -> list[Cut]:
    """Return the cuts of one copy, its housings across as far as other cuts clear the way."""
    return [
        _further(cut, placed[cut.copy], cuts)
        if (cut.kind, cut.role, cut.form, cut.after) == ("cross slot", "housing", None, None)
        else cut
        for cut in cuts
    ]


def _further(housing: Cut, host: Placed, cuts: Sequence[Cut]) -> Cut:
    along = next(axis for axis in range(3) if axis not in {housing.axis, host.axes[0]})
    others = tuple(
        cut.box
        for cut in cuts
        if cut is not housing and cut.form is None and cut.after is None and cut.flare is None
    )
    low, high = housing.box.low[along], housing.box.high[along]
    edges = host.box.low[along], host.box.high[along]
    before = bounded(housing.box, along, edges[0], low)
    behind = bounded(housing.box, along, high, edges[1])
    box = bounded(
        housing.box,
        along,
        edges[0] if edges[0] < low and _is_taken(before, others) else low,
        edges[1] if high < edges[1] and _is_taken(behind, others) else high,
    )
    return replace(housing, box=box)


def _is_taken(region: Box, cuts: Sequence[Box]) -> bool:
    near = tuple(cut for cut in cuts if cut.overlap(region) is not None)
    return bool(near) and not Solid(region, near).cells()
