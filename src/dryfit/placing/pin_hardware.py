"""The shelf pins and hinges to buy, counted from their holes and recesses (TRADE B19, B23)."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from dryfit.geometry.box import Box
from dryfit.joinery.cut import Cut
from dryfit.joinery.hinges import SCREW_THICK, hinge_screw
from dryfit.kinds.roles import HINGE_RECESS, PIN_HOLE
from dryfit.placing.found import Found
from dryfit.placing.model import Hardware, Joint, Part
from dryfit.placing.site import Site

_AT_AN_END = 2


def shelf_pins(site: Site, parts: Sequence[Part], joints: Sequence[Joint]) -> tuple[Hardware, ...]:
    """Return the pins by their size and by the shelves that lie on them."""
    of = {copy.name: part for part in parts for copy in part.copies}
    if any(each.name.rpartition(" ")[2] == "pin" for each in site.declared.supplies):
        # The maker has a line for them.
        return ()
    counts: dict[tuple[str, str], int] = {}
    for joint in joints:
        if joint.kind == "shelf pins":
            key = _size(site, of[joint.host]), of[joint.guest].written
            counts[key] = counts.get(key, 0) + _AT_AN_END
    return tuple(Hardware("shelf pin", size, many, what) for (size, what), many in counts.items())


def hinges(
    site: Site, joints: Sequence[Joint], found: Sequence[Found], parts: Sequence[Part]
) -> tuple[Hardware, ...]:
    """Return the hinges by their length and by what hangs on them; each brings its screws."""
    if any(each.name.rpartition(" ")[2] == "hinge" for each in site.declared.supplies):
        # The maker has a line for them.
        return ()
    written = {copy.name: part.written for part in parts for copy in part.copies}
    boxes = {copy.name: copy.box for part in parts for copy in part.copies}
    counts: dict[tuple[str, str], int] = {}
    for joint, made in zip(joints, found, strict=True):
        for cut in made.cuts:
            if cut.role == HINGE_RECESS and cut.copy == joint.guest:
                long = max(cut.box.extent(axis) for axis in range(3))
                screws = _screws_of(site, made.cuts, boxes)
                purpose = f"{written[joint.guest]} on {written[joint.host]}, with screws{screws}"
                key = f"{site.shown(long)} long", purpose
                counts[key] = counts.get(key, 0) + 1
    return tuple(Hardware("butt hinge", size, many, what) for (size, what), many in counts.items())


def _screws_of(site: Site, cuts: Sequence[Cut], boxes: Mapping[str, Box]) -> str:
    """Return the size of the screws that neither part lets come through."""
    wood = min(boxes[cut.copy].extent(cut.axis) for cut in cuts if cut.role == HINGE_RECESS)
    length = hinge_screw(wood)
    unit = "" if site.declared.display.unit == "mm" else " mm"
    return "" if length is None else f" {SCREW_THICK} x {length}{unit}"


def _size(site: Site, upright: Part) -> str:
    holes = [each for each in upright.features if each.role == PIN_HOLE]
    if not holes:
        return "for the holes"
    return f"{site.shown(holes[0].across[1] - holes[0].across[0])} across"
