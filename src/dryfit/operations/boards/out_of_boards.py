"""The rough pieces of a part as the layouts give them, in place of the usual ones."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from fractions import Fraction

from dryfit.joinery.resawing import leaf_for
from dryfit.placing.model import Model
from dryfit.placing.staying_straight import staying_straight
from dryfit.shop.resting import LEFT, rest_of
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.blank import Blank
from dryfit.stock.boards import flat, unplaned
from dryfit.stock.laid_out import BoardLayout, LaidOut, Placed
from dryfit.stock.resting import moisture_known


@dataclass(frozen=True, slots=True)
class OutOfBoards:
    """The rough pieces of one part that come out of boards.

    `blank` are all pieces of the part, as large as the largest is sawn.  `freed` are the operations
    that cut them.  `extra` counts spares and test pieces, which go through the machines with them.
    `lacking` are those for which there is no wood, None where there are none.  `trued`, `planed`
    and `ripped` are whether a face is made true, a thickness planed, a width sawn: wood that is
    planed already and used as it is needs none of them: `kept` are pieces of which that holds one
    by one.  `thick` tells of each piece how thick it is sawn, and how thick it can be planed flat.
    `leaves` are resawn out of one.
    `rests` tells of each piece how many tenths it rests before it is planed true, 0 for not.
    Some go through the planer `between_strips`, as they are too short to be bitten by it.
    """

    blank: Blank
    freed: tuple[str, ...]
    extra: int = 0
    lacking: Blank | None = None
    trued: bool = True
    planed: bool = True
    ripped: bool = True
    leaves: int = 1
    kept: frozenset[str] = frozenset()
    thick: Mapping[str, tuple[Fraction, Fraction]] = field(default_factory=dict)
    rests: Mapping[str, int] = field(default_factory=dict)
    between_strips: bool = False

    @property
    def thinnest(self) -> Fraction:
        """Return how thick the thinnest piece is that is sawn, in mm."""
        if self.leaves > 1:
            return self.blank.thickness
        bought = self.blank if self.lacking is None else self.lacking
        return min(bought.thickness, *(thick for thick, _ in self.thick.values()))


def outs_of(
    blanks: Mapping[str, Blank],
    laid: LaidOut,
    freed: Mapping[str, tuple[str, ...]],
    model: Model,
    shop: Shop,
) -> dict[str, OutOfBoards]:
    """Return how parts come out of the layouts, by name; those of which no piece does are left out.

    `blanks` are the parts' as they would be without a layout; `freed` as in `Sawing`.
    """
    found = ((name, _out_of(blank, laid, freed, shop)) for name, blank in blanks.items())
    outs = {name: out for name, out in found if out is not None}
    straight = staying_straight(model)
    return {
        name: replace(out, rests=_rests(out, laid, model, shop, straight=name in straight))
        for name, out in outs.items()
    }


def _rests(
    out: OutOfBoards, laid: LaidOut, model: Model, shop: Shop, *, straight: bool
) -> dict[str, int]:
    """Return how long each piece rests; leaves have rested when they come to the planer."""
    found: dict[str, int] = {}
    to = out.blank.to_thickness
    for layout in laid.layouts if out.leaves == 1 else ():
        known = moisture_known(layout.board.line, model)
        placed = {name for one in layout.placed for name in one.blank.pieces}
        for name, (thick, flat_to) in out.thick.items():
            if name in placed:
                told = out.blank.part.rested
                rest = rest_of(thick, to, shop, straight=straight, known=known, told=told)
                found[name] = rest if flat_to >= to + LEFT else 0
    return found


def _out_of(
    blank: Blank, laid: LaidOut, freed: Mapping[str, tuple[str, ...]], shop: Shop
) -> OutOfBoards | None:
    own = [
        (one, layout)
        for layout in laid.layouts
        for one in layout.placed
        if one.blank.subject == blank.subject
    ]
    real = [one for one, _ in own if one.blank.pieces]
    if not real:
        return None
    placed = {piece for one in real for piece in one.blank.pieces}
    missing = tuple(piece for piece in blank.pieces if piece not in placed)
    leaves = max(one.blank.leaves for one in real)
    thick = max(layout.board.sizes[2] for _, layout in own)
    each = max(-(-len(one.blank.pieces) // one.blank.leaves) for one in real)
    count = sum(-(-len(one.blank.pieces) // each) for one in real)
    lacking = None
    if missing:
        lacking = replace(blank, pieces=missing, count=-(-len(missing) // blank.each))
    return OutOfBoards(
        blank=replace(
            blank,
            each=each,
            count=count + (lacking.count if lacking is not None else 0),
            length=max(one.blank.length for one in real),
            width=max(one.blank.width for one in real),
            thickness=thick if leaves == 1 else leaf_for(blank.to_thickness, leaves, shop),
        ),
        freed=freed.get(blank.subject, ()),
        extra=sum(one.blank.leaves for one, _ in own if not one.blank.pieces),
        lacking=lacking,
        trued=bool(missing) or any(_unplaned(layout) for _, layout in own),
        planed=bool(missing)
        or any(_unplaned(layout) or one.blank.allowance[2] != 0 for one, layout in own),
        ripped=bool(missing) or blank.staves or any(one.blank.allowance[1] != 0 for one, _ in own),
        leaves=leaves,
        kept=frozenset(
            piece
            for one, layout in own
            if one.blank.allowance[2] == 0 and not _unplaned(layout)
            for piece in one.blank.pieces
        ),
        thick={
            piece: (layout.board.sizes[2], _flat(one, layout, shop))
            for one, layout in own
            for piece in one.blank.pieces
        },
        between_strips=any(one.blank.between_strips for one, _ in own),
    )


def _flat(one: Placed, layout: BoardLayout, shop: Shop) -> Fraction:
    return flat(layout.board.line, one.blank.length, one.blank.width, shop)


def _unplaned(layout: BoardLayout) -> bool:
    """Return whether no face of a board can be relied on."""
    line = layout.board.line
    return unplaned(line) or line.warped
