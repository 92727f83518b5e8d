"""Wood as the line of the notes that tells of it, which reads back to the same wood."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.piece.declared import Avoid, Have, Price
from dryfit.piece.sheet_words import has_grain
from dryfit.quantities import Display
from dryfit.wood import percent_words

_PER = {
    "piece": "each",
    "metre": "per metre",
    "foot": "per foot",
    "square metre": "per m2",
    "square foot": "per square foot",
    "cubic metre": "per m3",
    "board foot": "per board foot",
}
_CENTS = 2
_MOST_DIGITS = 9


def have_line(have: Have, display: Display) -> str:
    """Return the ``have`` line of wood on hand, or the ``buy`` line of what has a price.

    Sizes are shown to the step of the units: what lies on it reads back exactly.
    """
    return ", ".join(_phrases(have, display))


def _phrases(have: Have, display: Display) -> Iterator[str]:
    of = f" of {have.timber}" if have.timber else ""
    kind = "offcut" if have.offcut else have.kind
    unit = "" if display.bare else "(mm) "
    if have.price is not None or have.at_most is not None:
        yield f"buy {unit}{kind}s{of}"
    else:
        yield f"have {unit}{have.count} {kind}{'s' if have.count > 1 else ''}{of}"
    # The line says its own unit.
    display = display.plain
    yield from _sizes(have, display)
    yield from _of_a_sheet(have, display) if have.kind == "sheet" else _of_a_board(have, display)
    if have.moisture is not None:
        yield f"moisture {percent_words(have.moisture)}"
    for zone in have.avoid:
        yield _zone(zone, display)
    if have.price is not None:
        yield price_words(have.price)
    if have.at_most is not None:
        yield f"at most {have.at_most}"


def _of_a_board(have: Have, display: Display) -> Iterator[str]:
    yield "rough" if have.rough else "hit-and-miss" if have.hit_and_miss else "planed"
    for word, much in (("cup", have.cup), ("bow", have.bow), ("twist", have.twist)):
        if much:
            yield f"{word} {display.shown(much)}"
    if have.waney:
        yield "waney both edges" if have.waney > 1 else "waney one edge"


def _of_a_sheet(have: Have, display: Display) -> Iterator[str]:
    if have.grain:
        # An offcut is often wider than it is long.
        yield "grain along"
    elif has_grain(have.timber):
        yield "no grain"
    if have.measured is not None:
        yield f"measures {display.shown(have.measured, fitted=True)}"


def _sizes(have: Have, display: Display) -> Iterator[str]:
    long, wide, thick = have.sizes
    if long is not None and wide is not None and thick is not None:
        width = display.shown(wide)
        if have.other_width is not None:
            width = f"{width} to {display.shown(have.other_width)}"
        yield f"{display.shown(long)} x {width} x {display.shown(thick)}"
        return
    for size, word in ((long, "long"), (wide, "wide"), (thick, "thick")):
        if size is not None:
            yield f"{display.shown(size)} {word}"


def _zone(zone: Avoid, display: Display) -> str:
    said = []
    if zone.along is not None:
        said.append(f"{display.shown(zone.along[0])} to {display.shown(zone.along[1])}")
    if zone.across is not None:
        start, end = (display.shown(each) for each in zone.across)
        said.append(f"{start} to {end} from the edge")
    return f"{zone.why} {', '.join(said)}"


def price_words(price: Price) -> str:
    """Return what a piece, or so much of it, costs: ``£9.50 per board foot``."""
    amount = money_words(price.amount, price.currency)
    return f"{amount} {_PER[price.per]}"


def money_words(amount: Fraction, currency: str = "") -> str:
    """Return money with its label, to cents, or to as many places as it was written with."""
    digits = _CENTS
    while (amount * 10**digits).denominator != 1 and digits < _MOST_DIGITS:
        digits += 1
    whole, rest = divmod(round(amount * 10**digits), 10**digits)
    return with_currency(f"{whole}.{rest:0{digits}d}", currency)


def with_currency(figure: str, currency: str) -> str:
    """Return a figure of money with its label: a sign before it, letters behind."""
    if len(currency) == 1:
        return f"{currency}{figure}"
    return f"{figure} {currency}".strip()
