"""How a part lies at a machine, and where its features then are: from stop, fence and table."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from dryfit.geometry.frame import LENGTH, SURFACES, WIDTH
from dryfit.joinery.feature import Feature, Range
from dryfit.placing.model import Model, Part
from dryfit.plan.operation import Work
from dryfit.plan.plan import Step
from dryfit.plan.setting import Pass

OPPOSITE = {"R": "R2", "R2": "R", "E": "E2", "E2": "E", "F": "B", "B": "F"}


@dataclass(frozen=True, slots=True)
class Region:
    """A removed region seen from the machine: mm from the stop, from the fence, from the table."""

    from_stop: Range
    from_fence: Range
    from_table: Range


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
        one.  `whole` says that the far end is in the picture.
        """
        hands = self.hands if len(self.part.hands()) > 1 else ()
        length = self.sizes[0] if whole else None
        return hands, length, self.sizes[1:], self.regions, self.marks[1:], self.known, self.passes

    def spacers(self) -> tuple[Fraction, ...]:
        """Return the spacers that the passes need, in order, each once."""
        spacers = (step.spacer for step in self.passes if step.spacer is not None)
        return tuple(dict.fromkeys(spacers))


def ways_of_lying(model: Model, step: Step) -> tuple[Lying, ...]:
    """Return the ways in which the step holds its parts, in the order of the work."""
    return tuple(lying(model, work) for operation in step.operations for work in operation.work)


def lying(model: Model, work: Work) -> Lying:
    """Return how the copies of one piece of work lie; what the hold leaves open is the usual."""
    part = model.part(work.part)
    hold = work.hold
    at_stop = hold.at_stop if hold and hold.at_stop else "R"
    down = hold.down if hold and hold.down else "B"
    used = {SURFACES[at_stop][0], SURFACES[down][0]}
    named_fence = hold.against_fence if hold else None
    if len(used) < 2:  # an end on the table: the reading along and across changes places
        at_stop = "E" if SURFACES[down][0] == LENGTH else "R"
        used = {SURFACES[at_stop][0], SURFACES[down][0]}
    if named_fence is None or SURFACES[named_fence][0] in used:
        fence = "E" if WIDTH not in used else "F"
    else:
        fence = named_fence
    marks = at_stop, fence, down
    hands = sorted({model.copy(name).hand for name in work.copies})
    features = [feature for feature in part.features if feature.id in work.features]
    known = (
        bool(hold and hold.at_stop),
        named_fence == fence,
        bool(hold and hold.down),
    )
    return Lying(
        part,
        work.copies,
        tuple(hands),
        marks,
        known,
        _sizes(part, marks),
        _regions(part, features, marks),
        work.passes,
    )


def _sizes(part: Part, marks: Sequence[str]) -> tuple[Fraction, Fraction, Fraction]:
    sizes = part.length, part.width, part.thickness
    along, across, up = (sizes[SURFACES[mark][0]] for mark in marks)
    return along, across, up


def _regions(part: Part, features: Sequence[Feature], marks: Sequence[str]) -> tuple[Region, ...]:
    sizes = part.length, part.width, part.thickness
    found = []
    for feature in features:
        ranges = feature.ranges(sizes)
        away = []
        for mark in marks:
            direction, side = SURFACES[mark]
            start, end = ranges[direction]
            size = sizes[direction]
            away.append((size - end, size - start) if side else (start, end))
        found.append(Region(away[0], away[1], away[2]))
    return tuple(found)
