"""The cuts of all layouts, each with its piece in hand and the blanks that it frees."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from dryfit.placing.model import Model
from dryfit.plan.sawing import Becomes, BoardCut
from dryfit.stock.laid_out import BoardLayout, LaidOut, NamedBlank, SawCut, StockBoard
from dryfit.stock.telling.in_hand import halves

Rank = tuple[bool, int, str]
"""By which of several blanks a cut is called: no spare, the first in the notes, by name."""


@dataclass(frozen=True, slots=True)
class LayoutCut:
    """A cut of a layout.

    `owner` is the blank after which it is called.  `run` is the number of the cut with which a row
    of cuts in one direction through one piece begins; `whole` is whether that piece is the board,
    but for its raw ends and edges.  `last_of` are the blanks that no other cut in this direction
    comes to, `freed` those that are cut all round with it.  `letters` are those of the blanks that
    come out of what falls.  `keep` is whether what falls, and what is left, is worth keeping.
    """

    board: StockBoard
    cut: SawCut
    run: int
    owner: NamedBlank
    first: Becomes | None
    rest: Becomes | None
    last_of: tuple[NamedBlank, ...]
    freed: tuple[NamedBlank, ...]
    whole: bool = False
    letters: tuple[str, ...] = ()
    keep: tuple[bool, bool] = (False, False)

    @property
    def key(self) -> tuple[str, int]:
        """Return what names the cut: its board and its number."""
        return self.board.label, self.cut.number

    @property
    def parent(self) -> tuple[str, int] | None:
        """Return the key of the cut that the piece in hand came from."""
        return None if self.cut.after is None else (self.board.label, self.cut.after)

    @property
    def length(self) -> Fraction:
        """Return how long the piece in hand is, in mm."""
        return self.cut.along[1] - self.cut.along[0]

    @property
    def width(self) -> Fraction:
        """Return how wide the piece in hand is, in mm."""
        return self.cut.across[1] - self.cut.across[0]

    @property
    def trims(self) -> bool:
        """Return whether it only takes a raw end or edge off, or bark that the saw takes whole."""
        return self.cut.stage == 0 or self.cut.at == 0

    @property
    def along_bark(self) -> bool:
        """Return whether the edge that its figure counts from is still that of a waney slab."""
        return self.board.line.waney > 1 and self.cut.saw == "rip" and not self.cut.across[0]

    @property
    def has_bark(self) -> bool:
        """Return whether an edge of the piece in hand is still that of a waney slab."""
        low, high = self.cut.across
        waney = self.board.line.waney
        return (waney > 1 and not low) or (waney > 0 and high == self.board.sizes[1])

    def for_plan(self) -> BoardCut:
        """Return the cut as a plan carries it."""
        cut = self.cut
        return BoardCut(
            self.board.label,
            cut.number,
            cut.after,
            cut.side,
            cut.saw,
            cut.at,
            cut.kerf,
            self.first,
            self.rest,
        )


def layout_cuts(laid: LaidOut, model: Model) -> tuple[LayoutCut, ...]:
    """Return the cuts of all boards that become parts of the piece, board by board."""
    ranks = {blank.name: _rank(blank, model) for blank in laid.blanks}
    return tuple(cut for layout in laid.layouts for cut in _cuts_of(layout, ranks))


def _rank(blank: NamedBlank, model: Model) -> Rank:
    order = {part.name: index for index, part in enumerate(model.parts)}
    return not blank.pieces, order.get(blank.part, len(order)), blank.name


def _cuts_of(layout: BoardLayout, ranks: Mapping[str, Rank]) -> list[LayoutCut]:
    cuts = {cut.number: cut for cut in sorted(layout.cuts, key=lambda cut: cut.number)}
    blanks = {one.blank.name: one.blank for one in layout.placed}
    next_of: dict[tuple[int | None, str], SawCut] = {
        (cut.after, cut.side): cut for cut in cuts.values()
    }
    owners = _owners(cuts, blanks, next_of, ranks)
    runs: dict[int, int] = {}
    whole: dict[int, bool] = {}
    for number, cut in cuts.items():
        before = cuts.get(cut.after) if cut.after is not None else None
        goes_on = before is not None and cut.side == "rest" and before.saw == cut.saw
        runs[number] = runs[before.number] if before is not None and goes_on else number
        trimmed = before is None or (before.stage == 0 and cut.side == "rest")
        whole[number] = trimmed and (before is None or whole[before.number])
    ways = {name: _way_to(name, cuts) for name in blanks}
    return [
        LayoutCut(
            board=layout.board,
            cut=cut,
            run=runs[number],
            owner=owners[number],
            first=_becomes(layout, cut.first, ended=(number, "first") not in next_of),
            rest=_becomes(layout, cut.rest, ended=(number, "rest") not in next_of),
            last_of=tuple(
                blanks[name]
                for name, way in ways.items()
                if number == max((one for one in way if cuts[one].saw == cut.saw), default=None)
            ),
            freed=tuple(blanks[name] for name, way in ways.items() if way and way[-1] == number),
            whole=whole[runs[number]],
            letters=tuple(blanks[name].letter for name in cut.first),
            keep=_kept(layout, cut),
        )
        for number, cut in cuts.items()
        if number in owners
    ]


def _owners(
    cuts: Mapping[int, SawCut],
    blanks: Mapping[str, NamedBlank],
    next_of: Mapping[tuple[int | None, str], SawCut],
    ranks: Mapping[str, Rank],
) -> dict[int, NamedBlank]:
    """Return the blank that each cut frees first.

    Where waste falls it is that of the next cut in its row, where only a spare does that of an
    equal cut before it.
    """
    owners: dict[int, NamedBlank] = {}
    for number, cut in sorted(cuts.items(), reverse=True):
        follower = next_of.get((number, "rest"))
        names = cut.first or cut.rest
        if not cut.first and follower is not None and follower.number in owners:
            owners[number] = owners[follower.number]
        elif names:
            owners[number] = blanks[min(names, key=ranks.__getitem__)]
    for number, cut in cuts.items():
        before = cuts.get(cut.after) if cut.after is not None and cut.side == "rest" else None
        in_a_row = before is not None and before.saw == cut.saw and before.at == cut.at
        if in_a_row and number in owners and cut.after in owners and not owners[number].pieces:
            owners[number] = owners[cut.after]
    return owners


def _way_to(name: str, cuts: Mapping[int, SawCut]) -> tuple[int, ...]:
    """Return the cuts that a blank comes out of, one out of the other."""
    return tuple(
        number for number, cut in sorted(cuts.items()) if name in cut.first or name in cut.rest
    )


def _becomes(layout: BoardLayout, names: tuple[str, ...], *, ended: bool) -> Becomes | None:
    """Return the blank that one side of a cut is."""
    if not names or not ended:
        return None
    blank = next(one.blank for one in layout.placed if one.blank.name == names[0])
    return Becomes(blank.name, blank.letter, blank.pieces, blank.leaves)


def _kept(layout: BoardLayout, cut: SawCut) -> tuple[bool, bool]:
    """Return whether each side of a cut falls, and is worth keeping."""
    kept = {(fallen.along, fallen.across) for fallen in layout.fallen if fallen.keep}
    first, rest = halves(cut)
    return first in kept, rest in kept
