"""What is told of clips, plates and slotted screws that find no wood, or cannot move (B22)."""

from __future__ import annotations

from fractions import Fraction

from dryfit.diagnostics import Severity
from dryfit.joinery.cut import Placed
from dryfit.joinery.top_fixings import CLEAR
from dryfit.placing.fastenings import side_movement
from dryfit.placing.not_fitting import Wrong
from dryfit.placing.site import Site


def lies_flat(rail: Placed) -> Wrong:
    """Return that a rail has no side for a kerf."""
    return Wrong(
        f"the {rail.part} lies flat under the top: no kerf for a clip finds wood in its edge",
        "set it on edge, or write `slotted screws`",
        {},
        "B22",
    )


def cut_there(rail: Placed) -> Wrong:
    """Return that something else is cut where the kerf would be."""
    return Wrong(
        f"the {rail.part} is cut already where the kerf for clips would be, and wider than that",
        "write `buttons`, which stand in a wider groove, or move what is cut there",
        {},
        "B22",
    )


def moves_too_far(site: Site, top: Placed, rail: Placed) -> Wrong:
    """Return that a top moves further than a clip can follow."""
    moves = side_movement(site, top)
    return Wrong(
        f"each edge of the {top.part} moves by {site.shown(moves)}: a clip slips out of its kerf "
        f"in the {rail.part}, or goes to its bottom",
        "write a deeper groove for the clips, or `slotted screws`",
        {"movement": moves},
        "B22",
        Severity.WARNING,
    )


def too_thin(site: Site, rail: Placed, axis: int) -> Wrong:
    """Return that a rail's edge is too thin for the recess of a plate."""
    thick = rail.box.extent(axis)
    return Wrong(
        f"the edge of the {rail.part} is {site.shown(thick)} thick: the recess of a plate leaves "
        "too little of it",
        f"make it {site.shown(Fraction(19))} thick or more, or write `clips` or `buttons`",
        {"thickness": thick},
        "B22",
    )


def no_slot(site: Site, rail: Placed, axis: int) -> Wrong:
    """Return that a rail is too thin for a screw's slot and its head."""
    thick = rail.box.extent(axis)
    return Wrong(
        f"the {rail.part} is {site.shown(thick)} thick: a slot for the screw and its head, "
        f"{site.shown(CLEAR)} wide at least, leaves too little of it",
        "write `clips` or `buttons`, or screw the top from a cleat that lies flat under it",
        {"thickness": thick},
        "B22",
    )
