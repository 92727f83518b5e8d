"""TRADE H39: shelves that sag under what stands on them, at once and in the end."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from dryfit.checks.finding import finding
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.geometry.frame import SURFACES, WIDTH
from dryfit.placing.model import Copy, Model, Part
from dryfit.placing.spans import HIGHEST_LIP, Span, spans
from dryfit.placing.standing_on import kilograms_a_mm, usual_kind
from dryfit.quantities.units import INCH, POUND
from dryfit.wood.bending import CREEP, NEWTONS, sag, stiffness
from dryfit.wood.weight import stiffness_of

_SHELF = "shelf"
_WARNED, _FAILS = 300, 200
"""Sag in the end beyond a 300th of the span is seen; at once beyond a 200th the shelf is no shelf
(TRADE H39)."""

_LIMP = Fraction(8)
"""GPa of a wood whose stiffness no table tells: that of a limp one (ours)."""


@dataclass(frozen=True, slots=True)
class _Load:
    """Newtons on a mm of the shelf, what it is in words, and whether the notes say so."""

    newtons: Fraction
    words: str
    written: bool


def check_shelves(model: Model) -> Iterator[Diagnostic]:
    """Yield, once for a part, that it sags too far: what is called a shelf, or said to carry.

    The sag is that at once; in the end it is half as much again.  Only where the notes name the
    load can it be an error.  Findings: shelf-sags.
    """
    for part in model.parts:
        if part.made or (part.carries is None and part.name.rpartition(" ")[2] != _SHELF):
            continue
        worst = max(spans(model, part), key=lambda each: each.clear, default=None)
        if worst is not None and worst.clear > 0:
            yield from _sagging(model, worst)


def _sagging(model: Model, span: Span) -> Iterator[Diagnostic]:
    part, load = span.part, _load(model, span)
    modulus = _modulus(part)
    if modulus is None:
        return
    own = _of_board(part, part.thickness, modulus)
    whole = own + sum((_of_lip(lip) for lip in span.lips), Fraction(0))
    now = sag(load.newtons, span.clear, whole)
    if CREEP * now * _WARNED <= span.clear:
        return
    fails = now * _FAILS > span.clear and load.written
    shown, fitted = model.display.with_unit, model.display
    limp = (
        "" if _known(part) else f" (as limp as {_LIMP} GPa: no table tells how stiff its wood is)"
    )
    yield finding(
        "H39",
        "shelf-sags",
        Severity.ERROR if fails else Severity.WARNING,
        f"{part.name}: over {shown(span.clear)} it sags by {fitted.with_unit(now, fitted=True)} "
        f"under {load.words}, by {fitted.with_unit(CREEP * now, fitted=True)} in the end{limp}; "
        f"more than {fitted.with_unit(span.clear / _WARNED, fitted=True)} is seen",
        part.carries.span if part.carries else next(iter(part.spans), None),
        figures={"sag": now, "in the end": CREEP * now, "span": span.clear},
        remedy=_remedy(model, span, load, whole - own, modulus),
    )


def _load(model: Model, span: Span) -> _Load:
    part, words = span.part, span.part.carries
    each = kilograms_a_mm(words, part.width, span.clear)
    if words is not None and words.kilograms is not None:
        return _Load(each * NEWTONS, words.span.text().partition(" ")[2], written=True)
    kind = words.kind if words is not None and words.kind else usual_kind(part.width)
    named = "what is on display" if kind == "display" else kind
    inches = model.display.unit == "in"
    figure = (
        f"{round(each * 12 * INCH / POUND)} lb a foot" if inches else f"{each * 1000} kg a metre"
    )
    return _Load(each * NEWTONS, f"{named}, {figure}", written=words is not None)


def _modulus(part: Part) -> Fraction | None:
    known = stiffness_of(part.timber or "")
    return known if known is not None or part.stock == "sheet" else _LIMP


def _known(part: Part) -> bool:
    return stiffness_of(part.timber or "") is not None


def _of_board(part: Part, thick: Fraction, modulus: Fraction) -> Fraction:
    """Return E I of a shelf so thick, with the lipping that runs along it."""
    along = [lip for lip in part.lips if SURFACES[lip.surface][0] == WIDTH and not lip.banded]
    core = part.width - sum((lip.thickness for lip in along), Fraction(0))
    return stiffness(core, thick, modulus) + sum(
        (stiffness(lip.thickness, thick, stiffness_of(lip.timber or "") or _LIMP) for lip in along),
        Fraction(0),
    )


def _of_lip(lip: tuple[Part, Copy]) -> Fraction:
    """Return E I of what lies along a shelf on edge or flat: about its own middle (TRADE H39)."""
    part, copy = lip
    modulus = _modulus(part)
    high = copy.box.extent(2)
    wide = part.width * part.thickness / high
    return stiffness(wide, high, modulus) if modulus is not None else Fraction(0)


def _remedy(model: Model, span: Span, load: _Load, of_lips: Fraction, modulus: Fraction) -> str:
    """Return the thickness, or the lip, or the load that keeps it straight."""
    part, display = span.part, model.display
    needed = CREEP * 5 * load.newtons * span.clear**3 * _WARNED / 384
    step = display.either(Fraction(1), INCH / 16)
    thick = (part.thickness // step + 1) * step
    while _of_board(part, thick, modulus) + of_lips < needed:
        thick += step
    ways = [f"make it {display.shown(thick)} thick or more"]
    own = _of_board(part, part.thickness, modulus)
    rung = display.either(Fraction(5), INCH / 4)
    high = 4 * rung
    while own + of_lips + stiffness(part.thickness, high, modulus) < needed and high < HIGHEST_LIP:
        high += rung
    if high < HIGHEST_LIP:
        lip = f"{display.shown(high)} x {display.shown(part.thickness)}"
        ways.append(f"glue a lip {lip} on edge along its front")
    ways.append("put a support under its middle")
    if not load.written:
        ways.append("write what it holds, such as `carries clothes`")
    return ", or ".join((", ".join(ways[:-1]), ways[-1]))
