"""Faces and edges made true at the jointer, or with a plane where it does not take the piece."""

from __future__ import annotations

from fractions import Fraction

from dryfit.operations import setting_of
from dryfit.operations.boards.blank_deeds import operation, pieces_of
from dryfit.operations.boards.wide_boards import hand_planed
from dryfit.operations.machine_limits import (
    JOINTER,
    Piece,
    why_not_jointed_edge,
    why_not_jointed_face,
)
from dryfit.operations.minutes import METRE, worked
from dryfit.plan.operation import Detail, Operation
from dryfit.plan.setting import Hold
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.blank import Blank


def face(blank: Blank, shop: Shop) -> Operation:
    """Return the making true of a first face of all blanks."""
    piece = Piece(blank.length, blank.width, blank.thickness)
    return _jointed(
        blank, shop, "face", "Make one face of {} true", why_not_jointed_face(piece, shop)
    )


def edge(blank: Blank, shop: Shop) -> Operation:
    """Return the jointing of a first edge of all blanks."""
    piece = Piece(blank.length, blank.width, blank.thickness)
    sentence = "Joint one edge of {} square to the true face"
    return _jointed(blank, shop, "edge", sentence, why_not_jointed_edge(piece, shop))


def second_edge(blank: Blank, shop: Shop) -> Operation:
    """Return the jointing of the edges of staves that a saw has left."""
    piece = Piece(blank.length, blank.sawn_width, blank.to_thickness)
    sentence = "Joint the second edge of {}, each pair folded like a book"
    return _jointed(blank, shop, "second edge", sentence, why_not_jointed_edge(piece, shop))


def _jointed(
    blank: Blank, shop: Shop, what: str, sentence: str, why_not: Detail | None
) -> Operation:
    metres = blank.length * blank.count / METRE
    rate = "joint face" if what == "face" else "joint edge"
    said = sentence.format(pieces_of(blank))
    exact = worked(shop, rate, each=blank.count, per_metre=metres)
    if why_not is not None:
        by_hand = (
            hand_planed(blank, shop.allowances["facing"], shop)
            if what == "face"
            else exact * shop.by_hand
        )
        return operation(blank, what, "bench", (), by_hand, f"{said} with a plane", why=why_not)
    settings = setting_of.known_to(
        shop,
        JOINTER,
        (
            setting_of.plain("depth", shop.allowances["facing"] / 2),
            setting_of.angle("fence", Fraction(90)),
        ),
    )
    down = "F" if what == "face" else "E" if what == "edge" else "E2"
    hold = Hold(down, None if what == "face" else "F", None)
    return operation(blank, what, JOINTER, settings, exact, said, hold)
