"""Wood on hand, what the yard sells, and where more of it is listed."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.diagnostics import Span
from dryfit.notes.tree.references import SizeWord
from dryfit.notes.tree.sums import Sum

Reach = tuple[Sum, Sum, str]
"""From, to, and the end or edge that both count from (``left end``, ``both edges``)."""


@dataclass(frozen=True, slots=True)
class ZoneWords:
    """``knot 300 to 380, 0 to 40 from the edge``: wood of a board that nothing is made of.

    `along` None is the whole length, `across` None the whole width.
    """

    why: str
    along: Reach | None
    across: Reach | None
    span: Span


@dataclass(frozen=True, slots=True)
class PriceWords:
    """``48.00 each``: `per` as in `piece.Price`, None where nobody says for what.

    `currency` is the label of the money (``€``), None where none is written.
    """

    amount: Fraction
    per: str | None
    currency: str | None
    span: Span


@dataclass(frozen=True, slots=True)
class WaneyWords:
    """``waney both edges``: how many edges are under bark, None where the line does not say."""

    edges: int | None
    span: Span


@dataclass(frozen=True, slots=True)
class HaveLine:
    """``have 2 boards of ash, 1800 x 160 x 32, rough, cup 4``, or a ``buy`` line.

    `kind`: board, offcut, sheet, slab or strip.  `count` None where none is written.  `state`:
    rough, hit and miss, planed, or None.  `marks` holds (word, amount) such as (cup, 4).  `other`
    is the size that is another at the other end, by its place in `sizes`: ``480 to 560``.  `unit`
    is that of the line's bare numbers where it has one of its own; they then carry it already.
    """

    count: int | None
    kind: str
    timber: str | None
    sizes: tuple[SizeWord, ...]
    state: str | None
    marks: tuple[tuple[str, Sum], ...]
    text: str
    span: Span
    buy: bool = False
    other: tuple[int, Sum] | None = None
    waney: WaneyWords | None = None
    grain: bool | None = None
    measures: Sum | None = None
    zones: tuple[ZoneWords, ...] = ()
    price: PriceWords | None = None
    at_most: int | None = None
    unit: str | None = None


@dataclass(frozen=True, slots=True)
class InventoryLine:
    """``stock from "offcuts.dryfit"``: a file of such lines; `path` as written."""

    path: str
    path_span: Span
    span: Span
