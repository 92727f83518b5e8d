"""Clips, figure-8 plates and slotted screws that hold a solid top and let it move (TRADE B22).

Each is a pure function of a rail, the place along it and sizes in mm; `axis` and `side` are the
rail's face that looks under the middle of the top.
"""

from __future__ import annotations

from collections.abc import Collection
from fractions import Fraction

from dryfit.diagnostics import Span
from dryfit.geometry.box import Box
from dryfit.geometry.frame import SURFACES
from dryfit.joinery.cut import Cut, Placed, bounded, from_side
from dryfit.joinery.feature import Feature, Range
from dryfit.joinery.form import PlacedForm
from dryfit.quantities import Display
from dryfit.quantities.units import INCH

UP = 2
CLIPS = "clips"
PLATES = "figure-8 plates"
SLOTTED = "slotted screws"
KINDS = (CLIPS, PLATES, SLOTTED)

PLATE_RECESS = "plate recess"
SCREW_SLOT = "screw slot"
COUNTERBORE = "counterbore"

_KERF = Fraction(3)
_KERF_DEEP = Fraction(10)
_KERF_DOWN = Fraction(12)
"""A clip's kerf is 3 wide, 10 deep, 11 to 13 from the rail's top edge (TRADE B22)."""

WIDEST_KERF = Fraction(5)
"""A groove that is wider is none for clips (common practice)."""

CLIP_GAP = Fraction(3, 2)
"""What a clip leaves open between itself and the top, before its screw pulls it down (B22)."""

PLATE_WIDE = Fraction(20)
PLATE_DEEP = Fraction(3, 2)
"""A recess 1.5 deep, 20 across, half-way on the rail's edge (TRADE B22)."""

PLATE_SET = Fraction(7)
_LEAST_SET = Fraction(6)
_WALL = Fraction(3)
"""The middle of a recess is 7 from the inner face, 6 at least, so that it opens there and the plate
can swing, and 3 stay behind it (common practice)."""

_SHANK = Fraction(4)
CLEAR = Fraction(9, 2)
_STEP = Fraction(1, 2)
_ROOM = Fraction(1)
LEFT = Fraction(20)
"""What a counterbore leaves under the top for the screw to pull on, mm (a guess of ours)."""

TALLEST = Fraction(30)
"""Rails no higher than this are passed without a counterbore (a guess of ours)."""

HEAD = Fraction(10)
"""Across the washer under the head of a screw of 4, and 1 mm (from memory: ISO 7089 has 9 mm)."""


def kerf_sizes(
    thickness: Fraction, blades: Collection[Fraction], display: Display
) -> tuple[Fraction, Fraction, Fraction]:
    """Return how wide and deep a clip's kerf is, and how far down; mm.

    It is as wide as the saw's blade where that is near 3 mm, and no deeper than half of the rail.
    """
    near = [blade for blade in blades if abs(blade - _KERF) <= _STEP]
    wide = min(near, key=lambda blade: abs(blade - _KERF), default=_KERF)
    deep, down = (_KERF_DEEP, _KERF_DOWN) if display.unit == "mm" else (INCH * 3 / 8, INCH / 2)
    if display.unit != "mm":
        wide = INCH / 8
    return wide, min(deep, thickness / 2), down


def clip_kerf(
    rail: Placed, face: tuple[int, int], sizes: tuple[Fraction, Fraction, Fraction], span: Span
) -> Cut:
    """Return the kerf for clips along the inside of a rail, from end to end: one setting."""
    wide, deep, down = sizes
    axis, side = face
    top = rail.box.high[UP] - down
    box = bounded(from_side(rail.box, axis, side, deep), UP, top - wide, top)
    return Cut(rail.name, box, "long slot", "groove", axis, side, "free", None, span)


def plate_set(thickness: Fraction) -> Fraction | None:
    """Return how far from the inner face a plate's recess has its middle; None where it is thin."""
    inset = min(PLATE_SET, thickness - PLATE_WIDE / 2 - _WALL)
    return inset if inset >= _LEAST_SET else None


def plate_recess(
    rail: Placed, face: tuple[int, int], place: Fraction, inset: Fraction, top: str, span: Span
) -> Cut:
    """Return the recess for one half of a plate in a rail's top edge, open to its inner face."""
    axis, side = face
    along = rail.axes[0]
    box = from_side(rail.box, UP, 1, PLATE_DEEP)
    box = from_side(box, axis, side, inset + PLATE_WIDE / 2)
    box = bounded(box, along, place - PLATE_WIDE / 2, place + PLATE_WIDE / 2)
    form = PlacedForm("recess", (("diameter", PLATE_WIDE), ("inset", inset)), (axis, side))
    return Cut(rail.name, box, "hole", PLATE_RECESS, UP, 1, None, top, span, form=form)


def slot_length(moves: Fraction) -> Fraction:
    """Return how long a screw's slot is: the screw, what the top moves there and 1 mm (B18).

    `moves` is that of a whole year; a screw that does not move has a round hole.
    """
    if moves == 0:
        return CLEAR
    return -(-(_SHANK + moves + _ROOM) // _STEP) * _STEP


def screw_slot(
    rail: Placed,
    middle: tuple[Fraction, Fraction],
    long: tuple[int, Fraction],
    top: str,
    span: Span,
) -> tuple[Cut, ...]:
    """Return the slot up through a rail, and the counterbore for its head where it is high.

    `middle` are the places of the screw along x and y; `long` the axis that the slot lies along,
    across the grain of the top, and its length.
    """
    axis, length = long
    high = rail.box.extent(UP)
    deep = Fraction(0) if high <= TALLEST else high - LEFT
    through = bounded(rail.box, UP, rail.box.low[UP] + deep, rail.box.high[UP])
    box = _around(through, middle, axis, length, CLEAR)
    is_round = length == CLEAR
    role = "screw hole" if is_round else SCREW_SLOT
    kind = "hole" if is_round else "mortise"
    cuts = [Cut(rail.name, box, kind, role, UP, 1, None, top, span)]
    if deep:
        head = _around(from_side(rail.box, UP, -1, deep), middle, axis, length - CLEAR + HEAD, HEAD)
        cuts.append(Cut(rail.name, head, kind, COUNTERBORE, UP, -1, None, top, span))
    return tuple(cuts)


def head_room(rail: Placed, length: Fraction, axis: int) -> bool:
    """Return whether a screw's head, or its slot, leaves 3 mm of a rail at either side."""
    across = next(each for each in (0, 1) if each != rail.axes[0])
    tall = rail.box.extent(UP) > TALLEST
    wide = HEAD if tall else CLEAR
    if axis == across:
        wide += length - CLEAR
    return wide + 2 * _WALL <= rail.box.extent(across)


def _around(
    box: Box, middle: tuple[Fraction, Fraction], axis: int, length: Fraction, wide: Fraction
) -> Box:
    for each in (0, 1):
        half = (length if each == axis else wide) / 2
        box = bounded(box, each, middle[each] - half, middle[each] + half)
    return box


def round_of(
    feature: Feature, sizes: tuple[Fraction, Fraction, Fraction]
) -> tuple[Range, Range, Range] | None:
    """Return the whole round of a plate's recess, part of which is beyond the edge of its rail.

    As ranges in a part of these sizes; None for any other feature.
    """
    form = feature.form
    if feature.role != PLATE_RECESS or form is None or form.toward is None:
        return None
    ranges, half = list(feature.ranges(sizes)), PLATE_WIDE / 2
    direction, far = SURFACES[form.toward]
    middle = dict(form.sizes)["inset"]
    if far:
        middle = sizes[direction] - middle
    ranges[direction] = (middle - half, middle + half)
    return ranges[0], ranges[1], ranges[2]
