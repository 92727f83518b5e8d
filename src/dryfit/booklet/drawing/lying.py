"""How a part lies at a machine, and where its features then are: from stop, fence and table."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from dryfit.geometry.frame import OPPOSITE, SURFACES
from dryfit.joinery.feature import Feature, Range
from dryfit.joinery.pocket_screws import mouth_of
from dryfit.joinery.top_fixings import round_of
from dryfit.placing.model import Copy, Model, Part
from dryfit.plan.operation import Work
from dryfit.plan.plan import Step
from dryfit.plan.setting import Hold, Pass

Vector = tuple[int, int, int]
Fence = Literal["before", "behind", "along"]
"""Where the fence is: on the maker's side as on a sled, behind the part, or along the feed."""

BEFORE: Vector = (0, -1, 0)
BEHIND: Vector = (0, 1, 0)
HOLE = "hole"


@dataclass(frozen=True, slots=True)
class Region:
    """A removed region seen from the machine: mm from the stop, from the fence, from the table.

    `drilled` holes are as wide as the drill and measured to their middle.  Of a slanted bore
    `mouth` is the part that shows on the surface: the rest runs under it to an end or an edge.
    Of a mitre the half is gone that lies at one end and at one side: `slant` says whether that is
    the end away from the stop, which way the side lies, 1 from the fence or 2 from the table, and
    whether away from it.  The bit of a hole that is bored aslant leans by `sight`: away from the
    stop and from the fence, mm a mm.
    """

    from_stop: Range
    from_fence: Range
    from_table: Range
    drilled: bool = False
    mouth: tuple[Range, Range] | None = None
    slant: tuple[bool, int, bool] | None = None
    sight: tuple[float, float] | None = None


@dataclass(frozen=True, slots=True)
class Lying:
    """One way of holding copies of a part, with the regions that are cut so.

    `sizes` are the part's extents away from stop, fence and table in mm.  `marks` are the surfaces
    that touch stop, fence and table; `known` says which of them the hold names.
    """

    part: Part
    copies: tuple[str, ...]
    hands: tuple[str, ...]
    marks: tuple[str, str, str]
    known: tuple[bool, bool, bool]
    sizes: tuple[Fraction, Fraction, Fraction]
    regions: tuple[Region, ...]
    passes: tuple[Pass, ...]

    def figure(self, *, whole: bool) -> tuple[object, ...]:
        """Return what a drawing shows: equal figures need only one drawing.

        Hands count where the part has two, whatever the figure: left and right are never drawn as
        one.  Which surface touches is written, not drawn, so it does not count.  `whole` says that
        the far end is in the picture.
        """
        hands = self.hands if self.regions and len(self.part.hands()) > 1 else ()
        length = self.sizes[0] if whole else None
        return hands, length, self.sizes[1:], self.regions, self.passes

    def spacers(self) -> tuple[Fraction, ...]:
        """Return the spacers that the passes need, in order, each once."""
        spacers = (step.spacer for step in self.passes if step.spacer is not None)
        return tuple(dict.fromkeys(spacers))


def alike(lyings: Sequence[Lying], *, whole: bool) -> tuple[tuple[Lying, ...], ...]:
    """Return the ways in groups that one drawing shows, in order of their first."""
    groups: dict[tuple[object, ...], list[Lying]] = {}
    for way in lyings:
        groups.setdefault(way.figure(whole=whole), []).append(way)
    return tuple(tuple(group) for group in groups.values())


def named(group: Sequence[Lying]) -> str:
    """Return the parts of a group with hands: ``post, hand A; end rail``."""
    names: dict[str, None] = {}
    for way in group:
        apart = way.regions and len(way.part.hands()) > 1
        hands = f", hand {' and '.join(way.hands)}" if apart else ""
        names[way.part.name + hands] = None
    return "; ".join(names)


def ways_of_lying(model: Model, step: Step, fence: Fence) -> tuple[Lying, ...]:
    """Return the ways in which the step holds its parts, in the order of the work, hands apart.

    Work on what is no part, such as an assembly, is left out.
    """
    known = {part.name: part for part in model.parts}
    found: list[Lying] = []
    for operation in step.operations:
        for work in operation.work:
            part = known.get(work.part) or known.get(operation.part)
            if part is not None:
                groups = by_hand(part, work)
                found += [lying(part, copies, work, fence) for copies in groups]
    return tuple(found)


def by_hand(part: Part, work: Work) -> tuple[tuple[Copy, ...], ...]:
    """Return the copies worked on, left and right hands apart where a feature is cut."""
    named = tuple(copy for copy in part.copies if copy.name in work.copies)
    copies = named or part.copies  # blanks are not copies yet, and have no names of them
    if not work.features:
        return (copies,)
    hands = sorted({copy.hand for copy in copies})
    return tuple(tuple(copy for copy in copies if copy.hand == hand) for hand in hands)


def lying(part: Part, copies: Sequence[Copy], work: Work, fence: Fence) -> Lying:
    """Return how copies of one hand lie; what the hold leaves open follows from the rest."""
    hold = work.hold or Hold(None, None, None)
    at_stop, down = hold.at_stop or "R", hold.down or "B"
    if SURFACES[at_stop][0] == SURFACES[down][0]:  # standing on an end: an edge is at the stop
        at_stop = "E"
    towards = BEHIND if fence == "behind" else BEFORE
    at_fence = surface_towards(towards, down, at_stop, copies[0].frame.handedness())
    stated = hold.against_fence
    believed = fence == "along" or bool(work.features)
    if stated is not None and believed and SURFACES[stated][0] == SURFACES[at_fence][0]:
        at_fence = stated
    marks = at_stop, at_fence, down
    return Lying(
        part,
        tuple(copy.name for copy in copies),
        tuple(sorted({copy.hand for copy in copies})),
        marks,
        (hold.at_stop is not None, stated == at_fence, hold.down is not None),
        _sizes(part, marks),
        _regions(part, [f for f in part.features if f.id in work.features], marks),
        work.passes,
    )


def surface_towards(wanted: Vector, down: str, at_left: str, handedness: int) -> str:
    """Return the surface that looks towards a direction, one down and another to the left.

    x is to the right of the maker, y away from him, z up.  A mirrored part (handedness -1) has
    its other surface there.
    """
    axes: dict[int, Vector] = {}
    for surface, outward in ((down, (0, 0, -1)), (at_left, (-1, 0, 0))):
        direction, side = SURFACES[surface]
        axes[direction] = outward if side else (-outward[0], -outward[1], -outward[2])
    (third,) = {0, 1, 2} - set(axes)
    a, b = axes[(third + 1) % 3], axes[(third + 2) % 3]
    axis = (
        handedness * (a[1] * b[2] - a[2] * b[1]),
        handedness * (a[2] * b[0] - a[0] * b[2]),
        handedness * (a[0] * b[1] - a[1] * b[0]),
    )
    side = 1 if axis == wanted else 0
    return next(name for name, place in SURFACES.items() if place == (third, side))


def _sizes(part: Part, marks: Sequence[str]) -> tuple[Fraction, Fraction, Fraction]:
    sizes = part.length, part.width, part.thickness
    along, across, up = (sizes[SURFACES[mark][0]] for mark in marks)
    return along, across, up


def _regions(part: Part, features: Sequence[Feature], marks: Sequence[str]) -> tuple[Region, ...]:
    sizes = part.length, part.width, part.thickness
    found = []
    for feature in features:
        # A recess that is open at an edge is drawn whole, as the bit goes.
        away = _away(round_of(feature, sizes) or feature.ranges(sizes), sizes, marks)
        mouth = mouth_of(feature, sizes)
        if mouth is None:
            slant, sight = _slant(feature, marks), _sight(feature, marks)
            drilled = feature.kind == HOLE
            found.append(Region(*away, drilled=drilled, slant=slant, sight=sight))
        else:
            shown = _away(mouth, sizes, marks)
            found.append(Region(*away, mouth=(shown[0], shown[1])))
    return tuple(found)


def _away(
    ranges: Sequence[Range], sizes: Sequence[Fraction], marks: Sequence[str]
) -> tuple[Range, Range, Range]:
    """Return the ranges of a part as they lie: away from stop, fence and table."""
    rows = []
    for mark in marks:
        direction, side = SURFACES[mark]
        start, end = ranges[direction]
        size = sizes[direction]
        rows.append((size - end, size - start) if side else (start, end))
    return rows[0], rows[1], rows[2]


def _sight(feature: Feature, marks: Sequence[str]) -> tuple[float, float] | None:
    """Return how a leaning bit leans away from stop and fence, or None where it does not."""
    if feature.kind != HOLE or not feature.slopes:
        return None
    slopes = dict(feature.slopes)
    along, across = (
        float(slopes.get(OPPOSITE[mark], 0)) - float(slopes.get(mark, 0)) for mark in marks[:2]
    )
    return along, across


def _slant(feature: Feature, marks: Sequence[str]) -> tuple[bool, int, bool] | None:
    if feature.role != "mitre" or feature.form is None or feature.form.toward is None:
        return None
    toward = feature.form.toward
    axes = [SURFACES[mark][0] for mark in marks]
    which = axes.index(SURFACES[toward][0])
    if axes[0] != SURFACES[feature.surface][0]:
        return None
    return feature.surface != marks[0], which, toward != marks[which]
