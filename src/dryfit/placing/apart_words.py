"""Where two copies meet that should not, and how far apart two are that should meet, in words."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.placing.site import Site

WAYS = ("from side to side", "from front to back", "up and down")
_FROM = ("{} to {} from left", "{} to {} from front", "up {} to {}")


def overlap_words(site: Site, common: Box) -> str:
    """Return the shortest way out of a space that two take up, and where in the piece it is."""
    axis = min(range(3), key=common.extent)
    low, high = common.low, common.high
    where = ", ".join(
        words.format(site.shown(low[at]), site.shown(high[at])) for at, words in enumerate(_FROM)
    )
    return f"{site.shown(common.extent(axis))} {WAYS[axis]}, at {where}"


def gap_words(
    site: Site, guests: Sequence[tuple[str, Box]], hosts: Sequence[tuple[str, Box]]
) -> str:
    """Return how far those two are apart that come nearest.

    As ``rail and left leg stand apart by 12 up and down``.
    Nothing is said where two touch at no more than an edge, or where there is nobody to meet.
    """
    pairs = [
        (sum(gaps), order, gaps, one, other)
        for order, (one, other, gaps) in enumerate(
            (one, other, _gaps(box, mate)) for one, box in guests for other, mate in hosts
        )
    ]
    if not pairs:
        return ""
    _, _, gaps, one, other = min(pairs)
    said = [f"{site.shown(gap)} {WAYS[axis]}" for axis, gap in enumerate(gaps) if gap > 0]
    return f"{one} and {other} stand apart by {' and '.join(said)}" if said else ""


def _gaps(one: Box, other: Box) -> tuple[Fraction, Fraction, Fraction]:
    first, second, third = (
        max(one.low[axis] - other.high[axis], other.low[axis] - one.high[axis], Fraction(0))
        for axis in range(3)
    )
    return first, second, third
