"""Holes: each is bored as deep and as wide as it is marked (TRADE B0, B17)."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from dryfit.geometry.frame import SURFACES
from dryfit.rehearsal.at_machines.standing import Axes
from dryfit.rehearsal.at_machines.sweeping import FROM_ABOVE
from dryfit.rehearsal.fault import Reason, Trouble
from dryfit.rehearsal.goal import Mark
from dryfit.shop.shop import Shop


def misbored(station: str, axes: Axes, marks: Sequence[Mark], shop: Shop) -> Iterator[Trouble]:
    """Yield holes that the depth stop or the drill makes otherwise than they are marked.

    A screw is content with the next drill, a hole that the notes ask for with its own, if there is.
    """
    depth, cutter = axes.get("depth"), axes.get("cutter")
    if station not in FROM_ABOVE or depth is None or cutter is None:
        return
    widths = {each.name: each.widest for each in shop.cutters_at(station)}
    for mark in marks:
        if mark.kind != "hole":
            continue
        deep, wide = _sizes(mark)
        if depth.value != deep:
            said = float(depth.value) if isinstance(depth.value, Fraction) else depth.value
            yield Trouble(
                Reason.CUT, f"{mark.id} is bored {said} deep", f"a hole {float(deep):g} deep"
            )
        own = widths.get(str(cutter.value))
        if mark.declared and own != wide and wide in widths.values():
            yield Trouble(
                Reason.CUT,
                f"{mark.id} is not bored {float(wide):g} wide",
                "the drill of that width",
            )


def _sizes(mark: Mark) -> tuple[Fraction, Fraction]:
    """Return the depth and the diameter of a hole; of a slot, its width."""
    normal = SURFACES[mark.surface][0]
    long = [high - low for low, high in mark.ranges]
    return long[normal], min(size for axis, size in enumerate(long) if axis != normal)
