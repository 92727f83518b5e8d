"""Openings that were measured: what goes in is made for the bench's figure, not for paper's."""

from __future__ import annotations

from dryfit.piece.declared import PIECE_DIMENSIONS, Measured, Opening
from dryfit.placing.positions import Reason
from dryfit.placing.site import Site, both


def say_measured(site: Site, opening: Opening, axis: int, measured: Measured) -> bool:
    """Tell the size of an opening as it was measured; return whether that was news."""
    # What the bench says of an opening holds for what goes in: it is as large as it was measured,
    # wherever its far side stands on paper.
    size = f"{opening.name} {PIECE_DIMENSIONS[axis]}"
    words = f"the {size} was measured as {site.shown(measured.taken)}"
    reason = Reason("measured", f"{size} as measured", words, measured.span)
    return site.positions.add(*both(opening.name, axis), measured.taken, reason)


def measured_in(site: Site, opening: Opening, axis: int) -> Measured | None:
    """Return what an opening was measured as on an axis, or None."""
    name = f"{opening.name}.{PIECE_DIMENSIONS[axis]}"
    return next(
        (each for each in site.declared.measured if each.kind == "opening" and each.name == name),
        None,
    )
