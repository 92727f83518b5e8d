"""TRADE H-b, sizes and sums: H26 and H30."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise

from dryfit.checks.finding import finding
from dryfit.checks.regions import solid_parts
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.geometry.box import Box, spanning
from dryfit.placing.model import Model, Part

_WORDS = ("width", "depth", "height")
_WAYS = ("wide", "deep", "high")
_ENDS = (("left", "right"), ("front", "back"), ("bottom", "top"))
_SIZES = ("long", "wide", "thick")
_INWARDS = {
    (0, -1): "to the right",
    (0, 1): "to the left",
    (1, -1): "back",
    (1, 1): "forwards",
    (2, -1): "up",
    (2, 1): "down",
}
_ALONG = ("across", "front to back", "up and down")
_HALF = Fraction(1, 2)
_NARROW_GAP = Fraction(3)


def check_sums(model: Model) -> Iterator[Diagnostic]:
    """Yield where the parts do not make the overall size, and gaps that are too small.

    Findings: overall-not-met, gap-narrow.
    """
    yield from _overall(model)
    yield from _gaps(model)


def _overall(model: Model) -> Iterator[Diagnostic]:
    """H26: all parts together are as large as the overall line says."""
    bought = [copy for thing in model.bought for copy in thing.copies]
    copies = [copy for part in model.parts for copy in part.copies]
    if not (copies or bought):
        return
    around = spanning(tuple(copy.box for copy in (*copies, *bought)))
    for axis, total in enumerate(model.overall):
        ends = (around.low[axis], around.high[axis] - total)
        off = max(abs(end) for end in ends)
        if off <= _HALF:
            continue
        reach, show = around.extent(axis), model.display.shown
        yield finding(
            "H26",
            "overall-not-met",
            Severity.ERROR,
            f"{_WORDS[axis]}: the parts together are {show(reach)}, the piece is written "
            f"{show(total)} {_WAYS[axis]}; {_where(model, axis, ends)}",
            model.figures[f"overall.{_WORDS[axis]}"].spans[0],
            figures={"sum": reach, "overall": total, "difference": off},
            remedy=f"write {show(reach)} {_WAYS[axis]}, or {_change(model, axis, around)}",
        )


def _change(model: Model, axis: int, around: Box) -> str:
    # A row of slats over set-in legs is best told to reach to the edges itself.
    if around.extent(axis) < model.overall[axis]:
        for part in solid_parts(model):
            row = spanning(tuple(copy.box for copy in part.copies))
            alone = all(copy.box.extent(axis) < row.extent(axis) for copy in part.copies)
            if alone and all(copy.number is not None for copy in part.copies):
                return f"let the {part.written} reach over: `set in 0 {_ALONG[axis]}` on their line"
    for side in (-1, 1):
        beyond = _furthest(model, axis, side)
        if beyond is not None:
            return _bring_in(model, beyond, axis, side)
    return "change the part that falls short"


def _furthest(model: Model, axis: int, side: int) -> tuple[Part, Box] | None:
    """Return the part that sticks out furthest at a side of the piece, and its box there."""
    found = [
        (_beyond(model, copy.box, axis, side), -order, part, copy.box)
        for order, part in enumerate(model.parts)
        for copy in part.copies
    ]
    most, _, part, box = max(found, key=lambda entry: entry[:2])
    return (part, box) if most > _HALF else None


def _beyond(model: Model, box: Box, axis: int, side: int) -> Fraction:
    return -box.low[axis] if side < 0 else box.high[axis] - model.overall[axis]


def _bring_in(model: Model, beyond: tuple[Part, Box], axis: int, side: int) -> str:
    part, box = beyond
    by, show = _beyond(model, box, axis, side), model.display.shown
    move = f"move the {part.written} {show(by)} {_INWARDS[axis, side]}"
    left = box.extent(axis) - by - max(Fraction(0), _beyond(model, box, axis, -side))
    if left <= 0:
        return move
    way = part.copies[0].frame.axes
    word = next(word for (at, _), word in zip(way, _SIZES, strict=True) if at == axis)
    if box.extent(axis) > model.overall[axis] + _HALF:
        # Moved in at one side it would stick out at the other.
        return f"make the {part.written} `{show(left)} {word}`"
    return f"{move}, or make {_them(part)} `{show(left)} {word}`"


def _them(part: Part) -> str:
    return "it" if len(part.copies) == 1 else "them"


def _where(model: Model, axis: int, ends: tuple[Fraction, Fraction]) -> str:
    said = []
    for place, end, outwards in zip(_ENDS[axis], ends, (-1, 1), strict=True):
        if abs(end) <= _HALF:
            continue
        by = model.display.shown(abs(end))
        if end * outwards <= 0:
            said.append(f"they fall short by {by} at the {place}")
            continue
        beyond = _furthest(model, axis, outwards)
        who = f"the {beyond[0].written}" if beyond else "they"
        verb = "sticks" if beyond and len(beyond[0].copies) == 1 else "stick"
        where = "below the floor" if place == "bottom" else f"at the {place}"
        again = bool(said) and said[0].startswith(f"{who} {verb} out")
        said.append(f"{by} {where}" if again else f"{who} {verb} out by {by} {where}")
    return " and ".join(said)


def _gaps(model: Model) -> Iterator[Diagnostic]:
    """H30: neighbours in a spread stand at least 3 mm apart."""
    # The boards of a back lie in their rabbets with hardly a gap (TRADE B24).
    backs = {joint.guest for joint in model.joints if joint.kind == "back rabbet"}
    for part in solid_parts(model):
        if backs & {copy.name for copy in part.copies}:
            continue
        numbered = [copy.box for copy in part.copies if copy.number is not None]
        for axis in range(3):
            gaps = [after.low[axis] - before.high[axis] for before, after in pairwise(numbered)]
            if not gaps or not 0 < min(gaps) < _NARROW_GAP or len(set(gaps)) > 1:
                continue
            show = model.display.shown
            yield finding(
                "H30",
                "gap-narrow",
                Severity.WARNING,
                f"the {part.written} stand only {show(gaps[0])} apart",
                part.spans[0],
                figures={"gap": gaps[0]},
                remedy="write fewer or narrower ones",
            )
