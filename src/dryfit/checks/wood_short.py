"""TRADE H43: the parts of a wood take more than there is, whatever way they are laid out.

The sum holds for any layout, so that what it tells is sure; what it does not tell may still be
short, since ends, edges and knots are lost.  At every thickness the parts that are as thick, or
thicker, share the faces of the boards that are; a thick board counts once for each layer that can
be resawn out of it.  Each piece takes its finished face and the kerf beside it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from dryfit.checks.finding import finding, listed
from dryfit.diagnostics import Diagnostic, Note, Severity
from dryfit.piece.declared import Have
from dryfit.placing.model import Model, Part
from dryfit.placing.strips import milled_parts
from dryfit.shop.shop import Shop
from dryfit.stock.boards import Lack, as_thick, lack, lines_for, sizes, wanted

LOST = Fraction(35, 100)
"""With so much more than the parts take, boards were always enough (our own trials of layouts)."""


def check_wood_short(model: Model, shop: Shop) -> Iterator[Diagnostic]:
    """Yield, once for a wood, by how much its boards on hand are surely too few.

    Findings: wood-short.
    """
    kerf = _thinnest_kerf(shop)
    milled = milled_parts(model.parts, shop.allowances)
    for timber, sheet in dict.fromkeys((part.timber, part.stock == "sheet") for part in milled):
        if timber is None:
            continue
        parts = [
            part
            for part in milled
            if part.timber == timber and (part.stock == "sheet") == sheet and not part.made
        ]
        parts = [part for part in parts if _fits_any(part, model, shop)]
        lines = lines_for(parts[0], model) if parts else ()
        if lines and all(None not in line.sizes for line in lines):
            yield from _told(model, parts, lines, kerf)


def _fits_any(part: Part, model: Model, shop: Shop) -> bool:
    """Return whether a board on hand holds the part; what fits none is told of by itself."""
    piece = wanted(part, shop)
    return any(lack(line, piece, shop) is Lack.NOTHING for line in lines_for(part, model))


def _thinnest_kerf(shop: Shop) -> Fraction:
    return min((cut.narrowest for cut in shop.cutters if cut.kind == "blade"), default=Fraction(1))


def _told(
    model: Model, parts: Sequence[Part], lines: Sequence[Have], kerf: Fraction
) -> Iterator[Diagnostic]:
    sheet = parts[0].stock == "sheet"
    worst: tuple[Fraction, Fraction, Fraction] | None = None
    for thick in sorted({_thin(part) for part in parts}):
        taken = sum((_taken(part, lines, kerf) for part in parts if _counts(part, thick)), _NONE)
        there = sum((_there(line, thick, kerf, sheet=sheet) for line in lines), _NONE)
        if taken > there and (worst is None or taken - there > worst[1] - worst[2]):
            worst = (thick, taken, there)
    if worst is None:
        return
    yield _short(model, parts, lines, worst, kerf)


_NONE = Fraction(0)


def _counts(part: Part, thick: Fraction) -> bool:
    if part.stock == "sheet":
        return part.thickness == thick
    return _thin(part) >= thick


def _taken(part: Part, lines: Sequence[Have], kerf: Fraction) -> Fraction:
    """Return the least face that the copies take; narrow ones might lie on their edge."""
    deepest = max(sizes(line)[2] for line in lines)
    count, wide = (1, part.width) if part.staves is None else (part.staves.count, part.staves.width)
    if part.stock == "solid" and wide <= deepest:
        wide = min(wide, part.thickness)
    # The edges of a panel that are trimmed may have been no wood at all.
    all_wide = min(count * (wide + kerf), part.width + count * kerf)
    return (part.cut_length + kerf) * all_wide * len(part.copies)


def _thin(part: Part) -> Fraction:
    """Return how thick a board is at least that the part comes out of, whatever way it lies."""
    loose = part.stock == "solid" and part.staves is None
    return min(part.width, part.thickness) if loose else part.thickness


def _there(
    line: Have, thick: Fraction, kerf: Fraction, *, sheet: bool, beside: Fraction | None = None
) -> Fraction:
    """Return the faces of the line's boards with a kerf, or `beside`, round them, by layers."""
    edge = kerf if beside is None else beside
    long, wide, deep = sizes(line)
    layers = int(as_thick(deep, thick)) if sheet else (deep + kerf) // (thick + kerf)
    return line.count * layers * (long + edge) * (wide + edge)


def _short(
    model: Model,
    parts: Sequence[Part],
    lines: Sequence[Have],
    worst: tuple[Fraction, Fraction, Fraction],
    kerf: Fraction,
) -> Diagnostic:
    """Tell the shortage as a length of the widest board, or as sheets, rounded down: it is sure."""
    say, sheet = model.display.with_unit, parts[0].stock == "sheet"
    thick, taken, there = worst
    # The saw cut beside the last piece of a board may run out of it: that is no wood on hand.
    bare = sum((_there(line, thick, kerf, sheet=sheet, beside=_NONE) for line in lines), _NONE)
    taken, there = taken - (there - bare), bare
    enough = [line for line in lines if _there(line, thick, kerf, sheet=sheet)]
    line = max(enough, key=lambda each: sizes(each)[1])
    long, wide, _ = sizes(line)
    names = [part.name for part in parts if _counts(part, thick)]
    which = f"{parts[0].timber} {say(thick)} thick" + ("" if sheet else " or thicker")
    if sheet:
        one = long * wide
        needs, has = (f"{float(Fraction(area * 100 // one, 100)):.2f}" for area in (taken, there))
        amount = f"{needs} sheets of {say(long)} by {say(wide)}, and there are {has}"
        remedy = "buy at least one sheet more; offcuts, edges and saw cuts come on top"
    else:
        needs, has = (say(_run(area, wide)) for area in (taken, there))
        short = _run((taken - there), wide)
        amount = f"{needs} of a board {say(wide)} wide, and there are {has}"
        better = say(_run(taken * (1 + LOST) - there, wide))
        remedy = (
            f"buy at least {say(short)} more of a board {say(wide)} wide, better {better}: ends, "
            "edges and knots are lost"
        )
    return finding(
        "H43",
        "wood-short",
        Severity.WARNING,
        f"the parts of {which} take at least {amount}",
        line.span,
        figures={"thickness": thick, "needed": _run(taken, wide), "have": _run(there, wide)},
        notes=(
            Note(f"counted are the finished sizes of {listed(names)}, with the kerf beside each"),
        ),
        remedy=remedy,
    )


def _run(area: Fraction, wide: Fraction) -> Fraction:
    """Return how long a board of that width has such a face, in whole centimetres, rounded down."""
    return Fraction(10 * (area / wide // 10))
