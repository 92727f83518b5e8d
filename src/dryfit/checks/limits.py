"""Limits that the place sets (TRADE K1) and measurements of what the piece works out (M8)."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction
from functools import partial

from dryfit.checks.finding import finding
from dryfit.diagnostics import Diagnostic, Severity, Span
from dryfit.geometry.box import Box, spanning
from dryfit.geometry.frame import THICKNESS
from dryfit.piece.declared import INSIDE, PART_DIMENSIONS, Host, Measured, PieceLimit, inner_name
from dryfit.placing.model import Model

_WHOLE = {"width": 0, "depth": 1, "height": 2, "length": 0}
_OF_A_BOX = {"width": 0, "depth": 1, "height": 2}
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

    Findings: opening-tapers, measured-differs, measured-unknown, measured-not-taken.
    """
    waited_for = {each.name for part in model.parts for each in part.measures}
    for measured in model.measured:
        if measured.kind == "measurement" and measured.name not in waited_for:
            yield _of_nothing(model, measured, waited_for)
        elif measured.kind == "measurement":
            yield _not_taken(model, measured)
        yield from _measured(model, measured)


def _not_taken(model: Model, measured: Measured) -> Diagnostic:
    """Tell that what was measured along something glued leaves the plan as it is drawn."""
    waiting = [
        (part, each) for part in model.parts for each in part.measures if each.name == measured.name
    ]
    parts = " and ".join(dict.fromkeys(part.written.lower() for part, _ in waiting))
    shown = model.display.with_unit
    drawn = shown(waiting[0][1].nominal)
    return finding(
        "M8",
        "measured-not-taken",
        Severity.WARNING,
        f"{measured.name} was measured as {shown(measured.taken)}, but the plan goes on with "
        f"{drawn}: only what stands in a named opening is worked out anew",
        measured.span,
        figures={"measured": measured.taken, "drawn": waiting[0][1].nominal},
        remedy=f"cut {parts} by your figure where the steps wait for it, or name the space with "
        "`opening between ...` and measure that",
    )


def _limit(model: Model, stated: PieceLimit) -> Iterator[Diagnostic]:
    limit, subject = stated.limit, stated.subject
    named = subject.part if subject else "the piece"
    # A seat 450 high stands so high: the other size of what lies flat is called its thickness.
    stands = limit.dimension == "height" and _lies_flat(model, subject)
    values = _values(model, "top" if stands else limit.dimension, subject)
    words = f"the top of {named}" if limit.dimension == "top" else f"{named}: {limit.dimension}"
    if stands:
        words = f"{named}: the height of its upper side"
    if not values:
        yield finding(
            "K1",
            "limit-of-nothing",
            Severity.ERROR,
            f"{named} has no {limit.dimension}",
            limit.span,
            figures={},
            remedy="name one of its sizes, or the top: "
            + model.display.examples("`seat top at most {460}`"),
        )
        return
    shown, why = model.display.with_unit, f" ({limit.why})" if limit.why else ""
    for bound, value, most in ((limit.most, max(values), True), (limit.least, min(values), False)):
        if bound is None:
            continue
        room = bound.value - value if most else value - bound.value
        kept = room >= 0
        side = ("below" if most else "above") if kept else ("above" if most else "below")
        yield finding(
            "K1",
            "limit-kept" if kept else "limit-broken",
            Severity.NOTICE if kept else Severity.ERROR,
            f"{words} comes to {shown(value)}, {shown(abs(room))} {side} the limit of "
            f"{shown(bound.value)}{why}",
            limit.span,
            figures={"size": value, "limit": bound.value},
            remedy=_remedy(kept=kept, stands=stands),
        )


def _remedy(*, kept: bool, stands: bool) -> str:
    if kept:
        return "nothing to do: that is the margin"
    if stands:
        return "change a size that it is made of; of the part itself write `thick`"
    return "change a size that it is made of"


def _lies_flat(model: Model, subject: Host | None) -> bool:
    part = next((each for each in model.parts if subject and each.name == subject.part), None)
    return part is not None and all(
        copy.frame.axes[THICKNESS][0] == _WHOLE["height"] for copy in part.copies
    )


def _values(model: Model, dimension: str, subject: Host | None) -> tuple[Fraction, ...]:
    """Return what a size comes to, once for each copy that is named; empty: there is no such."""
    if subject is None:
        axis = _WHOLE.get(dimension)
        return () if axis is None else (model.overall[axis],)
    figure = model.figures.get(f"{subject.part}.{dimension}")
    part = next((part for part in model.parts if part.name == subject.part), None)
    if part is None:
        return (figure.value,) if figure else _along(_instances(model, subject), dimension)
    if dimension in PART_DIMENSIONS:
        return ((part.length, part.width, part.thickness)[PART_DIMENSIONS.index(dimension)],)
    wanted = set(subject.places)
    return _along((copy.box for copy in part.copies if wanted <= set(copy.places)), dimension)


def _instances(model: Model, subject: Host) -> tuple[Box, ...]:
    """Return the box round the parts of each copy of an instance of a pattern."""
    inside = inner_name(subject.part, "")
    parts = (part for part in model.parts if part.name.startswith(inside))
    depth = inside.count(INSIDE)
    held: dict[tuple[str, ...], list[Box]] = {}
    for copy in (copy for part in parts for copy in part.copies):
        instance = tuple(copy.name.split(INSIDE)[:depth])
        if set(subject.places) <= set(instance[-1].split()):
            held.setdefault(instance, []).append(copy.box)
    return tuple(spanning(tuple(boxes)) for boxes in held.values())


def _along(boxes: Iterable[Box], dimension: str) -> tuple[Fraction, ...]:
    if dimension == "top":
        return tuple(box.high[2] for box in boxes)
    axis = _OF_A_BOX.get(dimension)
    return () if axis is None else tuple(box.extent(axis) for box in boxes)


def _measured(model: Model, measured: Measured) -> Iterator[Diagnostic]:
    shown = partial(model.display.with_unit, fitted=True)
    if measured.kind == "opening" and max(measured.amounts) > min(measured.amounts):
        taper = max(measured.amounts) - min(measured.amounts)
        yield finding(
            "C5.5",
            "opening-tapers",
            Severity.WARNING if taper > _FAR_OFF else Severity.NOTICE,
            f"{measured.name}: measured from {shown(min(measured.amounts))} to "
            f"{shown(max(measured.amounts))}; what goes in must pass the smallest; the opening is "
            f"out by {shown(taper)}",
            measured.span,
            figures={"taper": taper, "smallest": min(measured.amounts)},
            remedy="plane what goes in to fit, or true the opening first",
        )
    dimension = measured.name.rpartition(".")[2]
    values = _values(model, dimension, measured.subject) if measured.subject else ()
    if measured.planned is None and values and measured.taken not in values:
        yield _differs(measured, values[0], measured.span, model)


def _of_nothing(model: Model, measured: Measured, waited_for: Iterable[str]) -> Diagnostic:
    known = ", ".join(sorted(waited_for))
    return finding(
        "M8",
        "measured-unknown",
        Severity.ERROR,
        f"nothing waits for a measurement called `{measured.name}`",
        measured.span,
        figures={},
        remedy=_of_wood(model, measured)
        or (
            f"measured can be: {known}"
            if known
            else model.display.examples(
                "write a part's size, such as `measured leg.thickness = {39.6}`, or change the "
                "line on which the size stands"
            )
        ),
    )


def _of_wood(model: Model, measured: Measured) -> str:
    """Return how the thickness of a wood is written that parts are of; empty where none is.

    ``ply`` is birch ply too; of several thicknesses the one is meant that is nearest.
    """
    planned = {
        (each.name, each.taken): each.planned
        for each in model.measured
        if each.kind == "sheet" and each.planned is not None
    }
    kinds = {
        (part.timber, planned.get((part.timber, part.thickness), part.thickness))
        for part in model.parts
        if part.timber is not None and f" {part.timber}".endswith(f" {measured.name}")
    }
    if not kinds:
        return ""
    timber, thick = min(kinds, key=lambda kind: (abs(kind[1] - measured.taken), kind))
    shown = partial(model.display.shown, fitted=True)
    return f"say which thickness: `measured {timber} {shown(thick)} = {shown(measured.taken)}`"


def _differs(measured: Measured, planned: Fraction, span: Span, model: Model) -> Diagnostic:
    shown = model.display.with_unit
    inside = measured.kind == "opening"
    kept = "what stands in it is planned for" if inside else "the plan goes on with"
    remedy = (
        "cut what goes in to the opening as it is, less its gaps"
        if inside
        else "write the size that came out otherwise on the line it comes from"
    )
    return finding(
        "M8",
        "measured-differs",
        Severity.WARNING if inside else Severity.QUESTION,
        f"{measured.name} is measured as {shown(measured.taken)}, and {kept} "
        f"{shown(planned)}, as it is worked out",
        span,
        figures={"planned": planned, "measured": measured.taken},
        remedy=remedy,
    )
