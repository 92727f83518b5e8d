"""What is bought to hold tops: clips, plates and their screws, by the joints they make (B22)."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from dryfit.joinery.screws import screw_for, screw_under
from dryfit.joinery.top_fixings import CLIPS, LEFT, PLATES, SLOTTED, TALLEST, UP
from dryfit.placing.model import Hardware, Joint, Part
from dryfit.placing.site import Site

_PLATE_SCREWS = 2


def top_fixings_bought(
    site: Site, parts: Sequence[Part], joints: Sequence[Joint]
) -> tuple[Hardware, ...]:
    """Return the fixings and their screws, counted from the joints; outdoors of stainless steel."""
    of = {copy.name: part for part in parts for copy in part.copies}
    height = {copy.name: copy.box.extent(UP) for part in parts for copy in part.copies}
    rust = "stainless " if site.declared.outdoors else ""
    counts: dict[tuple[str, str, str], int] = {}
    for joint in joints:
        top = of[joint.guest]
        purpose = f"{top.written} onto {of[joint.host].written}"
        for item, size, many in _of_one(joint, height[joint.guest], height[joint.host]):
            key = (
                rust + item,
                size if site.declared.display.unit == "mm" or not size else f"{size} mm",
                purpose,
            )
            counts[key] = counts.get(key, 0) + many
    return tuple(Hardware(item, size, many, why) for (item, size, why), many in counts.items())


def _of_one(joint: Joint, top: Fraction, rail: Fraction) -> Iterator[tuple[str, str, int]]:
    """Yield item, size and number of what one fixing takes; `top` and `rail` are mm high."""
    short = screw_under(top)
    if joint.kind == CLIPS:
        yield "tabletop clip", "", 1
        yield "wood screw", short.size(), 1
    elif joint.kind == PLATES:
        yield "figure-8 plate", "", 1
        yield "wood screw", short.size(), _PLATE_SCREWS
    elif joint.kind == SLOTTED:
        screw = screw_for(rail if rail <= TALLEST else LEFT, top)
        yield "wood screw", (screw or short).size(), 1
        yield "washer", "4", 1
