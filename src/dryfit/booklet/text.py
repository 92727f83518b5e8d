"""Text that carries its quantities as data, so that a figure is printed once and can be checked.

A `Text` is a row of plain words, amounts, labels and marks.  It knows nothing of HTML: the same
text is a table cell, a sentence of a step and the title of a drawing.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from dryfit.plan.operation import Detail
from dryfit.quantities import Display


@dataclass(frozen=True, slots=True)
class Amount:
    """A length or an angle: `value` exact in `unit` (mm or deg), and how it is shown."""

    value: Fraction
    shown: str
    unit: str = "mm"

    def decimal(self) -> str:
        """Return the value as a decimal number: exact where it ends, as JSON prints it if not."""
        rest = self.value.denominator
        for prime in (2, 5):
            while rest % prime == 0:
                rest //= prime
        if rest != 1:
            return repr(float(self.value))
        digits = 0
        while (self.value * 10**digits).denominator != 1:
            digits += 1
        if digits == 0:
            return str(self.value.numerator)
        whole, part = divmod(abs(self.value * 10**digits).numerator, 10**digits)
        return f"{'-' if self.value < 0 else ''}{whole}.{part:0{digits}d}"


@dataclass(frozen=True, slots=True)
class Label:
    """The letter of a part or the number of a copy, set in bold."""

    sign: str


@dataclass(frozen=True, slots=True)
class Mark:
    """A mark on the wood: R, R2, E, E2, F or B, drawn in a little box."""

    sign: str


Piece = str | Amount | Label | Mark
Text = tuple[Piece, ...]


@dataclass(frozen=True, slots=True)
class Say:
    """How lengths and angles are said in this booklet."""

    display: Display

    def size(self, length: Fraction) -> Amount:
        """Return a size to the step of the units line, with ``"`` in inches and bare in mm."""
        return Amount(length, self.display.plain.shown(length))

    def size_with_unit(self, length: Fraction) -> Amount:
        """Return a size as said in a sentence, with its unit."""
        return Amount(length, self.display.with_unit(length))

    def setting(self, length: Fraction) -> Amount:
        """Return a setting of a machine, to a tenth of a millimetre or 1/64 in."""
        return Amount(length, self.display.plain.shown(length, fitted=True))

    def setting_with_unit(self, length: Fraction) -> Amount:
        """Return a setting of a machine as said in a sentence."""
        return Amount(length, self.display.with_unit(length, fitted=True))

    def sizes(self, sizes: Iterable[Fraction]) -> Text:
        """Return sizes in a row, the unit after the last: ``985 × 50 × 34 mm``."""
        *first, last = sizes
        row: list[Text] = [(self.size(size),) for size in first]
        return joined((*row, (self.size_with_unit(last),)), " × ")

    def at_the_saw(self, sizes: Iterable[Fraction]) -> Text:
        """Return sizes as a saw is set to them: one cut has one figure on every page."""
        *first, last = sizes
        row: list[Text] = [(self.setting(size),) for size in first]
        return joined((*row, (self.setting_with_unit(last),)), " × ")

    def detail(self, detail: Detail) -> Text:
        """Return a clause of an operation with its lengths as settings."""
        return tuple(
            piece if isinstance(piece, str) else self.setting_with_unit(piece) for piece in detail
        )

    def angle(self, degrees: Fraction) -> Amount:
        """Return an angle to a tenth of a degree."""
        tenths = round(degrees * 10)
        shown = str(tenths // 10) if tenths % 10 == 0 else f"{tenths / 10:.1f}"
        return Amount(degrees, f"{shown}°", "deg")


def joined(texts: Iterable[Text], between: str, last: str | None = None) -> Text:
    """Return the texts in a row with a separator, and another before the last where given."""
    row = list(texts)
    pieces: list[Piece] = []
    for index, text in enumerate(row):
        if index:
            pieces.append(last if last is not None and index == len(row) - 1 else between)
        pieces.extend(text)
    return tuple(pieces)


def listed(words: Iterable[str]) -> str:
    """Return the words as English lists them: ``posts, rails and slats``."""
    row = list(words)
    if len(row) < 2:
        return "".join(row)
    return f"{', '.join(row[:-1])} and {row[-1]}"


def plain(text: Text) -> str:
    """Return the text without its structure, for titles and alternative texts."""
    return "".join(_words(piece) for piece in text)


def capital(words: str) -> str:
    """Return the words with their first letter large, the rest as they are."""
    return words[:1].upper() + words[1:]


def sentence(text: Text) -> Text:
    """Return a clause as a sentence: its first letter large, a full stop where nothing closes."""
    first, last = text[0], text[-1]
    begun = (capital(first), *text[1:]) if isinstance(first, str) else text
    if isinstance(last, str) and closed(last) == last:
        return begun
    return (*begun, ".")


def closed(words: str) -> str:
    """Return the words as a sentence, with a full stop where nothing closes it yet."""
    return words if words.endswith((".", "?", "!")) else f"{words}."


def _words(piece: Piece) -> str:
    if isinstance(piece, str):
        return piece
    return piece.shown if isinstance(piece, Amount) else piece.sign
