"""TRADE H80: wood that is damper or drier than it will be where the piece stands."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.checks.finding import finding
from dryfit.diagnostics import Diagnostic, Severity, Span
from dryfit.placing.model import Model
from dryfit.wood import movement, percent_words

_FAR = Fraction(2)
"""Percent of moisture from which on wood should wait: TRADE H80, common practice."""


def check_moisture(model: Model) -> Iterator[Diagnostic]:
    """Yield wood as it is worked, or else boards on hand, far from what they will come to.

    Findings: wood-not-dry, wood-too-dry.
    """
    worked = model.air.wood
    if worked is not None and model.air.wood_span is not None:
        yield from _far(model, "the wood holds", None, worked, model.air.wood_span)
        return
    for have in model.stock:
        if have.moisture is not None:
            boards = f"the {have.kind}s" if have.count > 1 else f"the {have.kind}"
            named = f"{boards} of {have.timber}" if have.timber else boards
            hold = "hold" if have.count > 1 else "holds"
            yield from _far(model, f"{named} {hold}", have.timber, have.moisture, have.span)


def _far(
    model: Model, holds: str, timber: str | None, now: Fraction, span: Span
) -> Iterator[Diagnostic]:
    later = model.moisture.middle
    parts = [
        part
        for part in model.parts
        if part.stock == "solid" and (timber is None or part.timber == timber)
    ]
    if abs(now - later) <= _FAR or not parts:
        return
    widest = max(parts, key=lambda part: part.width)
    change = movement(widest.width, widest.moving.across, now, later)
    moves = "shrinks" if change < 0 else "swells"
    yield finding(
        "H80",
        "wood-not-dry" if now > later else "wood-too-dry",
        Severity.WARNING,
        f"{holds} {percent_words(now)} of moisture, and will come to about "
        f"{percent_words(later)} where the piece stands: {widest.name}, "
        f"{model.display.shown(widest.width)} wide, {moves} by "
        f"{model.display.movement(abs(change))}",
        span,
        figures={"change": abs(change)},
        remedy="let it lie stickered in such a room until it is within 2 % of that"
        + ("" if model.moisture.told else ", or write where it stands: `stands in a damp place`"),
    )
