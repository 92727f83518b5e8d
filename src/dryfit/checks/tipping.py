"""What may tip (TRADE H40, H41): too slender, a top far out over its base, drawers pulled out."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.checks.finding import finding
from dryfit.diagnostics import Diagnostic, Severity, Span
from dryfit.geometry.box import Box, spanning
from dryfit.placing.model import Model, Part

_HIGH = Fraction(1000)
_SLENDER = 6
_OUT = 4
"""H40: over 1 m high, and less deep than a sixth.  H41: out by over a quarter of the base."""

_STANDS = Fraction(100)
"""What is less deep than this does not stand by itself: a door, a mirror, a gate; ours."""

_DRAWERS = Fraction(6858, 10)
"""From this height on the drawers are reckoned, 27 in: the US safety rule on clothing storage
(16 CFR 1261, ASTM F2057; read at cpsc.gov) begins there."""

_SIDES = (("left", "right"), ("front", "back"))
_ALONG = ("wide", "deep")


def check_tipping(model: Model) -> Iterator[Diagnostic]:
    """Yield why a piece that stands free may tip; what the notes fix to a wall may not.

    Findings: may-tip, top-far-out, drawers-tip.
    """
    if model.place is not None and model.place.wall is not None:
        return
    high = model.overall[2]
    if high <= _HIGH and high < _DRAWERS and not _may_reach_out(model):
        return
    base = _base(model)
    if base is None or min(base.extent(0), base.extent(1)) < _STANDS:
        return
    if high > _HIGH and base.extent(1) * _SLENDER < high:
        yield _slender(model, base)
    yield from _overhang(model, base)
    if high >= _DRAWERS and any("drawer" in part.name for part in model.parts):
        # Few pieces have any; weights are worked out only for them.
        from dryfit.checks.drawers_out import check_drawers_out

        yield from check_drawers_out(model, base)


def _may_reach_out(model: Model) -> bool:
    return any(
        copy.box.low[2] > 0 and (copy.box.low[axis] == 0 or copy.box.high[axis] == size)
        for part in model.parts
        for copy in part.copies
        for axis, size in enumerate(model.overall[:2])
    )


def _base(model: Model) -> Box | None:
    """Return the box round all that stands on the floor, castors and feet among it."""
    copies = [copy for part in model.parts for copy in part.copies]
    copies += [copy for thing in model.bought for copy in thing.copies]
    feet = tuple(copy.foot for copy in copies if copy.box.low[2] == 0)
    return spanning(feet) if feet else None


def _slender(model: Model, base: Box) -> Diagnostic:
    shown, high, deep = model.display.with_unit, model.overall[2], base.extent(1)
    return finding(
        "H40",
        "may-tip",
        Severity.WARNING,
        f"it stands {shown(high)} high on a base {shown(deep)} deep: less than a sixth, so that it "
        "tips easily",
        _span(_furthest(model, 2, low=False)),
        figures={"height": high, "depth": deep},
        remedy=f"fix it to the wall and write `fixed to the wall`, or make it {shown(high / 6)} "
        "deep at its foot",
    )


def _overhang(model: Model, base: Box) -> Iterator[Diagnostic]:
    """H41: at either end of an axis; the larger of the two counts."""
    shown = model.display.with_unit
    for axis in (0, 1):
        wide = base.extent(axis)
        outs = (base.low[axis], model.overall[axis] - base.high[axis])
        sides = [side for side, out in zip(_SIDES[axis], outs, strict=True) if out * _OUT > wide]
        if not sides:
            continue
        part = _furthest(model, axis, low=outs[0] >= outs[1])
        yield finding(
            "H41",
            "top-far-out",
            Severity.WARNING,
            f"{part.name} reaches {shown(max(outs))} out to the {' and '.join(sides)} over a base "
            f"{shown(wide)} {_ALONG[axis]}: it may tip when someone leans on it",
            _span(part),
            figures={"overhang": max(outs), "base": wide},
            remedy=f"let it reach out at most {shown(wide / _OUT)}, or set the feet further apart",
        )


def _furthest(model: Model, axis: int, *, low: bool) -> Part:
    """Return the part that reaches furthest along an axis, to its low or its high end."""

    def reach(part: Part) -> Fraction:
        if low:
            return max(-copy.box.low[axis] for copy in part.copies)
        return max(copy.box.high[axis] for copy in part.copies)

    return max((part for part in model.parts if part.copies), key=reach)


def _span(part: Part) -> Span | None:
    return part.spans[0] if part.spans else None
