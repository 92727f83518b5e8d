"""In which turns a part gets its lips: ends before edges, each glued or ironed on (TRADE A10)."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.geometry.frame import SURFACES
from dryfit.operations.minutes import METRE
from dryfit.operations.words import listed
from dryfit.placing.lip import Lip
from dryfit.placing.model import Part
from dryfit.placing.strips import covers

_QUALIFIERS = {0: "ends", 1: "edges"}


@dataclass(frozen=True, slots=True)
class Stage:
    """Lips of a part that go on in one turn: at its ends or its edges, glued or ironed on.

    `strips` are the strips of the part, none for banding; `qualifier` tells the turn from the
    part's other one of its kind.
    """

    part: Part
    lips: tuple[Lip, ...]
    strips: tuple[Part, ...]
    qualifier: str = ""

    @property
    def banded(self) -> bool:
        """Return whether it is banding."""
        return self.lips[0].banded

    @property
    def direction(self) -> int:
        """Return whether the lips make the part longer (0) or wider (1)."""
        return SURFACES[self.lips[0].surface][0]

    @property
    def where(self) -> str:
        """Return the surfaces as sentences name them: ``E and E2``."""
        return listed(lip.surface for lip in self.lips)

    def named(self, what: str) -> str:
        """Return the id of a deed of this stage."""
        return " / ".join(filter(None, (self.part.name, what, self.qualifier)))

    @property
    def many(self) -> bool:
        """Return whether more than one strip goes on in it."""
        return len(self.lips) * len(self.part.copies) > 1

    def metres(self, copies: int) -> Fraction:
        """Return the metres of edge that are covered on so many copies."""
        return sum((covers(self.part, lip) for lip in self.lips), Fraction(0)) * copies / METRE


def stages_of(part: Part, strips: tuple[Part, ...]) -> tuple[Stage, ...]:
    """Return the turns in their order: ends, then edges, glued ones before banding."""
    found: list[Stage] = []
    for direction in (0, 1):
        for banded in (False, True):
            alike = [lip for lip in part.lips if lip.banded == banded]
            own = tuple(lip for lip in alike if SURFACES[lip.surface][0] == direction)
            qualifier = _QUALIFIERS[direction] if len(own) < len(alike) else ""
            if own:
                found.append(Stage(part, own, () if banded else strips, qualifier))
    return tuple(found)
