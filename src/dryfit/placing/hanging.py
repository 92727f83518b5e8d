"""What a piece that hangs on a wall weighs, filled, and what each of its fixings must carry."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.geometry.frame import LENGTH, THICKNESS
from dryfit.piece.declared import INSIDE
from dryfit.placing.model import Copy, Model, Part
from dryfit.placing.standing_on import ON_A_METRE, kilograms_a_mm
from dryfit.placing.weights import whole_weight

_APART = 400
"""A fixing every 400 mm and one at each end, as far apart as studs often stand (common practice;
studs stand 400 or 600 mm, 16 or 24 in apart)."""

UNTOLD = "black locust"
"""As what a wood counts on a wall that no table weighs: the heaviest that the tables hold."""

_SHELF = Fraction(80)
"""A level board less deep than this, mm, holds nothing worth its weight; ours."""

_RAIL = Fraction(12)
"""A rail thinner than this, mm, is not screwed to a wall; ours."""

_NAMES = ("cleat", "hanging", "hanger", "nailer", "batten", "bracket", "keyhole")


@dataclass(frozen=True, slots=True)
class WallLoad:
    """In kg: the piece, what may stand in it, and what each of so many fixings must be good for.

    Fixings never share alike: each is taken as if only half of them carried (common practice).
    `guessed` says that a wood which no table weighs is taken as heavy as `UNTOLD`.
    """

    own: Fraction
    inside: Fraction
    fixings: int
    guessed: bool

    @property
    def total(self) -> Fraction:
        """The piece when it is filled; kg."""
        return self.own + self.inside

    @property
    def each(self) -> Fraction:
        """What one fixing must be good for; kg."""
        return 2 * self.total / self.fixings


def wall_load(model: Model) -> WallLoad:
    """Return what hangs on the wall; each level board but the uppermost is taken for a shelf."""
    level = [(part, copy) for part in model.parts for copy in part.copies if _is_shelf(copy)]
    top = max((copy.box.high[2] for _, copy in level), default=Fraction(0))
    shelves = [each for each in level if each[1].box.high[2] < top] or level
    inside = sum((_on(*each) for each in shelves), Fraction(0))
    fixings = max(2, int(model.overall[0]) // _APART + 1)
    whole = whole_weight(model, UNTOLD)
    made = {part.name for part in model.parts}
    return WallLoad(whole.kilograms, inside, fixings, not made.isdisjoint(whole.unknown))


def _on(part: Part, copy: Copy) -> Fraction:
    """Return kg on a shelf: what its line says, else books at their lightest (TRADE H39)."""
    wide = copy.box.extent(0)
    if part.carries is None:
        return wide * ON_A_METRE["books"] / 1000
    return wide * kilograms_a_mm(part.carries, part.width, wide)


def hangs_by(model: Model) -> tuple[str, ...]:
    """Return what it can hang by on a wall: by its name, or a rail at the back, high up."""
    named = (part.name for part in model.parts if any(word in part.name for word in _NAMES))
    rails = (part.name for part in model.parts if _takes_screws(part, model))
    bought = (f"{thing.name} {thing.purpose}" for thing in model.bought)
    things = (name for name in bought if any(word in name for word in _NAMES))
    return (*dict.fromkeys((*named, *rails)), *things)


def _takes_screws(part: Part, model: Model) -> bool:
    """Return whether a copy runs across at the back, in the upper half, thick enough to screw."""
    wide, deep, high = model.overall
    return part.stock == "solid" and any(
        copy.frame.axes[LENGTH][0] == 0
        and copy.frame.axes[THICKNESS][0] == 1
        and 2 * copy.box.extent(0) >= wide
        and copy.box.extent(1) >= _RAIL
        and 2 * copy.box.low[1] >= deep
        and 2 * copy.box.low[2] >= high
        for copy in part.copies
    )


def _is_shelf(copy: Copy) -> bool:
    flat = copy.frame.axes[THICKNESS][0] == 2
    return flat and copy.box.extent(1) >= _SHELF and INSIDE not in copy.name
