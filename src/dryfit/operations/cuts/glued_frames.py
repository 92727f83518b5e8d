"""Mortises and holes in a member of a glued frame, under a machine that takes the frame (M6).

The frame lies flat on the table: what touches table, fence and stop has to be outside on the whole
frame, not on its member alone.  Then every distance is the member's own.  What no machine takes is
cut by hand.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction

from dryfit.geometry.frame import OPPOSITE, SURFACES
from dryfit.operations.cut import Cut, Site
from dryfit.operations.cuts.mortises import hole_cut, mortise_cut, reference_of
from dryfit.operations.ways.by_hand import hand_cut
from dryfit.placing.model import Assembly, Copy, Model
from dryfit.plan.operation import Detail
from dryfit.shop.shop import Shop

LARGEST = Fraction(900)
"""The longest side of a frame that a maker holds flat under a spindle: a guess of ours."""


def cuts_in_frame(site: Site, model: Model, shop: Shop) -> tuple[Cut, ...]:
    """Return the cuts of a site that waits for a glue-up: at a machine, else by hand and why."""
    frames = _frames_of(site, model)
    by_hand = hand_cut(site, shop)
    if len(frames) < len(site.copies) or site.feature.kind not in {"mortise", "hole"}:
        return (by_hand,)
    frame = frames[site.copies[0].name]
    cuts = []
    for fence, copies in _by_fence(site, frames):
        cut = _under_spindle(replace(site, copies=copies, fence=fence), model, shop)
        held = cut.hold
        if fence is None or held is None:
            return (by_hand,)
        touching = (held.down, held.against_fence, held.at_stop)
        outside = (
            is_outside(copy, each, frames[copy.name])
            for copy in copies
            for each in touching
            if each
        )
        if not all(outside):
            return (by_hand,)
        stand = (
            f"Lay the glued {frame.stage} flat, {held.down} of the {site.part.name} on the table: "
            "hold up what hangs over, level with the table, and clamp it before each cut"
        )
        cuts.append(replace(cut, details=((stand,), *cut.details)))
    longest = max(frame.box.extent(axis) for axis in range(3))
    if longest > LARGEST:
        why: Detail = (
            "By hand: a frame up to ",
            LARGEST,
            f" is held flat at the {cuts[0].station}, and the {frame.stage} is ",
            longest,
        )
        return (replace(by_hand, details=(why, *by_hand.details)),)
    return tuple(cuts)


def _under_spindle(site: Site, model: Model, shop: Shop) -> Cut:
    if site.feature.kind == "mortise":
        return mortise_cut(site, to_marks=False, shop=shop)
    return hole_cut(site, to_marks=False, display=model.display, shop=shop)


def _by_fence(
    site: Site, frames: Mapping[str, Assembly]
) -> list[tuple[str | None, tuple[Copy, ...]]]:
    """Return the copies by the surface that can touch a fence: the reference, or its opposite."""
    reference = reference_of(site.feature.surface)
    found: dict[str | None, list[Copy]] = {}
    for copy in site.copies:
        both, frame = (reference, OPPOSITE[reference]), frames[copy.name]
        free = next((each for each in both if is_outside(copy, each, frame)), None)
        found.setdefault(free, []).append(copy)
    return [(fence, tuple(copies)) for fence, copies in found.items()]


def is_outside(copy: Copy, surface: str, frame: Assembly) -> bool:
    """Return whether a surface of a member lies on the outside of its whole frame."""
    direction, far = SURFACES[surface]
    axis, sign = copy.frame.axes[direction]
    high = bool(far) == (sign > 0)
    if high:
        return copy.box.high[axis] == frame.box.high[axis]
    return copy.box.low[axis] == frame.box.low[axis]


def _frames_of(site: Site, model: Model) -> dict[str, Assembly]:
    """Return by copy the frame that takes it in as a loose part, where the cut waits for that."""
    return {
        copy.name: frame
        for frame in model.assemblies
        for copy in site.copies
        if site.feature.after in {frame.stage, frame.name} and copy.name in frame.of
    }
