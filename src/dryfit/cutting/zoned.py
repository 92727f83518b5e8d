"""Boards with bad zones: first cuts that leave clear plots, drawn by lot.

A zone is cut out crosswise or lengthwise, at its limits or a blank's length beside them. Which of
these is best depends on the blanks, so the search draws another one whenever it opens the board.
"""

import random
from dataclasses import dataclass

from dryfit.cutting.clear import meet, shared
from dryfit.cutting.instance import Instance
from dryfit.cutting.problem import Area
from dryfit.cutting.slicing import Plot, Saws


@dataclass(frozen=True, slots=True)
class Whole:
    """What is not cut further before blanks are laid out; `plot` counts the clear ones, else -1."""

    area: Area
    plot: int
    stage: tuple[int, int]


@dataclass(frozen=True, slots=True)
class Split:
    """One cut of direction `way` through `area`, `at` from its fresh end or edge."""

    area: Area
    way: int
    at: int
    kerf: int
    stage: int
    first: "Whole | Split | None"
    rest: "Whole | Split | None"


Frame = Whole | Split


class Framer:
    """Draws frames for the boards of one stock."""

    def __init__(self, instance: Instance, stock: int, saws: Saws) -> None:
        board = instance.stocks[stock].board
        rules = instance.job.rules
        sizes = [size for fits in instance.fits[stock] for size in fits]
        self.saws = saws
        self.zones = board.zones
        self.trim = rules.end_trim
        self.board = Area(min(rules.end_trim, board.length), board.length, 0, board.width)
        self.last = board.length - rules.end_trim
        least_along = min((along for along, _ in sizes), default=1)
        least_across = min((across for _, across in sizes), default=1)
        self.least = (
            max(least_along, rules.sliver_length),
            max(least_across, rules.sliver_width),
        )
        self.sizes = sizes

    def frame(self, rng: random.Random) -> tuple[Frame, list[Plot]]:
        """First cuts, and the clear plots that they leave in order."""
        plots: list[Plot] = []
        return self._framed(self.board, (1, 1), plots, rng), plots

    def _framed(
        self, area: Area, stage: tuple[int, int], plots: list[Plot], rng: random.Random
    ) -> Frame:
        zones = [shared(zone, area) for zone in self.zones if meet(zone, area)]
        if not zones:
            along = min(area.end, self.last) - area.start
            if along <= 0:
                return Whole(area, -1, stage)
            plots.append(Plot(along, area.width, stage))
            return Whole(area, len(plots) - 1, stage)
        choices = [
            choice
            for zone in zones
            for choice in self._choices(area, zone, rng)
            if stage[choice[0]] <= self.saws.stages
        ]
        if not choices:
            return Whole(area, -1, stage)
        way, at = choices[int(rng.random() * len(choices))]
        turn = stage[way]
        after = (turn, turn + 1) if way == 0 else (turn + 1, turn)
        kerf = self.saws.kerfs[way]
        first, rest, taken = parted(area, way, at, kerf)
        return Split(
            area,
            way,
            at,
            taken,
            turn,
            None if first is None else self._framed(first, after, plots, rng),
            None if rest is None else self._framed(rest, after, plots, rng),
        )

    def _choices(self, area: Area, zone: Area, rng: random.Random) -> list[tuple[int, int]]:
        """Cuts (way, at) that free wood on one side of a zone, large enough for some blank."""
        along, across = self.sizes[int(rng.random() * len(self.sizes))] if self.sizes else (0, 0)
        found = []
        for way, low, high, run, beside in (
            (0, zone.start - area.start, zone.end - area.start, area.length, along),
            (1, zone.low - area.low, zone.high - area.low, area.width, across),
        ):
            if way == 1 and area.length < self.saws.least_rip:
                continue
            kerf, least = self.saws.kerfs[way], self.least[way]
            befores = [low, low - beside - kerf, low - beside + high - low]
            found += [(way, at) for at in befores if least <= at <= low]
            afters = [high, high + beside, high + beside - (high - low)]
            found += [(way, max(0, at - kerf)) for at in afters if high <= at and run - at >= least]
        return found


def parted(area: Area, way: int, at: int, kerf: int) -> tuple[Area | None, Area | None, int]:
    """Both sides of a cut (None if nothing is there), and the kerf that is really taken."""
    taken = min(kerf, (area.length if way == 0 else area.width) - at)
    if way == 0:
        middle, beyond = area.start + at, area.start + at + taken
        first = Area(area.start, middle, area.low, area.high)
        rest = Area(beyond, area.end, area.low, area.high)
    else:
        middle, beyond = area.low + at, area.low + at + taken
        first = Area(area.start, area.end, area.low, middle)
        rest = Area(area.start, area.end, beyond, area.high)
    return first if first.size else None, rest if rest.size else None, taken
