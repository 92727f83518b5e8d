"""Limits that the place sets (TRADE K1) and measurements of what the piece works out (M8)."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.checks.finding import finding
from dryfit.diagnostics import Diagnostic, Severity, Span
from dryfit.piece.declared import Measured, PieceLimit
from dryfit.placing.model import Copy, Model, Part

_WHOLE = {"width": 0, "depth": 1, "height": 2, "length": 0}
_PART_SIZES = ("length", "width", "thickness")
_FAR_OFF = Fraction(3)
"""A taper, or a difference from the plan, up to this in mm is what planing takes care of; ours."""


def check_limits(model: Model) -> Iterator[Diagnostic]:
    """Yield for each stated limit that it is broken, or with how much margin it is kept.

    Findings: limit-broken, limit-kept, limit-of-nothing.
    """
    for limit in model.limits:
        yield from _limit(model, limit)


def check_measured(model: Model) -> Iterator[Diagnostic]:
    """Yield where a measured opening tapers, and where the bench differs from what is worked out.

    Findings: opening-tapers, measured-differs.
    """
    for measured in model.measured:
        yield from _measured(model, measured)


def _limit(model: Model, stated: PieceLimit) -> Iterator[Diagnostic]:
    limit, subject = stated.limit, stated.subject
    value = _value(model, stated)
    named = subject.part if subject else "the piece"
    words = f"the top of {named}" if limit.dimension == "top" else f"{named}: {limit.dimension}"
    if value is None:
        yield finding(
            "K1",
            "limit-of-nothing",
            Severity.ERROR,
            f"{named} has no {limit.dimension}",
            limit.span,
            figures={},
            remedy="name one of its sizes, or the top: `seat top at most 460`",
        )
        return
    shown, why = model.display.with_unit, f" ({limit.why})" if limit.why else ""
    for bound, room in (
        (limit.most, None if limit.most is None else limit.most.value - value),
        (limit.least, None if limit.least is None else value - limit.least.value),
    ):
        if bound is None or room is None:
            continue
        kept = room >= 0
        most = bound is limit.most
        side = ("below" if most else "above") if kept else ("above" if most else "below")
        yield finding(
            "K1",
            "limit-kept" if kept else "limit-broken",
            Severity.NOTICE if kept else Severity.ERROR,
            f"{words} comes to {shown(value)}, {shown(abs(room))} {side} the limit of "
            f"{shown(bound.value)}{why}",
            limit.span,
            figures={"size": value, "limit": bound.value},
            remedy=_remedy(kept=kept),
        )


def _remedy(*, kept: bool) -> str:
    return "nothing to do: that is the margin" if kept else "change a size that it is made of"


def _value(model: Model, stated: PieceLimit) -> Fraction | None:
    dimension, subject = stated.limit.dimension, stated.subject
    if subject is None:
        axis = _WHOLE.get(dimension)
        return None if axis is None else model.overall[axis]
    part = next((part for part in model.parts if part.name == subject.part), None)
    if part is None:
        figure = model.figures.get(f"{subject.part}.{dimension}")
        return figure.value if figure else None
    copies = [copy for copy in part.copies if set(subject.places) <= set(copy.places)]
    return _of_part(part, copies[0], dimension) if copies else None


def _of_part(part: Part, copy: Copy, dimension: str) -> Fraction | None:
    if dimension in _PART_SIZES:
        return (part.length, part.width, part.thickness)[_PART_SIZES.index(dimension)]
    if dimension == "top":
        return copy.box.high[2]
    axis = {"depth": 1, "height": 2}.get(dimension)
    return None if axis is None else copy.box.extent(axis)


def _measured(model: Model, measured: Measured) -> Iterator[Diagnostic]:
    shown = model.display.with_unit
    if measured.kind == "opening" and max(measured.amounts) > min(measured.amounts):
        taper = max(measured.amounts) - min(measured.amounts)
        yield finding(
            "C5.5",
            "opening-tapers",
            Severity.WARNING if taper > _FAR_OFF else Severity.NOTICE,
            f"{measured.name}: measured from {shown(min(measured.amounts))} to "
            f"{shown(max(measured.amounts))}; the smallest counts, the opening is out by "
            f"{shown(taper)}",
            measured.span,
            figures={"taper": taper, "smallest": min(measured.amounts)},
            remedy="plane what goes in to fit, or true the opening first",
        )
    figure = model.figures.get(measured.name)
    if figure is None or measured.planned is not None or figure.value == measured.taken:
        return
    yield _differs(measured, figure.value, measured.span, model)


def _differs(measured: Measured, planned: Fraction, span: Span, model: Model) -> Diagnostic:
    shown = model.display.with_unit
    return finding(
        "M8",
        "measured-differs",
        Severity.QUESTION,
        f"{measured.name} is worked out as {shown(planned)} and measured as "
        f"{shown(measured.taken)}; the plan goes on with what is worked out",
        span,
        figures={"planned": planned, "measured": measured.taken},
        remedy="write the size that came out otherwise on the line it comes from",
    )
