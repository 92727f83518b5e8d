"""References, sizes and the phrases of a part's line."""

from __future__ import annotations

from dataclasses import dataclass

from dryfit.diagnostics import Span
from dryfit.notes.tree.sums import Sum


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
