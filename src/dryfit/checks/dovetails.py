"""TRADE B14, B15, H15: a groove in a dovetailed corner lies in one tail, which hides its end."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.checks.finding import finding
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.geometry.frame import WIDTH
from dryfit.joinery.feature import Feature
from dryfit.kinds.roles import PIN
from dryfit.placing.model import Copy, Joint, Model, Part

Range = tuple[Fraction, Fraction]


def check_dovetails(model: Model) -> Iterator[Diagnostic]:
    """Yield grooves that cut into the pins of a corner, once for a line.

    Findings: groove-in-pin.
    """
    told: set[object] = set()
    for joint in model.joints:
        if not joint.kind.endswith("dovetail"):
            continue
        pair = [(model.part_of(name), model.copy(name)) for name in (joint.guest, joint.host)]
        tails = [each for part, copy in pair for each in _tails(joint, part, copy)]
        for part, copy in pair:
            for groove in _grooves(joint, part, copy):
                where = _across(groove, copy)
                inside = any(low <= where[0] and where[1] <= high for low, high in tails)
                if not inside and tails and groove.span not in told:
                    told.add(groove.span)
                    yield _told(model, part, groove, where, tails)


def _grooves(joint: Joint, part: Part, copy: Copy) -> Iterator[Feature]:
    for each in part.features:
        if each.role == "groove" and _is_in(joint, each, copy):
            yield each


def _tails(joint: Joint, part: Part, copy: Copy) -> Iterator[Range]:
    """Yield where the tails stand across, which is where the pin board has its sockets."""
    for each in part.features:
        if each.role == PIN and _is_in(joint, each, copy):
            yield _across(each, copy)


def _is_in(joint: Joint, feature: Feature, copy: Copy) -> bool:
    box = feature.box(copy.box, copy.frame)
    return copy.hand in feature.hands and box.overlap(joint.region) is not None


def _across(feature: Feature, copy: Copy) -> Range:
    box, axis = feature.box(copy.box, copy.frame), copy.frame.axes[WIDTH][0]
    return box.low[axis], box.high[axis]


def _told(
    model: Model, part: Part, groove: Feature, where: Range, tails: list[Range]
) -> Diagnostic:
    show = model.display.shown
    low, high = where
    nearest = min(tails, key=lambda each: (abs(sum(each) - low - high), each))
    return finding(
        "H15",
        "groove-in-pin",
        Severity.WARNING,
        f"the groove in {part.name} cuts into a pin of its dovetails, and shows at its end",
        groove.span,
        figures={"from": low, "to": high, "tail from": nearest[0], "tail to": nearest[1]},
        remedy=f"move it by {show(_way(where, nearest))}, so that one tail hides it, or write "
        "another number of tails",
    )


def _way(where: Range, tail: Range) -> Fraction:
    """Return how far a groove is moved until it lies within a tail, to one side or the other."""
    return max(tail[0] - where[0], where[1] - tail[1], Fraction(0))
