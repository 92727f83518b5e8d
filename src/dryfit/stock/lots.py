"""What is laid out: rough pieces of which several are alike, for copies or staves of a part."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.placing.model import Model, Part
from dryfit.shop.shop import Shop
from dryfit.stock.blanks import blank_of, gangs_from_boards


@dataclass(frozen=True, slots=True)
class Lot:
    """Blanks that are alike: as many as `pieces`, which says what each of them becomes.

    Sizes in mm: `length` and `width` are sawn, `to_thickness` is what it has to be planed to, and
    `finished` what is left of length, width and thickness together with all that one blank makes.
    What is `spare` is laid out only where there is room.
    """

    subject: str
    part: Part
    pieces: tuple[tuple[str, ...], ...]
    length: Fraction
    width: Fraction
    to_thickness: Fraction
    finished: tuple[Fraction, Fraction, Fraction]
    reason: str = ""
    spare: bool = False

    @property
    def sheet(self) -> bool:
        """Whether it is cut from sheet goods."""
        return self.part.stock == "sheet"


def lots_of(model: Model, shop: Shop) -> tuple[Lot, ...]:
    """Return the blanks of all parts that are cut from boards or sheets, in the order of notes."""
    gangs = gangs_from_boards(model, shop)
    return tuple(
        _sheet(part) if part.stock == "sheet" else _solid(part, model, gangs)
        for part in model.parts
        if not part.made
    )


def _sheet(part: Part) -> Lot:
    sizes = part.cut_length, part.width, part.thickness
    pieces = tuple((copy.name,) for copy in part.copies)
    return Lot(part.name, part, pieces, *sizes, sizes)


def _solid(part: Part, model: Model, shop: Shop) -> Lot:
    blank = blank_of(part, model, shop)
    each = blank.each
    pieces = tuple(
        blank.pieces[number * each : (number + 1) * each] for number in range(blank.count)
    )
    return Lot(
        blank.subject,
        part,
        pieces,
        blank.length,
        blank.width,
        blank.to_thickness,
        (part.cut_length * each, blank.to_width, part.thickness),
    )
