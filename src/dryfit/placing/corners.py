"""Corners of two boards that fingers or tails are to hold: what keeps them from being one."""

from __future__ import annotations

from dryfit.geometry.box import Box
from dryfit.joinery.corner import Corner
from dryfit.joinery.cut import Placed
from dryfit.placing.not_fitting import Wrong

_RULE = "B13"


def no_corner(
    what: str, guest: Placed, host: Placed, corner: Corner | None, region: Box
) -> Wrong | None:
    """Return why two copies make no corner for `what` (``a box joint``), or None where they do."""
    if corner is None:
        return Wrong(
            f"{what} needs two boards that end at one corner, wide the same way: {guest.part} and "
            f"{host.part} do not",
            "stand both on edge, or lay both so, with an end of each at the corner; in the middle "
            "of a board write `housing`",
            {},
            _RULE,
        )
    thick = region.extent(corner.guest_axis), region.extent(corner.host_axis)
    if thick[0] < host.box.extent(corner.guest_axis) and "half-blind" not in what:
        return Wrong(
            f"{guest.part} ends inside the thickness of {host.part}: {what} reaches through it",
            "let both reach to the outside of the corner, or write `half-blind dovetail`",
            {"reach": thick[0], "thickness": host.box.extent(corner.guest_axis)},
            _RULE,
        )
    return None
