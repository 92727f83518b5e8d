"""Knee room (TRADE H35): what hangs under the top of a table at which someone sits."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.checks.finding import finding
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.placing.model import Copy, Model, Part

_SITTING = (Fraction(680), Fraction(800))
_KNEES = Fraction(610)
"""H35: 610 mm of clear height under the apron of a desk."""

_PLACE = Fraction(600)
"""A place at a table is 600 mm wide (common practice): nobody sits at a narrower stand."""

_LOW = Fraction(300)
"""What lies lower is a stretcher, for the feet; ours."""


def check_knee_room(model: Model) -> Iterator[Diagnostic]:
    """Yield how much room is left for knees under what is called a table or a desk.

    Findings: knee-room.
    """
    if model.overall[0] < _PLACE or not _SITTING[0] <= model.overall[2] <= _SITTING[1]:
        return
    over = [
        (copy.box.low[2], part)
        for part in model.parts
        for copy in part.copies
        if _before_the_knees(part, copy, model)
    ]
    if not over:
        return
    room, part = min(over, key=lambda pair: (pair[0], pair[1].name))
    if room >= _KNEES:
        return
    shown = model.display.with_unit
    yield finding(
        "H35",
        "knee-room",
        Severity.NOTICE,
        f"{shown(room)} of knee room under {part.written.lower()}: one sits well with "
        f"{shown(_KNEES)}",
        part.spans[0] if part.spans else None,
        figures={"room": room, "wanted": _KNEES},
        remedy=f"make {part.written.lower()} {shown(_KNEES - room)} narrower, or the table higher",
    )


def _before_the_knees(part: Part, copy: Copy, model: Model) -> bool:
    """Return whether a long thing at the front lies over the knees of who sits there."""
    box, wide = copy.box, model.overall[0]
    middle = box.low[0] < wide / 2 < box.high[0]
    in_front = box.low[1] < model.overall[1] / 2
    return middle and in_front and box.low[2] >= _LOW and not part.made
