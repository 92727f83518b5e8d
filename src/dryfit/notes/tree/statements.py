"""The statements, one a line, and the notes as a whole."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.diagnostics import Source, Span
from dryfit.notes.tree.air import MoistLine, ShopAirLine, StandsAtLine
from dryfit.notes.tree.cuts import FeatureLine
from dryfit.notes.tree.gluing import BareLine, FinishLine, GlueLine
from dryfit.notes.tree.joints import Join
from dryfit.notes.tree.phrases import PartClause
from dryfit.notes.tree.progress import DoneLine, MeasuredLine, SpoiledLine
from dryfit.notes.tree.references import Reference, SizeWord
from dryfit.notes.tree.site import RoomLine, ScribeLine, WallLine, WayInLine
from dryfit.notes.tree.stock import HaveLine, InventoryLine
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
    """``timber ash``; `cut` is flatsawn, quartersawn or rift where the line says how it is sawn."""

    timber: str
    span: Span
    cut: str | None = None


@dataclass(frozen=True, slots=True)
class ValueLine:
    """``overhang = 15``."""

    name: str
    name_span: Span
    amount: Sum
    span: Span


@dataclass(frozen=True, slots=True)
class PartsLine:
    """``4 legs, upright, 40 x 40, at corners``: `name` canonical, `written` as typed.

    ``bought 4 casters, 108 high, under bottom at corners`` is such a line of things that are not
    made.
    """

    count: int
    name: str
    written: str
    name_span: Span
    clauses: tuple[PartClause, ...]
    span: Span
    bought: bool = False


@dataclass(frozen=True, slots=True)
class OpeningLine:
    """``bay = opening between posts and top rail and bottom rail``: a space with a name."""

    name: str
    name_span: Span
    between: tuple[Reference, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class JointLine:
    """``posts crossing end rails: half lap`` / ``seat onto legs and long rails: 6 buttons``."""

    guests: tuple[Reference, ...]
    join: Join
    glued: bool
    span: Span


@dataclass(frozen=True, slots=True)
class LimitLine:
    """``at most 620 high, the window sill`` / ``bay at least 600 wide, the crates``.

    `subject` None is the whole piece.  `dimension` is width, depth, height, length, thickness or
    top (``seat top between 440 and 460``: how high its top stands).  `why` is the rest as written.
    """

    subject: Reference | None
    dimension: str
    least: Sum | None
    most: Sum | None
    why: str | None
    span: Span


@dataclass(frozen=True, slots=True)
class PlaceLine:
    """``place outdoors``, ``for children``, ``built in place``: where it stands, who uses it.

    `kind` is also how damp it is there, of ``stands in an unheated room``: heated, unheated, damp.
    """

    kind: str
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


@dataclass(frozen=True, slots=True)
class Parameter:
    """``board = 18 mm, 12 mm to 30 mm``: a parameter of a pattern, its default and its range."""

    name: str
    default: Sum | None
    least: Sum | None
    most: Sum | None
    span: Span


@dataclass(frozen=True, slots=True)
class PatternBlock:
    """``pattern leg base with width, depth, height, leg = 45 mm`` ... ``end``.

    `notes` holds the lines between, read with the names of the pattern alone; its width, depth and
    height are those of the instance.
    """

    name: str
    written: str
    name_span: Span
    parameters: tuple[Parameter, ...]
    notes: Notes
    span: Span


Statement = (
    PieceLine
    | NoteLine
    | UnitsLine
    | OverallLine
    | TimberLine
    | HaveLine
    | InventoryLine
    | ValueLine
    | PartsLine
    | OpeningLine
    | JointLine
    | FeatureLine
    | GlueLine
    | FinishLine
    | BareLine
    | OrderLine
    | MeasuredLine
    | DoneLine
    | SpoiledLine
    | LimitLine
    | PlaceLine
    | RoomLine
    | ScribeLine
    | WayInLine
    | WallLine
    | MoistLine
    | ShopAirLine
    | StandsAtLine
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
    patterns: tuple[PatternBlock, ...] = ()
