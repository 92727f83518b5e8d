"""Drawers that are pulled out while they are full (TRADE H40): moments about the front feet."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.checks.finding import finding
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.geometry.box import Box, spanning
from dryfit.piece.declared import thing_of
from dryfit.placing.model import Copy, Model
from dryfit.placing.weights import weight_of
from dryfit.quantities.units import POUND
from dryfit.wood.weight import weight_words

_FILLING = Fraction(85, 10) * POUND / (Fraction(3048, 10) ** 3)
"""What a full drawer holds in kg a mm3: 8.5 lb a cubic foot of clothes, as the US safety rule on
clothing storage reckons (16 CFR 1261; read at cpsc.gov)."""

_OUT = Fraction(2, 3)
"""How far a drawer without a stop comes out of its case: two thirds of its depth (common practice,
and how the same rule's tests open what has no stop, from memory)."""

_UNTOLD = "eastern white pine"
"""As what a case counts whose wood no table weighs: a light wood, with which it tips sooner; ours.
"""

_CHILD = 60 * POUND
"""A child who leans on the front of an open drawer, 60 lb (the same rule's tests; from memory)."""


def check_drawers_out(model: Model, base: Box) -> Iterator[Diagnostic]:
    """Yield that the piece tips over its front feet with all its drawers out and full.

    Each weight acts in the middle of its box; what is pulled out hangs in front of the feet by how
    far its middle lies before them.  Findings: drawers-tip.
    """
    drawers = _drawers(model)
    if not drawers:
        return
    front = base.low[1]
    inside = {copy.name for copies in drawers.values() for copy in copies}
    case = [c for part in model.parts for c in part.copies if c.name not in inside]
    kept = sum((_weight(model, [c]) * (_middle(c.box) - front) for c in case), Fraction(0))
    pulled = full = Fraction(0)
    out = Fraction(1) if any("full" in thing.name for thing in model.bought) else _OUT
    for copies in drawers.values():
        box = spanning(tuple(copy.box for copy in copies))
        heavy = _weight(model, copies) + box.volume() * _FILLING
        full += heavy
        pulled += heavy * (front + out * box.extent(1) - _middle(box))
    child = model.place is not None and model.place.children is not None
    if child:
        boxes = [spanning(tuple(copy.box for copy in copies)) for copies in drawers.values()]
        pulled += _CHILD * max(front + out * box.extent(1) - box.low[1] for box in boxes)
    if pulled <= kept:
        return
    unit, shown = model.display.unit, model.display.with_unit
    own = weight_of(model, (copy.name for copy in case), _UNTOLD)
    guessed = f", taken as light as {_UNTOLD}: no table tells its wood" if own.unknown else ""
    leaned = f", and a child of {weight_words(_CHILD, unit)} leaning on one" if child else ""
    yield finding(
        "H40",
        "drawers-tip",
        Severity.WARNING,
        f"with its drawers out and full, {weight_words(full, unit)} in all{leaned}, it tips over "
        f"its front feet: the case weighs {weight_words(own.kilograms, unit)}{guessed}",
        next(iter(model.part_of(next(iter(drawers.values()))[0].name).spans), None),
        figures={"front feet": front, "depth": model.overall[1]},
        remedy=f"fix it to the wall and write `fixed to the wall`; deeper than "
        f"{shown(model.overall[1])}, or with a heavier base, it would stand by itself",
    )


def _drawers(model: Model) -> dict[str, list[Copy]]:
    """Return the copies of each drawer: what is called so and stands free in an opening."""
    found: dict[str, list[Copy]] = {}
    for part in model.parts:
        thing = thing_of(part.name)
        if "drawer" not in thing or (part.opening is None and thing == part.name):
            continue
        for copy in part.copies:
            found.setdefault(thing_of(copy.name), []).append(copy)
    return found


def _weight(model: Model, copies: list[Copy]) -> Fraction:
    return weight_of(model, (copy.name for copy in copies), _UNTOLD).kilograms


def _middle(box: Box) -> Fraction:
    return (box.low[1] + box.high[1]) / 2
