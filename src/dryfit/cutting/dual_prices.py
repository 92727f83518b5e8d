"""Prices of blanks by dual-feasible functions, for boards of several sizes at once.

The functions of the largest board serve the smaller ones too, because they add up: f(x) + f(y) is
at most f(x + y). So with one of them along and one across, what comes out of a board is worth at
most the product of its own values.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from operator import mul

from dryfit.cutting.boxes import Steps
from dryfit.cutting.dual import Dual, Size, duals

MOST = 60
"""Functions in each direction that are paired with one another."""

KEPT = 16


@dataclass(frozen=True, slots=True)
class Share:
    """Blanks of one kind: sizes in which one may lie, and how many there are."""

    sizes: tuple[Size, ...]
    count: int


def dual_prices(
    shares: Sequence[Share], rooms: Mapping[int, Sequence[tuple[Size, int]]], steps: Steps
) -> list[tuple[int, dict[int, int]]]:
    """What all blanks are worth at some prices, and what one board of each stock is at most.

    The prices at which the blanks take most of all boards, in falling order of what they take.

    rooms   for each stock its rooms, which share nothing, and how many boards have them
    """
    there = [size for some in rooms.values() for size, _ in some]
    if not there:
        return []
    whole = max(along for along, _ in there), max(across for _, across in there)
    sizes = [size for share in shares for size in share.sizes]
    single = [share for share in shares if len(share.sizes) == 1]
    others = [share for share in shares if share not in single]
    across = _distinct(whole[1], sorted({size[1] for size in sizes}))
    widths = [[g(share.sizes[0][1]) for share in single] for g in across]
    found: list[tuple[float, int, dict[int, int]]] = []
    for f in _distinct(whole[0], sorted({size[0] for size in sizes})):
        lengths = [share.count * f(share.sizes[0][0]) for share in single]
        for g, row in zip(across, widths, strict=True):
            steps.count(len(row) // 4 + len(others) + len(there))
            needed = sum(map(mul, lengths, row)) + sum(_worth(share, f, g) for share in others)
            values = {
                number: sum(f(size[0]) * g(size[1]) for size, _ in some)
                for number, some in rooms.items()
            }
            most = sum(values[number] * some[0][1] for number, some in rooms.items() if some)
            found.append((needed / (most + 1), needed, values))
    found.sort(key=lambda one: -one[0])
    return [(needed, values) for _, needed, values in found[:KEPT]]


def _worth(share: Share, f: Dual, g: Dual) -> int:
    """What blanks of one kind are worth at least, whichever way they lie."""
    return share.count * min(f(along) * g(across) for along, across in share.sizes)


def _distinct(whole: int, sizes: Sequence[int]) -> list[Dual]:
    """Functions that differ on these sizes."""
    found: dict[tuple[int, ...], Dual] = {}
    for dual in duals(whole, sizes):
        values = (dual(whole), *(dual(size) for size in sizes))
        if any(values[1:]):
            found.setdefault(values, dual)
    return list(found.values())[:MOST]
