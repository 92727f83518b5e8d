"""Edges that stay as they grew: never sawn or jointed, and peeled before any knife (TRADE A2.6)."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.geometry.frame import WIDTH
from dryfit.plan.operation import Operation
from dryfit.rehearsal.blank import Blank, Sizes
from dryfit.rehearsal.fault import Reason, Trouble

BARK = "bark"
"""The kind of deed that peels an edge."""
KNIVES = frozenset({"jointer", "planer"})
_TAKES = {"edge": "E", "straight edge": "E", "second edge": "E2", "width": "E2"}
"""The edge that a deed takes wood off."""


def kept(operation: Operation, blank: Blank, final: Sizes | None) -> Iterator[Trouble]:
    """Yield what a deed spoils of a blank's waney edges; where it is right, give it its width.

    The width counts where the board is narrowest: that of two waney edges is there once they are
    peeled, that from one when the edge across from it is jointed.
    """
    if not blank.waney:
        return
    kind = operation.kind
    if kind == BARK:
        blank.peeled = True
    elif operation.station in KNIVES and not blank.peeled:
        yield Trouble(Reason.ORDER, "bark and grit go over the knives", "the bark taken off before")
    if _TAKES.get(kind) in blank.waney or (kind == "rip" and len(blank.waney) > 1):
        yield Trouble(
            Reason.WOOD,
            f"its {kind} takes off the edge that is to stay waney",
            "that edge left as it grew",
        )
    elif kind == "rip" and any(setting.axis == "fence" for setting in operation.settings):
        yield Trouble(
            Reason.REFERENCE, "its bark runs along the fence", "a rip along a line, without a fence"
        )
    ready = kind == (BARK if len(blank.waney) > 1 else "edge")
    if not ready or final is None:
        return
    if blank.sizes[WIDTH] < final[WIDTH]:
        yield Trouble(
            Reason.SIZE,
            f"it is {float(blank.sizes[WIDTH]):g} wide, and {float(final[WIDTH]):g} are wanted "
            "where it is narrowest",
            "a wider slab",
        )
    blank.resize(WIDTH, final[WIDTH])


def unpeeled(blank: Blank) -> Trouble | None:
    """Return what is wrong with a finished part whose bark nobody took off."""
    if not blank.waney or blank.peeled:
        return None
    return Trouble(Reason.SURFACE, "its bark is still on", "the bark taken off its waney edge")
