"""A scale along a long part: the stretches that matter in true scale, the rest broken out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

GAP = 5.0
"""Room on paper for a break, mm."""

Stretch = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Ruler:
    """Stretches in mm of the part, drawn to `scale` from paper mm `start` on, breaks between.

    `direction` is 1 where the part runs to the right on paper, -1 where it runs to the left.
    """

    stretches: tuple[Stretch, ...]
    scale: float
    start: float
    direction: int = 1

    def at(self, along: float) -> float:
        """Return where a place along the part comes on paper, inside breaks by proportion."""
        paper = 0.0
        for index, (begin, end) in enumerate(self.stretches):
            if along <= end or index == len(self.stretches) - 1:
                if index and along < begin:
                    last = self.stretches[index - 1][1]
                    paper -= GAP * (begin - along) / (begin - last)
                    return self.start + self.direction * paper
                return self.start + self.direction * (paper + (along - begin) * self.scale)
            paper += (end - begin) * self.scale + GAP
        raise ValueError(along)

    def breaks(self) -> tuple[float, ...]:
        """Return the middles of the breaks on paper."""
        return tuple(
            (self.at(first[1]) + self.at(second[0])) / 2
            for first, second in zip(self.stretches, self.stretches[1:], strict=False)
        )

    @property
    def end(self) -> float:
        """Where the last stretch ends on paper."""
        return self.at(self.stretches[-1][1])


def ruler(
    length: float,
    wanted: Sequence[Stretch],
    *,
    room: float,
    scale: float,
    start: float = 0.0,
    direction: int = 1,
) -> Ruler:
    """Return a ruler on which the wanted stretches are seen within `room` mm of paper.

    The whole length is shown unbroken where it fits.  `scale` is the largest allowed; it is made
    smaller only where the wanted stretches themselves do not fit.
    """
    if length * scale <= room:
        return Ruler(((0.0, length),), scale, start, direction)
    while True:
        stretches = _merged(length, wanted, scale)
        paper = sum(end - begin for begin, end in stretches) * scale + GAP * (len(stretches) - 1)
        if paper <= room:
            return Ruler(stretches, scale, start, direction)
        scale *= 0.95


def _merged(length: float, wanted: Sequence[Stretch], scale: float) -> tuple[Stretch, ...]:
    """Join stretches that lie closer than a break is wide, and stay within the part."""
    merged: list[Stretch] = []
    for begin, end in sorted((max(0.0, begin), min(length, end)) for begin, end in wanted):
        if merged and (begin - merged[-1][1]) * scale <= GAP:
            merged[-1] = (merged[-1][0], max(end, merged[-1][1]))
        else:
            merged.append((begin, end))
    return tuple(merged)
