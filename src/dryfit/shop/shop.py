"""The shop as data: stations with axes, cutters, accessories, clamps, glues, finishes, minutes.

Lengths are exact mm in Fractions, times whole tenths of a minute.  Every value comes from a shop
file; nothing here has a default of its own.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from fractions import Fraction


@dataclass(frozen=True, slots=True)
class AxisChange:
    """What it costs to change an axis: `change` tenths, other costs by kind of value.

    `between` rows are (from, to, tenths) where a name stands for a cutter or its family and
    ``*`` for anything.  `unsets` names axes of the station that a change spoils.
    """

    name: str
    change: int
    between: tuple[tuple[str, str, int], ...]
    unsets: tuple[str, ...]
    repeats_within: Fraction | None

    def cost(self, before: str | None, after: str, family: Mapping[str, str]) -> int:
        """Return the tenths to go from one value to another; None is "not set".

        `family` maps a value such as ``dado 20`` to the cutter's name in the shop file.
        """
        if before == after:
            return 0
        names_before = {"*", before or "*", family.get(before or "", "*")}
        names_after = {"*", after, family.get(after, "*")}
        costs = [
            tenths
            for start, end, tenths in self.between
            if start in names_before and end in names_after
        ]
        return max(costs) if costs else self.change


@dataclass(frozen=True, slots=True)
class Station:
    """A machine or bench: its axes in the order of setting, limits in mm by name.

    `places` is how many glue-ups can lie there in their clamps, or coats dry, at once; None where
    nobody has counted them.
    """

    name: str
    count: int
    test_cut: int
    axes: tuple[AxisChange, ...]
    limits: Mapping[str, Fraction]
    places: int | None = None

    def axis(self, name: str) -> AxisChange:
        """Return the axis of that name; KeyError when the station has none."""
        for axis in self.axes:
            if axis.name == name:
                return axis
        raise KeyError(name)


@dataclass(frozen=True, slots=True)
class Cutter:
    """A blade, set, bit or chisel on a station; width (kerf) in mm.

    A set that is built to a width has `narrowest`, `widest` and `step`; others have all three
    equal to their one width and step 0.
    """

    name: str
    station: str
    kind: str
    narrowest: Fraction
    widest: Fraction
    step: Fraction


@dataclass(frozen=True, slots=True)
class Accessory:
    """A sled, mitre gauge or jig: thickness of its base, and the longest stop distance."""

    name: str
    station: str
    base: Fraction
    longest: Fraction | None


@dataclass(frozen=True, slots=True)
class Clamp:
    """One kind of clamp: how far it opens in mm, and how many there are."""

    name: str
    opens: Fraction
    count: int


@dataclass(frozen=True, slots=True)
class Glue:
    """Open time, the limit for closing, and the lags after a glue-up, in tenths.

    `outdoors` tells whether its joints last in the weather.
    """

    name: str
    open: int
    close_within: int
    lags: Mapping[str, int]
    outdoors: bool = False


@dataclass(frozen=True, slots=True)
class FinishProduct:
    """A finish: coats, tenths between coats, tenths until dust-free; whether it lasts outdoors."""

    name: str
    coats: int
    recoat: int
    dust_free: int
    outdoors: bool = False


@dataclass(frozen=True, slots=True)
class Sanding:
    """The grits in their order, and the share of a frame's surface that is sanded before glue."""

    grits: tuple[str, ...]
    inside: Fraction


@dataclass(frozen=True, slots=True)
class Rests:
    """How many tenths of a minute wood lies on stickers, 0 for no rest (TRADE A3.7, A8.3).

    Before its last pass at the planer: where much is `planed` off, where it has to stay
    `straight`, and where its moisture is `unknown`; before its first: where it is `resawn`.
    """

    planed: int
    straight: int
    unknown: int
    resawn: int


@dataclass(frozen=True, slots=True)
class Shop:
    """The whole shop; `files` names what it was read from, `sha256` is that of their bytes.

    `opens` and `closes` are tenths after midnight; `days_off` are days of the week, Monday 0,
    `holidays` single days off.  `start` is the day from which on work can begin: a date, a day of
    the week, or None where nobody told; then it is a Monday.
    `minutes` maps a kind of work to its rates in tenths by word (``each``, ``per_metre``,
    ``per_joint``, ...), kept as exact Fractions of a tenth.  `allowances`, `shims` and `clamping`
    are lengths in mm by name.  Planing and sawing by hand take `by_hand` times the machines'
    minutes.  How long wood `rests` while it is milled stands in a table of its own.
    """

    name: str
    sha256: str
    one_room: bool
    workers: int
    opens: int
    closes: int
    days_off: tuple[int, ...]
    walk: int
    stations: Mapping[str, Station]
    cutters: tuple[Cutter, ...]
    accessories: tuple[Accessory, ...]
    clamps: tuple[Clamp, ...]
    glues: Mapping[str, Glue]
    finishes: Mapping[str, FinishProduct]
    minutes: Mapping[str, Mapping[str, Fraction]]
    allowances: Mapping[str, Fraction]
    shims: Mapping[str, Fraction]
    clamping: Mapping[str, Fraction]
    sanding: Sanding
    by_hand: int
    rests: Rests
    default_glue: str
    files: tuple[str, ...]
    start: date | int | None = None
    holidays: tuple[date, ...] = ()

    def cutters_at(self, station: str) -> tuple[Cutter, ...]:
        """Return the station's cutters, in the order of the shop file."""
        return tuple(cutter for cutter in self.cutters if cutter.station == station)

    def accessory(self, name: str) -> Accessory | None:
        """Return the accessory of that name, or None."""
        for accessory in self.accessories:
            if accessory.name == name:
                return accessory
        return None
