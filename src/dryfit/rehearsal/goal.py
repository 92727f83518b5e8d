"""What the rehearsal wants: the placed boxes, the joint regions, and what the notes ask for.

Plain data, filled from the placed piece.  Lengths are exact mm in Fractions, durations in tenths of
a minute.  Nothing here says how a joint is cut: a half lap is a region that two copies share.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.geometry.frame import Frame
from dryfit.geometry.lean import Lean

Range = tuple[Fraction, Fraction]
Ranges = tuple[Range, Range, Range]
"""Along from R, across from E, deep from F; mm."""


@dataclass(frozen=True, slots=True)
class Mark:
    """What laying out draws on a part: a named cut in the part's own coordinates.

    Work that no stop or fence guides follows its marks.  `kind` is the contract's word (end lap,
    hole, taper, ...); `surface` the surface that is cut into.  A `declared` mark has no mate: the
    notes ask for it as a shape of its own, cut `after` a glue-up if they say so; its `shape` is
    taper, bevel or curve where that is no trench.  A slanting one (taper, bevel, mitre) gets deeper
    `toward` a surface beside that.  A socket whose sides slope is cut as a box that is right at
    half its depth; its `halves` say which way it is narrow, and so which way it holds.
    """

    id: str
    kind: str
    surface: str
    ranges: Ranges
    hands: tuple[str, ...]
    declared: bool
    after: str | None
    toward: str | None = None
    halves: tuple[Ranges, ...] = ()
    shape: str | None = None


@dataclass(frozen=True, slots=True)
class WantedCopy:
    """A copy where it stands in the finished piece; `box` is its outside, in the piece frame."""

    name: str
    hand: str
    box: Box
    frame: Frame
    lean: Lean | None = None
    """Where it leans it is placed upright, and stands so aslant in truth."""


@dataclass(frozen=True, slots=True)
class Waits:
    """A size (length, width) that follows a measurement: its name, and what it lies between.

    `between` names copies that have to be glued by then; none where the joints of the part tell.
    """

    size: str
    measurement: str
    between: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class WantedLip:
    """A strip of solid wood, or banding, on an edge or end of a sheet; it is so thick when flush.

    The part's box holds it: the core is less by it.
    """

    surface: str
    thickness: Fraction
    banded: bool


@dataclass(frozen=True, slots=True)
class WantedPart:
    """Equal copies; `stock` is ``solid`` or ``sheet``.

    A panel is glued from so many `staves`.  `made` parts come from offcuts, sawn to their size as
    they are needed.  What a size `waits` for is a measurement of the piece.
    """

    name: str
    stock: str
    staves: int
    made: bool
    waits: tuple[Waits, ...]
    copies: tuple[WantedCopy, ...]
    marks: tuple[Mark, ...]
    horns: Fraction = Fraction(0)
    """What each end is longer until the part is glued."""
    sloped: tuple[Fraction, Fraction] | None = None
    """Of a leaning part: the length that it is sawn to, and where laying out draws its shoulder."""
    slopes_out: Fraction | None = None
    """Of the side of a box: how far its top stands out, mm for each mm of height."""
    timber: str | None = None
    """What it is made of, where the notes say so."""
    lips: tuple[WantedLip, ...] = ()
    waney: frozenset[str] = frozenset()
    """Edges (E, E2) that stay as they grew."""
    stays_straight: bool = False
    """A stile of a door, a part of a drawer, a long rail."""
    rested: int | None = None
    """How many tenths of a minute its wood is to rest, where the notes say so."""


@dataclass(frozen=True, slots=True)
class Pegs:
    """How many pegs hold a tenon, how thick, and how far they draw it to its shoulder; mm."""

    count: int
    diameter: Fraction
    drawn: Fraction
    slide: Fraction = Fraction(0)
    """How far the outermost tenon slides to either side, and the hole in it with it."""


@dataclass(frozen=True, slots=True)
class WantedJoint:
    """Where two copies meet: the common region, flat for butted faces, and its clearance.

    `kind` is the contract's word (half lap, mortise and tenon, housing, groove, screws, ...);
    `guest` enters or lies on `host`.  `patches` are the boxes of the region that get glue.  A
    `haunch` is a short tongue beside a tenon, which goes into the host with it.
    Its shoulder `floats` so far before the host, where no glue holds it.
    What `stands_out` of it, as a tenon right through, is made level later.
    `loose_pieces` are the boxes around dowels and the like, which lie in both copies.
    """

    id: str
    kind: str
    guest: str
    host: str
    region: Box
    clearance: Fraction
    patches: tuple[Box, ...]
    haunch: Box | None = None
    pegs: Pegs | None = None
    loose_pieces: tuple[Box, ...] = ()
    sliding_room: tuple[Box, ...] = ()
    """What stays empty beside tenons that slide in their mortises."""
    stands_out: bool = False
    floats: Fraction = Fraction(0)

    def normal(self) -> int:
        """Return the axis across which the copies touch, where the region is flat."""
        return next(axis for axis in range(3) if self.region.extent(axis) == 0)

    def entering(self) -> tuple[Box, ...]:
        """Return the boxes in which the two copies meet."""
        return (self.region,) if self.haunch is None else (self.region, self.haunch)


@dataclass(frozen=True, slots=True)
class WantedAssembly:
    """A glue-up: the copies and earlier assemblies in it, its glue, and a cure that the notes set.

    `stage` is its name in the notes, which several equal ones share; `glue` is None for the shop's
    own; `cure` tenths of a minute in the clamps, None for what the glue needs.  `pressed` by
    weights, tape or pins it takes no clamps; `people` is how many the notes want for it.
    """

    name: str
    stage: str
    of: tuple[str, ...]
    glue: str | None
    cure: int | None
    pressed: bool = False
    people: int = 1


@dataclass(frozen=True, slots=True)
class WantedCoats:
    """How a copy is finished: the products in their order with how often each goes on.

    `before` is the assembly before whose glue-up it is done, or None; `apart` the least tenths
    between coats of each product, None for what the product needs.
    """

    copies: tuple[str, ...]
    subject: str
    products: tuple[tuple[str, int | None, int | None], ...]
    before: str | None
    surfaces: str


@dataclass(frozen=True, slots=True)
class WantedStrip:
    """A strip for a lip: `on` which copy and surface, and of which part of the cut list.

    `sizes` are the least that it can have: as long as what it covers, as wide as that is thick.
    """

    name: str
    part: WantedPart
    on: tuple[str, str]
    sizes: tuple[Fraction, Fraction, Fraction]


@dataclass(frozen=True, slots=True)
class Goal:
    """All that the finished piece has to be."""

    overall: tuple[Fraction, Fraction, Fraction]
    parts: tuple[WantedPart, ...]
    joints: tuple[WantedJoint, ...]
    assemblies: tuple[WantedAssembly, ...]
    coats: tuple[WantedCoats, ...]
    fitted: tuple[str, ...]
    """Parts and bought things that are fitted last, without glue."""
    strips: tuple[WantedStrip, ...] = ()
    room: tuple[tuple[str, int, Fraction], ...] = ()
    """Walls of openings that the bench found wider than drawn: copy, axis, and how much wider.

    What stands in such an opening reaches into its wall on paper only.
    """
