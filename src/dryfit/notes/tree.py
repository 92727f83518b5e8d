"""The notes as a tree: one statement a line, every word with the place where it was written.

Names are canonical here (see `names.canonical`): singular, lower case, single blanks.  Sums are
kept as written and evaluated in `piece`.  Nothing here knows what a word means for the wood.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.diagnostics import Source, Span
from dryfit.quantities import Quantity

# --- sums -----------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class Number:
    """A number as written.  ``quantity`` is None while no unit was written: a bare number is a
    factor beside ``*`` and ``/`` and a measure in the file's unit elsewhere; `value` is then the
    bare number, otherwise the number before its unit was applied.
    """

    value: Fraction
    quantity: Quantity | None
    span: Span


@dataclass(frozen=True, slots=True)
class ValueName:
    """A value's name (``overhang``), canonical."""

    name: str
    span: Span


@dataclass(frozen=True, slots=True)
class PartSize:
    """``leg.width``, ``leg's width``, ``width of leg``: dimension is length, width or thickness."""

    part: str
    dimension: str
    span: Span


@dataclass(frozen=True, slots=True)
class OverallSize:
    """``overall width`` or bare ``width``, ``depth``, ``height``."""

    dimension: str
    span: Span


@dataclass(frozen=True, slots=True)
class Operation:
    """``left sign right`` with sign one of ``+ - * /``; `span` covers the whole sum."""

    sign: str
    left: Sum
    right: Sum
    span: Span


Sum = Number | ValueName | PartSize | OverallSize | Operation

# --- words ----------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class Reference:
    """A part, assembly or copy by name: ``front left leg`` is name leg, places front and left."""

    name: str
    places: tuple[str, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class SizeWord:
    """One size: ``22 thick`` has dimension thickness, a bare ``45`` in ``45 x 30`` has None.

    Dimensions: length, width, thickness, height, depth.
    """

    amount: Sum
    dimension: str | None
    span: Span


@dataclass(frozen=True, slots=True)
class Offset:
    """``120 from left`` / ``5 from bottom`` / ``12 from top``: amount from a place."""

    amount: Sum
    place: str
    span: Span


# --- phrases of a part's line -----------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class Run:
    """The way the length runs: ``upright``, ``across`` or ``front to back``."""

    direction: str
    span: Span


@dataclass(frozen=True, slots=True)
class Lie:
    """How it lies: ``flat``, ``on edge``, ``facing front`` or ``facing side``."""

    way: str
    span: Span


@dataclass(frozen=True, slots=True)
class Sizes:
    """``45 x 30`` or ``22 thick, 300 long`` (each bare run of ``x`` is one clause)."""

    sizes: tuple[SizeWord, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class At:
    """``at corners``, ``at left and right``: places are corners, left, right, front, ..."""

    places: tuple[str, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class SetIn:
    """``set in 30 across, 10 front to back``; direction None means both horizontal ones.

    Directions: across, front to back, up and down.
    """

    amounts: tuple[tuple[Sum, str | None], ...]
    span: Span


@dataclass(frozen=True, slots=True)
class SetBack:
    """``set back 6``: from the outward face of the part that it joins."""

    amount: Sum
    span: Span


@dataclass(frozen=True, slots=True)
class Up:
    """``up 80``: the underside above the floor."""

    amount: Sum
    span: Span


@dataclass(frozen=True, slots=True)
class Down:
    """``down 20``: the top side below the overall height."""

    amount: Sum
    span: Span


@dataclass(frozen=True, slots=True)
class From:
    """``120 from left``: a distance of the part from a side of the overall box."""

    offset: Offset
    span: Span


@dataclass(frozen=True, slots=True)
class Flush:
    """``flush with top of posts`` (hosts named) or ``flush top`` (hosts empty: what it joins)."""

    place: str
    hosts: tuple[Reference, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Spread:
    """``spread front to back``; direction None when not written."""

    direction: str | None
    span: Span


@dataclass(frozen=True, slots=True)
class Gap:
    """``gap 8`` between neighbours of a spread."""

    amount: Sum
    span: Span


@dataclass(frozen=True, slots=True)
class JointSpec:
    """``tenon 20 long 8 thick 40 wide, 5 from bottom`` / ``6 buttons`` / ``half lap``.

    `kind` is one of: half lap, tenon, housing, groove, screws, buttons, glue (an edge or butt
    joint that is only glued).  `sizes` with dimension None are in the order of the trade word
    (the first bare number of a tenon is its length, of a housing or groove its depth).
    """

    kind: str
    count: int | None
    sizes: tuple[SizeWord, ...]
    place: Offset | None
    span: Span


@dataclass(frozen=True, slots=True)
class Join:
    """``tenon 20 into legs``, ``onto bottom end rails``, ``between posts``, ``inside stiles``.

    `preposition`: into, onto, under, between, inside, crossing.  `edge` is a word such as
    ``ends`` or ``back edge`` that was named as the entering side, or None.
    """

    preposition: str
    hosts: tuple[Reference, ...]
    spec: JointSpec | None
    span: Span
    edge: str | None = None


@dataclass(frozen=True, slots=True)
class GluedFrom:
    """``glued from 4``: a panel of that many staves."""

    count: int
    span: Span


@dataclass(frozen=True, slots=True)
class OfTimber:
    """``of birch ply``."""

    timber: str
    span: Span


@dataclass(frozen=True, slots=True)
class StageName:
    """``glue up base`` as the object of before, after or cut after."""

    assembly: str
    span: Span


@dataclass(frozen=True, slots=True)
class CutAfter:
    """``cut after glue up base``: the length waits for a measurement."""

    stage: StageName
    span: Span


PartClause = (
    Run
    | Lie
    | Sizes
    | At
    | SetIn
    | SetBack
    | Up
    | Down
    | From
    | Flush
    | Spread
    | Gap
    | JointSpec
    | Join
    | GluedFrom
    | OfTimber
    | CutAfter
)

# --- statements -------------------------------------------------------------------------------


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
