"""What comes out: layouts as trees of cuts, and what can be said of the stock."""

from dataclasses import dataclass
from typing import Literal

from dryfit.cutting.problem import Area

Saw = Literal["crosscut", "rip"]
Side = Literal["", "first", "rest"]


@dataclass(frozen=True, slots=True)
class Cut:
    """One cut right through the piece in hand.

    after, side  the piece in hand: what falls at the reference end or edge of cut number `after`
                 ("first"), or what is left beyond it ("rest"). Cut 1 takes the whole board
    saw          a crosscut goes across the board, a rip along it
    at           from the fresh end (crosscut) or edge (rip) of the piece in hand to the saw; what
                 falls there is so long or wide
    kerf         wood that the saw takes beyond that; less than the saw's kerf where less is left
    stage        how often the direction has turned, the first one counted as 1; 0 for the cut
                 that takes the raw end off
    piece        the piece in hand, as it lies in the board
    """

    number: int
    after: int | None
    side: Side
    saw: Saw
    at: int
    kerf: int
    stage: int
    piece: Area


def stage_after(before: Cut | None, saw: Saw) -> int:
    """The stage of a cut on a piece that came from the cut `before`, None for the whole board."""
    if before is None or before.stage == 0:
        return 1
    return before.stage + (before.saw != saw)


@dataclass(frozen=True, slots=True)
class Piece:
    """Where the `copy`-th blank (from 1) of a part lies; turned if its length runs across."""

    part: str
    copy: int
    area: Area
    turned: bool = False


@dataclass(frozen=True, slots=True)
class Leftover:
    """What falls and is no part. `clear` is the largest rectangle in it that touches no zone."""

    area: Area
    clear: Area | None
    keep: bool


@dataclass(frozen=True, slots=True)
class Layout:
    """One board and how it is cut. `copy` counts boards of one id from 1.

    Pieces, leftovers and kerfs together are the board, with nothing over.
    """

    board: str
    copy: int
    cuts: tuple[Cut, ...]
    pieces: tuple[Piece, ...]
    leftovers: tuple[Leftover, ...]


@dataclass(frozen=True, slots=True)
class Missing:
    """Copies of a part that no layout holds."""

    part: str
    copies: int


@dataclass(frozen=True, slots=True)
class Proof:
    """Why the stock cannot be enough, however it is cut.

    bound   "part": a part fits no board alone. "area": the parts of one kind of wood take more
            than all boards that they fit have, kerfs counted. "boards": every way to share the
            parts out to the boards asks too much of one of them
    parts   what cannot all be cut
    needed  what these parts take at least, there: what the boards have. Square hundredths of a
            millimetre; for "part" the hundredths of the size that is short (length, width or
            thickness, in `size`); both 0 for "boards"
    steps   how many partial sharings were looked at
    """

    bound: Literal["part", "area", "boards"]
    parts: tuple[str, ...]
    needed: int = 0
    there: int = 0
    size: Literal["", "length", "width", "thickness", "material"] = ""
    steps: int = 0


@dataclass(frozen=True, slots=True)
class Answer:
    """Whether the stock is enough.

    verdict  "enough": `layouts` hold every part. "not enough": `proofs` say why. "not found":
             neither a layout nor a proof
    layouts  the best found; without "enough" they lack what is `missing`
    value, price  of the boards that the layouts take
    proofs   one for each part that fits no board; else one of all parts together
    work     counted steps of the search
    least    whether it is proved that no boards of less worth hold everything: by price, then by
             what is kept for last, by value, and by size
    """

    verdict: Literal["enough", "not enough", "not found"]
    layouts: tuple[Layout, ...]
    missing: tuple[Missing, ...]
    proofs: tuple[Proof, ...]
    value: int
    price: int
    work: int
    least: bool = False
