"""The statements, one a line, and the notes as a whole."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.diagnostics import Source, Span
from dryfit.notes.tree.phrases import Join, Offset, PartClause, Reference, SizeWord, StageName
from dryfit.notes.tree.sums import Sum


@dataclass(frozen=True, slots=True)
class PieceLine:
    """``piece NAME``."""

    name: str
    span: Span


@dataclass(frozen=True, slots=True)
class NoteLine:
    """``note TEXT``: printed in the booklet."""

    text: str
    span: Span


@dataclass(frozen=True, slots=True)
class UnitsLine:
    """``units inches to 1/16, thickness first``: unit mm, cm, m or in; step in that unit.

    `first` is the size that stands first in a bare triple: length (default) or thickness.
    """

    unit: str
    step: Fraction | None
    decimal_comma: bool
    first: str
    span: Span


@dataclass(frozen=True, slots=True)
class OverallLine:
    """``overall 420 wide, 300 deep, 240 high`` or three bare sizes in that order."""

    sizes: tuple[SizeWord, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class TimberLine:
    """``timber ash``."""

    timber: str
    span: Span


@dataclass(frozen=True, slots=True)
class HaveLine:
    """``have 2 boards of ash, 1800 x 160 x 32, rough, cup 4``; read and kept for the stock.

    `kind`: board, offcut, sheet or slab.  `marks` holds (word, amount) such as (cup, 4).
    """

    count: int
    kind: str
    timber: str | None
    sizes: tuple[SizeWord, ...]
    rough: bool
    marks: tuple[tuple[str, Sum], ...]
    text: str
    span: Span


@dataclass(frozen=True, slots=True)
class ValueLine:
    """``overhang = 15``."""

    name: str
    name_span: Span
    amount: Sum
    span: Span


@dataclass(frozen=True, slots=True)
class PartsLine:
    """``4 legs, upright, 40 x 40, at corners``: `name` canonical, `written` as typed."""

    count: int
    name: str
    written: str
    name_span: Span
    clauses: tuple[PartClause, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class JointLine:
    """``posts crossing end rails: half lap`` / ``seat onto legs and long rails: 6 buttons``."""

    guests: tuple[Reference, ...]
    join: Join
    glued: bool
    span: Span


@dataclass(frozen=True, slots=True)
class FeatureLine:
    """``groove in aprons: inside, 6 wide, 9 deep, 12 from top, through``: a cut with no mate.

    `kind`: groove.  `face`: inside, outside, top, bottom, front, back, left or right.
    """

    kind: str
    parts: tuple[Reference, ...]
    face: str | None
    sizes: tuple[SizeWord, ...]
    place: Offset | None
    through: bool
    after: StageName | None
    span: Span


@dataclass(frozen=True, slots=True)
class GlueItem:
    """``2 legs`` or ``side frames`` in a glue-up; count None means all of them."""

    count: int | None
    reference: Reference
    span: Span


@dataclass(frozen=True, slots=True)
class GlueLine:
    """``glue up 2 side frames: 2 legs, 1 short rail, cure 1 h``; cure None: the shop's glue."""

    count: int
    name: str
    written: str
    name_span: Span
    items: tuple[GlueItem, ...]
    cure: Sum | None
    span: Span


@dataclass(frozen=True, slots=True)
class FinishLine:
    """``finish hard wax oil, 2 coats, 8 h apart``."""

    product: str
    coats: int | None
    apart: Sum | None
    span: Span


@dataclass(frozen=True, slots=True)
class Act:
    """A deed in a wish: ``finish seat``, ``glue up base``, ``cut legs``, or a bare part name.

    `verb`: finish, glue up, cut, sand or None; `reference` None when only the verb stands.
    """

    verb: str | None
    reference: Reference | None
    span: Span


@dataclass(frozen=True, slots=True)
class OrderLine:
    """``finish seat before glue up base``: `first` precedes each of `then` (after is turned)."""

    first: tuple[Act, ...]
    then: tuple[Act, ...]
    span: Span


Statement = (
    PieceLine
    | NoteLine
    | UnitsLine
    | OverallLine
    | TimberLine
    | HaveLine
    | ValueLine
    | PartsLine
    | JointLine
    | FeatureLine
    | GlueLine
    | FinishLine
    | OrderLine
)


@dataclass(frozen=True, slots=True)
class Notes:
    """All statements of a text that could be read, in the order of their lines.

    `unreadable` holds the names declared by lines with an error: later stages keep silent
    about them.
    """

    source: Source
    statements: tuple[Statement, ...]
    unreadable: frozenset[str] = frozenset()
