"""Horns: a stile is longer at both ends until its frame is glued, then sawn to its length.

While the horns stand, R and R2 are their ends, and the marks lie from there; once they are off, the
same wood is counted from the finished ends.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.geometry.frame import LENGTH
from dryfit.rehearsal.blank import Blank
from dryfit.rehearsal.fault import Reason, Trouble
from dryfit.rehearsal.goal import Goal, Mark, Range, Ranges, WantedCopy, WantedPart

RUNS_OUT = frozenset({"long slot", "rabbet"})
"""Kinds of marks along a part that run on through a horn."""


def with_horns(goal: Goal) -> Goal:
    """Return the goal with every part as long as it is until its frame is glued."""
    return replace(goal, parts=tuple(_longer(part) for part in goal.parts))


def _longer(part: WantedPart) -> WantedPart:
    if not part.horns:
        return part
    copies = tuple(replace(copy, box=_box(copy, part)) for copy in part.copies)
    length = part.copies[0].box.extent(part.copies[0].frame.axes[LENGTH][0])
    marks = tuple(_moved(mark, part, length) for mark in part.marks)
    return replace(part, copies=copies, marks=marks)


def _box(copy: WantedCopy, part: WantedPart) -> Box:
    axis = copy.frame.axes[LENGTH][0]
    low, high = list(copy.box.low), list(copy.box.high)
    low[axis], high[axis] = low[axis] - part.horns, high[axis] + part.horns
    return Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))


def _moved(mark: Mark, part: WantedPart, length: Fraction) -> Mark:
    horn = part.horns

    def moved(limits: Range) -> Range:
        low, high = limits
        out = mark.kind in RUNS_OUT
        return (
            low if out and low <= 0 else low + horn,
            high + 2 * horn if out and high >= length else high + horn,
        )

    along, across, deep = mark.ranges
    halves = tuple((moved(each[0]), each[1], each[2]) for each in mark.halves)
    return replace(mark, ranges=(moved(along), across, deep), halves=halves)


def sawn_off(blank: Blank, horn: Fraction, final: Fraction, *, glued: bool) -> Trouble | None:
    """Saw both horns off a blank; its places are counted from the finished ends from then on."""
    if not horn:
        return Trouble(Reason.CUT, "it has no horns", "horns on it")
    if not glued:
        message = "its horns are sawn off before it is glued"
        return Trouble(Reason.ORDER, message, "the horns left on until the frame is glued")
    if blank.sizes[LENGTH] != final + 2 * horn:
        message = f"it is {float(blank.sizes[LENGTH]):g} long with its horns"
        return Trouble(Reason.SIZE, message, f"{float(final + 2 * horn):g} with both horns")
    cuts = [
        ((max(low - horn, Fraction(0)), min(high - horn, final)), across, deep)
        for (low, high), across, deep in blank.cuts
    ]
    kept = [number for number, (along, _, _) in enumerate(cuts) if along[0] < along[1]]
    blank.cuts = [cuts[number] for number in kept]
    blank.at = [blank.at[number] for number in kept]
    blank.slants = [replace(each, ranges=_from_end(each.ranges, horn)) for each in blank.slants]
    blank.arches = [replace(each, ranges=_from_end(each.ranges, horn)) for each in blank.arches]
    blank.resize(LENGTH, final)
    return None


def _from_end(ranges: Ranges, horn: Fraction) -> Ranges:
    (low, high), across, deep = ranges
    return (low - horn, high - horn), across, deep
