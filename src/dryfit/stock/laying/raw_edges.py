"""The raw edge of a slab comes off before anything is measured, or set to a fence, from it.

A layout frees a piece along its far edge first, and then takes the bark off its near one.  At the
saw that is the wrong way round: a fence wants the fresh edge (TRADE A2.6).  The same two cuts in
the other order part the same wood.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from dryfit.stock.laid_out import SawCut


def raw_edges_first(cuts: Sequence[SawCut]) -> list[SawCut]:
    """Return the cuts with each rip that only takes bark off before the rip that it follows."""
    found = list(cuts)
    for index, cut in enumerate(cuts):
        before = found[index - 1] if index else None
        if before is not None and _takes_bark_off(cut, before):
            found = _turned(found, index)
    return found


def _takes_bark_off(cut: SawCut, before: SawCut) -> bool:
    follows = (cut.after, cut.side) == (before.number, "first")
    return follows and cut.at == 0 and (before.saw, cut.saw) == ("rip", "rip")


def _turned(cuts: Sequence[SawCut], index: int) -> list[SawCut]:
    """Return the cuts with one and its neighbour before it the other way round."""
    outer, bark = cuts[index - 1], cuts[index]
    begin, end = outer.across
    first = replace(outer, at=Fraction(0), kerf=bark.kerf)
    then = replace(
        bark,
        side="rest",
        at=outer.at - bark.kerf,
        kerf=outer.kerf,
        across=(begin + bark.kerf, end),
    )
    return [
        first if cut is outer else then if cut is bark else _after(cut, outer, bark) for cut in cuts
    ]


def _after(cut: SawCut, outer: SawCut, bark: SawCut) -> SawCut:
    """Return a cut on the piece that it was on; `bark` now frees what either of the two did."""
    if (cut.after, cut.side) == (bark.number, "rest"):
        return replace(cut, side="first")
    if (cut.after, cut.side) == (outer.number, "rest"):
        return replace(cut, after=bark.number)
    return cut
