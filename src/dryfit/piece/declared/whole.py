"""The whole declared piece."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING

from dryfit.diagnostics import Source, Span
from dryfit.piece.declared.air import AirWords
from dryfit.piece.declared.amounts import Amount
from dryfit.piece.declared.cuts import DeclaredFeature
from dryfit.piece.declared.hosts import Host
from dryfit.piece.declared.joints import Contact, Opening
from dryfit.piece.declared.parts import DeclaredPart, SizeLimit, Supply
from dryfit.piece.declared.patterns import Instance
from dryfit.piece.declared.progress import Done, Measured, Spoiled
from dryfit.piece.declared.work import BareWords, FinishWords, Stage, WishWords
from dryfit.quantities import Display

if TYPE_CHECKING:
    # Few notes say where the piece will stand; for the others it is not loaded.
    from dryfit.piece.declared.site import PlaceWords

_NOTHING_SAID = AirWords()


@dataclass(frozen=True, slots=True)
class Price:
    """What the yard asks: `amount` of money for one piece, or for each unit of size.

    `per` is piece, metre, foot, square metre, square foot, cubic metre or board foot.  `currency`
    is how the money is called on paper (``€``), nothing where the notes do not say; all prices of
    a piece are in one.
    """

    amount: Fraction
    per: str
    currency: str = ""


@dataclass(frozen=True, slots=True)
class Avoid:
    """Wood of a board that nothing is made of, in mm, as `why` says: a knot, a split, sapwood.

    `along` counts from the board's reference end, the left one; `across` from its reference edge,
    the one towards the maker.  None is the whole length, or the whole width.
    """

    along: tuple[Fraction, Fraction] | None
    across: tuple[Fraction, Fraction] | None
    why: str
    span: Span


@dataclass(frozen=True, slots=True)
class Have:
    """A ``have`` or ``buy`` line: sizes length, width, thickness in mm, None where not written.

    `kind` is board, offcut, slab, sheet or strip; `offcut` says that a sheet is called one.  `cup`
    is the hollow over the whole width, `bow` over the whole length, `twist` how far the fourth
    corner lifts; in mm, 0 where not written.  `moisture` is what its wood holds in percent, None
    where the line does not say.

    A board is `rough`, `hit_and_miss` (planed here and there) or, neither, planed; `state_said` is
    whether its line says so.  `other_width` is what a slab is wide at its other end, None where it
    is as wide as here; `waney` counts its edges under bark, 0 to 2.  `grain` is whether a sheet has
    one, `grain_said` whether its line says so; `measured` what its thickness measures, where
    `sizes` say what it is called, `measure_said` whether it was measured or is to be as others of
    its name are.  `avoid` is wood that nothing is made of.  `price` is what the
    yard asks, `at_most` how many it has; on a ``buy`` line alone.
    `inventory` is the file that lists it, nothing for the notes themselves.
    """

    count: int
    kind: str
    timber: str | None
    sizes: tuple[Fraction | None, Fraction | None, Fraction | None]
    rough: bool
    text: str
    span: Span
    cup: Fraction = Fraction(0)
    bow: Fraction = Fraction(0)
    twist: Fraction = Fraction(0)
    moisture: Fraction | None = None
    hit_and_miss: bool = False
    other_width: Fraction | None = None
    waney: int = 0
    grain: bool = True
    grain_said: bool = True
    measured: Fraction | None = None
    measure_said: bool = True
    avoid: tuple[Avoid, ...] = ()
    price: Price | None = None
    at_most: int | None = None
    state_said: bool = True
    offcut: bool = False
    inventory: str = ""

    @property
    def widest(self) -> Fraction | None:
        """How wide it is at the wider end, in mm; None where its line does not say."""
        width = self.sizes[1]
        return width if width is None else max(width, self.other_width or width)

    @property
    def place(self) -> str:
        """Where it is told of: ``line 4``, or ``line 4 of offcuts.dryfit``."""
        of = f" of {self.inventory}" if self.inventory else ""
        return f"line {self.span.line}{of}"

    @property
    def warped(self) -> bool:
        """Whether the line says by how much the board is out of flat."""
        return bool(self.cup or self.bow or self.twist)


@dataclass(frozen=True, slots=True)
class PieceLimit:
    """A `SizeLimit` with the part or opening that it is of; None for the whole piece."""

    subject: Host | None
    limit: SizeLimit


@dataclass(frozen=True, slots=True)
class SumRead:
    """A sum as it was read: whose it is, the sum with its names said in full, what it comes to.

    `amount` is None where it is no length.
    """

    name: str
    words: str
    amount: Amount | None
    span: Span


@dataclass(frozen=True, slots=True)
class Declared:
    """The whole declared piece; `broken` names what a reported mistake left unknown.

    `cut` is how the timber of all parts is sawn, where a line says so.  `stock` is the wood on
    hand, `yard` what can be bought.
    """

    piece: str
    source: Source
    display: Display
    overall: tuple[Amount | None, Amount | None, Amount | None]
    timber: str | None
    parts: tuple[DeclaredPart, ...]
    contacts: tuple[Contact, ...]
    features: tuple[DeclaredFeature, ...]
    stages: tuple[Stage, ...]
    finishes: tuple[FinishWords, ...]
    wishes: tuple[WishWords, ...]
    stock: tuple[Have, ...]
    notes: tuple[str, ...]
    broken: frozenset[str]
    openings: tuple[Opening, ...] = ()
    bare: tuple[BareWords, ...] = ()
    measured: tuple[Measured, ...] = ()
    done: tuple[Done, ...] = ()
    spoiled: tuple[Spoiled, ...] = ()
    limits: tuple[PieceLimit, ...] = ()
    outdoors: Span | None = None
    sums: tuple[SumRead, ...] = ()
    instances: tuple[Instance, ...] = ()
    supplies: tuple[Supply, ...] = ()
    timber_span: Span | None = None
    place: PlaceWords | None = None
    cut: str | None = None
    air: AirWords = _NOTHING_SAID
    yard: tuple[Have, ...] = ()

    def part(self, name: str) -> DeclaredPart | None:
        """Return the part of that name, or None."""
        for part in self.parts:
            if part.name == name:
                return part
        return None
