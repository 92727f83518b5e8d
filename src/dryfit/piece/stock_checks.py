"""What is asked of wood on hand and of what the yard sells: sizes, bad places, prices."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Note, Severity, Span
from dryfit.notes.tree import HaveLine, Number
from dryfit.piece.declared import PART_DIMENSIONS, Avoid, Have
from dryfit.piece.sums import LONGEST_BOARD, Sums
from dryfit.piece.written_sizes import size_words
from dryfit.quantities import UNITS
from dryfit.quantities.units import INCH

SAME_SHEET = Fraction(1)
"""A sheet measures up to this less or more than it is called, mm (TRADE A5.5, common practice)."""

_THICKEST, _WIDEST = 12 * INCH, 60 * INCH
"""No board is thicker, no slab wider: more is a size in another unit (a guess of ours)."""

_THIN, _SHORT = Fraction(4), Fraction(200)
"""A board both so thin and so short, in mm, is likely to be meant in inches (a guess of ours)."""

_NARROW = Fraction(16)
"""No board is so narrow, in mm (a guess of ours)."""

_HOW_LARGE = {"length": "long", "width": "wide", "thickness": "thick"}


def asked_of_stock(line: HaveLine, have: Have, sums: Sums, first: str) -> Iterator[Diagnostic]:
    """Yield what is unclear or unlikely about one line.

    Findings: stock-size-missing, stock-size-order, measured-far-off, unit-slip, zone-outside-board,
    zone-covers-all, buy-count, buy-without-price, price-without-unit, price-on-have.
    """
    yield from _missing(line, have, sums, first)
    slips = tuple(_slips(line, have, sums))
    yield from slips
    if not slips:
        yield from _order(have, sums)
    yield from _measured(line, have, sums)
    yield from _zones(have, sums)
    yield from _money(line)


def inside(zones: Sequence[Avoid], have: Have) -> tuple[Avoid, ...]:
    """Return bad places cut off at the ends and edges of their board, without those beyond."""
    length, width = have.sizes[0], have.widest
    cut = (
        Avoid(_within(zone.along, length), _within(zone.across, width), zone.why, zone.span)
        for zone in zones
    )
    return tuple(zone for zone in cut if _is_some(zone.along) and _is_some(zone.across))


def _within(
    reach: tuple[Fraction, Fraction] | None, whole: Fraction | None
) -> tuple[Fraction, Fraction] | None:
    if reach is None or whole is None:
        return reach
    low, high = (max(Fraction(0), min(each, whole)) for each in reach)
    return low, high


def _is_some(reach: tuple[Fraction, Fraction] | None) -> bool:
    return reach is None or reach[0] < reach[1]


# --- sizes


def _missing(line: HaveLine, have: Have, sums: Sums, first: str) -> Iterator[Diagnostic]:
    words = size_words(line.sizes, first)
    unsaid = [_HOW_LARGE[name] for name in PART_DIMENSIONS if name not in words]
    if not unsaid:
        return
    them = "these" if line.buy or have.count > 1 else f"this {have.kind}"
    bare = [word.span for word in line.sizes if word.dimension is None]
    read = ""
    if len(bare) == len(PART_DIMENSIONS) - 1 == len(line.sizes):
        order = " x ".join(PART_DIMENSIONS[1:] if first == "length" else PART_DIMENSIONS[1::-1])
        read = f"`{bare[0].text()} x {bare[1].text()}` is read as {order}: "
    yield _finding(
        "stock-size-missing",
        Severity.QUESTION,
        f"{read}how {' and how '.join(unsaid)}? until it is written nothing is made of {them}",
        line.span,
        sums.display.examples("write length x width x thickness, such as `{2400} x {160} x {34}`"),
    )


def _order(have: Have, sums: Sums) -> Iterator[Diagnostic]:
    length, width, thickness = have.sizes
    say = sums.display.with_unit
    sheet = have.kind == "sheet"
    if width is not None and thickness is not None and thickness > width:
        message = f"{say(width)} wide and {say(thickness)} thick?"
    elif length is not None and width is not None and width > length and not sheet:
        if have.kind in ("offcut", "strip"):
            return
        message = f"{say(width)} wide and only {say(length)} long?"
    else:
        return
    yield _finding(
        "stock-size-order",
        Severity.QUESTION,
        message,
        have.span,
        sums.display.examples(
            "the sizes stand in the order length x width x thickness, the length along the grain; "
            "or say them: `{2400} long, {160} wide, {34} thick`"
        ),
    )


def _slips(line: HaveLine, have: Have, sums: Sums) -> Iterator[Diagnostic]:
    """Ask about bare numbers that are absurd in their unit (TRADE H37)."""
    words = [word.amount for word in line.sizes]
    bare = [isinstance(each, Number) and each.quantity is None for each in words]
    length, width, thickness = have.sizes
    if not any(bare) or len(words) < len(PART_DIMENSIONS) or line.unit is not None:
        return
    if length is None or width is None or thickness is None or length > LONGEST_BOARD:
        return
    if not all(bare):
        # In `72 x 5 x 1 1/4"` and `72" x 5 x 1 1/4` the one sign is meant for all three.
        if UNITS[sums.unit].size == INCH:
            return
        if thickness > width and length <= _SHORT:
            what = f"{sums.display.with_unit(length)} long"
        elif bare[1] and width <= _NARROW and have.kind in ("board", "slab"):
            what = f"{sums.display.with_unit(width)} wide"
        else:
            return
        other, read = "in", sums.unit
    elif UNITS[sums.unit].size == INCH:
        wide = width > _WIDEST and have.kind != "sheet"
        if not (wide or thickness > _THICKEST):
            return
        what = (
            f"{round(width / 12 / INCH)} ft wide" if wide else f"{round(thickness / INCH)} in thick"
        )
        other, read = "mm", "inches"
    else:
        if have.kind in ("offcut", "strip") or thickness > _THIN or length > _SHORT:
            return
        what, other, read = f"{sums.display.with_unit(length)} long", "in", sums.unit
    written = line.span.text()
    verb = written.split(" ", 1)[0]
    whole = f"{verb} ({other}) {written.split(' ', 1)[1]}"
    yield Diagnostic(
        "unit-slip",
        Severity.QUESTION,
        f"read in {read}, this {have.kind} is {what}; is that meant?",
        line.span,
        rule="H37",
        hints=(Hint("a line may have its own unit", whole),),
    )


def _measured(line: HaveLine, have: Have, sums: Sums) -> Iterator[Diagnostic]:
    thickness = have.sizes[2]
    if have.measured is None or thickness is None or line.measures is None:
        return
    if abs(have.measured - thickness) > SAME_SHEET:
        say = sums.display.with_unit
        yield Diagnostic(
            "measured-far-off",
            Severity.QUESTION,
            f"{have.timber or have.kind}: measured {say(have.measured)}, planned {say(thickness)}",
            line.measures.span,
            figures={"measured": have.measured, "planned": thickness},
            hints=(Hint("is it the right figure, in the right unit?"),),
        )


# --- bad places


def _zones(have: Have, sums: Sums) -> Iterator[Diagnostic]:
    say, length, width = sums.display.with_unit, have.sizes[0], have.widest
    for zone in have.avoid:
        for reach, whole, how in ((zone.along, length, "long"), (zone.across, width, "wide")):
            if reach is None or whole is None or (reach[0] >= 0 and reach[1] <= whole):
                continue
            yield _finding(
                "zone-outside-board",
                Severity.WARNING,
                f"this reaches from {say(reach[0])} to {say(reach[1])}, and the {have.kind} is "
                f"{say(whole)} {how}",
                zone.span,
                "measure it again from the left end, or from the edge towards you",
            )
    if length is not None and width is not None and _covered(have, length, width):
        yield _finding(
            "zone-covers-all",
            Severity.WARNING,
            f"nothing is left of this {have.kind}: no part is made of it",
            have.avoid[0].span,
            "leave the line out, or say where the sound wood ends",
        )


def _covered(have: Have, length: Fraction, width: Fraction) -> bool:
    """Return whether the bad places cover the whole board, all together."""
    zones = [
        (zone.along or (Fraction(0), length), zone.across or (Fraction(0), width))
        for zone in have.avoid
    ]
    at = sorted({Fraction(0), *(end for along, _ in zones for end in along if 0 < end < length)})
    over = sorted({Fraction(0), *(end for _, across in zones for end in across if 0 < end < width)})
    return bool(zones) and all(
        any(along[0] <= x < along[1] and across[0] <= y < across[1] for along, across in zones)
        for x in at
        for y in over
    )


# --- money


def _money(line: HaveLine) -> Iterator[Diagnostic]:
    price = line.price
    if not line.buy:
        if price is not None:
            yield _finding(
                "price-on-have",
                Severity.QUESTION,
                "what is on hand has been paid for: the price is not counted",
                price.span,
                "leave it out; what the yard sells begins with `buy`",
            )
        return
    if line.count is not None and line.at_most is None:
        yield _finding(
            "buy-count",
            Severity.QUESTION,
            f"has the yard {line.count}? it is taken so: how many to buy is worked out",
            line.span,
            f"write `at most {line.count}` behind, or leave the {line.count} out",
        )
    if price is None:
        yield _finding(
            "buy-without-price",
            Severity.QUESTION,
            "what does it cost? it is bought only where no line has a price, by the fewest boards",
            line.span,
            "write `48.00 each`, `14 per m`, `62 per m2`, `1900 per m3` or `9.50 per board foot`",
        )
    elif price.per is None:
        amount = price.span.text()
        yield _finding(
            "price-without-unit",
            Severity.WARNING,
            f"`{amount}` for what? the price is not counted: it is bought only where no line has "
            "one, by the fewest boards",
            price.span,
            f"write `{amount} each`, or `per m`, `per m2`, `per m3`, `per board foot`",
        )


def currency_of(lines: Sequence[HaveLine]) -> tuple[str, frozenset[Span], Diagnostic | None]:
    """Return the money of all prices, and the prices in another, which are not counted.

    Findings: currencies-mixed.
    """
    told = [line.price for line in lines if line.price is not None and line.price.currency]
    if not told:
        return "", frozenset(), None
    first = told[0]
    others = [price for price in told if price.currency != first.currency]
    if not others:
        return first.currency or "", frozenset(), None
    return (
        first.currency or "",
        frozenset(price.span for price in others),
        Diagnostic(
            "currencies-mixed",
            Severity.WARNING,
            f"prices in {first.currency} and in {others[0].currency}: those in "
            f"{others[0].currency} are not counted",
            others[0].span,
            notes=(Note(f"in {first.currency} here", first.span),),
            hints=(Hint("write all prices in one money"),),
        ),
    )


def _finding(code: str, severity: Severity, message: str, span: Span, hint: str) -> Diagnostic:
    return Diagnostic(code, severity, message, span, hints=(Hint(hint),))
