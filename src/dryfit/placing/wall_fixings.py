"""What is bought to fix a standing piece to its wall, so that it cannot tip (M18; B24)."""

from __future__ import annotations

from collections.abc import Sequence

from dryfit.piece.declared.site import OnWall
from dryfit.placing.model import Bought, Hardware

HOLDERS = ("bracket", "strap", "anchor", "angle")
_COUNT = 2
_TO_WALL = {
    "stud": ("wood screw", "into the studs, 60 mm long", "into the studs, 2 1/2 in long"),
    "masonry": ("screw with its plug", "for masonry, 8 x 50", "for masonry, 5/16 x 2"),
    "board": ("cavity fixing", "for boards", "for boards"),
}
"""What holds in which wall, in mm and in inches (common practice, from memory)."""
_ANY = ("fixing", "that suits the wall", "that suits the wall")


def wall_fixings(wall: OnWall, things: Sequence[Bought], unit: str) -> tuple[Hardware, ...]:
    """Return two brackets and what holds them in the wall; nothing for what hangs.

    What the notes buy to hold it (a bracket, a strap) is not bought twice.
    """
    if wall.hangs:
        return ()
    item, metric, inches = _TO_WALL.get(wall.wall or "", _ANY)
    size = inches if unit == "in" else metric
    rows = (Hardware(item, size, _COUNT, "the wall"),)
    if any(word in thing.name for thing in things for word in HOLDERS):
        return rows
    return (Hardware("angle bracket", "for its top", _COUNT, "the wall"), *rows)
