"""How one part moves across its grain: its wood, how it was sawn, the moistures it goes through.

All figures of movement ask here, so that they speak of one wood in one air.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.kinds.sawn import QUARTERSAWN, RIFT
from dryfit.wood.movement import USUAL_SWING, Moisture, movement
from dryfit.wood.sawn import cut_of
from dryfit.wood.species import Species, species

# A lively wood of the handbook's table, beech: the careful guess for an unknown one.
_LIVELY = Species("", "", Fraction(190, 100_000), Fraction(431, 100_000), "read", "")


@dataclass(frozen=True, slots=True)
class Moving:
    """The change of a part across its grain for each percent of moisture, and the moistures.

    `across` is that of its width and `through` that of its thickness, fractions of the size.
    `wood` is the species, None where no table holds it: it is then as lively as beech.  `cut` is
    flatsawn, quartersawn or rift; None where nobody said, and then as flatsawn, which moves most.
    """

    wood: Species | None
    cut: str | None
    across: Fraction
    through: Fraction
    moisture: Moisture

    @property
    def name(self) -> str:
        """What a sentence calls the wood: ``white ash``, ``quartersawn white oak``."""
        named = self.wood.name if self.wood else "the wood, taken as lively as beech,"
        return f"{self.cut} {named}" if self.cut and self.wood else named

    def swells(self, size: Fraction) -> Fraction:
        """Return how much a width in mm still grows until it is dampest."""
        now = self.moisture.now
        return movement(size, self.across, now, now + self.moisture.rise)

    def shrinks(self, size: Fraction) -> Fraction:
        """Return how much a width in mm still loses until it is driest."""
        now = self.moisture.now
        return -movement(size, self.across, now, now - self.moisture.fall)

    def over_the_year(self, size: Fraction) -> Fraction:
        """Return how much a width in mm moves between the dry and the damp season."""
        air = self.moisture
        if not air.told:
            return size * self.across * USUAL_SWING
        return movement(size, self.across, air.driest, air.dampest)

    def year_words(self) -> str:
        """Return between what the wood moves over the year, as a message says it."""
        air = self.moisture
        if not air.told:
            return f"over the year, with {USUAL_SWING} % of moisture"
        return f"between {percent_words(air.driest)} and {percent_words(air.dampest)} of moisture"


def moving(timber: str | None, cut: str | None = None, moisture: Moisture | None = None) -> Moving:
    """Return how wood of that name and cut moves; what the name says of the cut counts last."""
    found = species(timber or "")
    sawn = cut or cut_of(timber or "")
    wood = found or _LIVELY
    radial, tangential = wood.radial, wood.tangential
    across, through = tangential, radial
    if sawn == QUARTERSAWN:
        across, through = radial, tangential
    elif sawn == RIFT:
        across = through = (radial + tangential) / 2
    return Moving(found, sawn, across, through, moisture or Moisture())


def percent_words(percent: Fraction) -> str:
    """Return a moisture content as it is said, to half a percent."""
    halves = round(2 * percent)
    return f"{halves // 2}{'.5' if halves % 2 else ''} %"
