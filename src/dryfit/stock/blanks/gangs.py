"""How many short parts are milled in one blank: the usual number, and others (TRADE A5.2, A6.1)."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Literal

from dryfit.placing.model import Model, Part
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.blank import Blank, gang_length, made_of, shortest_fed
from dryfit.stock.board_edges import usable_face
from dryfit.stock.boards import Lack, lack, lines_for, sizes, unplaned, wanted

Gangs = Literal["usual", "longer", "singly", "fewer"]

LONGEST = 2
"""So many times as long as the shop's longest gang is one that saves wood, and no longer (ours)."""


def ganged(blank: Blank, gangs: Gangs, model: Model, shop: Shop) -> Blank:
    """Return the blanks of a part with as many copies in each as `gangs` asks for.

    `blank` is the usual one.  Equal gangs, and no blank of several parts that is shorter than the
    machines take while there are more of the part.  Staves and pieces of a sheet are never ganged.
    """
    part = blank.part
    if blank.staves or blank.sheet or len(part.copies) < 2:
        return blank
    least = _least(part, shop)
    if gangs == "longer":
        each = _most(part, model, shop)
    elif gangs == "singly" or (gangs == "usual" and _never_planed(part, model, shop)):
        each = least
    else:
        each = blank.each if gangs == "usual" else -(-blank.each // 2)
    copies = len(part.copies)
    count = -(-copies // max(each, least))
    return replace(made_of(blank, part, -(-copies // count), shop), count=count)


def _least(part: Part, shop: Shop) -> int:
    """Return how many copies a blank holds at least that the machines take as it is."""
    each = 1
    while each < len(part.copies) and gang_length(part, each, shop) < shortest_fed(shop):
        each += 1
    return each


def _most(part: Part, model: Model, shop: Shop) -> int:
    """Return how many copies come out of one length of the longest board that the part fits."""
    piece = wanted(part, shop)
    long = [
        usable_face(line, shop)[0]
        for line in lines_for(part, model)
        if lack(line, piece, shop) is Lack.NOTHING
    ]
    room = min(max(long, default=shop.allowances["longest_gang"]), _longest(shop))
    each = 1
    while each < len(part.copies) and gang_length(part, each + 1, shop) <= room:
        each += 1
    return each


def _longest(shop: Shop) -> Fraction:
    return LONGEST * shop.allowances["longest_gang"]


def _never_planed(part: Part, model: Model, shop: Shop) -> bool:
    """Return whether every board that the part fits has its thickness: no planer bites its ends."""
    piece = wanted(part, shop)
    fitting = [line for line in lines_for(part, model) if lack(line, piece, shop) is Lack.NOTHING]
    return bool(fitting) and all(
        not unplaned(line) and not line.warped and sizes(line)[2] == part.thickness
        for line in fitting
    )
