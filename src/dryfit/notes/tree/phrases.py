"""The phrases of a part's line."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.diagnostics import Span
from dryfit.notes.tree.joints import Join, JointSpec
from dryfit.notes.tree.loads import Carries, Weighs
from dryfit.notes.tree.references import Offset, Reference, SizeWord, StageName
from dryfit.notes.tree.sums import Sum


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
    """``set in 30 at ends, 20 at front and back``; no word means both horizontal directions.

    Words: across, front to back, up and down, ends, or a place (front, left, top ...); several
    places give an entry each.
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
    """``up 80`` / ``up 78, 262, 446``: the underside above the floor, a height for each copy."""

    amounts: tuple[Sum, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Down:
    """``down 20`` / ``down 20, 60``: the top side below the overall height, one for each copy."""

    amounts: tuple[Sum, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class From:
    """``120 from left`` / ``78, 262 and 446 above the bottom``: the distance from a side.

    `others` are the further amounts of a list, one for each copy after the first.
    """

    offset: Offset
    span: Span
    others: tuple[Sum, ...] = ()


@dataclass(frozen=True, slots=True)
class Flush:
    """``flush with top of posts`` (hosts named) or ``flush top`` (hosts empty: what it joins)."""

    place: str
    hosts: tuple[Reference, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Spread:
    """``spread front to back, no gap at ends``; direction None when not written.

    `ends` is the gap left at either end: ``same``, ``no`` or ``half``; None when not written.
    """

    direction: str | None
    span: Span
    ends: str | None = None


@dataclass(frozen=True, slots=True)
class Ripped:
    """``the last ripped to fit`` (last) and ``both outer boards ripped alike`` (outer)."""

    which: str
    span: Span


@dataclass(frozen=True, slots=True)
class Gap:
    """``gap 8`` between neighbours of a spread; round what is in an opening ``gap 2, 1 at ends``.

    The words are those of `SetIn`.
    """

    amounts: tuple[tuple[Sum, str | None], ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Apart:
    """``3 between``: the gap between neighbours that stand in one opening."""

    amount: Sum
    span: Span


@dataclass(frozen=True, slots=True)
class Lapping:
    """``lapping 20``: how far the part reaches over the edge of what it lies on or against."""

    amount: Sum
    span: Span


@dataclass(frozen=True, slots=True)
class Horns:
    """``horns 20``: how much longer each end of a stile stays until its frame is glued."""

    amount: Sum
    span: Span


@dataclass(frozen=True, slots=True)
class Slope:
    """``1 in 8 to the sides`` (rise 1, run 8) or ``7 degrees`` (angle); exact as written.

    `way` is sides, front and back, both, or None where the line does not say.
    """

    rise: Fraction
    run: Fraction | None
    way: str | None
    span: Span


@dataclass(frozen=True, slots=True)
class Splayed:
    """``splayed 1 in 8 to the sides and 1 in 12 front and back``: how legs lean outwards."""

    slopes: tuple[Slope, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Handed:
    """``handed``: the copies are a left and a right one, mirrored."""

    span: Span


@dataclass(frozen=True, slots=True)
class SizeRange:
    """``480 to 500 wide``, ``at most 620 high``: what a size that is worked out may come to."""

    least: Sum | None
    most: Sum | None
    dimension: str
    span: Span


@dataclass(frozen=True, slots=True)
class WoodWords:
    """What is asked of the wood.

    `kind`: sawn (`words`: flatsawn, quartersawn or rift), bookmatched (`words`: one board, or
    none), waney (`words` are places), grain (a direction: upright, across, front to back), in
    sequence, one board, resawn (out of thicker boards), boards (``glued from boards``: of as many
    as serve), free widths (``from boards as they come``).
    """

    kind: str
    words: tuple[str, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Spare:
    """``1 spare``: so many more blanks of the part are made than the piece has copies."""

    count: int
    span: Span


@dataclass(frozen=True, slots=True)
class Lipped:
    """``lipped 6 thick of oak at front`` and ``edge banded all round``: edges that are covered.

    `places` are place words, ``ends``, ``long edge`` (both) or ``all``, each with where it
    stands.  `thickness` and `timber` are None where the line does not say them.
    """

    banded: bool
    thickness: Sum | None
    timber: str | None
    places: tuple[tuple[str, Span], ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Rests:
    """``3 days on stickers``: how long its wood rests while it is milled; None ``in one go``."""

    time: Sum | None
    span: Span


@dataclass(frozen=True, slots=True)
class AsPattern:
    """``as leg base: width 900, rail = 70``: an instance of a pattern with its settings."""

    pattern: str
    settings: tuple[tuple[str, Sum], ...]
    span: Span


@dataclass(frozen=True, slots=True)
class For:
    """``for doors``: what a bought thing goes with."""

    parts: tuple[Reference, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class OrderWhen:
    """``order after measured``, ``order first``: when a bought thing is ordered, as written."""

    text: str
    span: Span


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
class CutAfter:
    """``cut after glue up base``: the length waits for a measurement."""

    stage: StageName
    span: Span


@dataclass(frozen=True, slots=True)
class Fitted:
    """``cut as drawn``, ``cut to measure``, ``plane to fit``: how it comes to fit its opening.

    `way` is as drawn, to measure or plane.
    """

    way: str
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
    | Ripped
    | Gap
    | Apart
    | JointSpec
    | Join
    | Lapping
    | Horns
    | Splayed
    | Handed
    | GluedFrom
    | OfTimber
    | CutAfter
    | Fitted
    | SizeRange
    | WoodWords
    | Spare
    | Rests
    | Lipped
    | AsPattern
    | For
    | OrderWhen
    | Carries
    | Weighs
)
