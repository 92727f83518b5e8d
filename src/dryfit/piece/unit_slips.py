"""Millimetres written for inches, and inches for millimetres (TRADE H37).

A number is suspected only where its other reading is a likely size and its own is not: every
threshold is a guess of ours about pieces of furniture, and what is guessed is asked, not refused.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.notes.tree import Number, Operation, Sum
from dryfit.piece.declared import Amount, DeclaredPart
from dryfit.piece.references import is_bare
from dryfit.piece.sums import Sums
from dryfit.quantities import UNITS
from dryfit.quantities.display import Display, mixed
from dryfit.quantities.units import INCH

LARGEST_PIECE = Fraction(5000)
_TINY, _LIKELY = 60, 20
"""Of the least overall size: less than a sixtieth is no leg, a twentieth and more may be one."""

_NO_WOOD = Fraction(3)
"""Nothing of wood is narrower, however small the piece."""

_NO_SHEET = Fraction(2)
"""Hardly anything that is written down is thinner, plywood for models apart."""

_NO_BOARD = 12 * INCH
"""No part is thicker, and no softwood board is wider by its name."""

_INCH_FRACTIONS = (2, 4, 8, 16, 32, 64)
"""What inch rulers divide by; halves and quarters may also be said of a centimetre."""

_MM, _INCHES = Display("mm", Fraction(1, 100)), Display.inches(Fraction(1, 64))

Overall = tuple[Amount | None, Amount | None, Amount | None]


def unit_slips(
    sums: Sums, parts: Sequence[DeclaredPart], overall: Overall, *, units_said: bool
) -> Iterator[Diagnostic]:
    """Yield overall sizes that a foreign unit makes huge, then sizes of parts that look mistaken.

    `units_said` tells whether the notes have a ``units`` line.  Findings: unit-mixed, size-huge,
    inch-fractions, unit-slip.
    """
    yield from _foreign(sums, overall)
    sizes = [amount.value for amount in overall if amount is not None]
    if len(sizes) == len(overall):
        yield from _larger_than_the_piece(sums, parts, max(sizes))
    fractions = tuple(_inch_fractions(sums))
    yield from fractions
    # One question is enough for one cause.
    if len(sizes) == len(overall) and not fractions:
        yield from _suspected(sums, parts, (min(sizes), max(sizes)), units_said=units_said)


def _foreign(sums: Sums, overall: Overall) -> Iterator[Diagnostic]:
    own_is_inch = UNITS[sums.unit].size == INCH
    for dimension, amount in zip(("width", "depth", "height"), overall, strict=True):
        written = sums.overall.get(dimension)
        if amount is None or written is None or amount.value <= LARGEST_PIECE:
            continue
        numbers = [leaf for leaf in _numbers(written) if leaf.quantity is not None]
        if not any(_is_imperial(leaf) != own_is_inch for leaf in numbers):
            continue
        number = next(iter(numbers)).value
        meant = number * UNITS[sums.unit].size
        yield Diagnostic(
            "unit-mixed",
            Severity.ERROR,
            f"`{amount.span.text()}` makes the piece {sums.display.with_unit(amount.value)} large, "
            f"in notes whose numbers are in {_UNIT_WORDS[sums.unit]}",
            amount.span,
            rule="H37",
            figures={"as written": amount.value, "as meant": meant},
            hints=(
                Hint(
                    f"write `{mixed(number)}` if {sums.display.with_unit(meant)} is meant; for "
                    "another unit begin with a `units` line"
                ),
            ),
        )


def _larger_than_the_piece(
    sums: Sums, parts: Sequence[DeclaredPart], largest: Fraction
) -> Iterator[Diagnostic]:
    """Ask once about sizes of parts that a foreign unit makes larger than the whole piece."""
    own_is_inch = UNITS[sums.unit].size == INCH
    found = [
        (part, amount, number)
        for part in parts
        for dimension, amount in zip(("length", "width", "thickness"), part.sizes, strict=True)
        if amount is not None and (amount.known or 0) > largest
        if (written := sums.sizes.get((part.name, dimension))) is not None
        for number in [leaf for leaf in _numbers(written) if leaf.quantity is not None][:1]
        if _is_imperial(number) != own_is_inch
    ]
    if not found:
        return
    (part, amount, number), shown = found[0], sums.display.with_unit
    others = f" (and {len(found) - 1} more like it)" if len(found) > 1 else ""
    meant = number.value * UNITS[sums.unit].size
    yield Diagnostic(
        "size-huge",
        Severity.QUESTION,
        f"{part.name}: `{amount.span.text()}` is {shown(amount.value)}, more than the whole piece; "
        f"is that meant?{others}",
        amount.span,
        rule="H37",
        figures={"size": amount.value},
        hints=(Hint(f"write `{mixed(number.value)}` if {shown(meant)} is meant"),),
    )


def _inch_fractions(sums: Sums) -> Iterator[Diagnostic]:
    """Ask once about fractions such as inch rulers have, in metric notes and without a unit."""
    if UNITS[sums.unit].size == INCH:
        return
    likely = _INCH_FRACTIONS if sums.unit == "mm" else _INCH_FRACTIONS[2:]
    written = (*sums.overall.values(), *sums.sizes.values())
    found = [
        number
        for amount in written
        for number in _summands(amount)
        if number.quantity is None and number.value.denominator in likely
        if "/" in number.span.text()
    ]
    if not found:
        return
    first = min(found, key=lambda number: (number.span.line, number.span.column))
    others = f" (and {len(found) - 1} more like it)" if len(found) > 1 else ""
    meant = first.value * INCH
    yield Diagnostic(
        "inch-fractions",
        Severity.QUESTION,
        f"`{first.span.text()}` looks like inches, and is read as "
        f"{_MM.with_unit(first.value * UNITS[sums.unit].size)}; are inches meant?{others}",
        first.span,
        rule="H37",
        figures={"as written": first.value * UNITS[sums.unit].size, "as meant": meant},
        hints=(Hint("if they are, the line for that is `units inches`, before all sizes"),),
    )


def _summands(amount: Sum) -> Iterator[Number]:
    # Beside `*` and `/` a fraction is a factor, and none of a ruler.
    waiting = [amount]
    while waiting:
        each = waiting.pop()
        if isinstance(each, Operation) and each.sign in "+-":
            waiting += [each.right, each.left]
        elif isinstance(each, Number):
            yield each


def _suspected(
    sums: Sums,
    parts: Sequence[DeclaredPart],
    overall: tuple[Fraction, Fraction],
    *,
    units_said: bool,
) -> Iterator[Diagnostic]:
    # One finding for all: whoever mistook the unit mistook it on every line.
    slips = [slip for part in parts if (slip := _slip(sums, part, overall)) is not None]
    if not slips:
        return
    part, size, word = slips[0]
    other = _other_reading(sums, size.value)
    others = f" (and {len(slips) - 1} more like it)" if len(slips) > 1 else ""
    yield Diagnostic(
        "unit-slip",
        Severity.QUESTION,
        f"{part.name}: is {_both(sums, size.value)} {word} meant, or "
        f"{_both(sums, other, turned=True)}?{others}",
        size.span,
        rule="H37",
        figures={"as written": size.value, "as meant": other},
        hints=(Hint(_remedy(sums, units_said=units_said)),),
    )


def _slip(
    sums: Sums, part: DeclaredPart, overall: tuple[Fraction, Fraction]
) -> tuple[DeclaredPart, Amount, str] | None:
    """Return the size of a part that looks mistaken, its width before its thickness."""
    length, width, thickness = part.sizes
    if length and thickness and (length.known or 0) < (thickness.known or 0):
        thickness = None  # The sizes stand in another order.
    for dimension, word, size in (("width", "wide", width), ("thickness", "thick", thickness)):
        written = sums.sizes.get((part.name, dimension))
        if size is None or written is None or not is_bare(written, sums.values):
            continue
        mistaken = _looks_mistaken if dimension == "width" else _looks_too_thin_or_thick
        if mistaken(sums, size.value, overall):
            return part, size, word
    return None


def _looks_too_thin_or_thick(
    sums: Sums, thickness: Fraction, overall: tuple[Fraction, Fraction]
) -> bool:
    least, _ = overall
    other = _other_reading(sums, thickness)
    if UNITS[sums.unit].size == INCH:
        return thickness > _NO_BOARD and other >= _NO_WOOD
    return 0 < thickness < _NO_SHEET and other * 2 < least


def _looks_mistaken(sums: Sums, width: Fraction, overall: tuple[Fraction, Fraction]) -> bool:
    least, most = overall
    other = _other_reading(sums, width)
    if UNITS[sums.unit].size == INCH:
        return width > most and other * _TINY > least
    tiny = width * _TINY < least or width < _NO_WOOD
    return tiny and least < other * _LIKELY and other < most


def _other_reading(sums: Sums, width: Fraction) -> Fraction:
    size = UNITS[sums.unit].size
    return width / size * (1 if size == INCH else INCH)


def _both(sums: Sums, length: Fraction, *, turned: bool = False) -> str:
    inches = (UNITS[sums.unit].size == INCH) != turned
    return (_INCHES if inches else _MM).with_unit(length)


def _remedy(sums: Sums, *, units_said: bool) -> str:
    meant = "mm" if UNITS[sums.unit].size == INCH else "inches"
    if units_said:
        return f"numbers without a unit are in {_UNIT_WORDS[sums.unit]}, as the `units` line says"
    return (
        f"numbers without a unit are in {_UNIT_WORDS[sums.unit]}: add the line `units {meant}` if "
        "they are not"
    )


def _is_imperial(number: Number) -> bool:
    if number.quantity is None or number.value == 0:
        return False
    return (number.quantity.value / number.value) % INCH == 0


def _numbers(amount: Sum) -> Iterator[Number]:
    waiting = [amount]
    while waiting:
        each = waiting.pop()
        if isinstance(each, Operation):
            waiting += [each.right, each.left]
        elif isinstance(each, Number):
            yield each


_UNIT_WORDS = {"mm": "millimetres", "cm": "centimetres", "m": "metres", "in": "inches"}
