"""What comes out of which board, cut by cut, and whether the wood is enough: plain records.

Places on a board are in exact mm: along it from its left end as it lies, across it from the edge
towards the maker.  The cuts tell the same from the freshly sawn end or edge of the piece in hand.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from dryfit.diagnostics import Span
from dryfit.piece.declared import Have

Verdict = Literal["enough", "not enough", "not found"]
Reach = tuple[Fraction, Fraction]
"""From, to."""


@dataclass(frozen=True, slots=True)
class StockBoard:
    """One board, offcut, slab, sheet or strip: one of those that its line counts.

    `label` is a capital letter (``A``, after ``Z`` ``AA``); blanks have small ones.  `line` is the
    line of the notes, or of the inventory.  A board that is not `on_hand` would have to be bought.
    """

    label: str
    line: Have
    on_hand: bool = True

    @property
    def sizes(self) -> tuple[Fraction, Fraction, Fraction]:
        """Length, width at the wider end, and thickness as measured, in mm.

        A board without one of them is never laid out.
        """
        line = self.line
        long, wide = line.sizes[0], line.widest
        thick = line.sizes[2] if line.measured is None else line.measured
        assert long is not None
        assert wide is not None
        assert thick is not None
        return long, wide, thick


@dataclass(frozen=True, slots=True)
class NamedBlank:
    """One rough piece that is sawn out of a board.

    `name` is ``post blank 1``, `letter` what stands in it on drawings, `subject` what the deeds on
    it are of (``post``, ``top stave``), `pieces` the copies or staves that it becomes, none for a
    spare or a test piece.  `length`, `width` and `thickness` are what is cut, in mm; the allowances
    are what of each is lost until the pieces have their sizes, saw cuts between them included.
    `reason` says what decides its length.  It is resawn into `leaves` where that is more than 1.
    `what` is ``part``, ``spare`` or ``test piece``.  What is fed through the planer
    `between_strips` has no length to spare at its ends.  `if_room` is laid out without being asked
    for, where room is left.
    """

    name: str
    letter: str
    subject: str
    part: str
    pieces: tuple[str, ...]
    length: Fraction
    width: Fraction
    thickness: Fraction
    allowance: tuple[Fraction, Fraction, Fraction]
    reason: str = ""
    leaves: int = 1
    what: str = "part"
    between_strips: bool = False
    if_room: bool = False


@dataclass(frozen=True, slots=True)
class SawCut:
    """One cut right through the piece in hand, numbered on each board from 1.

    `after` is the cut that the piece in hand came from, None for the whole board: what fell at its
    reference end or edge (`side` ``first``) or what was left beyond it (``rest``).  `at` is the
    size of what falls, from the fresh end (crosscut) or edge (rip) of the piece in hand to the saw;
    `kerf` what the saw takes beyond.  `stage` counts turns of direction from 1; 0 takes a raw end
    or edge off.  `along` and `across` are the piece in hand as it lies in the board.
    `first` and `rest` name the blanks that come out of each side, in the end; none is waste.
    """

    number: int
    after: int | None
    side: Literal["", "first", "rest"]
    saw: Literal["crosscut", "rip"]
    at: Fraction
    kerf: Fraction
    stage: int
    along: Reach
    across: Reach
    first: tuple[str, ...]
    rest: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Placed:
    """Where a blank lies in its board.

    The reach is what is sawn: as large as the blank, with its length across where it is `turned`;
    but wider at the rough far edge of a board where it is too short to be ripped there once more.
    """

    blank: NamedBlank
    along: Reach
    across: Reach
    turned: bool = False


@dataclass(frozen=True, slots=True)
class Fallen:
    """What falls and becomes nothing.  `clear` is what of it is sound, as (along, across)."""

    along: Reach
    across: Reach
    clear: tuple[Reach, Reach] | None
    keep: bool


@dataclass(frozen=True, slots=True)
class BoardLayout:
    """One board and how it is cut; blanks, what falls and kerfs together are the board."""

    board: StockBoard
    placed: tuple[Placed, ...]
    cuts: tuple[SawCut, ...]
    fallen: tuple[Fallen, ...]

    @property
    def used(self) -> Fraction:
        """The share of the board's face that becomes blanks, 0 to 1."""
        long, wide, _ = self.board.sizes
        faces = [
            (one.along[1] - one.along[0]) * (one.across[1] - one.across[0]) for one in self.placed
        ]
        return sum(faces, Fraction(0)) / (long * wide)

    def worth(self, fallen: Fallen) -> tuple[Reach, Reach]:
        """Return what of a leftover is told and kept: of a slab without bark and taper."""
        line = self.board.line
        if fallen.clear is not None and (line.waney or line.other_width is not None):
            return fallen.clear
        return fallen.along, fallen.across


SPARE = "spare: "
"""With this begins why no wood is left for a spare; the part itself has its wood."""


@dataclass(frozen=True, slots=True)
class Lacking:
    """Copies of a part for which there is no wood, and why not; `span` is where it is told of."""

    part: str
    copies: int
    why: str
    span: Span | None = None


@dataclass(frozen=True, slots=True)
class Bought:
    """So many boards of a ``buy`` line; `price` of them all, None where the line says none.

    Without `at_yard` no line says what the yard sells: then `line` is a board that would do, like
    one on hand or in the least round sizes, and no layout has it.
    """

    line: Have
    count: int
    price: Fraction | None
    at_yard: bool = True


@dataclass(frozen=True, slots=True)
class FirstToBuy:
    """A board that gives one more of a blank, that of which a mistake costs the most (M28)."""

    board: Bought
    blank: NamedBlank


@dataclass(frozen=True, slots=True)
class LaidOut:
    """All wood of a piece laid out.

    `verdict` is ``enough`` (the layouts hold every blank), ``not enough`` (`proofs` say in words
    why no way of cutting can do it) or ``not found``.  It is of the wood on hand; boards to buy are
    among the `layouts` of the others, with what they hold, where the notes say what the yard sells.
    `missing` is what the wood on hand does not give.  `blanks` are all of them, laid out or not;
    those for test pieces and spares that find no room are left out.  `unlisted` are parts of a wood
    that no line tells of: nothing is said of them.  `way` says in what the parts are made another
    way than usual so that the wood suffices.  `spare_room` is, where all is laid out, how much
    longer or wider than they are the blanks could be that lie tightest, in mm, on the board
    `tightest`; None where the wood is not enough.  `spare_board` stays whole and could take its
    place, None where no board could; then `first_to_buy` is what gives a
    spare, if anything does.  `searched` counts the work.
    """

    verdict: Verdict
    proofs: tuple[str, ...]
    boards: tuple[StockBoard, ...]
    blanks: tuple[NamedBlank, ...]
    layouts: tuple[BoardLayout, ...]
    missing: tuple[Lacking, ...]
    buy: tuple[Bought, ...]
    searched: int
    spare_room: Fraction | None = None
    tightest: str = ""
    spare_board: str | None = None
    first_to_buy: FirstToBuy | None = None
    unlisted: tuple[str, ...] = ()
    way: str = ""

    @property
    def placed(self) -> dict[str, BoardLayout]:
        """The layout that holds each blank, by the blank's name."""
        return {one.blank.name: layout for layout in self.layouts for one in layout.placed}
