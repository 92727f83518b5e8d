"""A raw edge sawn straight at the table saw: fast to a sled, right through (TRADE A2.5, A2.6)."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.plan.operation import Operation
from dryfit.rehearsal.at_machines.standing import Axes
from dryfit.rehearsal.blank import Sizes
from dryfit.rehearsal.fault import Reason, Trouble
from dryfit.rehearsal.state import State

SLED = "straight-line sled"
TABLE_SAW = "table saw"


def sawn_straight(
    state: State, operation: Operation, axes: Axes, sizes: Sizes
) -> Iterator[Trouble]:
    """Yield what keeps a piece of these sizes from being sawn straight at a table saw.

    A raw edge runs along no fence: without the sled the board is thrown back.
    """
    if operation.kind != "straight edge" or operation.station != TABLE_SAW:
        return
    if not on_sled(axes):
        yield Trouble(
            Reason.HOLD,
            "its raw edge would run along the fence, and the saw throws it back",
            "the board fast to a straight-line sled",
        )
        return
    yield from beyond_sled(state, axes, sizes)


def on_sled(axes: Axes) -> bool:
    """Return whether the board is fast to the sled for straight edges."""
    accessory = axes.get("accessory")
    return accessory is not None and accessory.value == SLED


def beyond_sled(state: State, axes: Axes, sizes: Sizes) -> Iterator[Trouble]:
    """Yield what keeps the sled from taking a piece of these sizes, and the blade from it."""
    sled, height = state.tools.accessories.get(SLED), axes.get("height")
    if sled is None:
        return
    long, _, thick = sizes
    if sled.longest is not None and long > sled.longest:
        yield Trouble(
            Reason.MACHINE,
            f"it is {float(long):g} long, and the sled {float(sled.longest):g}",
            "a longer sled, or another way",
        )
    size = height.value if height is not None else None
    if isinstance(size, Fraction) and size <= thick + sled.base:
        yield Trouble(
            Reason.CUT,
            f"the blade stands {float(size):g} high, and board and sled are "
            f"{float(thick + sled.base):g}",
            "a blade right through the board",
        )
