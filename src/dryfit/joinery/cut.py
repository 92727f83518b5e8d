"""What a joint removes, in the piece frame, before parts have reference marks."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.diagnostics import Span
from dryfit.geometry.box import Box, Triple
from dryfit.joinery.flare import PlacedFlare
from dryfit.joinery.form import PlacedForm, Region
from dryfit.joinery.splay import PlacedSplay


@dataclass(frozen=True, slots=True)
class Placed:
    """One copy with its box; `axes` are the piece axes of length, width and thickness.

    `outward` holds, for each axis, the side on which the copy looks out of the piece (-1 or 1).
    """

    name: str
    part: str
    box: Box
    axes: tuple[int, int, int]
    outward: tuple[int, int, int]


@dataclass(frozen=True, slots=True)
class Cut:
    """A box removed from a copy, entered through the surface that faces `axis`, `side`.

    `kind`, `role` and `fit` as in `Feature`; `mate` is the other part's name.  `form` says what
    of the box goes where that is not all of it, `flare` how the sides of a socket lean off it,
    `splay` how the whole cut leans.
    """

    copy: str
    box: Box
    kind: str
    role: str
    axis: int
    side: int
    fit: str | None
    mate: str | None
    span: Span | None
    after: str | None = None
    form: PlacedForm | None = None
    flare: PlacedFlare | None = None
    splay: PlacedSplay | None = None

    @property
    def region(self) -> Region:
        """Return what is removed, form and all."""
        if self.form is None:
            return Region(self.box, (self.axis, self.side))
        return Region(self.box, (self.axis, self.side), self.form.kind, self.form.toward)


def bounded(box: Box, axis: int, low: Fraction, high: Fraction) -> Box:
    """Return the box with its bounds on one axis replaced."""
    lows, highs = list(box.low), list(box.high)
    lows[axis], highs[axis] = low, high
    return Box(_triple(lows), _triple(highs))


def from_side(box: Box, axis: int, side: int, depth: Fraction) -> Box:
    """Return the layer of a box that lies within `depth` of its face on that axis and side."""
    if side < 0:
        return bounded(box, axis, box.low[axis], box.low[axis] + depth)
    return bounded(box, axis, box.high[axis] - depth, box.high[axis])


def opened(region: Box, outer: Box, axis: int, side: int) -> Box:
    """Return the region extended to the outer box's face, so that a cutter can reach it."""
    if side < 0:
        return bounded(region, axis, outer.low[axis], region.high[axis])
    return bounded(region, axis, region.low[axis], outer.high[axis])


def end_in(placed: Placed, region: Box) -> int | None:
    """Return the end, by coordinate (-1 or 1), with which a copy lies in the region.

    None where it runs on past the region, or lies in it whole.
    """
    axis = placed.axes[0]
    at_low = region.low[axis] == placed.box.low[axis]
    at_high = region.high[axis] == placed.box.high[axis]
    return None if at_low == at_high else -1 if at_low else 1


def slot_kind(placed: Placed, region: Box) -> str:
    """Return end lap, cross slot or long slot for a trench by how it lies on the part."""
    length = placed.axes[0]
    at_low = region.low[length] <= placed.box.low[length]
    at_high = region.high[length] >= placed.box.high[length]
    if at_low and at_high:
        return "long slot"
    return "end lap" if at_low or at_high else "cross slot"


def _triple(values: list[Fraction]) -> Triple:
    return (values[0], values[1], values[2])
