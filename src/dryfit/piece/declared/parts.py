"""One part as declared."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from dryfit.diagnostics import Span
from dryfit.piece.declared.amounts import Amount
from dryfit.piece.declared.hosts import Host


@dataclass(frozen=True, slots=True)
class FlushWith:
    """``flush with top of posts``; without hosts: flush with that side of what it joins."""

    place: str
    hosts: tuple[Host, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class SpreadWords:
    """``spread front to back, gap 8``: axis None when the line does not say.

    `ends` is the gap left at either end as the line says it: same, no or half; else None.  `along`
    is the axis that its contacts give a row whose line says none.  `ripped` says which boards of a
    width are ripped so that they fill their row: last, or outer; None where all are of one width.
    """

    axis: int | None
    gap: Amount | None
    span: Span
    ends: str | None = None
    along: int | None = None
    ripped: str | None = None


@dataclass(frozen=True, slots=True)
class SplayWords:
    """How parts lean outwards: mm sideways per mm of height, exact, along x and along y.

    Where the line does not say which way (`way_unsaid`) both are that slope, and a copy leans to
    the sides at which it stands.  `rounded` holds angles as written, in degrees, with the slope
    that each was rounded to.  Of `boards` on edge, the sides of a box, it is the top that leans
    outwards; of legs it is the foot.
    """

    across: Fraction
    deep: Fraction
    way_unsaid: bool
    rounded: tuple[tuple[Fraction, Fraction], ...]
    span: Span
    boards: bool = False


@dataclass(frozen=True, slots=True)
class HeightList:
    """``up 78, 262, 446``: the distances of copy after copy from a side of the overall box."""

    axis: int
    side: int
    amounts: tuple[Amount, ...]


@dataclass(frozen=True, slots=True)
class OnHost:
    """``15 below the top``: distances from a side of what the part lies on, or of `hosts`.

    One amount holds for all copies, several are a list, one for each.  `beyond` is ``15 below
    rails``: the part lies wholly on that side of them, and the distance is the room between.
    """

    axis: int
    side: int
    amounts: tuple[Amount, ...]
    hosts: tuple[Host, ...]
    span: Span
    beyond: bool = False


@dataclass(frozen=True, slots=True)
class GapAround:
    """``gap 2 up and down, 1 at ends``: the play of what is in an opening.

    `axis` None is every axis; `side` 0 is both sides; `ends` the two ends of its length.
    """

    amount: Amount
    axis: int | None
    side: int
    ends: bool


@dataclass(frozen=True, slots=True)
class SizeLimit:
    """``480 to 500 wide``: what a size or the top of a part may come to; `why` as written.

    `dimension`: length, width, thickness, height, depth or top.
    """

    dimension: str
    least: Amount | None
    most: Amount | None
    why: str | None
    span: Span


@dataclass(frozen=True, slots=True)
class WoodWish:
    """What is asked of the wood: see `notes.tree.WoodWords`."""

    kind: str
    words: tuple[str, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class BoughtWords:
    """That a part is bought: what it goes with, and when it is ordered, as written.

    `round_size` are the sizes as typed where one is a diameter, else empty.  `kilograms` is what
    each weighs, None where its line does not say.
    """

    goes_with: tuple[Host, ...]
    order: str | None
    round_size: str = ""
    kilograms: Fraction | None = None


@dataclass(frozen=True, slots=True)
class LoadWords:
    """What a part carries: see `notes.tree.Carries`."""

    kind: str | None
    kilograms: Fraction | None
    every: Fraction | None
    span: Span


@dataclass(frozen=True, slots=True)
class LipWords:
    """Which edges of a sheet are covered, and with what: see `notes.tree.Lipped`."""

    banded: bool
    thickness: Amount | None
    timber: str | None
    places: tuple[tuple[str, Span], ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Supply:
    """``bought 2 knobs, 30 dia, for doors``: what is bought and has no place; `size` as typed."""

    name: str
    written: str
    count: int
    size: str
    words: BoughtWords
    span: Span


@dataclass(frozen=True, slots=True)
class DeclaredPart:
    """One part's line.

    `axes` are the piece axes of length, width and thickness; `sizes` what the line says of them.
    `set_in` maps an axis to its amount; axis None stands for the horizontal axes on which a copy
    has a side, or both where it has none.  `insets` holds what is said of one side alone: (axis,
    side, amount), meant for the copies at that side and for those at none; side 0 stands for both
    ends.  `froms` holds up, down and ``from`` phrases as distances of the part's near face from a
    side of the overall box: (axis, side, amount).  `assumed` are the sentences about how it lies
    that no word on the line decides, with the words that say so.

    `lists` are heights or distances of copy after copy; `offsets` distances from sides of what it
    lies on; `gaps` and `apart` the play in an opening; `lapping` how far it reaches over an edge.
    `handed` is where the line says that the copies are mirrored; `limits` and `wood` are what it
    asks of its sizes and of its wood; `bought` that it is not made here.
    `within` names the instance of a pattern inside which the part stands: its overall box is that
    instance, of which each copy holds `count` divided by the instance's count.  `instance` names
    the pattern of which this is itself an instance: a box without wood.  `fitted` says how it comes
    to fit its opening, where the line does: as drawn, to measure or plane.  `horns` is what it is
    longer at each end until it is glued, `splay` how its copies lean outwards.  `cut` is how its
    boards are sawn, where the line says so.  `spare` is how many blanks more are made of it,
    `rested` how many minutes its wood lies on stickers while it is milled, None by the rules.
    `staves` is 0 where it is glued from boards of which the line does not say how many.
    `lips` cover edges of a sheet, which its sizes count in.
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
    lists: tuple[HeightList, ...] = ()
    offsets: tuple[OnHost, ...] = ()
    gaps: tuple[GapAround, ...] = ()
    apart: Amount | None = None
    lapping: Amount | None = None
    handed: Span | None = None
    wood: tuple[WoodWish, ...] = ()
    bought: BoughtWords | None = None
    within: str | None = None
    instance: str | None = None
    insets: tuple[tuple[int, int, Amount], ...] = ()
    fitted: str = ""
    horns: Amount | None = None
    cut: str | None = None
    splay: SplayWords | None = None
    carries: LoadWords | None = None
    spare: int = 0
    rested: int | None = None
    lips: tuple[LipWords, ...] = ()


def amounts_of(part: DeclaredPart) -> Iterator[Amount]:
    """Yield every amount on a part's line that may lean on other sizes."""
    found = (
        *part.sizes,
        *(amount for _, amount in part.set_in),
        *(amount for _, _, amount in (*part.insets, *part.froms)),
        *(amount for each in part.lists for amount in each.amounts),
        *(amount for each in part.offsets for amount in each.amounts),
        *(gap.amount for gap in part.gaps),
        *(lip.thickness for lip in part.lips),
        part.set_back,
        part.apart,
        part.lapping,
        part.horns,
        part.spread.gap if part.spread else None,
    )
    yield from (amount for amount in found if amount is not None)
