"""The declared piece: what the maker wrote, with sums worked out to exact millimetres.

Nothing is placed or derived here.  Directions and places are the words of the notes; every
entry carries the span that it came from.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.diagnostics import Source, Span
from dryfit.quantities import Display

RUN_AXIS = {"across": 0, "front to back": 1, "upright": 2, "up and down": 2}
"""The axis of each direction word: x left to right, y front to back, z up."""

PLACE_SIDE = {
    "left": (0, -1),
    "right": (0, 1),
    "front": (1, -1),
    "back": (1, 1),
    "bottom": (2, -1),
    "top": (2, 1),
}
"""Each place word as axis and side."""


@dataclass(frozen=True, slots=True)
class Behind:
    """What a sum refers to: figures by name (``overall.width``), and the lines of its values."""

    figures: tuple[str, ...] = ()
    spans: tuple[Span, ...] = ()


@dataclass(frozen=True, slots=True)
class Amount:
    """A length in mm as a line says it."""

    value: Fraction
    span: Span
    behind: Behind = Behind()


@dataclass(frozen=True, slots=True)
class PlacedAmount:
    """``5 from bottom``: an amount from a place word."""

    value: Fraction
    place: str
    span: Span


@dataclass(frozen=True, slots=True)
class JointWords:
    """A joint as declared: kind, count, its sizes by dimension, and where it sits.

    `behind` holds what all its sums refer to.
    """

    kind: str
    count: int | None
    length: Fraction | None
    width: Fraction | None
    thickness: Fraction | None
    depth: Fraction | None
    place: PlacedAmount | None
    span: Span
    behind: Behind = Behind()


@dataclass(frozen=True, slots=True)
class Host:
    """A part that is joined or leaned upon, perhaps only its copies at some places."""

    part: str
    places: tuple[str, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Contact:
    """``into legs``, ``onto rails``, ``crossing rails``...: how a part meets its hosts.

    `guest` is the part whose line or sentence it is; `own_line` tells a phrase of the part's own
    line from a separate joint line.
    """

    guest: Host
    preposition: str
    hosts: tuple[Host, ...]
    joint: JointWords | None
    own_line: bool
    span: Span


@dataclass(frozen=True, slots=True)
class FlushWith:
    """``flush with top of posts``; without hosts: flush with that side of what it joins."""

    place: str
    hosts: tuple[Host, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class SpreadWords:
    """``spread front to back, gap 8``: axis None when the line does not say."""

    axis: int | None
    gap: Amount | None
    span: Span


@dataclass(frozen=True, slots=True)
class DeclaredPart:
    """One part's line.

    `axes` are the piece axes of length, width and thickness; `sizes` what the line says of them.
    `set_in` maps an axis to its amount; axis None stands for the horizontal axes on which a copy
    has a side, or both where it has none.  `froms` holds up, down and ``from`` phrases as distances
    of the part's near face from a side of the overall box: (axis, side, amount).  `assumed` are
    the sentences about how it lies that no word on the line decides, with the words that say so.
    """

    name: str
    written: str
    count: int
    timber: str | None
    stock: str
    run: str
    axes: tuple[int, int, int]
    sizes: tuple[Amount | None, Amount | None, Amount | None]
    places: tuple[str, ...]
    places_span: Span | None
    set_in: tuple[tuple[int | None, Amount], ...]
    set_back: Amount | None
    froms: tuple[tuple[int, int, Amount], ...]
    flush: tuple[FlushWith, ...]
    spread: SpreadWords | None
    staves: int | None
    cut_after: tuple[str, Span] | None
    assumed: tuple[tuple[str, str], ...]
    name_span: Span
    span: Span


@dataclass(frozen=True, slots=True)
class DeclaredFeature:
    """A cut with no mate: ``groove in aprons: inside, 6 wide, 9 deep, 12 from top, through``."""

    kind: str
    parts: tuple[Host, ...]
    face: str
    width: Fraction
    depth: Fraction
    place: PlacedAmount
    after: str | None
    span: Span
    behind: Behind = Behind()


@dataclass(frozen=True, slots=True)
class StageItem:
    """``2 legs`` in a glue-up; count None takes all; a part or an earlier assembly."""

    count: int | None
    name: str
    places: tuple[str, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Stage:
    """``glue up 2 side frames: 2 legs, 1 short rail, cure 1 h``; cure in minutes."""

    name: str
    count: int
    items: tuple[StageItem, ...]
    cure: int | None
    name_span: Span
    span: Span


@dataclass(frozen=True, slots=True)
class FinishWords:
    """``finish hard wax oil, 2 coats, 8 h apart``; `apart` in minutes."""

    product: str
    coats: int | None
    apart: int | None
    span: Span


@dataclass(frozen=True, slots=True)
class WishAct:
    """One deed of a wish: verb or None, and the part or stage it is done to."""

    verb: str | None
    subject: str | None
    span: Span


@dataclass(frozen=True, slots=True)
class WishWords:
    """``finish seat before glue up base``."""

    first: WishAct
    then: WishAct
    span: Span


@dataclass(frozen=True, slots=True)
class Have:
    """A ``have`` line: sizes length, width, thickness in mm, None where not written."""

    count: int
    kind: str
    timber: str | None
    sizes: tuple[Fraction | None, Fraction | None, Fraction | None]
    rough: bool
    text: str
    span: Span


@dataclass(frozen=True, slots=True)
class Declared:
    """The whole declared piece; `broken` names what a reported mistake left unknown."""

    piece: str
    source: Source
    display: Display
    overall: tuple[Amount | None, Amount | None, Amount | None]
    overall_span: Span | None
    timber: str | None
    parts: tuple[DeclaredPart, ...]
    contacts: tuple[Contact, ...]
    features: tuple[DeclaredFeature, ...]
    stages: tuple[Stage, ...]
    finish: FinishWords | None
    wishes: tuple[WishWords, ...]
    stock: tuple[Have, ...]
    notes: tuple[str, ...]
    broken: frozenset[str]

    def part(self, name: str) -> DeclaredPart | None:
        """Return the part of that name, or None."""
        for part in self.parts:
            if part.name == name:
                return part
        return None
