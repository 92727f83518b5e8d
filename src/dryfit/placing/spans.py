"""Boards that lie free between supports: how far, and what lies along with them and stiffens them.

What holds a board along its length, such as a back, leaves nothing that could sag.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.geometry.frame import LENGTH, THICKNESS
from dryfit.placing.model import Copy, Joint, Model, Part

UP = 2
_LENGTHWISE = Fraction(3, 5)
"""What touches a board over more than so much of its length lies along it; ours."""

HIGHEST_LIP = Fraction(100)
"""What lies along a board and is so high, mm, is no lip but a wall that carries it; ours."""


@dataclass(frozen=True, slots=True)
class Span:
    """A board with the widest way in mm that nothing carries, and its lips, which bend with it."""

    part: Part
    copy: Copy
    clear: Fraction
    lips: tuple[tuple[Part, Copy], ...]


def spans(model: Model, part: Part) -> tuple[Span, ...]:
    """Return the copies of a flat part that lie free between supports, with the way between."""
    pieces = {copy.name: (one, copy) for one in model.parts for copy in one.copies}
    found = (_span(model, part, copy, pieces) for copy in part.copies)
    return tuple(each for each in found if each is not None)


def _span(
    model: Model, part: Part, copy: Copy, pieces: dict[str, tuple[Part, Copy]]
) -> Span | None:
    if copy.frame.axes[THICKNESS][0] != UP:
        return None
    axis = copy.frame.axes[LENGTH][0]
    low, high = copy.box.low[axis], copy.box.high[axis]
    held: list[tuple[Fraction, Fraction]] = []
    lips: list[tuple[Part, Copy]] = []
    for joint in model.joints:
        if copy.name not in {joint.guest, joint.host}:
            continue
        mate = pieces[joint.host if joint.guest == copy.name else joint.guest]
        start, end = max(joint.region.low[axis], low), min(joint.region.high[axis], high)
        if end - start < _LENGTHWISE * (high - low):
            held.append((start, end))
        elif mate[1].box.extent(UP) >= HIGHEST_LIP or _carried(joint, model):
            return None
        elif mate not in lips:
            lips.append(mate)
    return Span(part, copy, _widest(held, low, high), tuple(lips))


def _carried(joint: Joint, model: Model) -> bool:
    """Return whether what lies along a board has supports of its own that are no ends of it."""
    return joint.kind == "rest" and model.copy(joint.host).box.extent(UP) >= HIGHEST_LIP


def _widest(held: list[tuple[Fraction, Fraction]], low: Fraction, high: Fraction) -> Fraction:
    """Return the widest way between supports; of a board with none or one, its whole length."""
    if len(held) < 2:
        return high - low
    ordered = sorted(held)
    reach, widest = ordered[0][1], Fraction(0)
    for start, end in ordered[1:]:
        widest = max(widest, start - reach)
        reach = max(reach, end)
    return widest
