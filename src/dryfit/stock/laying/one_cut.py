"""Two crosscuts in a row of which both only let waste fall are one: behind the second.

A layout takes the raw end off a board, and then what is split behind it.  At the saw nobody cuts
twice for that.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from dryfit.stock.laid_out import Fallen, SawCut


def waste_in_one_cut(
    cuts: Sequence[SawCut], fallen: Sequence[Fallen]
) -> tuple[list[SawCut], list[Fallen]]:
    """Return the cuts and what falls, with waste that lies in a row sawn off at once."""
    rows, waste = list(cuts), list(fallen)
    for _ in cuts:
        pair = next((each for each in _pairs(rows, waste)), None)
        if pair is None:
            break
        rows, waste = _joined(rows, waste, *pair)
    return rows, waste


def _pairs(cuts: Sequence[SawCut], fallen: Sequence[Fallen]) -> list[tuple[SawCut, SawCut]]:
    numbers = {cut.number: cut for cut in cuts}
    parted = {cut.after for cut in cuts if cut.side == "first"}
    found = []
    for cut in cuts:
        before = numbers.get(cut.after) if cut.after is not None else None
        if before is None or cut.side != "rest" or {before.number, cut.number} & parted:
            continue
        crosscuts = before.saw == cut.saw == "crosscut"
        if crosscuts and _falls(before, fallen) and _falls(cut, fallen):
            found.append((before, cut))
    return found


def _falls(cut: SawCut, fallen: Sequence[Fallen]) -> Fallen | None:
    """Return what falls at the fresh end of a cut, None where it is a blank or worth keeping."""
    along = cut.along[0], cut.along[0] + cut.at
    if cut.first:
        return None
    here = (one for one in fallen if (one.along, one.across) == (along, cut.across))
    return next((one for one in here if not one.keep), None)


def _joined(
    cuts: Sequence[SawCut], fallen: Sequence[Fallen], before: SawCut, cut: SawCut
) -> tuple[list[SawCut], list[Fallen]]:
    at = before.at + before.kerf + cut.at
    one = replace(before, at=at, kerf=cut.kerf, first=(), rest=cut.rest)
    gone = [each for each in (_falls(before, fallen), _falls(cut, fallen)) if each is not None]
    whole = Fallen((before.along[0], before.along[0] + at), before.across, None, keep=False)
    rows = [
        _renumbered(one if each is before else each, cut.number, before.number)
        for each in cuts
        if each is not cut
    ]
    return rows, [*(each for each in fallen if all(each is not old for old in gone)), whole]


def _renumbered(each: SawCut, gone: int, instead: int) -> SawCut:
    """Return a cut as it is numbered without one of them, whose piece another leaves now."""
    after = each.after
    if after is not None:
        after = instead if after == gone else after - (after > gone)
    return replace(each, number=each.number - (each.number > gone), after=after)
