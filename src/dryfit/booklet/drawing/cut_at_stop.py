"""What the views of a cut at a stop share: its settings, and the scale along the stop."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from dryfit.booklet.drawing.lying import Lying, alike
from dryfit.booklet.drawing.ruler import Ruler, ruler
from dryfit.booklet.text import Text
from dryfit.plan.setting import Setting

ROOM = 80.0
"""Paper mm for the part along the stop, so that the whole drawing is about 125 mm wide."""

_TALLEST = 23.0
_ENOUGH = 30.0
_LOWER = 17.0
_AROUND = 11.0
_WASTE = 12.0

STOP = 8.0
"""Length of the stop, to the left of the work."""


@dataclass(frozen=True, slots=True)
class Crosscut:
    """The settings of a cut at a stop, in mm: `height` above the table, `base` of the sled.

    `far` is None where the cutter's width is not known, `height` where the saw comes from above.
    """

    near: Fraction
    far: Fraction | None
    height: Fraction | None
    base: Fraction
    guide: str
    cutter: Text
    measure: str | None


def crosscut_of(
    stop: Setting, height: Setting | None, guide: str, base: Fraction, cutter: Text
) -> Crosscut:
    """Return the settings of a cut at a stop in plain numbers."""
    near = Fraction(stop.value)
    above = Fraction(height.value) if height is not None else None
    return Crosscut(near, stop.far, above, base, guide, cutter, stop.waits)


def ruler_for(cut: Crosscut, lyings: Sequence[Lying]) -> Ruler:
    """Return the scale along the stop that shows stop and cutter of all ways of holding."""
    near, far = float(cut.near), float(cut.far if cut.far is not None else cut.near)
    widest = max(float(way.sizes[1]) for way in lyings)
    tallest = max(shown_height(way) + float(cut.base) for way in lyings)
    if cut.height is not None:
        tallest = max(tallest, float(cut.height))
    room = _TALLEST if len(alike(lyings, whole=False)) == 1 else _LOWER
    scale = min(1.0, room / widest, room / tallest)
    around = _AROUND / scale
    through = not any(way.regions for way in lyings)
    length = far + _WASTE / scale if through else 0.0
    wanted = [(0.0, around), (near - around, far + around)]
    for way in lyings:
        shift = float(max(way.spacers(), default=Fraction(0)))
        length = max(length, float(way.sizes[0]) + shift if way.regions else 0.0)
        wanted += [
            (float(region.from_stop[0]) - around, float(region.from_stop[1]) + shift + around)
            for region in way.regions
        ]
        wanted.append((0.0, shift + around))
    return ruler(length, wanted, room=ROOM, scale=scale)


def shown_height(way: Lying) -> float:
    """Return how much of the height is drawn: of a part on edge only what is near the cut."""
    high = float(way.sizes[2])
    deepest = max((float(region.from_table[1]) for region in way.regions), default=high)
    return min(high, max(2.5 * deepest, _ENOUGH))


def part_end(way: Lying, scale: Ruler) -> float:
    """Return where the part ends on the sheet, or where the sheet ends if it goes on."""
    if not way.regions:
        return scale.end
    return min(scale.end, scale.at(float(way.sizes[0]))) if not goes_on(way, scale) else scale.end


def goes_on(way: Lying, scale: Ruler) -> bool:
    """Return whether the part runs on beyond what is drawn; a part cut through has waste there."""
    return not way.regions or float(way.sizes[0]) > scale.stretches[-1][1] + 1e-9
