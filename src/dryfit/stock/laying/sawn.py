"""From a layout in hundredths of a millimetre to boards, cuts and named blanks in exact mm.

A board with a rough edge was laid out 3 mm narrower than it is, at its far edge.  What falls there
is that much wider, and a blank that lies there is ripped to its width by one cut more; where it is
too short to be ripped it stays so much wider.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Literal

from dryfit.cutting import Area, Cut, Layout, Rules, hands, stage_after
from dryfit.stock.board_edges import rough_edge
from dryfit.stock.laid_out import (
    BoardLayout,
    Fallen,
    NamedBlank,
    Placed,
    Reach,
    SawCut,
    StockBoard,
)
from dryfit.stock.laying.one_cut import waste_in_one_cut
from dryfit.stock.laying.raw_edges import raw_edges_first
from dryfit.stock.saws import down, exact

Side = Literal["", "first", "rest"]
Hand = tuple[int | None, Side]
Names = Mapping[tuple[str, int], NamedBlank]
"""The blank that each (part, copy) of a layout is."""


@dataclass(frozen=True, slots=True)
class Frame:
    """The board as it was laid out, and as it is."""

    board: StockBoard
    long: int
    wide: int
    rules: Rules

    def along(self, area: Area) -> Reach:
        """Return where an area lies along the board, to its very end where it reaches so far."""
        end = self.board.sizes[0] if area.end == self.long else exact(area.end)
        return exact(area.start), end

    def across(self, area: Area) -> Reach:
        """Return where it lies across the board."""
        high = self.board.sizes[1] if area.high == self.wide else exact(area.high)
        return exact(area.low), high


def sawn(layout: Layout, board: StockBoard, rules: Rules, names: Names) -> BoardLayout:
    """Return how the board is cut."""
    long, wide, _ = board.sizes
    frame = Frame(board, down(long), down(wide - rough_edge(board.line)), rules)
    sides = _hands(layout)
    fallen = [_fallen(one.area, one.clear, frame) for one in layout.leftovers]
    cuts: list[SawCut] = []
    for one in layout.cuts:
        cut, beyond = _cut(one, frame)
        cuts.append(cut)
        if beyond is not None:
            fallen.append(beyond)
    placed = []
    for piece in layout.pieces:
        area = piece.area
        along, across = frame.along(area), frame.across(area)
        margin = across[1] - exact(area.high)
        if margin and area.length >= rules.least_rip:
            cut = _edge_cut(len(cuts) + 1, sides[area], layout, area, frame)
            cuts.append(cut)
            if margin > cut.kerf:
                strip = exact(area.high) + cut.kerf, across[1]
                fallen.append(Fallen(along, strip, None, keep=False))
            across = (across[0], exact(area.high))
        placed.append(Placed(names[piece.part, piece.copy], along, across, piece.turned))
    with_names = [named(cut, placed) for cut in raw_edges_first(cuts)]
    with_names, fallen = waste_in_one_cut(with_names, fallen)
    return BoardLayout(board, tuple(placed), tuple(with_names), tuple(fallen))


def _cut(cut: Cut, frame: Frame) -> tuple[SawCut, Fallen | None]:
    """Return the cut, and what is left beyond it of a rough edge where nothing else is."""
    along, across = frame.along(cut.piece), frame.across(cut.piece)
    crosscut = cut.saw == "crosscut"
    size = cut.piece.length if crosscut else cut.piece.width
    kerf, run = exact(cut.kerf), along if crosscut else across
    beyond = None
    if cut.at + cut.kerf == size:
        # Nothing is left there but what the layout does not know of.
        left = run[1] - run[0] - exact(cut.at)
        rules = frame.rules
        kerf = min(exact(rules.crosscut_kerf if crosscut else rules.rip_kerf), left)
        edge = run[0] + exact(cut.at) + kerf, run[1]
        if left > kerf:
            area = (edge, across) if crosscut else (along, edge)
            beyond = Fallen(*area, None, keep=False)
    at, stage = exact(cut.at), cut.stage
    hand = cut.number, cut.after, cut.side
    return SawCut(*hand, cut.saw, at, kerf, stage, along, across, (), ()), beyond


def _edge_cut(number: int, hand: Hand, layout: Layout, area: Area, frame: Frame) -> SawCut:
    """Return the rip that takes the far rough edge off a blank."""
    before = layout.cuts[hand[0] - 1] if hand[0] is not None else None
    stage = stage_after(before, "rip")
    across = frame.across(area)
    at = exact(area.width)
    kerf = min(exact(frame.rules.rip_kerf), across[1] - across[0] - at)
    return SawCut(number, *hand, "rip", at, kerf, stage, frame.along(area), across, (), ())


def _fallen(area: Area, clear: Area | None, frame: Frame) -> Fallen:
    """Return what falls; its sound wood ends where the raw end of the board begins."""
    along, across = frame.along(area), frame.across(area)
    if clear is None:
        return Fallen(along, across, None, keep=False)
    start, end = max(clear.start, frame.rules.end_trim), clear.end
    end = min(end, frame.long - frame.rules.end_trim)
    if end <= start:
        return Fallen(along, across, None, keep=False)
    sound = (exact(start), exact(end)), (exact(clear.low), exact(clear.high))
    keep = end - start >= frame.rules.keep_length and clear.width >= frame.rules.keep_width
    return Fallen(along, across, sound, keep)


def _hands(layout: Layout) -> dict[Area, Hand]:
    """Return the side of the cut that each piece is in the end."""
    if not layout.cuts:
        return {piece.area: (None, "") for piece in layout.pieces}
    return {area: hand for hand, area in hands(layout).items()}


def named(cut: SawCut, placed: Sequence[Placed]) -> SawCut:
    """Return the cut with the blanks that come out of each side."""
    way = 0 if cut.saw == "crosscut" else 1
    saw = (cut.along, cut.across)[way][0] + cut.at
    sides: tuple[list[str], list[str]] = ([], [])
    for one in _within(cut, placed):
        sides[(one.along, one.across)[way][0] >= saw].append(one.blank.name)
    return replace(cut, first=tuple(sides[0]), rest=tuple(sides[1]))


def _within(cut: SawCut, placed: Sequence[Placed]) -> list[Placed]:
    return [
        one
        for one in placed
        if cut.along[0] <= one.along[0] < cut.along[1]
        and cut.across[0] <= one.across[0] < cut.across[1]
    ]
