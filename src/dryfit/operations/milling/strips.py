"""Strips of thick boards: a true face, a true edge and their thickness, before they are resawn.

TRADE A8.3: a strip stands on the edge, and its face runs along the fence.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from dryfit.joinery.resawing import LEAVES, WARP, leaf_for, resaw_kerf, thickness_for
from dryfit.operations import setting_of
from dryfit.operations.boards.blank_deeds import operation, pieces_of
from dryfit.operations.boards.out_of_boards import OutOfBoards
from dryfit.operations.boards.wide_boards import hand_planed
from dryfit.operations.machine_limits import PLANER, Piece, why_not_planed
from dryfit.operations.milling.jointing import edge, face
from dryfit.operations.minutes import METRE, worked
from dryfit.plan.operation import Operation
from dryfit.plan.setting import Hold
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.blank import Blank
from dryfit.stock.boards import to_be_resawn

WORTH_SAWING_OFF = Fraction(12)
"""mm: what a strip is thicker than its leaves take is sawn off it where it is more (ours)."""
ALIKE = Fraction(1, 2)
"""mm: a strip that is no more too thick is not planed for it (ours)."""


@dataclass(frozen=True, slots=True)
class Strips:
    """The strips that leaves of a part are sawn from, as a blank of its own.

    `blank` counts strips, and is as thick as they are before a face is true; `leaf` is how thick
    each of so many `leaves` is sawn, and `least` how thick a true strip has to be for them.
    """

    blank: Blank
    leaves: int
    leaf: Fraction
    least: Fraction

    def of(self, some: Blank) -> Blank:
        """Return the strips for some more leaves, as thick as they have to be bought."""
        count = -(-some.count // self.leaves)
        thick = self.least + WARP
        return replace(some, count=count, leaves=self.leaves, strip=self.least, thickness=thick)

    @property
    def too_thick(self) -> Fraction:
        """Return by how much a strip is too thick once one face of it is true, in mm."""
        return max(Fraction(0), self.blank.thickness - WARP - self.least)

    @property
    def sawn_off(self) -> bool:
        """Return whether that is so much that it comes off as one leaf more, which is kept."""
        return self.too_thick > WORTH_SAWING_OFF

    def trued(self, out: OutOfBoards | None, shop: Shop) -> tuple[Operation, ...]:
        """Return what makes the strips true, in its order."""
        rows: list[Operation] = []
        if out is None or out.trued:
            rows.append(face(self.blank, shop))
        if out is None or out.ripped:
            rows.append(edge(self.blank, shop))
        if not self.sawn_off and (out is None or out.trued or self.too_thick > ALIKE):
            rows.append(_thickness(self, shop))
        return tuple(_of_strips(row) for row in rows)


def strips_for(blank: Blank, out: OutOfBoards | None, shop: Shop) -> Strips | None:
    """Return the strips of a part that is resawn, else None.

    `blank` are its leaves; out of boards that are laid out it may be resawn unasked.
    """
    part = blank.part
    asked = part.bookmatched or to_be_resawn(part)
    if not (asked if out is None else out.leaves > 1):
        return None
    leaves = LEAVES if out is None else out.leaves
    leaf = leaf_for(blank.to_thickness, leaves, shop)
    least = thickness_for(leaves, leaf, Fraction(0), resaw_kerf(shop))
    extra = 0 if out is None else out.extra
    strips = Strips(blank, leaves, leaf, least)
    own = strips.of(replace(blank, count=blank.count + extra))
    if out is not None:
        own = replace(own, thickness=max(thick for thick, _ in out.thick.values()))
    strips = replace(strips, blank=own)
    # What is sawn from both sides has two sawn faces to plane (A8.1).
    more = leaves + strips.sawn_off
    return replace(strips, leaf=leaf_for(blank.to_thickness, more, shop))


def _of_strips(row: Operation) -> Operation:
    kind = f"strip {row.kind}"
    return replace(row, id=f"{row.part} / {kind}", kind=kind)


def _thickness(strips: Strips, shop: Shop) -> Operation:
    """Return the planing of strips to the thickness that their leaves and the saw take (A8.1)."""
    blank, to = strips.blank, strips.least
    off = blank.thickness - shop.allowances["facing"] / 2 - to
    said = f"Plane {pieces_of(blank)} to the thickness of its leaves and the saw cuts between them"
    if blank.count > 1:
        said = said.replace("of its", "of their")
    why_not = why_not_planed(Piece(blank.length, blank.width, blank.thickness), to, shop)
    if why_not is not None:
        exact = hand_planed(blank, off, shop)
        by_hand = f"{said}, by hand, to a gauge line"
        return operation(blank, "thickness", "bench", (), exact, by_hand, why=why_not)
    bites = off / shop.allowances["planer_pass"]
    passes = max(1, -(-bites.numerator // bites.denominator))
    metres = blank.length * blank.count / METRE
    exact = worked(shop, "planer pass", each=blank.count, per_metre=metres) * passes
    settings = setting_of.known_to(shop, PLANER, (setting_of.plain("thickness", to),))
    hold = Hold("F", None, None)
    return operation(blank, "thickness", PLANER, settings, exact, said, hold)
