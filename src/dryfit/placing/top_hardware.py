"""What is bought to hold tops: clips, plates and their screws, by the joints they make (B22)."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from dryfit.joinery.screws import screw_for, screw_under
from dryfit.joinery.top_fixings import (
    CLIPS,
    LEFT,
    PLATE_WIDE,
    PLATES,
    SLOTTED,
    TALLEST,
    UP,
    WIDEST_KERF,
)
from dryfit.placing.model import Hardware, Joint, Part
from dryfit.placing.site import Site

_PLATE_SCREWS = 2
_NO_KERF = "for the kerf"


def top_fixings_bought(
    site: Site, parts: Sequence[Part], joints: Sequence[Joint]
) -> tuple[Hardware, ...]:
    """Return the fixings and their screws, counted from the joints; outdoors of stainless steel."""
    of = {copy.name: part for part in parts for copy in part.copies}
    height = {copy.name: copy.box.extent(UP) for part in parts for copy in part.copies}
    rust = "stainless " if site.declared.outdoors else ""
    counts: dict[tuple[str, str, str], int] = {}
    for joint in joints:
        top, rail = of[joint.guest], of[joint.host]
        purpose = f"{top.written} onto {rail.written}"
        rows = [(item, size, 1) for item, size in _plates_and_clips(site, joint, rail)]
        rows += _screws(site, joint, height[joint.guest], height[joint.host])
        for item, size, many in rows:
            key = rust + item, size, purpose
            counts[key] = counts.get(key, 0) + many
    return tuple(Hardware(item, size, many, why) for (item, size, why), many in counts.items())


def _plates_and_clips(site: Site, joint: Joint, rail: Part) -> Iterator[tuple[str, str]]:
    """Yield a plate or a clip with its size: what the cut for it takes."""
    if joint.kind == CLIPS:
        widths = [cut.across[1] - cut.across[0] for cut in rail.features if cut.role == "groove"]
        kerf = min((wide for wide in widths if wide <= WIDEST_KERF), default=None)
        yield (
            "tabletop clip",
            _NO_KERF
            if kerf is None
            else f"for a kerf {site.declared.display.shown(kerf, fitted=True)} wide",
        )
    elif joint.kind == PLATES:
        yield "figure-8 plate", f"up to {site.shown(PLATE_WIDE)} across"


def _screws(
    site: Site, joint: Joint, top: Fraction, rail: Fraction
) -> Iterator[tuple[str, str, int]]:
    """Yield item, size and number of the screws of a fixing; `top` and `rail` are mm high."""
    unit = "" if site.declared.display.unit == "mm" else " mm"
    short = screw_under(top).size() + unit
    if joint.kind == CLIPS:
        yield "wood screw", short, 1
    elif joint.kind == PLATES:
        yield "wood screw", short, _PLATE_SCREWS
    elif joint.kind == SLOTTED:
        screw = screw_for(rail if rail <= TALLEST else LEFT, top)
        yield "wood screw", short if screw is None else screw.size() + unit, 1
        yield "washer", f"4{unit}", 1
