"""TRADE H-b, sizes and sums: H26 and H30."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.checks.finding import finding
from dryfit.diagnostics import Diagnostic, Findings, Severity
from dryfit.geometry.box import spanning
from dryfit.placing.model import Model

_WORDS = ("width", "depth", "height")
_WAYS = ("wide", "deep", "high")
_HALF = Fraction(1, 2)
_NARROW_GAP = Fraction(3)


def check_sums(model: Model) -> Findings:
    """Return where the placed parts do not make the overall size, and gaps that are too small."""
    return (*_overall(model), *_gaps(model))


def _overall(model: Model) -> Iterator[Diagnostic]:
    """H26: all parts together are as large as the overall line says."""
    around = spanning(tuple(copy.box for part in model.parts for copy in part.copies))
    for axis, total in enumerate(model.overall):
        reach = around.extent(axis)
        off = max(abs(around.low[axis]), abs(around.high[axis] - total))
        if off <= _HALF:
            continue
        show = model.display.shown
        yield finding(
            "H26",
            "overall-not-met",
            Severity.ERROR,
            f"{_WORDS[axis]}: the parts together are {show(reach)}, the piece is written "
            f"{show(total)} {_WAYS[axis]}; they differ by {show(off)}",
            model.figures[f"overall.{_WORDS[axis]}"].spans[0],
            figures={"sum": reach, "overall": total, "difference": off},
            remedy=f"write {show(reach)} {_WAYS[axis]}, or change the part that sticks out or "
            "falls short",
        )


def _gaps(model: Model) -> Iterator[Diagnostic]:
    """H30: neighbours in a spread stand at least 3 mm apart."""
    for part in model.parts:
        if len(part.copies) < 3 or any(copy.places for copy in part.copies) or part.made:
            continue
        first, second = part.copies[0].box, part.copies[1].box
        axes = [axis for axis in range(3) if first.low[axis] != second.low[axis]]
        if len(axes) != 1:
            continue
        gap = second.low[axes[0]] - first.high[axes[0]]
        if 0 < gap < _NARROW_GAP:
            show = model.display.shown
            yield finding(
                "H30",
                "gap-narrow",
                Severity.WARNING,
                f"the {part.written} stand only {show(gap)} apart",
                part.spans[0],
                figures={"gap": gap},
                remedy="write fewer or narrower ones",
            )
